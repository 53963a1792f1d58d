/**
 * Lines where one body goes into another, as a blade into wood: no edge of either, but what is seen
 * changes from one to the other where both are equally near. They are found between samples.
 */
import type { Point2 } from '../geometry/vec.js';
import { distance } from '../geometry/vec.js';
import { type Depths, planeDepth } from './depth.js';
import type { Piece } from './join.js';
import type { Seen } from './model.js';

/** Between a sample and its neighbor to the right: key 2i; below it: 2i + 1. Both name the place on the grid. */
type Crossing = { readonly key: number; readonly at: Point2 };

/** Bodies less than this share of a sample over each other touch. */
const TOUCHING = 0.5;

/** Straight pieces through each square of four samples that a seam goes through. */
export function seamPieces(seen: Seen, depths: Depths): Piece[] {
  if (seen.bodies.length < 2) return [];
  const { columns, rows } = depths.grid;
  const pieces: Piece[] = [];
  for (let row = 0; row + 1 < rows; row++) {
    for (let column = 0; column + 1 < columns; column++) {
      const i = row * columns + column;
      if (isOneBody(seen, depths, i)) continue;
      const crossings = [
        crossing(seen, depths, i, true),
        crossing(seen, depths, i, false),
        crossing(seen, depths, i + columns, true),
        crossing(seen, depths, i + 1, false),
      ].filter((c) => c !== null);
      // Three bodies in one place are left to the squares round it.
      if (crossings.length !== 2 || distance(crossings[0].at, crossings[1].at) === 0) continue;
      const [from, to] = crossings;
      pieces.push({ from: from.at, to: to.at, fromKey: from.key, toKey: to.key });
    }
  }
  return pieces;
}

/** True where the four samples from i on see nothing, or one body alone. */
function isOneBody({ bodyOf }: Seen, { facet, grid }: Depths, i: number): boolean {
  const body = (at: number) => (facet[at] < 0 ? -1 : bodyOf[facet[at]]);
  const first = body(i);
  return (
    body(i + 1) === first &&
    body(i + grid.columns) === first &&
    body(i + grid.columns + 1) === first
  );
}

/** Where the planes of two neighboring samples' facets cross between them; null where one ends before the other. */
function crossing(
  seen: Seen,
  { facet, grid }: Depths,
  i: number,
  isRight: boolean,
): Crossing | null {
  const { columns, minX, maxY, pitch } = grid;
  const [f, g] = [facet[i], facet[isRight ? i + 1 : i + columns]];
  if (f < 0 || g < 0 || seen.bodyOf[f] === seen.bodyOf[g]) return null;
  const x = minX + ((i % columns) + 0.5) * pitch;
  const y = maxY - (Math.floor(i / columns) + 0.5) * pitch;
  const [nextX, nextY] = isRight ? [x + pitch, y] : [x, y - pitch];
  const over = planeDepth(seen, f, x, y) - planeDepth(seen, g, x, y);
  const under = planeDepth(seen, g, nextX, nextY) - planeDepth(seen, f, nextX, nextY);
  // A facet of a rounded body may end just here and the next one go under.
  if (!(over + under > 0 && Math.min(over, under) > -TOUCHING * pitch)) return null;
  const share = Math.min(1, Math.max(0, over / (over + under)));
  return {
    key: 2 * i + (isRight ? 0 : 1),
    at: [x + share * (nextX - x), y + share * (nextY - y)],
  };
}
