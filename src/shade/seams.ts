/**
 * Lines where one body goes into another, as a blade into wood: no edge of either, but what is seen
 * changes from one to the other where both are equally near. They are found between samples.
 */
import type { Point2 } from '../geometry/vec.js';
import { type Depths, planeDepth } from './depth.js';
import type { Piece } from './join.js';
import type { Seen } from './model.js';

/** Bodies less than this share of a sample over each other touch. */
const TOUCHING = 0.5;

/** Straight pieces through each square of four samples that a seam goes through. */
export function seamPieces(seen: Seen, depths: Depths): Piece[] {
  const crossings = seen.bodies.length < 2 ? new Map<number, Point2>() : crossingsOf(seen, depths);
  const { columns } = depths.grid;
  const squares = new Set(
    [...crossings.keys()].flatMap((key) => [key >> 1, (key >> 1) - (key & 1 ? 1 : columns)]),
  );
  return [...squares].flatMap((i): Piece[] => {
    const sides = [2 * i, 2 * i + 1, 2 * (i + columns), 2 * (i + 1) + 1];
    const [from, to, ...more] = sides.filter((key) => crossings.has(key));
    // Three bodies in one place are left to the squares round it.
    if (to === undefined || more.length > 0) return [];
    const [start, end] = [from, to].map((key) => crossings.get(key) as Point2);
    return [{ from: start, to: end, fromKey: from, toKey: to }];
  });
}

/** Between sample i and its neighbor to the right by 2i, below it by 2i + 1. */
function crossingsOf(seen: Seen, depths: Depths): Map<number, Point2> {
  const { facet, grid } = depths;
  const { columns, rows } = grid;
  const found = new Map<number, Point2>();
  const note = (i: number, step: number): void => {
    const at = crossing(seen, depths, i, step);
    if (at) found.set(2 * i + (step === 1 ? 0 : 1), at);
  };
  for (let row = 0; row + 1 < rows; row++) {
    for (let i = row * columns; i + 1 < (row + 1) * columns; i++) {
      const f = facet[i];
      if (f < 0) continue;
      // Nearly all neighbors see the same facet, or the same body.
      if (facet[i + 1] !== f) note(i, 1);
      if (facet[i + columns] !== f) note(i, columns);
    }
  }
  return found;
}

/** Where the planes of two neighboring samples' facets cross between them; null where one ends before the other. */
function crossing(seen: Seen, { facet, grid }: Depths, i: number, step: number): Point2 | null {
  const { columns, minX, maxY, pitch } = grid;
  const [f, g] = [facet[i], facet[i + step]];
  if (f < 0 || g < 0 || seen.bodyOf[f] === seen.bodyOf[g]) return null;
  const x = minX + ((i % columns) + 0.5) * pitch;
  const y = maxY - (Math.floor(i / columns) + 0.5) * pitch;
  const [nextX, nextY] = step === 1 ? [x + pitch, y] : [x, y - pitch];
  const over = planeDepth(seen, f, x, y) - planeDepth(seen, g, x, y);
  const under = planeDepth(seen, g, nextX, nextY) - planeDepth(seen, f, nextX, nextY);
  // A facet of a rounded body may end just here and the next one go under.
  if (!(over + under > 0 && Math.min(over, under) > -TOUCHING * pitch)) return null;
  const share = Math.min(1, Math.max(0, over / (over + under)));
  return [x + share * (nextX - x), y + share * (nextY - y)];
}
