import { describe, expect, it } from 'vitest';
import { convexHull } from '../../src/geometry/convex.js';
import { seededDraws } from '../../src/geometry/random.js';
import { circleRing, type Ring, ring, ringArea } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import { densityOf } from '../../src/lattice/double.js';
import { densestDoubleLattice } from '../../src/lattice/hull.js';
import { lure } from '../nest/outlines.js';
import { latticeDepth } from './overlap.js';

const density = (r: Ring): number => densityOf(densestDoubleLattice(r), ringArea(convexHull(r)));
const regular = (segments: number): Ring => circleRing([7, -3], 40, { segments });
const curve = (points: number, at: (angle: number) => Point2): Ring =>
  ring(Array.from({ length: points }, (_, i) => at((2 * Math.PI * i) / points)));
const power = (value: number, by: number): number => Math.sign(value) * Math.abs(value) ** by;
const superellipse = (n: number): Ring =>
  curve(800, (a) => [60 * power(Math.cos(a), 2 / n), 20 * power(Math.sin(a), 2 / n)]);

/** Three arcs, each around the opposite corner of a triangle of side 50. */
const reuleaux = ring(
  [0, 1, 2].flatMap((k) => {
    const turn = (2 * Math.PI * k) / 3;
    const center: Point2 = [
      (50 / 3 ** 0.5) * Math.cos(turn + Math.PI),
      (50 / 3 ** 0.5) * Math.sin(turn + Math.PI),
    ];
    return Array.from({ length: 100 }, (_, i): Point2 => {
      const a = turn + ((i / 100 - 0.5) * Math.PI) / 3;
      return [center[0] + 50 * Math.cos(a), center[1] + 50 * Math.sin(a)];
    });
  }),
);

function randomConvex(draw: () => number): Ring {
  const points = Array.from({ length: 3 + Math.floor(12 * draw()) }, (): Point2 => {
    return [100 * draw(), 40 * draw()];
  });
  return convexHull(points);
}

describe('the densest double lattice of a convex outline (shared/references.md §10)', () => {
  // Exact forms, and figures computed there by another program of the same rule.
  it.each([
    [5, (5 - 5 ** 0.5) / 3, 1e-9],
    [6, 1, 1e-9],
    [7, 0.892690686, 1e-9],
    [8, (4 + 4 * 2 ** 0.5) / (5 + 4 * 2 ** 0.5), 1e-9],
    [9, 0.901030078, 1e-9],
    [10, 0.913719988, 1e-9],
  ])('regular polygon of %i', (segments, limit, within) => {
    expect(Math.abs(density(regular(segments)) - limit)).toBeLessThan(within);
  });

  it.each([
    // A polygon of n corners in place of a curve is denser by the order of 1/n².
    ['ellipse, π/√12', curve(800, (a) => [60 * Math.cos(a), 15 * Math.sin(a)]), 0.9068996821, 2e-6],
    ['superellipse 2.5', superellipse(2.5), 0.91363, 2e-5],
    ['superellipse 3', superellipse(3), 0.92691, 2e-5],
    ['superellipse 4', superellipse(4), 0.95138, 2e-5],
    ['Reuleaux triangle', reuleaux, 0.9228878406, 2e-5],
    ['lure-like', lure(100, 34.5, 0, 200), 0.91879, 2e-4],
  ])('%s', (_, outline, limit, within) => {
    expect(Math.abs(density(outline) - limit)).toBeLessThan(within);
  });

  it('tiles with every triangle and every convex quadrilateral', () => {
    const draw = seededDraws(11);
    for (let tries = 0; tries < 200; ) {
      const hull = randomConvex(draw);
      if (hull.length > 4) continue;
      tries++;
      expect(density(hull)).toBeCloseTo(1, 9);
    }
  });

  it('reaches √3/2 with every convex outline (Kuperberg and Kuperberg 1990), without overlap', () => {
    const draw = seededDraws(12);
    for (let i = 0; i < 100; i++) {
      const hull = randomConvex(draw);
      const found = density(hull);
      expect(found).toBeGreaterThan(3 ** 0.5 / 2 - 1e-9);
      expect(found).toBeLessThan(1 + 1e-9);
      if (i < 25) expect(latticeDepth(hull, densestDoubleLattice(hull))).toBeLessThan(1e-9);
    }
  });

  it('is as dense after any shear, stretch and move', () => {
    const draw = seededDraws(13);
    for (let i = 0; i < 50; i++) {
      const hull = randomConvex(draw);
      const [a, b, c, d] = [1 + draw(), draw(), draw() - 0.5, 1 + draw()];
      const changed = ring(hull.map(([x, y]): Point2 => [a * x + b * y + 5, c * x + d * y - 9]));
      expect(density(changed)).toBeCloseTo(density(hull), 9);
    }
  });

  it('is not beaten by any direction of a fine sweep of the rule itself', () => {
    const draw = seededDraws(14);
    for (let i = 0; i < 10; i++) {
      const hull = randomConvex(draw);
      expect(density(hull)).toBeGreaterThan(sweptDensity(hull) - 1e-9);
      expect(density(hull)).toBeLessThan(sweptDensity(hull) + 1e-3);
    }
  });
});

/** The rule evaluated plainly: chords by clipping lines, half chords by halving intervals. */
function sweptDensity(hull: Ring): number {
  let least = Infinity;
  for (let k = 0; k < 720; k++) {
    const a = (Math.PI * k) / 720;
    const turned = hull.map(
      ([x, y]): Point2 => [x * Math.cos(a) + y * Math.sin(a), y * Math.cos(a) - x * Math.sin(a)],
    );
    const ys = turned.map((p) => p[1]);
    const chord = (y: number): number => {
      const xs = turned.flatMap((p, i) => {
        const q = turned[(i + 1) % turned.length];
        return p[1] > y === q[1] > y ? [] : [p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1])];
      });
      return xs.length === 2 ? Math.abs(xs[0] - xs[1]) : 0;
    };
    const at = ys.reduce((best, y) => (nearChord(chord, y) > nearChord(chord, best) ? y : best));
    const longest = nearChord(chord, at);
    const half = (outer: number): number => {
      let [short, long] = [outer, at];
      for (let i = 0; i < 50; i++) {
        const middle = (short + long) / 2;
        if (chord(middle) < longest / 2) short = middle;
        else long = middle;
      }
      return long;
    };
    least = Math.min(least, longest * (half(Math.max(...ys)) - half(Math.min(...ys))));
  }
  return ringArea(hull) / least;
}

/** The chord beside a corner's height, where an edge along the line would count for nothing. */
const nearChord = (chord: (y: number) => number, y: number): number =>
  Math.max(chord(y - 1e-9), chord(y + 1e-9));
