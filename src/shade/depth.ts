/** Which facet is seen where: a z-buffer (E. Catmull, 1974), one sample at the middle of each cell of a grid. */
import type { Seen } from './model.js';

/** Cells `pitch` wide, counted to the right and down from the corner at the upper left. */
export type Grid = {
  readonly minX: number;
  readonly maxY: number;
  readonly pitch: number;
  readonly columns: number;
  readonly rows: number;
};

/** Depth (toward the viewer) and facet seen at each sample, row after row from the top; where nothing is, −Infinity and −1. */
export type Depths = {
  readonly grid: Grid;
  readonly depth: Float32Array;
  readonly facet: Int32Array;
};

/** A facet seen more edge-on than this (sine) covers nothing worth a sample, and its depth says nothing. */
const LEAST_FACING = 1e-6;

/** Facets of closed bodies that look away are always behind others and are left out, as are ghosts. */
export function depthsOf(seen: Seen, grid: Grid): Depths {
  const samples = grid.columns * grid.rows;
  const depths: Depths = {
    grid,
    depth: new Float32Array(samples).fill(Number.NEGATIVE_INFINITY),
    facet: new Int32Array(samples).fill(-1),
  };
  const solid = seen.bodies.map(({ tone }) => tone !== 'ghost');
  for (let f = 0; f < seen.bodyOf.length; f++) {
    if (isFacing(seen, f) && solid[seen.bodyOf[f]]) cover(seen, f, depths);
  }
  return depths;
}

export const isFacing = ({ normals }: Seen, f: number): boolean =>
  normals[3 * f + 2] > LEAST_FACING;

/** Depth of the plane of a facet that faces the viewer, at a point of the picture. */
export function planeDepth({ corners, triangles, normals }: Seen, f: number, x: number, y: number) {
  const a = 3 * triangles[3 * f];
  const across = normals[3 * f] * (x - corners[a]) + normals[3 * f + 1] * (y - corners[a + 1]);
  return corners[a + 2] - across / normals[3 * f + 2];
}

/**
 * Row by row, from the facet's left edge to its right one; its lowest height is its own, its highest
 * is not. So a sample on an edge belongs to one of the two facets there: both find the edge at the same
 * place, since both take it from its lower end up.
 */
function cover(
  { corners: p, triangles, normals }: Seen,
  f: number,
  { grid, depth, facet }: Depths,
): void {
  const { minX, maxY, pitch, columns, rows } = grid;
  let [a, b, c] = [3 * triangles[3 * f], 3 * triangles[3 * f + 1], 3 * triangles[3 * f + 2]];
  if (isLower(p, b, a)) [a, b] = [b, a];
  if (isLower(p, c, b)) [b, c] = [c, b];
  if (isLower(p, b, a)) [a, b] = [b, a];
  const [slopeX, slopeY] = [
    -normals[3 * f] / normals[3 * f + 2],
    -normals[3 * f + 1] / normals[3 * f + 2],
  ];
  const firstRow = Math.max(0, Math.floor((maxY - p[c + 1]) / pitch + 0.5));
  const lastRow = Math.min(rows - 1, Math.floor((maxY - p[a + 1]) / pitch - 0.5));
  for (let row = firstRow; row <= lastRow; row++) {
    const y = maxY - (row + 0.5) * pitch;
    const one = crossingX(p, a, c, y);
    const other = y < p[b + 1] ? crossingX(p, a, b, y) : crossingX(p, b, c, y);
    const from = Math.max(0, Math.ceil((Math.min(one, other) - minX) / pitch - 0.5));
    const to = Math.min(columns, Math.ceil((Math.max(one, other) - minX) / pitch - 0.5));
    const start = p[a + 2] + slopeX * (minX + 0.5 * pitch - p[a]) + slopeY * (y - p[a + 1]);
    for (let column = from, i = row * columns + from; column < to; column++, i++) {
      const z = start + column * slopeX * pitch;
      if (z > depth[i]) {
        depth[i] = z;
        facet[i] = f;
      }
    }
  }
}

/** By height; equal heights by number, so that any two facets agree. */
const isLower = (p: Float64Array, u: number, v: number): boolean =>
  p[u + 1] < p[v + 1] || (p[u + 1] === p[v + 1] && u < v);

/** Where the edge from u up to v crosses a height, under that of v. */
const crossingX = (p: Float64Array, u: number, v: number, y: number): number =>
  p[u] + ((y - p[u + 1]) / (p[v + 1] - p[u + 1])) * (p[v] - p[u]);
