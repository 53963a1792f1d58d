/**
 * No-fit regions of outlines that may be hollow: where one outline must not be moved to while another
 * lies still.
 *
 * The boundary is found on the convolution of two outlines (L. Guibas, L. Ramshaw and J. Stolfi, 1983):
 * every edge of one at the corners of the other where a line in the edge's direction touches. It winds
 * round each point of the Minkowski sum at least once and round no other.
 */
import { woundRound } from './clip.js';
import { type Region, type Ring, regionArea } from './ring.js';
import { add, type Point2, sub } from './vec.js';

/** All places of b's origin at which b meets the inside of a. Kept to 1e-6, like all clipping. */
export const noFitRegion = (a: Ring, b: Ring): Region => sumRegion(a, turnedHalf(b));

/** The outline turned by 180° about its origin. */
export const turnedHalf = (r: Ring): Ring =>
  r.map(([x, y]): Point2 => [-x, -y]) as readonly Point2[] as Ring;

/** All sums of a point of one outline and a point of the other (Minkowski sum), with its holes. */
export function sumRegion(a: Ring, b: Ring): Region {
  const regions = woundRound(convolution(a, b));
  return regions.reduce((most, r) => (regionArea(r) > regionArea(most) ? r : most));
}

/** Edges of two outlines in one order of direction, counter-clockwise; no two share a rank. */
type Corner = { readonly from: number; readonly to: number; readonly isLeft: boolean };

/** The convolution as closed lines. */
function convolution(a: Ring, b: Ring): Point2[][] {
  const corners = cornersOf(a, b);
  const steps = new Map<number, number[]>();
  const state = (i: number, j: number): number => (i % a.length) * b.length + (j % b.length);
  const step = (from: number, to: number): void => {
    const known = steps.get(from);
    if (known) known.push(to);
    else steps.set(from, [to]);
  };
  corners[1].forEach((corner, j) => {
    corners[0].forEach(({ to }, i) => {
      if (isBetween(to, corner)) joined(step, state(i, j), state(i + 1, j), corner.isLeft);
    });
  });
  corners[0].forEach((corner, i) => {
    corners[1].forEach(({ to }, j) => {
      if (isBetween(to, corner)) joined(step, state(i, j), state(i, j + 1), corner.isLeft);
    });
  });
  const at = (s: number): Point2 => add(a[Math.floor(s / b.length)], b[s % b.length]);
  return closedWalks(steps).map((walk) => walk.map(at));
}

/** At a hollow corner the other outline's edges are followed backward. */
const joined = (
  step: (from: number, to: number) => void,
  from: number,
  to: number,
  forward: boolean,
): void => (forward ? step(from, to) : step(to, from));

/** Ranks of the edges before and after each corner of both outlines. */
function cornersOf(...rings: readonly [Ring, Ring]): Corner[][] {
  const directions = rings.map((r) =>
    r.map((p, i) => {
      const [x, y] = sub(r[(i + 1) % r.length], p);
      return Math.atan2(y, x);
    }),
  );
  const order = directions
    .flatMap((list, which) => list.map((angle, i) => ({ angle, which, i })))
    .sort((p, q) => p.angle - q.angle || p.which - q.which || p.i - q.i);
  const ranks: number[][] = [[], []];
  order.forEach(({ which, i }, rank) => {
    ranks[which][i] = rank;
  });
  return directions.map((list, which) =>
    list.map((angle, i) => {
      const last = (i + list.length - 1) % list.length;
      const [from, to] = [ranks[which][last], ranks[which][i]];
      const turn = angle - list[last];
      const isLeft = turn === 0 ? to > from : turn > 0 ? turn <= Math.PI : turn <= -Math.PI;
      return { from, to, isLeft };
    }),
  );
}

/** Does a direction lie within the turn of a corner? */
function isBetween(rank: number, { from, to, isLeft }: Corner): boolean {
  const [low, high] = isLeft ? [from, to] : [to, from];
  return low < high ? low < rank && rank < high : rank > low || rank < high;
}

/** Steps that leave each state as often as they reach it, as closed walks. */
function closedWalks(steps: Map<number, number[]>): number[][] {
  const walks: number[][] = [];
  for (const [start, out] of steps) {
    while (out.length > 0) {
      const walk: number[] = [];
      let at = start;
      do {
        walk.push(at);
        at = steps.get(at)?.pop() ?? start;
      } while (at !== start);
      walks.push(walk);
    }
  }
  return walks;
}
