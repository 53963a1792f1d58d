/**
 * The judge of a packing: items as they were placed, measured anew. It shares nothing with the search:
 * no no-fit polygons, no clipping; every edge of one outline is cut at its crossings with the other, and
 * the middle of every piece is asked how deep it lies inside.
 *
 * Complete: where the insides of two simple polygons have common area, a piece of the edge of one lies
 * inside the other, or both are the same polygon (an inner point tells that).
 */
import type { Point2 } from '../geometry/vec.js';

/** An item where it lies. */
export type Laid = readonly Point2[];

/** Greatest depth at which the edge of one polygon lies inside the other; 0 if they only touch. */
export function depthOfOverlap(a: Laid, b: Laid): number {
  if (!boxesMeet(a, b)) return 0;
  return Math.max(
    ...probes(a, b).map((p) => depthIn(p, b)),
    ...probes(b, a).map((p) => depthIn(p, a)),
  );
}

/** How far an item reaches out of a box; 0 if it lies inside. */
export const outside = (
  item: Laid,
  [left, bottom, right, top]: readonly [number, number, number, number],
): number =>
  Math.max(0, ...item.map(([x, y]) => Math.max(left - x, x - right, bottom - y, y - top)));

function boxesMeet(a: Laid, b: Laid): boolean {
  const range = (points: Laid, axis: 0 | 1): readonly [number, number] => {
    const values = points.map((p) => p[axis]);
    return [Math.min(...values), Math.max(...values)];
  };
  return ([0, 1] as const).every((axis) => {
    const [p, q] = [range(a, axis), range(b, axis)];
    return p[0] < q[1] && q[0] < p[1];
  });
}

/** Middles of the pieces into which b cuts the edges of a, and one inner point of a. */
function probes(a: Laid, b: Laid): Point2[] {
  const out: Point2[] = [innerPoint(a)];
  a.forEach((from, i) => {
    const to = a[(i + 1) % a.length];
    const cuts = [0, 1, ...b.flatMap((p, j) => crossing(from, to, p, b[(j + 1) % b.length]))];
    cuts.sort((s, t) => s - t);
    for (let k = 1; k < cuts.length; k++) {
      const at = (cuts[k - 1] + cuts[k]) / 2;
      out.push([from[0] + at * (to[0] - from[0]), from[1] + at * (to[1] - from[1])]);
    }
  });
  return out;
}

/** Where along an edge it meets another one's line within that edge; none if they are parallel. */
function crossing(a: Point2, b: Point2, c: Point2, d: Point2): number[] {
  const [rx, ry] = [b[0] - a[0], b[1] - a[1]];
  const [sx, sy] = [d[0] - c[0], d[1] - c[1]];
  const det = rx * sy - ry * sx;
  if (det === 0) return [];
  const at = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / det;
  const along = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / det;
  return at > 0 && at < 1 && along >= -1e-9 && along <= 1 + 1e-9 ? [at] : [];
}

/** The middle of the greatest stretch inside, on a level between two corners' heights. */
function innerPoint(polygon: Laid): Point2 {
  const heights = [...new Set(polygon.map((p) => p[1]))].sort((p, q) => p - q);
  let best: Point2 = polygon[0];
  let widest = 0;
  for (let k = 1; k < heights.length; k++) {
    const y = (heights[k - 1] + heights[k]) / 2;
    const xs = polygon
      .flatMap((p, i) => {
        const q = polygon[(i + 1) % polygon.length];
        if (p[1] > y === q[1] > y) return [];
        return [p[0] + ((y - p[1]) / (q[1] - p[1])) * (q[0] - p[0])];
      })
      .sort((p, q) => p - q);
    for (let m = 1; m < xs.length; m += 2) {
      const roomy = Math.min(xs[m] - xs[m - 1], heights[k] - heights[k - 1]);
      if (roomy > widest) [widest, best] = [roomy, [(xs[m - 1] + xs[m]) / 2, y]];
    }
  }
  return best;
}

/** Distance from a point inside to the polygon's edge; 0 for a point outside. */
function depthIn([x, y]: Point2, polygon: Laid): number {
  let inside = false;
  let least = Infinity;
  polygon.forEach((p, i) => {
    const q = polygon[(i + 1) % polygon.length];
    if (p[1] > y !== q[1] > y) {
      const side = (q[0] - p[0]) * (y - p[1]) - (x - p[0]) * (q[1] - p[1]);
      if (side > 0 === q[1] > p[1]) inside = !inside;
    }
    const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
    const run = dx * dx + dy * dy;
    const at = run > 0 ? Math.min(1, Math.max(0, ((x - p[0]) * dx + (y - p[1]) * dy) / run)) : 0;
    const [ex, ey] = [x - p[0] - at * dx, y - p[1] - at * dy];
    least = Math.min(least, ex * ex + ey * ey);
  });
  return inside ? Math.sqrt(least) : 0;
}
