/**
 * Rough double lattices of an outline that may be hollow: a turned copy is set at many places against
 * the first, the pair is repeated in a row of each of many directions as close as it will go, and the
 * row is repeated as low as it will go on itself.
 */
import type { Ring } from '../geometry/ring.js';
import { cosSinDeg, distance, mix, type Point2 } from '../geometry/vec.js';
import { type DoubleLattice, reduced } from './double.js';

/** Places of the turned copy around the first, directions of a row, places of a row on the one below. */
const PLACES = 48;
const DIRECTIONS = 36;
const PHASES = 48;

/**
 * One lattice for each place of the turned copy and each direction of rows, as they come, if its cell
 * is not smaller than `leastMm2`. Copies may overlap: only those in a row and in rows next to each
 * other are kept apart.
 */
export function roughLattices(same: Ring, turned: Ring, leastMm2: number): DoubleLattice[] {
  return placesAround(turned).flatMap((w) => {
    const lines = [
      same,
      turned.map(([x, y]): Point2 => [x - w[0], y - w[1]]),
      turned.map(([x, y]): Point2 => [w[0] - x, w[1] - y]),
    ];
    return Array.from({ length: DIRECTIONS }, (_, k) => {
      const turn = cosSinDeg((180 * k) / DIRECTIONS);
      const { step, next } = rowsAlong(lines, turn);
      return step * next[1] < leastMm2
        ? []
        : [reduced(turnedBy(turn, [step, 0]), turnedBy(turn, next), w)];
    }).flat();
  });
}

const turnedBy = ([c, s]: Point2, [x, y]: Point2): Point2 => [c * x - s * y, s * x + c * y];

/** Corners of a ring, and places along its edges, about evenly spaced. */
function placesAround(r: Ring): Point2[] {
  const closed = [...r, r[0]];
  const round = r.reduce((sum, p, i) => sum + distance(p, closed[i + 1]), 0);
  const spacing = round / PLACES;
  const out: Point2[] = [];
  let since = spacing;
  r.forEach((p, i) => {
    const size = distance(p, closed[i + 1]);
    const parts = Math.max(1, Math.round(size / spacing));
    if (since >= spacing / 2) {
      out.push(p);
      since = 0;
    }
    for (let k = 1; k < parts; k++) out.push(mix(p, closed[i + 1], k / parts));
    since = parts > 1 ? spacing : since + size;
  });
  return out;
}

/** Least step along a row, and the lowest place of the next row. In a frame whose x runs along the row. */
function rowsAlong(
  lines: readonly (readonly Point2[])[],
  [c, s]: Point2,
): { readonly step: number; readonly next: Point2 } {
  const edges = lines.map((line) => {
    const out = new Float64Array(2 * line.length + 2);
    for (let i = 0; i <= line.length; i++) {
      const [x, y] = line[i % line.length];
      out[2 * i] = c * x + s * y;
      out[2 * i + 1] = c * y - s * x;
    }
    return out;
  });
  const step = exitAlongX(edges);
  const tops = topsOver(edges, step);
  const lowest = tops.reduce((best, top, i) => (top < tops[best] ? i : best), 0);
  return { step, next: [(step * lowest) / PHASES, tops[lowest]] };
}

/** Where the +x axis leaves all polygons for good. */
function exitAlongX(polygons: readonly Float64Array[]): number {
  let exit = 0;
  for (const p of polygons) {
    for (let i = 0; i + 3 < p.length; i += 2) {
      const [x0, y0, x1, y1] = [p[i], p[i + 1], p[i + 2], p[i + 3]];
      if (y0 > 0 !== y1 > 0) exit = Math.max(exit, x0 + ((x1 - x0) * y0) / (y0 - y1));
    }
  }
  return exit;
}

/** Greatest height of the polygons, repeated every `step` along x, at evenly spaced places of one step. */
function topsOver(polygons: readonly Float64Array[], step: number): Float64Array {
  const tops = new Float64Array(PHASES);
  const unit = step / PHASES;
  for (const p of polygons) {
    for (let i = 0; i + 3 < p.length; i += 2) {
      const [x0, y0, x1, y1] = [p[i], p[i + 1], p[i + 2], p[i + 3]];
      if (y0 <= 0 && y1 <= 0) continue;
      const slope = (y1 - y0) / (x1 - x0);
      const last = Math.max(x0, x1) / unit;
      for (let k = Math.ceil(Math.min(x0, x1) / unit); k <= last; k++) {
        const y = x0 === x1 ? Math.max(y0, y1) : y0 + (k * unit - x0) * slope;
        const at = ((k % PHASES) + PHASES) % PHASES;
        if (y > tops[at]) tops[at] = y;
      }
    }
  }
  return tops;
}
