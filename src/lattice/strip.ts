/** Equal outlines in a strip of fixed height and least length. */
import { ringArea } from '../geometry/ring.js';
import type { LatticeCopy } from './double.js';
import { exchanged, type Grown, type RowFrame, rowFrame } from './frame.js';
import { fittingPeriods } from './period.js';
import { lowestStack, type RowCopy, stackedCopies } from './rows.js';

/** A layout in a strip that lies along x from 0, with its lower edge at y = 0. */
export type StripLayout = { readonly lengthMm: number; readonly copies: readonly LatticeCopy[] };

/** Lengths tried: each halves what is left between too short and long enough. */
const HALVINGS = 8;
/** Distances in a row tried at each length. */
const PERIODS_ALONG = 8;
/** How much lower than on its coarse grid a stack may come out, as a share. */
const COARSE_SHARE = 0.01;

/**
 * The shortest layout found of `count` copies in a strip, or null if the outline is higher than the
 * strip: rows across the strip, and rows along it.
 */
export function latticeStrip(
  shape: Grown,
  count: number,
  stripHeightMm: number,
): StripLayout | null {
  const across = stripAcross(rowFrame(exchanged(shape)), count, stripHeightMm);
  if (!across) return null;
  const along = stripAlong(rowFrame(shape), {
    count,
    stripHeightMm,
    leastMm: (count * ringArea(shape.grown)) / stripHeightMm,
    mostMm: across.lengthMm,
  });
  return along && along.lengthMm < across.lengthMm ? along : across;
}

/** Rows along y, set against each other along x. */
function stripAcross(frame: RowFrame, count: number, heightMm: number): StripLayout | null {
  let best: StripLayout | null = null;
  for (const periodMm of fittingPeriods(frame, heightMm)) {
    const mostMm = (best?.lengthMm ?? Infinity) * (1 + COARSE_SHARE);
    const stack = lowestStack(
      frame,
      { lengthMm: heightMm, periodMm },
      { count, mostMm, needsAll: true },
    );
    if (!stack) continue;
    const copies = stackedCopies(frame, stack).slice(0, count);
    if (copies.length < count) continue;
    const lengthMm = extentOf(frame, copies);
    if (!best || lengthMm < best.lengthMm) {
      best = { lengthMm, copies: copies.map(({ turn, x, y }) => asCopy(turn, y, x)) };
    }
  }
  return best;
}

type AlongTask = {
  readonly count: number;
  readonly stripHeightMm: number;
  readonly leastMm: number;
  readonly mostMm: number;
};

/** Rows along x, in the shortest strip that is high enough for them. */
function stripAlong(frame: RowFrame, task: AlongTask): StripLayout | null {
  let best: StripLayout | null = null;
  let [short, long] = [task.leastMm, task.mostMm];
  for (let i = 0; i < HALVINGS; i++) {
    const lengthMm = (short + long) / 2;
    const copies = copiesIn(frame, task, lengthMm);
    if (copies) {
      best = { lengthMm, copies: copies.map(({ turn, x, y }) => asCopy(turn, x, y)) };
      long = lengthMm;
    } else short = lengthMm;
  }
  return best;
}

function copiesIn(
  frame: RowFrame,
  { count, stripHeightMm }: AlongTask,
  lengthMm: number,
): RowCopy[] | null {
  const mostMm = stripHeightMm * (1 + COARSE_SHARE);
  for (const periodMm of fittingPeriods(frame, lengthMm).slice(0, PERIODS_ALONG)) {
    const stack = lowestStack(frame, { lengthMm, periodMm }, { count, mostMm, needsAll: true });
    if (!stack || stack.heightMm > mostMm) continue;
    const copies = stackedCopies(frame, stack);
    if (copies.length < count || extentOf(frame, copies) > stripHeightMm) continue;
    return copies.slice(0, count);
  }
  return null;
}

/** Height of a stack above 0. */
export const extentOf = ({ boxes }: RowFrame, copies: readonly RowCopy[]): number =>
  Math.max(...copies.map((c) => c.y + boxes[c.turn][3]));

export const asCopy = (turn: 0 | 1, x: number, y: number): LatticeCopy => ({
  turnDeg: turn === 0 ? 0 : 180,
  x,
  y,
});
