/** Distances of the copies in a row that suit the row's length. */
import type { Point2 } from '../geometry/vec.js';
import type { RowFrame } from './frame.js';
import { topsOf } from './pitch.js';

/** Rows spread wider than this are never denser, as a multiple of the least distance. */
const WIDEST = 1.35;
/** Steps from the closest row of a number of copies to the one that fills the length. */
const STEPS = 4;
/** Kept of all. */
const KEPT = 10;

/**
 * From rows that touch to rows that fill the length, for each number of copies that is not spread too
 * wide: those whose endless rows lie densest, densest first. Spread rows let the next one sink deeper
 * between their copies.
 */
export function fittingPeriods(frame: RowFrame, lengthMm: number): number[] {
  const { boxes, leastPeriodMm } = frame;
  const free = lengthMm - (boxes[0][2] - boxes[0][0]);
  if (free < 0) return [];
  const most = Math.floor(free / leastPeriodMm + 1e-9) + 1;
  if (most === 1) return [leastPeriodMm];
  const out: number[] = [];
  for (let n = most; n > 1; n--) {
    const from = n === most ? leastPeriodMm : free / n;
    const to = Math.min(free / (n - 1), WIDEST * leastPeriodMm);
    if (to < from) break;
    for (let k = n === most ? 0 : 1; k <= STEPS; k++) out.push(from + ((to - from) * k) / STEPS);
  }
  return out
    .map((periodMm) => ({
      periodMm,
      areaMm2: endlessAreaMm2(frame, periodMm) * shareLost(periodMm, free),
    }))
    .sort((a, b) => a.areaMm2 - b.areaMm2)
    .slice(0, KEPT)
    .map((p) => p.periodMm);
}

/** What a row cut to whole copies loses: its endless share of the length over its copies. */
const shareLost = (periodMm: number, freeMm: number): number =>
  (freeMm / periodMm + 1) / (Math.floor(freeMm / periodMm + 1e-9) + 0.75);

/** Area of two copies in endless rows of alternate turns. */
function endlessAreaMm2({ noFits }: RowFrame, periodMm: number): number {
  const least = (line: readonly Point2[]): number => Math.min(...topsOf(line, periodMm));
  return periodMm * (least(noFits[0][1]) + least(noFits[1][0]));
}
