/** Questions about a profile, and the room it needs when it moves. Frame of the drawing: x along, y up. */
import { ARC_TOLERANCE, asRegion, offset, union } from '../geometry/clip.js';
import { crossings, type Ring, ring, ringBox } from '../geometry/ring.js';
import { thinned } from '../geometry/thin.js';
import { add, cross, type Point2, sub } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import type { Room } from './letters.js';

/** How far a chord of a seat may lie inside the grown outline, as a share of the seat's gap. */
export const SEAT_CHORD = 0.3;

/** A profile grown all round, in one piece as it was. */
export function grown(profile: Ring, by: number, arcTolerance = ARC_TOLERANCE): Ring {
  const regions = offset([asRegion(profile)], by, arcTolerance);
  if (regions.length !== 1) throw new Fault(`grown profile fell into ${regions.length} pieces`);
  return regions[0].outer;
}

/** The same with as few chords as a seat with this gap allows. */
export const seatOutline = (profile: Ring, by: number, gapMm: number): Ring =>
  thinned(grown(profile, by), SEAT_CHORD * gapMm);

export type Span = { readonly low: number; readonly high: number };

/** Lowest and highest point of the outline with x from `from` to `to`; null where it has none. */
export function reachBetween(outline: Ring, from: number, to: number): Span | null {
  const heights = outline.flatMap((p, i) => {
    const q = outline[(i + 1) % outline.length];
    const [a, b] = p[0] <= q[0] ? [p, q] : [q, p];
    if (b[0] < from || a[0] > to) return [];
    return [heightOn(a, b, Math.max(a[0], from)), heightOn(a, b, Math.min(b[0], to))];
  });
  if (heights.length === 0) return null;
  return { low: Math.min(...heights), high: Math.max(...heights) };
}

/**
 * Lower and upper edge of the outline at x; null where the line does not cross it, or crosses it
 * more than twice.
 */
export function columnAt(outline: Ring, x: number): Span | null {
  const heights = crossings([outline], 0, x);
  return heights.length === 2 ? { low: heights[0], high: heights[1] } : null;
}

/** For any two x, the heights inside the outline all the way from one to the other, or null. */
export function bandsOf(outline: Ring): (from: number, to: number) => Span | null {
  const columns = outline.map(([x]) => ({ x, span: columnAt(outline, x) }));
  return (from, to) => {
    const between = columns.filter(({ x }) => x > from && x < to).map(({ span }) => span);
    const spans = [columnAt(outline, from), columnAt(outline, to), ...between];
    const low = Math.max(...spans.map((s) => s?.low ?? Infinity));
    const high = Math.min(...spans.map((s) => s?.high ?? -Infinity));
    return low < high ? { low, high } : null;
  };
}

function heightOn(a: Point2, b: Point2, x: number): number {
  return b[0] === a[0] ? a[1] : a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
}

/**
 * Everything the outline covers while it moves straight by `move`, hollows it encloses filled. Each
 * run of edges that faces the way it goes, or the way it comes from, sweeps one strip.
 */
export function swept(outline: Ring, move: Point2): Ring {
  const moved = (points: readonly Point2[]) => points.map((p) => add(p, move));
  const strips = runs(outline, move).map((run) =>
    asRegion(ring([...run, ...moved(run).reverse()])),
  );
  const covered = union([asRegion(outline), asRegion(ring(moved(outline))), ...strips]);
  if (covered.length !== 1) throw new Fault(`swept outline fell into ${covered.length} pieces`);
  return thinned(covered[0].outer, ON_LINE);
}

const ON_LINE = 1e-5; // mm: points this near the line through their neighbors say nothing

/** The outline's chains of edges that lie to one side of the way; edges along it sweep nothing. */
function runs(outline: Ring, move: Point2): Point2[][] {
  const n = outline.length;
  const side = (i: number) => {
    const across = cross(sub(outline[(i + 1) % n], outline[i % n]), move);
    return Math.abs(across) < 1e-9 ? 0 : Math.sign(across);
  };
  const start = outline.findIndex((_, i) => side(i) !== side(i + n - 1));
  const chains: Point2[][] = [];
  for (let k = 0; k < n; k++) {
    const i = (start + k) % n;
    if (side(i) === 0) continue;
    if (k === 0 || side(i) !== side(i + n - 1)) chains.push([outline[i]]);
    chains[chains.length - 1].push(outline[(i + 1) % n]);
  }
  return chains;
}

/**
 * Polygon booleans keep 1e-6 mm. Outer measures are rounded up to 1e-3, so that parts that went
 * through them and parts that did not end in the same plane.
 */
export const wholeMicrons = (mm: number): number => Math.ceil(mm * 1000 - 1e-6) / 1000;

const ROOM_STEP = 2; // mm between the places tried

/** Rectangles of several widths inside an outline, highest first; ties from left to right. */
export function roomsIn(outline: Ring, widths: readonly number[]): Room[] {
  const [from, , to] = ringBox(outline);
  const band = bandsOf(outline);
  const rooms = widths.flatMap((width) =>
    Array.from({ length: Math.max(0, Math.floor((to - from - width) / ROOM_STEP)) }, (_, i) => {
      const left = from + i * ROOM_STEP;
      const free = band(left, left + width);
      return free ? [{ left, right: left + width, bottom: free.low, top: free.high }] : [];
    }).flat(),
  );
  return rooms.sort((a, b) => b.top - b.bottom - (a.top - a.bottom) || a.left - b.left);
}
