/** What a difference in the tub points to: slips of the bench, and what each does to the lure. */
import type { Sensitivity } from '../ballast/sensitivity.js';
import { plugIn } from '../ballast/workpiece.js';
import { fromUpright, uprightMouth } from '../blank/hole.js';
import { gPerMm3 } from '../mass/moments.js';
import { floorOf } from '../mass/plug.js';
import { lieOf, type Pulled, perGramAt } from './pull.js';
import type { Says } from './shop.js';

const STEP_KG_M3 = 10; // as the sensitivities tell it
const STEP_MM = 1;

/** @param pull null without a stable rest: then nothing is told */
export function saysOf(pull: Pulled | null): Says[] {
  const slips = pull?.lure.slips;
  if (!slips) return [];
  const told = (
    cause: Says['cause'],
    rate: Sensitivity,
    times: number,
    of: Pick<Says, 'number' | 'step' | 'unit'>,
  ): Says => ({ cause, ...of, massG: times * rate.massG + 0, ...lieOf(pull, rate, times) });
  const board = { number: null, step: STEP_KG_M3, unit: 'kg/m³' } as const;
  const timber = slips.perTimber.per10KgM3;
  return [
    told('timber-heavier', timber, 1, board),
    told('timber-lighter', timber, -1, board),
    ...slips.perHole.flatMap(({ perDepthMm, perStationMm }, i) => {
      const hole = { number: i + 1, step: STEP_MM, unit: 'mm' } as const;
      const short = shortPlug(pull, i);
      return [
        told('hole-deeper', perDepthMm, STEP_MM, hole),
        told('hole-shallower', perDepthMm, -STEP_MM, hole),
        told('hole-aft', perStationMm, STEP_MM, hole),
        told('hole-forward', perStationMm, -STEP_MM, hole),
        ...(short ? [told('plug-short', short.rate, short.lostG, hole)] : []),
      ];
    }),
  ];
}

/**
 * Metal that ends 1 mm too deep in a hole as it was planned, the gap closed with glue. Null for a
 * ready-made weight, which came off the scale.
 */
function shortPlug(
  pull: Pulled,
  index: number,
): { readonly rate: Sensitivity; readonly lostG: number } | null {
  const { blank, piece } = pull.lure;
  const hole = blank.holes[index];
  if (hole.weight !== null) return null;
  const { gPerMm, plugMm } = plugIn(piece, hole);
  const glue = gPerMm3(piece.materials.glue.densityKgM3) * (Math.PI / 4) * hole.diameterMm ** 2;
  const lostG = STEP_MM * (glue - gPerMm);
  const middleMm = floorOf(hole) - plugMm + STEP_MM / 2;
  const at = fromUpright(hole, [uprightMouth(hole)[0], middleMm]);
  return { rate: perGramAt(pull, at), lostG };
}
