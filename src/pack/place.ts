/**
 * A better place for one item of a crowd: places drawn near and far, the best of them improved by the
 * shortest ways out of what they overlap. The no-fit polygons tell those ways exactly, so a place found
 * is one where outlines touch.
 */
import { type Crowd, clampX, clampY, columnOf, fitsIn, lossAt, lossOf } from './crowd.js';

/** Places drawn near where an item lies, and anywhere in the container. */
export type Draws = { readonly near: number; readonly far: number };

export type Place = { k: number; x: number; y: number; loss: number };

/** Places of those drawn that are improved. */
const IMPROVED = 3;
/** Overlaps at one place from which ways out are tried, and how often. */
const MOST_EXITS = 8;
const MOST_ROUNDS = 12;
/** A way out along x or y is tried unless it is longer than the shortest by more than this factor. */
const DETOUR = 10;
/** Two ways out meet in a place worth trying unless they are almost parallel: least sine between them. */
const LEAST_SINE = 0.05;

const noPlace = (): Place => ({ k: 0, x: 0, y: 0, loss: Infinity });

/** Finds better places for the items of a crowd; the place returned is valid until the next call. */
export function placer(crowd: Crowd, draw: () => number) {
  const { fit, places, table, turns, overlap, kinds, columns } = crowd;
  const best = Array.from({ length: IMPROVED }, noPlace);
  const next = noPlace();
  const exit = new Float64Array(2);
  const outX = new Float64Array(MOST_EXITS);
  const outY = new Float64Array(MOST_EXITS);
  const outDepth = new Float64Array(MOST_EXITS);

  /** Keeps a place if it is among the best; they stay sorted. */
  const offer = (i: number, k: number, x: number, y: number): void => {
    const last = best[IMPROVED - 1];
    const loss = lossAt(crowd, i, k, x, y, last.loss);
    if (loss >= last.loss) return;
    let at = IMPROVED - 1;
    for (; at > 0 && best[at - 1].loss > loss; at--) best[at] = best[at - 1];
    best[at] = last;
    last.k = k;
    last.x = x;
    last.y = y;
    last.loss = loss;
  };

  /** Overlaps at a place, each with its shortest way out; how many. */
  const exitsAt = (i: number, { k, x, y }: Place): number => {
    const middle = columnOf(columns, x);
    let n = 0;
    for (let c = middle - 1; c <= middle + 1; c++) {
      for (let j = columns.first[c]; j >= 0 && n < MOST_EXITS; j = columns.next[j]) {
        if (j === i) continue;
        const pair = k * kinds + places.turned[j];
        const depth = overlap.exit(pair, x - places.x[j], y - places.y[j], exit);
        if (depth === 0) continue;
        outX[n] = exit[0] / depth;
        outY[n] = exit[1] / depth;
        outDepth[n] = depth;
        n++;
      }
    }
    return n;
  };

  /** Keeps a move in `next` if it is the best so far. */
  const tryMove = (i: number, { k, x: fromX, y: fromY }: Place, dx: number, dy: number): void => {
    const x = clampX(crowd, k, fromX + dx);
    const y = clampY(crowd, k, fromY + dy);
    if (x === fromX && y === fromY) return;
    const loss = lossAt(crowd, i, k, x, y, next.loss);
    if (loss >= next.loss) return;
    next.x = x;
    next.y = y;
    next.loss = loss;
  };

  /** Out of one overlap: straight, along x, along y; out of two at once; until none of it helps. */
  const leave = (i: number, place: Place): void => {
    for (let round = 0; round < MOST_ROUNDS && place.loss > 0; round++) {
      next.loss = place.loss;
      const n = exitsAt(i, place);
      for (let a = 0; a < n; a++) {
        const [ax, ay, depth] = [outX[a], outY[a], outDepth[a]];
        tryMove(i, place, ax * depth, ay * depth);
        if (Math.abs(ax) * DETOUR > 1) tryMove(i, place, depth / ax, 0);
        if (Math.abs(ay) * DETOUR > 1) tryMove(i, place, 0, depth / ay);
        for (let b = a + 1; b < n; b++) {
          const sine = ax * outY[b] - ay * outX[b];
          if (Math.abs(sine) < LEAST_SINE) continue;
          const dx = (depth * outY[b] - outDepth[b] * ay) / sine;
          const dy = (ax * outDepth[b] - outX[b] * depth) / sine;
          tryMove(i, place, dx, dy);
        }
      }
      if (next.loss >= place.loss) return;
      place.x = next.x;
      place.y = next.y;
      place.loss = next.loss;
    }
  };

  const drawNear = (i: number, open: readonly number[], count: number): void => {
    const own = places.turned[i];
    const { box } = table.turned[own];
    const [w, h] = [box[2] - box[0], box[3] - box[1]];
    for (let s = 0; s < count; s++) {
      const k = s % 3 === 2 ? open[Math.floor(draw() * open.length)] : own;
      const x = places.x[i] + (draw() - 0.5) * w;
      const y = places.y[i] + (draw() - 0.5) * h;
      offer(i, k, clampX(crowd, k, x), clampY(crowd, k, y));
    }
  };

  const drawFar = (i: number, open: readonly number[], count: number): void => {
    for (let s = 0; s < count && best[IMPROVED - 1].loss > 0; s++) {
      const k = open[s % open.length];
      const [left, bottom, right, top] = [
        fit[4 * k],
        fit[4 * k + 1],
        fit[4 * k + 2],
        fit[4 * k + 3],
      ];
      offer(i, k, left + draw() * (right - left), bottom + draw() * (top - bottom));
    }
  };

  /** The best place found for an item; null if none is better than where it lies. */
  return (i: number, { near, far }: Draws): Place | null => {
    const open = turns[i].filter((k) => fitsIn(crowd, k));
    if (open.length === 0) return null;
    for (const b of best) b.loss = Infinity;
    const own = places.turned[i];
    if (fitsIn(crowd, own))
      offer(i, own, clampX(crowd, own, places.x[i]), clampY(crowd, own, places.y[i]));
    drawNear(i, open, near);
    drawFar(i, open, far);
    let found = best[0];
    for (const place of best) {
      if (place.loss === Infinity) break;
      leave(i, place);
      if (place.loss < found.loss) found = place;
      if (found.loss === 0) break;
    }
    return found.loss < lossOf(crowd, i) ? found : null;
  };
}
