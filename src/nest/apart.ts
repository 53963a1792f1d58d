/**
 * How far two outlines are apart, by brute force: every vertex of one against every edge of the
 * other. Written for the checker alone; the placement does not use it.
 */
import type { Point2 } from '../geometry/vec.js';

export type Extent = {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
};

export function extentOf(points: readonly Point2[]): Extent {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    if (x < left) left = x;
    if (x > right) right = x;
    if (y < bottom) bottom = y;
    if (y > top) top = y;
  }
  return { left, bottom, right, top };
}

/** Distance between two boxes, never more than the distance between what they hold; 0 if they meet. */
export function boxDistance(a: Extent, b: Extent): number {
  const dx = Math.max(0, b.left - a.right, a.left - b.right);
  const dy = Math.max(0, b.bottom - a.top, a.bottom - b.top);
  return Math.sqrt(dx * dx + dy * dy);
}

/**
 * Distance between two outlines if it is less than `limit`, else `limit`. 0 if their edges cross, or
 * if one lies inside the other.
 */
export function distanceBelow(a: readonly Point2[], b: readonly Point2[], limit: number): number {
  if (contains(a, b[0]) || contains(b, a[0])) return 0;
  const near = (points: readonly Point2[], to: Extent): Reach[] =>
    edgesOf(points)
      .map((edge) => ({ edge, extent: extentOf(edge) }))
      .filter(({ extent }) => boxDistance(extent, to) < limit);
  const nearA = near(a, extentOf(b));
  const nearB = near(b, extentOf(a));
  let least = limit;
  for (const { edge: e, extent } of nearA) {
    for (const { edge: f, extent: other } of nearB) {
      if (boxDistance(extent, other) >= least) continue;
      if (cross(e, f)) return 0;
      least = Math.min(least, toEdge(e[0], f), toEdge(e[1], f), toEdge(f[0], e), toEdge(f[1], e));
    }
  }
  return least;
}

/** Distance from a point to an outline's edge, 0 for a point inside. */
export function distanceTo(point: Point2, outline: readonly Point2[]): number {
  if (contains(outline, point)) return 0;
  return Math.min(...edgesOf(outline).map((e) => toEdge(point, e)));
}

/**
 * The part of an outline left of an upright line, corner by corner; pieces that fall apart stay joined
 * along the line.
 */
export function partLeftOf(outline: readonly Point2[], x: number): Point2[] {
  return edgesOf(outline).flatMap(([p, q]): Point2[] => {
    const kept = p[0] <= x ? [p] : [];
    if (p[0] <= x === q[0] <= x) return kept;
    const share = (x - p[0]) / (q[0] - p[0]);
    return [...kept, [x, p[1] + share * (q[1] - p[1])]];
  });
}

type Edge = readonly [Point2, Point2];
type Reach = { readonly edge: Edge; readonly extent: Extent };

const edgesOf = (points: readonly Point2[]): Edge[] =>
  points.map((p, i): Edge => [p, points[(i + 1) % points.length]]);

/**
 * Even-odd rule. Both edges at a vertex compare its height with the point's by the same numbers, so
 * a point level with a vertex meets exactly one of them.
 */
function contains(outline: readonly Point2[], [x, y]: Point2): boolean {
  let inside = false;
  for (const [p, q] of edgesOf(outline)) {
    if (p[1] > y === q[1] > y) continue;
    const side = (q[0] - p[0]) * (y - p[1]) - (x - p[0]) * (q[1] - p[1]);
    if (side > 0 === q[1] > p[1]) inside = !inside;
  }
  return inside;
}

function toEdge([x, y]: Point2, [p, q]: Edge): number {
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
  const run = dx * dx + dy * dy;
  const t = run > 0 ? ((x - p[0]) * dx + (y - p[1]) * dy) / run : 0;
  const at = Math.min(Math.max(t, 0), 1);
  const [ex, ey] = [x - p[0] - at * dx, y - p[1] - at * dy];
  return Math.sqrt(ex * ex + ey * ey);
}

/** True if the edges cross at an inner point of both; a mere touch has distance 0 anyway. */
function cross([a, b]: Edge, [c, d]: Edge): boolean {
  const side = (p: Point2, q: Point2, r: Point2): number =>
    Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
