/** Fewer points for the same line, to a stated chord error. */
import { type Ring, ring } from './ring.js';
import { cross, distance, length, type Point2, sub } from './vec.js';

/**
 * The outline with points left out that lie within `tolerance` of the chord that then stands for
 * them (D. Douglas and T. Peucker, 1973). A bulging edge comes out inside the true one by at most
 * that.
 */
export function thinned(outline: Ring, tolerance: number): Ring {
  const first = outline.reduce((best, p, i) => (p[0] < outline[best][0] ? i : best), 0);
  const turned = [...outline.slice(first), ...outline.slice(0, first)];
  const far = turned.reduce((best, p, i) => (p[0] > turned[best][0] ? i : best), 0);
  const there = turned.slice(0, far + 1);
  const back = [...turned.slice(far), turned[0]];
  return ring([there, back].flatMap((line) => thinnedLine(line, tolerance).slice(0, -1)));
}

/** As `thinned`, for an open line; its ends stay. */
export function thinnedLine(line: readonly Point2[], tolerance: number): readonly Point2[] {
  if (line.length < 3) return line;
  const [a, b] = [line[0], line[line.length - 1]];
  const along = sub(b, a);
  const size = length(along);
  const off = line.map((p) =>
    size > 0 ? Math.abs(cross(along, sub(p, a))) / size : distance(p, a),
  );
  const worst = off.reduce((best, d, i) => (d > off[best] ? i : best), 0);
  if (!(off[worst] > tolerance)) return [a, b];
  const before = thinnedLine(line.slice(0, worst + 1), tolerance);
  return [...before.slice(0, -1), ...thinnedLine(line.slice(worst), tolerance)];
}
