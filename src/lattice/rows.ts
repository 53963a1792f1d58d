/**
 * Rows of equal outlines, one turn a row, stacked as low as they will go: which turn, and where along
 * the row each begins, is chosen for all rows together by dynamic programming over the number of
 * copies (R. Bellman), first on a coarse grid of shifts, then finer around the choice.
 */
import { heightOver, type RowFrame, type Turn } from './frame.js';
import { type Pitch, pitchOf } from './pitch.js';

/** Rows further down than this do not reach up to a row. */
const ROWS_BELOW = 4;

/** One row: copies at firstMm, firstMm + period, …; where the outline's origin lies along x. */
export type Row = { readonly turn: Turn; readonly firstMm: number; readonly count: number };

export type Stack = {
  readonly rows: readonly Row[];
  readonly periodMm: number;
  /** From the lowest box edge to the highest, as planned. */
  readonly heightMm: number;
};

/** Shifts a period is divided into, first and each time again around the choice. */
const COARSE = 32;
const FINE = 4;
const ROUNDS = 3;

export type RowSpace = { readonly lengthMm: number; readonly periodMm: number };

/** Copies wanted, the height that must not be passed, and whether fewer copies are of no use. */
export type StackGoal = {
  readonly count: number;
  readonly mostMm: number;
  readonly needsAll: boolean;
};

/**
 * The lowest stack of `count` copies (the last row may be cut short), or, if that is higher than
 * `mostMm`, the one of most copies that is not; null if there is none or it is of no use.
 */
export function lowestStack(frame: RowFrame, space: RowSpace, goal: StackGoal): Stack | null {
  const pitch = pitchOf(frame, space.periodMm);
  const choices = ([0, 1] as const).flatMap((turn) => rowChoices(frame, space, turn));
  const rows = bestRows(frame, pitch, choices, goal);
  if (!rows) return null;
  const fine = refined(frame, pitch, space, rows);
  return { rows: fine, periodMm: space.periodMm, heightMm: heightOf(frame, pitch, fine) };
}

function heightOf({ boxes }: RowFrame, pitch: Pitch, rows: readonly Row[]): number {
  const last = rows[rows.length - 1];
  const up = rows
    .slice(1)
    .reduce((sum, r, i) => sum + pitch(rows[i].turn, r.turn, r.firstMm - rows[i].firstMm), 0);
  return up + boxes[last.turn][3] - boxes[rows[0].turn][1];
}

/** The row of most copies with its first at or after a place, if any fits. */
function rowFrom(
  { boxes }: RowFrame,
  { lengthMm, periodMm }: RowSpace,
  turn: Turn,
  startMm: number,
): Row | null {
  const [low, high] = [-boxes[turn][0], lengthMm - boxes[turn][2]];
  const firstMm = Math.max(low, startMm);
  const count = Math.floor((high - firstMm) / periodMm + 1 + 1e-9);
  return count > 0 ? { turn, firstMm, count } : null;
}

function rowChoices(frame: RowFrame, space: RowSpace, turn: Turn): Row[] {
  const low = -frame.boxes[turn][0];
  const full = rowFrom(frame, space, turn, low);
  if (!full) return [];
  const slack = space.lengthMm - frame.boxes[turn][2] - low - (full.count - 1) * space.periodMm;
  const starts = Array.from({ length: COARSE }, (_, i) => (i * space.periodMm) / COARSE);
  return [...starts, slack].flatMap((s) => rowFrom(frame, space, turn, low + s) ?? []);
}

/** Rows chosen among fixed choices. */
function bestRows(
  { boxes }: RowFrame,
  pitch: Pitch,
  choices: readonly Row[],
  { count, mostMm, needsAll }: StackGoal,
): Row[] | null {
  const n = choices.length;
  if (n === 0) return null;
  const pitches = choices.map((a) =>
    Float64Array.from(choices, (b) => pitch(a.turn, b.turn, b.firstMm - a.firstMm)),
  );
  const spread =
    Math.max(...pitches.map((p) => Math.max(...p))) -
    Math.min(...pitches.map((p) => Math.min(...p)));
  const tops = choices.map((c) => boxes[c.turn][3]);
  const lowTop = Math.min(...tops);
  const above = needsAll ? leastAbove(choices, pitches, count) : () => 0;
  const heights = new Float64Array((count + 1) * n).fill(Infinity);
  const before = new Int32Array((count + 1) * n).fill(-1);
  choices.forEach((c, s) => {
    heights[Math.min(count, c.count) * n + s] = -boxes[c.turn][1];
  });
  let most = -1;
  for (let c = 1; c <= count; c++) {
    const here = heights.subarray(c * n, (c + 1) * n);
    const lowest = Math.min(...here);
    if (lowest === Infinity) continue;
    const end = lowestEnd(here, tops);
    const isUseful = !needsAll || c === count;
    if (isUseful && here[end] + tops[end] <= mostMm + 1e-9) most = c * n + end;
    if (c === count) break;
    for (let s = 0; s < n; s++) {
      // From the lowest, anything is reached that is reached from much higher.
      if (!(here[s] <= lowest + spread)) continue;
      for (let to = 0; to < n; to++) {
        const height = here[s] + pitches[s][to];
        const reached = Math.min(count, c + choices[to].count);
        if (height + (reached < count ? lowTop + above(reached) : tops[to]) > mostMm + 1e-9) {
          continue;
        }
        const at = reached * n + to;
        if (height < heights[at]) {
          heights[at] = height;
          before[at] = c * n + s;
        }
      }
    }
  }
  const rows: Row[] = [];
  for (let at = most; at >= 0; at = before[at]) rows.unshift(choices[at % n]);
  return rows.length > 0 ? rows : null;
}

/** A height that the rows still needed take at least, by the number of copies reached. */
function leastAbove(
  choices: readonly Row[],
  pitches: readonly Float64Array[],
  count: number,
): (reached: number) => number {
  const least = [Infinity, Infinity, Infinity, Infinity];
  pitches.forEach((row, a) => {
    row.forEach((height, b) => {
      const pair = 2 * choices[a].turn + choices[b].turn;
      least[pair] = Math.min(least[pair], height);
    });
  });
  const [same, up, down, turned] = least;
  const mean = Math.min(same, turned, (up + down) / 2);
  const odd = Number.isFinite(up - down) ? Math.abs(up - down) / 2 : 0;
  const most = Math.max(...choices.map((c) => c.count));
  return (reached) => Math.ceil((count - reached) / most) * mean - odd;
}

const lowestEnd = (heights: Float64Array, tops: readonly number[]): number =>
  tops.reduce((best, top, s) => (heights[s] + top < heights[best] + tops[best] ? s : best), 0);

/** The same rows, each shifted a little where that lowers the stack. */
function refined(frame: RowFrame, pitch: Pitch, space: RowSpace, rows: readonly Row[]): Row[] {
  let best = [...rows];
  let step = space.periodMm / COARSE;
  for (let round = 0; round < ROUNDS; round++) {
    step /= FINE;
    best = lowestPath(
      pitch,
      best.map((row) =>
        Array.from({ length: 2 * FINE + 1 }, (_, k) => row.firstMm + (k - FINE) * step)
          .flatMap((at) => rowFrom(frame, space, row.turn, at) ?? [])
          .filter((r) => r.count >= row.count)
          .concat(row),
      ),
    );
  }
  return best;
}

/** One choice for each row so that the sum of pitches is least. */
function lowestPath(pitch: Pitch, choices: readonly (readonly Row[])[]): Row[] {
  let heights = choices[0].map(() => 0);
  const before: number[][] = [];
  for (let r = 1; r < choices.length; r++) {
    const from: number[] = [];
    const below = heights;
    heights = choices[r].map((b, j) => {
      const over = choices[r - 1].map(
        (a, i) => below[i] + pitch(a.turn, b.turn, b.firstMm - a.firstMm),
      );
      from[j] = over.reduce((best, h, i) => (h < over[best] ? i : best), 0);
      return over[from[j]];
    });
    before.push(from);
  }
  let at = heights.reduce((best, h, i) => (h < heights[best] ? i : best), 0);
  const rows: Row[] = [];
  for (let r = choices.length - 1; r >= 0; r--) {
    rows.unshift(choices[r][at]);
    if (r > 0) at = before[r - 1][at];
  }
  return rows;
}

/** A copy in the frame of its rows. */
export type RowCopy = { readonly turn: Turn; readonly x: number; readonly y: number };

/** The copies of a stack, each row as low as the copies below allow, exactly. */
export function stackedCopies(frame: RowFrame, { rows, periodMm }: Stack): RowCopy[] {
  const placed: RowCopy[][] = [];
  for (const { turn, firstMm, count } of rows) {
    const xs = Array.from({ length: count }, (_, i) => firstMm + i * periodMm);
    const floor = -frame.boxes[turn][1];
    const y = Math.max(
      floor,
      ...placed.slice(-ROWS_BELOW).map((row) => restOn(frame, row, turn, xs)),
    );
    placed.push(xs.map((x) => ({ turn, x, y })));
  }
  return placed.flat();
}

/** How low a row can lie over one below; −∞ if it passes. */
function restOn(
  { skylines }: RowFrame,
  below: readonly RowCopy[],
  turn: Turn,
  xs: readonly number[],
): number {
  const skyline = skylines[below[0].turn][turn];
  let y = -Infinity;
  let first = 0;
  for (const copy of below) {
    while (first < xs.length && xs[first] - copy.x <= skyline.minX) first++;
    for (let i = first; i < xs.length && xs[i] - copy.x < skyline.maxX; i++) {
      y = Math.max(y, copy.y + heightOver(skyline, xs[i] - copy.x));
    }
  }
  return y;
}
