/** Outlines that tests of the packing draw: stars, and simple ones by hand. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Ring, ring } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import type { Outline } from '../../src/pack/table.js';

/** A star: corners at equal angles, each between a third of the size and all of it from the middle. */
export function star(draw: () => number, corners: number, size = 10): Ring {
  return ring(
    Array.from({ length: corners }, (_, i): Point2 => {
      const radius = size * (1 / 3 + (2 / 3) * draw());
      const angle = (2 * Math.PI * i) / corners;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    }),
  );
}

export const outlineOf = (outer: Ring, turnsDeg: readonly number[] = [0]): Outline => ({
  ring: outer,
  grown: outer,
  turnsDeg,
});

/** An L, a U and a cross on a whole-number grid: corners level with corners, edges upon edges. */
export const GRID_SHAPES: readonly Ring[] = [
  ring([
    [0, 0],
    [3, 0],
    [3, 1],
    [1, 1],
    [1, 3],
    [0, 3],
  ]),
  ring([
    [0, 0],
    [4, 0],
    [4, 3],
    [3, 3],
    [3, 1],
    [1, 1],
    [1, 3],
    [0, 3],
  ]),
  ring([
    [1, 0],
    [2, 0],
    [2, 1],
    [3, 1],
    [3, 2],
    [2, 2],
    [2, 3],
    [1, 3],
    [1, 2],
    [0, 2],
    [0, 1],
    [1, 1],
  ]),
];

/**
 * A published instance: J. Błażewicz, P. Hawryluk, R. Walkowiak (1993), as published with J. Gardeyn,
 * G. Vanden Berghe, T. Wauters, arXiv:2509.13329 (2025), MIT licence; coordinates rounded to 6 decimals.
 * The strip is 15.0015 high; the best density published there is 86.224 %.
 */
export const BLAZ1_TEXT = readFileSync(join(import.meta.dirname, 'blaz1.json'), 'utf8');
