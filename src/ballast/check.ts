/** What a ballast choice must hold, by means that finding it does not use. */

import { waterG } from '../float/water.js';
import { aside3, length3, sub3 } from '../geometry/vec3.js';
import { ballastItems } from '../mass/ballast.js';
import { bellyOverHole } from '../mass/belly.js';
import { composed } from '../mass/moments.js';
import type { Choice } from './choice.js';
import { woodRefusal } from './refuse.js';
import { type Workpiece, withBelly } from './workpiece.js';

const SAME_G = 1e-9; // relative, of sums in another order
const SAME_MM = 1e-6;
const ON_VERTICAL_MM = 1e-3;
const FLOATS_G = 1e-6; // relative

/**
 * The lure composed item by item weighs and balances as the choice says, displaces its weight (all of
 * it, where it is meant under water) with CB on the vertical through CG, and the wood allows its holes.
 */
export function checkChoice(piece: Workpiece, choice: Choice): string[] {
  const { design, materials, timber, bare, afloat } = piece;
  const items = choice.holes.flatMap((hole, index) =>
    ballastItems(bellyOverHole(design.body.shape, withBelly(piece, hole)), withBelly(piece, hole), {
      index,
      materials,
      timber,
    }),
  );
  const lure = composed([...bare.items, ...items]);
  const { attitude, massG, cgMm } = choice;
  const shift = length3(sub3(lure.cgMm, cgMm));
  const aside = aside3(sub3(cgMm, attitude.cbMm), attitude.upInBody);
  const wholeG = waterG(afloat.solid.volumeMm3, afloat.waterDensityKgM3);
  const carriedG = attitude.dryRatio > 0 ? massG : wholeG;
  const refusal = woodRefusal(piece, choice.holes);
  return [
    ...(Math.abs(lure.massG - massG) <= SAME_G * massG
      ? []
      : [`ballast: ${massG} g said, items weigh ${lure.massG} g`]),
    ...(shift <= SAME_MM ? [] : [`ballast: CG is ${shift} mm off that of the items`]),
    ...(aside <= ON_VERTICAL_MM ? [] : [`ballast: CB is ${aside} mm beside CG’s vertical`]),
    ...(Math.abs(attitude.displacedG - carriedG) <= FLOATS_G * carriedG
      ? []
      : [`ballast: ${attitude.displacedG} g displaced, ${carriedG} g to carry`]),
    ...(refusal ? [`ballast: the wood refuses it, ${refusal.why}`] : []),
  ];
}
