import { describe, expect, it } from 'vitest';
import { circleRing, type Ring, ring, ringArea } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import { doubleLattices } from '../../src/nest/lattice.js';
import { shapeSet } from '../../src/nest/nofit.js';
import { lure, part } from './outlines.js';

/** Density of the densest double lattice found, gap 0: the outline is grown by 0.027 mm only. */
function density(outline: Ring): number {
  const set = shapeSet([part('a', outline, 1)], { gapMm: 0, clearNoseRatio: 0 });
  const lattices = doubleLattices(set, 0);
  expect(lattices.length).toBeGreaterThan(0);
  return (2 * ringArea(outline)) / lattices[0].cellMm2;
}

const scaled = (points: readonly Point2[], x: number, y = x): Ring =>
  ring(points.map(([px, py]): Point2 => [px * x, py * y]));

/**
 * Outlines are made some meters large, so that the growth (0.05 mm a side at most) lowers a density
 * by less than 1e-4; row directions 2° apart may miss the best one by a little more.
 */
const BELOW = 2e-3;

describe('double lattices (shared/references.md §10)', () => {
  it.each([
    ['regular pentagon, (5 − √5)/3', circleRing([0, 0], 2000, { segments: 5 }), (5 - 5 ** 0.5) / 3],
    ['circle, π/√12', circleRing([0, 0], 2000, { segments: 96 }), Math.PI / 12 ** 0.5],
    [
      'ellipse, π/√12',
      scaled(circleRing([0, 0], 1, { segments: 96 }), 4000, 1000),
      Math.PI / 12 ** 0.5,
    ],
    ['lure-like convex outline, 0.91879 ± 2e-4', lure(6000, 1500), 0.91879],
  ])('%s', (_, outline, limit) => {
    const found = density(outline);
    expect(found).toBeGreaterThan(limit - BELOW);
    // Chords instead of arcs make a polygon a little denser than its curve (96 corners: 7e-4).
    expect(found).toBeLessThan(limit + 1e-3);
  });

  it('holds the bound √3/2 of every convex outline (Kuperberg and Kuperberg, 1990)', () => {
    for (const segments of [3, 4, 6, 7, 8, 9]) {
      expect(density(circleRing([0, 0], 3000, { segments }))).toBeGreaterThan(3 ** 0.5 / 2);
    }
  });

  it('uses a hollow: two outlines with hollow bellies lie denser than their hulls can', () => {
    const arch = ring([
      [0, 0],
      [300, 0],
      [300, 600],
      [1700, 600],
      [1700, 0],
      [2000, 0],
      [2000, 900],
      [0, 900],
    ]);
    expect((2 * ringArea(arch)) / (2 * 2000 * 900)).toBeLessThan(0.6);
    expect(density(arch)).toBeGreaterThan(0.6);
  });
});
