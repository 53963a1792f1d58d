/** The measures of a drying comb, before any solid is made. */
import type { Point2 } from '../../geometry/vec.js';
import type { DryingCombSetup } from './setup.js';

/** The comb in X and Y. */
export type CombLayout = {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly slots: readonly Point2[];
  readonly screws: readonly Point2[];
};

/** Half a pitch to each end; the slots' round ends a lure's swing, and half a gap, beyond the shelf. */
export function layoutOf(places: number, pitchMm: number, setup: DryingCombSetup): CombLayout {
  const { shelfMm, dimpleMm, toothMm } = setup;
  const lengthMm = places * pitchMm;
  const outMm = shelfMm + pitchMm / 2;
  return {
    lengthMm,
    widthMm: outMm + dimpleMm / 2 + toothMm,
    slots: Array.from({ length: places }, (_, i): Point2 => [(i + 0.5) * pitchMm, outMm]),
    screws: [0.25, 0.75].map((share): Point2 => [share * lengthMm, shelfMm / 2]),
  };
}
