/** What a lure afloat must hold. */
import { waterG } from '../float/water.js';
import { aside3, length3, sub3 } from '../geometry/vec3.js';
import { checkLure } from '../mass/budget.js';
import type { Floating } from './floating.js';

/** CB off the vertical through CG: for a lure, and for one so large that its neutral roll leaves more. */
const [BESIDE_MM, BESIDE] = [1e-2, 1e-3];

/** By means that making it does not use. */
export function checkFloating({
  lure,
  load,
  solid,
  attitudes,
  verdict,
  piece,
}: Floating): string[] {
  const fullG = waterG(solid.volumeMm3, load.waterDensityKgM3);
  const afloat = load.massG < fullG * (1 - 1e-9);
  return [
    ...checkLure(lure, piece.design.body),
    ...attitudes.flatMap((a, i) => {
      const name = `${verdict}, attitude ${i + 1}`;
      const off = aside3(sub3(load.cgMm, a.cbMm), a.upInBody);
      return [
        ...(Math.abs(length3(a.upInBody) - 1) <= 1e-9 ? [] : [`${name}: up is no unit vector`]),
        ...(off <= Math.max(BESIDE_MM, BESIDE * Math.cbrt(a.displacedMm3))
          ? []
          : [`${name}: CB is ${off} mm beside the vertical through CG`]),
        ...(!afloat || Math.abs(a.displacedG - load.massG) <= 1e-6 * load.massG
          ? []
          : [`${name}: ${a.displacedG} g displaced by ${load.massG} g`]),
      ];
    }),
  ];
}
