/** Rings, polygon clipping and meshes: the traps their constructors and doors close. */
import fc from 'fast-check';
import * as polyclip from 'polyclip-ts';
import { describe, expect, test } from 'vitest';
import {
  asRegion,
  intersect,
  minkowskiSum,
  offset,
  subtract,
  union,
} from '../../src/geometry/clip.js';
import { mesh, meshFlaws } from '../../src/geometry/mesh.js';
import {
  circleRing,
  insideRing,
  rectRing,
  regionArea,
  ring,
  ringArea,
} from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';

describe('ring()', () => {
  test('turns a clockwise ring round and drops repeats', () => {
    const r = ring([
      [0, 0],
      [0, 2],
      [0, 2],
      [3, 2],
      [3, 0],
      [0, 0],
    ]);
    expect(r).toHaveLength(4);
    expect(ringArea(r)).toBe(6);
  });
  test.each([
    [
      'two points',
      [
        [0, 0],
        [1, 0],
      ],
    ],
    [
      'all on a line',
      [
        [0, 0],
        [1, 0],
        [2, 0],
      ],
    ],
    [
      'a bow tie',
      [
        [0, 0],
        [2, 2],
        [2, 0],
        [0, 2.5],
      ],
    ],
    [
      'NaN',
      [
        [0, 0],
        [1, Number.NaN],
        [1, 1],
      ],
    ],
    [
      'infinity',
      [
        [0, 0],
        [1, 0],
        [Infinity, 1],
      ],
    ],
  ] as [string, Point2[]][])('refuses %s', (_, points) => {
    expect(() => ring(points)).toThrow('ring');
  });
  test('a circle inside and one around', () => {
    const inner = circleRing([1, 2], 5, { segments: 64 });
    const outer = circleRing([1, 2], 5, { segments: 64, circumscribed: true });
    expect(ringArea(inner)).toBeLessThan(25 * Math.PI);
    expect(ringArea(outer)).toBeGreaterThan(25 * Math.PI);
    expect(insideRing([1, 6.9], outer)).toBe(true);
    expect(insideRing([1, 7.1], outer)).toBe(false);
  });
});

describe('clipping', () => {
  const square = (x: number, y: number, side: number) =>
    asRegion(rectRing(x, y, x + side, y + side));

  test('refuses what the library would turn into nothing', () => {
    expect(() => offset([square(0, 0, 10)], Number.NaN)).toThrow('offset by NaN');
    const bad = {
      outer: [
        [0, 0],
        [1, Number.NaN],
        [1, 1],
      ],
      holes: [],
    } as unknown as ReturnType<typeof asRegion>;
    expect(() => union([bad])).toThrow('not finite');
  });

  test('keeps a hole, and an inward offset that leaves nothing is empty', () => {
    const [frame] = subtract([square(0, 0, 10)], [square(3, 3, 4)]);
    expect(frame.holes).toHaveLength(1);
    expect(regionArea(frame)).toBe(84);
    expect(regionArea(offset([frame], 0.5, 1e-4)[0])).toBeCloseTo(
      100 + 40 * 0.5 + Math.PI / 4 - 3 * 3,
      3,
    );
    expect(offset([square(0, 0, 10)], -6)).toEqual([]);
  });

  test('two squares grown side by side: Steiner for each, no stray corner pieces', () => {
    const grown = offset([square(0, 0, 10), square(20, 0, 10)], 1, 1e-4);
    expect(grown).toHaveLength(2);
    for (const g of grown) expect(regionArea(g)).toBeCloseTo(100 + 40 + Math.PI, 3);
  });

  test('keeps six decimals', () => {
    const r = asRegion(
      ring([
        [0, 0],
        [10.123456, 0],
        [10.123456, 1],
        [0, 1],
      ]),
    );
    expect(regionArea(union([r])[0])).toBeCloseTo(10.123456, 9);
  });

  // Second opinion: polyclip-ts, which shares no code with clipper.
  test('200 random pairs against another library', () => {
    // Whole hundredths: the other library gives up on points that nearly coincide.
    const hundredths = (min: number, max: number) =>
      fc.integer({ min: 100 * min, max: 100 * max }).map((v) => v / 100);
    const blob = fc
      .tuple(
        hundredths(0, 50),
        hundredths(0, 50),
        fc.array(hundredths(2, 20), { minLength: 5, maxLength: 12 }),
      )
      .map(([cx, cy, radii]) =>
        ring(
          radii.map((r, i): Point2 => {
            const a = (2 * Math.PI * i) / radii.length;
            return [
              Math.round(100 * (cx + r * Math.cos(a))) / 100,
              Math.round(100 * (cy + r * Math.sin(a))) / 100,
            ];
          }),
        ),
      );
    const areaOf = (multi: ReturnType<typeof polyclip.union>) =>
      multi.reduce(
        (sum, poly) =>
          sum +
          poly.reduce(
            (s, r, i) => s + (i === 0 ? 1 : -1) * Math.abs(ringArea(ring(r as Point2[]))),
            0,
          ),
        0,
      );
    const total = (regions: ReturnType<typeof union>) =>
      regions.reduce((s, r) => s + regionArea(r), 0);
    let compared = 0;
    fc.assert(
      fc.property(blob, blob, (a, b) => {
        const [pa, pb] = [a, b].map((r) => [[...r.map(([x, y]): [number, number] => [x, y])]]);
        // Clipper rounds to 1e-6: a boundary of 200 mm moves by at most that.
        expect(total(union([asRegion(a), asRegion(b)]))).toBeCloseTo(
          areaOf(polyclip.union(pa, pb)),
          3,
        );
        expect(total(intersect([asRegion(a)], [asRegion(b)]))).toBeCloseTo(
          areaOf(polyclip.intersection(pa, pb)),
          3,
        );
        compared++;
      }),
      { seed: 7, numRuns: 200, endOnFailure: true },
    );
    expect(compared).toBe(200);
  });

  test('Minkowski sum of convex shapes: area A + B + mixed term', () => {
    const sum = minkowskiSum(rectRing(0, 0, 4, 2), rectRing(1, 1, 2, 4));
    expect(ringArea(sum)).toBeCloseTo(5 * 5, 9);
    // The library's sum in plain numbers keeps two decimals only.
    const fine = minkowskiSum(rectRing(0, 0, 4.00126, 2), rectRing(0, 0, 1, 3));
    expect(ringArea(fine)).toBeCloseTo(5.00126 * 5, 9);
  });
});

describe('mesh()', () => {
  const tetrahedron = Float64Array.from([0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1]);
  const outward = Uint32Array.from([0, 2, 1, 0, 1, 3, 1, 2, 3, 0, 3, 2]);
  test('accepts a closed outward solid', () => {
    expect(meshFlaws(tetrahedron, outward)).toEqual({
      openEdges: 0,
      degenerate: 0,
      notFinite: 0,
      volume: 1 / 6,
    });
    expect(mesh(tetrahedron, outward).triangles).toHaveLength(12);
  });
  test.each([
    ['inside out', tetrahedron, Uint32Array.from(outward).reverse()],
    ['with a facet missing', tetrahedron, outward.slice(0, 9)],
    ['with a reversed facet', tetrahedron, Uint32Array.from([0, 1, 2, ...outward.slice(3)])],
    ['with a repeated corner', tetrahedron, Uint32Array.from([...outward, 0, 0, 1])],
    ['with NaN', tetrahedron.map((v, i) => (i === 4 ? Number.NaN : v)), outward],
  ])('refuses one %s', (_, positions, triangles) => {
    expect(() => mesh(positions, triangles)).toThrow('mesh of');
  });
});
