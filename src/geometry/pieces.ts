/** Convex pieces of a polygon, and their Minkowski sums; the one door to earcut. */
import earcut from 'earcut';
import { type Ring, signedArea } from './ring.js';
import { cross, type Point2, sub } from './vec.js';

/** A convex polygon, counter-clockwise. */
export type Convex = readonly Point2[];

/** Pieces without common interior whose union is the ring: triangles joined while they stay convex. */
export function convexPieces(ring: Ring): Convex[] {
  if (isConvex(ring)) return [ring];
  const corners = earcut(ring.flat());
  const pieces: number[][] = [];
  for (let i = 0; i < corners.length; i += 3) {
    const triangle = corners.slice(i, i + 3);
    const turn = signedArea(triangle.map((k) => ring[k]));
    if (turn !== 0) pieces.push(turn > 0 ? triangle : triangle.reverse());
  }
  return joined(pieces, ring).map((piece) => piece.map((k) => ring[k]));
}

/** Joins neighbors over a common edge as long as what comes out is convex (S. Hertel and K. Mehlhorn, 1983). */
function joined(pieces: number[][], ring: Ring): number[][] {
  const open = pieces.map((p) => [...p]);
  for (let a = 0; a < open.length; a++) {
    for (let b = 0; b < open.length; b++) {
      if (a === b) continue;
      const both = overEdge(open[a], open[b]);
      if (!both || !isConvex(both.map((k) => ring[k]))) continue;
      open[a] = both;
      open.splice(b, 1);
      if (b < a) a--;
      b = -1;
    }
  }
  return open;
}

/** Two polygons (corner numbers) over the edge they share; null if they share none. */
function overEdge(a: readonly number[], b: readonly number[]): number[] | null {
  for (let i = 0; i < a.length; i++) {
    const next = (i + 1) % a.length;
    const j = b.indexOf(a[next]);
    if (j < 0 || b[(j + 1) % b.length] !== a[i]) continue;
    const rest = Array.from({ length: b.length - 2 }, (_, k) => b[(j + 2 + k) % b.length]);
    return [...a.slice(0, i + 1), ...rest, ...a.slice(i + 1)];
  }
  return null;
}

/** True if no corner turns to the right and the boundary goes round once. */
export function isConvex(points: readonly Point2[]): boolean {
  const n = points.length;
  let across = 0;
  for (let i = 0; i < n; i++) {
    const [a, b, c] = [points[i], points[(i + 1) % n], points[(i + 2) % n]];
    if (cross(sub(b, a), sub(c, b)) < 0) return false;
    // A boundary that goes round once turns from rising to falling and back once each.
    if (isRising(sub(b, a)) !== isRising(sub(c, b))) across++;
  }
  return across <= 2;
}

const isRising = ([x, y]: Point2): boolean => y > 0 || (y === 0 && x > 0);

/** The Minkowski sum of two convex polygons: their edges in order of direction. */
export function convexSum(a: Convex, b: Convex): Convex {
  const [p, q] = [fromLowest(a), fromLowest(b)];
  const out: Point2[] = [];
  let [i, j] = [0, 0];
  while (i < p.length || j < q.length) {
    const [from, to] = [p[i % p.length], p[(i + 1) % p.length]];
    const [start, end] = [q[j % q.length], q[(j + 1) % q.length]];
    out.push([from[0] + start[0], from[1] + start[1]]);
    const turn = i === p.length ? -1 : j === q.length ? 1 : cross(sub(to, from), sub(end, start));
    if (turn >= 0) i++;
    if (turn <= 0) j++;
  }
  return out;
}

/** The corners from the lowest (of these the left one) on. */
function fromLowest(points: Convex): Convex {
  const lowest = points.reduce((k, [x, y], i) => {
    const [px, py] = points[k];
    return y < py || (y === py && x < px) ? i : k;
  }, 0);
  return [...points.slice(lowest), ...points.slice(0, lowest)];
}
