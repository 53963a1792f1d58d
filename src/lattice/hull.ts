/**
 * The densest double lattice of a convex outline, exactly.
 *
 * Rule (Kuperberg and Kuperberg 1990; D. M. Mount, DIMACS Series 6, 1991, 245–262): in a direction,
 * let l be the longest chord and H the distance between the two chords of length l/2. Then a cell of
 * l × 2H holds two copies, and the best direction gives the densest double lattice.
 *
 * Let the longest chord run from a corner to a place on an edge. While that place moves along the
 * edge and no end of a half chord passes a corner, all ends move straight, so l·H is a quadratic of
 * the place and its least value is known in closed form.
 */
import { convexHull } from '../geometry/convex.js';
import type { Ring } from '../geometry/ring.js';
import { add, cross, mix, type Point2, sub, times } from '../geometry/vec.js';
import { type DoubleLattice, reduced } from './double.js';

/** Shares of an edge closer than this are one place. */
const SAME_PLACE = 1e-12;

/** The densest double lattice of the convex hull of an outline. Exact up to rounding. */
export function densestDoubleLattice(outline: Ring): DoubleLattice {
  const [densest] = hullDoubleLattices(outline);
  return densest;
}

/** The best double lattice of each quadratic piece of the rule, densest first. */
export function hullDoubleLattices(outline: Ring): DoubleLattice[] {
  const hull = convexHull(outline);
  return longestChords(hull)
    .flatMap((chords) => leastAlong(hull, chords, 0, 1))
    .sort((a, b) => a.area - b.area)
    .map(({ chord, low, high }) => reduced(chord, times(sub(high, low), 2), times(low, 2)));
}

/** Longest chords `from` … mix(start, end, place), place 0..1, as vectors. */
type Chords = { readonly start: Point2; readonly end: Point2 };

/** The chords between each edge and the corner farthest from it: the longest of every direction are among them. */
function longestChords(hull: Ring): Chords[] {
  return hull.flatMap((start, i) => {
    const end = hull[(i + 1) % hull.length];
    const heights = hull.map((p) => cross(sub(end, start), sub(p, start)));
    const most = Math.max(...heights);
    return hull
      .filter((_, k) => heights[k] >= most * (1 - SAME_PLACE))
      .map((far) => ({ start: sub(start, far), end: sub(end, far) }));
  });
}

/** A chord of a hull and one end of each of the two parallel chords half as long. */
type HalfChords = {
  readonly chord: Point2;
  readonly low: Point2;
  readonly high: Point2;
  readonly area: number;
};

/** Least l·H on each piece between two places. */
function leastAlong(hull: Ring, chords: Chords, from: number, to: number): HalfChords[] {
  if (to - from < SAME_PLACE) return [];
  const middle = (from + to) / 2;
  const at = mix(chords.start, chords.end, middle);
  const low = halfChordLine(hull, chords, at, -1);
  const high = halfChordLine(hull, chords, at, 1);
  const first = Math.min(middle, Math.max(from, low.from, high.from));
  const last = Math.max(middle, Math.min(to, low.to, high.to));
  const area = (place: number): number =>
    Math.abs(
      cross(mix(chords.start, chords.end, place), sub(pointAt(high, place), pointAt(low, place))),
    );
  const place = leastOfQuadratic(area, first, last);
  const best = {
    chord: mix(chords.start, chords.end, place),
    low: pointAt(low, place),
    high: pointAt(high, place),
    area: area(place),
  };
  // Where the middle is itself an event the piece has no length; beside it there is one.
  const left = first < middle ? first : middle - SAME_PLACE;
  const right = last > middle ? last : middle + SAME_PLACE;
  return [
    ...leastAlong(hull, chords, from, Math.min(left, to)),
    best,
    ...leastAlong(hull, chords, Math.max(right, from), to),
  ];
}

/** The start of a half chord while its ends stay on two edges: at0 + place·move, for places from … to. */
type HalfChordLine = {
  readonly at0: Point2;
  readonly move: Point2;
  readonly from: number;
  readonly to: number;
};

const pointAt = ({ at0, move }: HalfChordLine, place: number): Point2 =>
  add(at0, times(move, place));

/**
 * The chord half as long as `chord`, on its left (side 1) or right (side −1). Both chains of the hull
 * are walked from the corner outermost on that side until the chord between them is long enough.
 */
function halfChordLine(hull: Ring, chords: Chords, chord: Point2, side: 1 | -1): HalfChordLine {
  const n = hull.length;
  const depth = (i: number): number => -side * cross(chord, hull[(i + n) % n]);
  const outermost = hull.reduce((best, _, i) => (depth(i) < depth(best) ? i : best), 0);
  let ahead = outermost;
  let back = outermost + n;
  const edge = (i: number): readonly [Point2, Point2] => [hull[i % n], hull[(i + 1) % n]];
  while (ahead + 1 < back - 1) {
    const moveAhead = depth(ahead + 1) <= depth(back - 1);
    const corner = moveAhead ? hull[(ahead + 1) % n] : hull[(back - 1) % n];
    const [a, b] = moveAhead ? edge(back - 1) : edge(ahead);
    // How far along the chord's direction the opposite edge lies from the corner, in chords.
    const across = Math.abs(cross(sub(b, a), sub(a, corner)) / cross(sub(b, a), chord));
    if (across >= 0.5) break;
    if (moveAhead) ahead++;
    else back--;
  }
  const [first, second] = side < 0 ? [back - 1, ahead] : [ahead, back - 1];
  return lineOf(edge(first), edge(second), chords);
}

type Edge = readonly [Point2, Point2];

/** Start of the chord mix(start, end, place)/2 from one edge to another, as a line in `place`. */
function lineOf(one: Edge, other: Edge, { start, end }: Chords): HalfChordLine {
  const [d1, d2] = [sub(one[1], one[0]), sub(other[1], other[0])];
  const turn = cross(d1, d2);
  // Share of the first edge where one[0] + s·d1 + half meets the other edge's line; and the reverse.
  const onOne = (half: Point2): number => cross(sub(sub(other[0], half), one[0]), d2) / turn;
  const onOther = (half: Point2): number => cross(sub(add(one[0], half), other[0]), d1) / -turn;
  const [h0, h1] = [times(start, 0.5), times(end, 0.5)];
  const shares = [
    [onOne(h0), onOne(h1)],
    [onOther(h0), onOther(h1)],
  ];
  const ranges = shares.map(([a, b]) => placesWithin(a, b));
  const [s0, s1] = shares[0];
  return {
    at0: add(one[0], times(d1, s0)),
    move: times(d1, s1 - s0),
    from: Math.max(...ranges.map((r) => r[0])),
    to: Math.min(...ranges.map((r) => r[1])),
  };
}

/** Places where a share that runs from a (place 0) to b (place 1) lies between 0 and 1. */
function placesWithin(a: number, b: number): readonly [number, number] {
  if (Math.abs(b - a) < SAME_PLACE) return [-Infinity, Infinity];
  const ends = [-a / (b - a), (1 - a) / (b - a)];
  return [Math.min(...ends), Math.max(...ends)];
}

/** Where a quadratic is least between two places. */
function leastOfQuadratic(f: (place: number) => number, from: number, to: number): number {
  const [a, b, c] = [f(from), f((from + to) / 2), f(to)];
  const bend = a - 2 * b + c;
  const inside = bend > 0 ? from + (to - from) * (0.5 + (a - c) / (4 * bend)) : from;
  return [from, to, Math.min(to, Math.max(from, inside))].reduce((best, place) =>
    f(place) < f(best) ? place : best,
  );
}
