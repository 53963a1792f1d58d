import { describe, expect, it } from 'vitest';
import { minkowskiSum } from '../../src/geometry/clip.js';
import { sumRegion, turnedHalf } from '../../src/geometry/nofit.js';
import { seededDraws } from '../../src/geometry/random.js';
import { type Ring, ring, ringArea } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import { densestLattice } from '../../src/lattice/densest.js';
import { densityOf } from '../../src/lattice/double.js';
import { latticeLimitRatio, withGap } from '../../src/lattice/grow.js';
import { densestDoubleLattice } from '../../src/lattice/hull.js';
import { drawnOutline } from '../nest/outlines.js';
import { distanceToRing, latticeDepth, patch, placed } from './overlap.js';

/** Corners on a grid of 20 mm: x, y, x, y, … */
const cells = (...at: number[]): Ring =>
  ring(
    Array.from({ length: at.length / 2 }, (_, i): Point2 => [at[2 * i] * 20, at[2 * i + 1] * 20]),
  );

/** Each tiles the plane with copies at 0° and 180°, as one sees by drawing it. */
const TILES: readonly (readonly [string, Ring])[] = [
  ['L of four squares', cells(0, 0, 3, 0, 3, 1, 1, 1, 1, 2, 0, 2)],
  ['T of four squares', cells(0, 0, 3, 0, 3, 1, 2, 1, 2, 2, 1, 2, 1, 1, 0, 1)],
  ['S of four squares', cells(0, 0, 2, 0, 2, 1, 3, 1, 3, 2, 1, 2, 1, 1, 0, 1)],
  ['W of five squares', cells(0, 0, 2, 0, 2, 1, 3, 1, 3, 3, 2, 3, 2, 2, 1, 2, 1, 1, 0, 1)],
  ['Y of five squares', cells(0, 0, 4, 0, 4, 1, 2, 1, 2, 2, 1, 2, 1, 1, 0, 1)],
  [
    'X of five squares',
    cells(1, 0, 2, 0, 2, 1, 3, 1, 3, 2, 2, 2, 2, 3, 1, 3, 1, 2, 0, 2, 0, 1, 1, 1),
  ],
  ['arrow', cells(0, 0, 2, 1, 4, 0, 4, 2, 2, 3, 0, 2)],
  ['hollow quadrilateral', cells(0, 0, 2, 1, 4, 0, 2, 4)],
];

describe('sums of hollow outlines', () => {
  it('have the area that uniting a parallelogram for every pair of edges gives', () => {
    for (const [, a] of TILES) {
      for (const b of [TILES[0][1], turnedHalf(a)]) {
        expect(ringArea(sumRegion(a, b).outer)).toBeCloseTo(ringArea(minkowskiSum(a, b)), 3);
      }
    }
  });
});

describe('the densest lattice of an outline with hollows', () => {
  it.each(TILES)('%s tiles', (_, outline) => {
    const lattice = densestLattice(outline);
    expect(densityOf(lattice, ringArea(outline))).toBeGreaterThan(1 - 1e-6);
    expect(densityOf(lattice, ringArea(outline))).toBeLessThanOrEqual(1 + 1e-12);
    expect(latticeDepth(outline, lattice)).toBeLessThan(1e-9);
  });

  it('is never less dense than the hull allows, and free of overlap', () => {
    const draw = seededDraws(21);
    for (let i = 0; i < 6; i++) {
      const outline = drawnOutline(draw);
      const lattice = densestLattice(outline);
      expect(lattice.cellMm2).toBeLessThanOrEqual(densestDoubleLattice(outline).cellMm2);
      expect(latticeDepth(outline, lattice, 0.5)).toBeLessThan(1e-5);
    }
  });

  it('keeps the gap, and tells what share of the wood it leaves', () => {
    const outline = drawnOutline(seededDraws(22));
    const shape = withGap(outline, 3);
    const lattice = densestLattice(shape.grown);
    const others = patch(lattice).filter(({ turnDeg, x, y }) => turnDeg || x || y);
    const apart = others.map((copy) =>
      Math.min(...placed(outline, copy).map((p) => distanceToRing(p, outline))),
    );
    expect(Math.min(...apart)).toBeGreaterThan(3);
    expect(Math.min(...apart)).toBeLessThan(3.2);
    expect(latticeLimitRatio(shape)).toBeCloseTo((2 * ringArea(outline)) / lattice.cellMm2, 12);
  });
});
