/** Convex hulls. */
import { type Ring, ring } from './ring.js';
import { cross, type Point2, sub } from './vec.js';

/** The least convex ring around points (A. M. Andrew's monotone chain, 1979); no three corners on a line. */
export function convexHull(points: readonly Point2[]): Ring {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  return ring([...chain(sorted).slice(0, -1), ...chain(sorted.reverse()).slice(0, -1)]);
}

/** The corners that turn left on the way through sorted points. */
function chain(sorted: readonly Point2[]): Point2[] {
  const out: Point2[] = [];
  for (const p of sorted) {
    while (out.length > 1 && !turnsLeft(out[out.length - 2], out[out.length - 1], p)) out.pop();
    out.push(p);
  }
  return out;
}

const turnsLeft = (a: Point2, b: Point2, c: Point2): boolean => cross(sub(b, a), sub(c, a)) > 0;
