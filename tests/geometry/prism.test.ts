import { describe, expect, test } from 'vitest';
import { meshVolume } from '../../src/geometry/mesh.js';
import { meshEdges } from '../../src/geometry/mesh-edges.js';
import { circleRing, type Ring, ring, ringArea } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import { Fault } from '../../src/problem.js';
import { prism, turned } from './prism.js';

const L = ring([
  [0, 0],
  [5, 0], // a straight corner
  [10, 0],
  [10, 4],
  [4, 4],
  [4, 9],
  [0, 9],
  [0, 4], // in line with two others
]);

function star(points: number): Ring {
  return ring(
    Array.from({ length: 2 * points }, (_, k): Point2 => {
      const [r, a] = [k % 2 === 0 ? 10 : 2, (Math.PI * k) / points];
      return [r * Math.cos(a), r * Math.sin(a)];
    }),
  );
}

describe('a prism', () => {
  test.each([
    ['a hollow outline', L, 10 * 4 + 4 * 5],
    ['a star', star(9), ringArea(star(9))],
    ['a circle', circleRing([12, 5], 3, { segments: 40 }), 20 * 9 * Math.sin((2 * Math.PI) / 40)],
  ])('of %s holds its area times its height', (_, outline, area) => {
    expect(meshVolume(prism(outline, -1, 2.5))).toBeCloseTo(3.5 * area, 9);
  });

  test('needs height', () => {
    expect(() => prism(L, 2, 2)).toThrow(Fault);
    expect(() => prism(L, 2, 1)).toThrow(Fault);
  });
});

describe('on the lathe', () => {
  /** Area of a regular polygon in a circle of radius 1. */
  const polygon = (n: number) => (n / 2) * Math.sin((2 * Math.PI) / n);

  test('a drill with a collar holds π ∫ r² dz, with the polygon for π', () => {
    const profile: Point2[] = [
      [0, 0],
      [4, 2.4],
      [4, 30],
      [9, 30],
      [9, 40],
      [4, 40],
      [4, 80],
      [0, 80],
    ];
    const want = (16 * 2.4) / 3 + 16 * 27.6 + 81 * 10 + 16 * 40;
    expect(meshVolume(turned(profile, 48))).toBeCloseTo(polygon(48) * want, 8);
  });

  test('refuses what is not closed at the axis, or touches it between, or is inside out', () => {
    const profiles: Point2[][] = [
      [
        [1, 0],
        [1, 5],
        [0, 5],
      ],
      [
        [0, 0],
        [0, 5],
      ],
      [
        [0, 0],
        [3, 1],
        [0, 2],
        [3, 3],
        [0, 4],
      ],
      [
        [0, 5],
        [3, 5],
        [3, 0],
        [0, 0],
      ],
    ];
    for (const profile of profiles) expect(() => turned(profile, 12)).toThrow(Fault);
  });
});

test('edges are three for two facets, each with its own two facets, once', () => {
  const of = prism(star(9), 0, 1);
  const { ends, sides } = meshEdges(of);
  const facets = of.triangles.length / 3;
  expect(ends.length / 2).toBe((3 * facets) / 2);
  // V − E + F = 2 without openings (Euler).
  expect(of.positions.length / 3 - ends.length / 2 + facets).toBe(2);
  const winds = (f: number, a: number, b: number) =>
    [0, 1, 2].some(
      (k) => of.triangles[3 * f + k] === a && of.triangles[3 * f + ((k + 1) % 3)] === b,
    );
  const seen = new Set<string>();
  for (let e = 0; e < ends.length; e += 2) {
    const [a, b] = [ends[e], ends[e + 1]];
    expect(winds(sides[e], a, b) && winds(sides[e + 1], b, a)).toBe(true);
    seen.add(`${Math.min(a, b)} ${Math.max(a, b)}`);
  }
  expect(seen.size).toBe(ends.length / 2);
});
