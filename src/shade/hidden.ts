/** Whether a point of an edge is hidden, told from the facets seen round it. */
import { type Depths, planeDepth } from './depth.js';
import type { Seen } from './model.js';

/**
 * In front by less than this share of a sample is touching, not hiding. Depths are compared in the
 * planes of the facets at the point itself, so no slope has to be allowed for: only rounding of
 * corners to 32-bit floats (1e-5 mm), on facets seen almost edge-on.
 */
const TOUCHING = 0.25;

export type IsHidden = (
  x: number,
  y: number,
  z: number,
  edge: readonly [number, number],
) => boolean;

/**
 * A point is hidden when a facet seen in one of the four samples round it covers it and lies in
 * front; or, where facets are smaller than samples, when in all four something lies in front. The two
 * facets that meet in the edge never hide it.
 */
export function hiddenBy(seen: Seen, { grid, facet }: Depths): IsHidden {
  const { minX, maxY, pitch, columns, rows } = grid;
  const tolerance = TOUCHING * pitch;
  return (x, y, z, [left, right]) => {
    const column = Math.floor((x - minX) / pitch - 0.5);
    const row = Math.floor((maxY - y) / pitch - 0.5);
    let isFree = false;
    let last = -1;
    for (let k = 0; k < 4; k++) {
      const [i, j] = [column + (k & 1), row + (k >> 1)];
      const f = i < 0 || j < 0 || i >= columns || j >= rows ? -1 : facet[j * columns + i];
      if (f === last && k > 0) continue;
      last = f;
      const isFront =
        f >= 0 && f !== left && f !== right && planeDepth(seen, f, x, y) > z + tolerance;
      if (isFront && covers(seen, f, x, y)) return true;
      if (!isFront) isFree = true;
    }
    return !isFree;
  };
}

/** True if the point lies in the facet as seen. */
function covers({ corners: p, triangles }: Seen, f: number, x: number, y: number): boolean {
  for (let k = 0; k < 3; k++) {
    const [a, b] = [3 * triangles[3 * f + k], 3 * triangles[3 * f + ((k + 1) % 3)]];
    const turn = (p[b] - p[a]) * (y - p[a + 1]) - (p[b + 1] - p[a + 1]) * (x - p[a]);
    if (turn < 0) return false;
  }
  return true;
}
