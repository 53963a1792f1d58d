/** Which outlines are but small steps of a body. */
import { type Point3, quarterLeft, sub, times, unit } from '../geometry/vec.js';
import type { Depths } from './depth.js';
import type { Piece } from './join.js';
import type { Seen } from './model.js';

/** How far to both sides of an outline it is looked what is there. */
const BESIDE_SAMPLES = 2;
/** Less deep than this, as many samples, is close behind. */
const SHALLOW_SAMPLES = 20;

/**
 * True where the same body goes on close behind an outline, as at the rim of a sunk letter: such lines
 * are thin, so that the eye finds the bodies first.
 */
export function isShallow(
  seen: Seen,
  { grid, facet, depth }: Depths,
  { from, to }: Piece,
  [x, y, z]: Point3,
  facets: readonly [number, number],
): boolean {
  const out = times(unit(quarterLeft(sub(to, from))), BESIDE_SAMPLES * grid.pitch);
  const sides = [1, -1].map((way) => {
    const column = Math.floor((x + way * out[0] - grid.minX) / grid.pitch);
    const row = Math.floor((grid.maxY - y - way * out[1]) / grid.pitch);
    const isOff = !(column >= 0 && row >= 0 && column < grid.columns && row < grid.rows);
    return isOff ? -1 : row * grid.columns + column;
  });
  const body = seen.bodyOf[facets[0]];
  return sides.every(
    (i) =>
      i >= 0 &&
      facet[i] >= 0 &&
      seen.bodyOf[facet[i]] === body &&
      depth[i] > z - SHALLOW_SAMPLES * grid.pitch,
  );
}
