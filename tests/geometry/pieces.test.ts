import { describe, expect, test } from 'vitest';
import { readInstance } from '../../src/bench/nest-instance.js';
import { convexHull } from '../../src/geometry/convex.js';
import { type Convex, convexPieces, convexSum, isConvex } from '../../src/geometry/pieces.js';
import { seededDraws } from '../../src/geometry/random.js';
import {
  circleRing,
  insideRing,
  type Ring,
  rectRing,
  ringArea,
  signedArea,
} from '../../src/geometry/ring.js';
import { distance, type Point2, sub } from '../../src/geometry/vec.js';
import { BLAZ1_TEXT, GRID_SHAPES, star } from '../pack/stars.js';

const draw = seededDraws(11);
const triangle = (): Ring => star(draw, 3);
const perimeter = (r: Convex): number =>
  r.reduce((sum, p, i) => sum + distance(p, r[(i + 1) % r.length]), 0);
const opposite = (r: Convex): Convex => r.map(([x, y]): Point2 => [-x, -y]);
/** A convex polygon through points drawn in a square of 10. */
const drawnConvex = (): Ring =>
  convexHull(Array.from({ length: 12 }, (): Point2 => [10 * draw(), 10 * draw()]));

describe('convex pieces', () => {
  const rings = [
    ...Array.from({ length: 60 }, (_, i) => star(draw, 3 + (i % 20))),
    ...readInstance('blaz1', BLAZ1_TEXT).rings,
    ...GRID_SHAPES,
  ];

  test('are convex, turn left and have the area of the ring', () => {
    expect(rings).toHaveLength(70);
    for (const r of rings) {
      const pieces = convexPieces(r);
      for (const piece of pieces) {
        expect(isConvex(piece)).toBe(true);
        expect(signedArea(piece)).toBeGreaterThan(0);
        for (const corner of piece) expect(r).toContain(corner);
      }
      const area = pieces.reduce((sum, p) => sum + signedArea(p), 0);
      // Sums of some twenty doubles of this size.
      expect(Math.abs(area / ringArea(r) - 1)).toBeLessThan(1e-12);
    }
  });

  test('cover every point of the ring once, and none outside', () => {
    for (const r of rings) {
      const pieces = convexPieces(r);
      for (let n = 0; n < 50; n++) {
        const p: Point2 = [10 - 20 * draw(), 10 - 20 * draw()];
        const covering = pieces.filter((piece) => insideRing(p, piece)).length;
        expect(covering).toBe(insideRing(p, r) ? 1 : 0);
      }
    }
  });

  test('are few: at most two cuts at each hollow corner', () => {
    // S. Hertel and K. Mehlhorn (1983): 2 r + 1 pieces at most for r hollow corners.
    for (const r of rings) {
      const hollow = r.filter((b, i) => {
        const [a, c] = [r[(i + r.length - 1) % r.length], r[(i + 1) % r.length]];
        const [p, q] = [sub(b, a), sub(c, b)];
        return p[0] * q[1] - p[1] * q[0] < 0;
      }).length;
      expect(convexPieces(r).length).toBeLessThanOrEqual(2 * hollow + 1);
    }
  });

  test('of a convex ring are the ring itself', () => {
    const r = drawnConvex();
    expect(convexPieces(r)).toEqual([r]);
  });

  test('a boundary that winds twice is not convex though it only turns left', () => {
    const pentagram = circleRing([0, 0], 1, { segments: 5 });
    expect(isConvex(pentagram)).toBe(true);
    expect(isConvex([0, 2, 4, 1, 3].map((i) => pentagram[i]))).toBe(false);
  });
});

describe('convex sums', () => {
  test('of two rectangles: sides add up', () => {
    const sum = convexSum(rectRing(1, 2, 4, 4), rectRing(-1, 0, 4, 7));
    expect(sum).toEqual([
      [0, 2],
      [8, 2],
      [8, 11],
      [0, 11],
    ]);
  });

  test('of a triangle and its opposite: six times the area', () => {
    // Closed form: the difference body of a triangle (C. A. Rogers, G. C. Shephard, 1957: equality of C(2n, n)).
    for (let n = 0; n < 30; n++) {
      const t = triangle();
      expect(signedArea(convexSum(t, opposite(t))) / ringArea(t)).toBeCloseTo(6, 10);
    }
  });

  test('area of K + tK is (1 + t)² of K', () => {
    const k = drawnConvex();
    const scaled = k.map(([x, y]): Point2 => [2.5 * x, 2.5 * y]);
    expect(signedArea(convexSum(k, scaled)) / ringArea(k)).toBeCloseTo(3.5 ** 2, 10);
  });

  test('with a many-sided circle: Steiner’s area and perimeter', () => {
    // J. Steiner (1840): area A + P r + π r², perimeter P + 2 π r.
    const radius = 2;
    const segments = 4096;
    const disk = circleRing([0, 0], radius, { segments });
    for (let n = 0; n < 10; n++) {
      const k = drawnConvex();
      const sum = convexSum(k, disk);
      const area = ringArea(k) + perimeter(k) * radius + Math.PI * radius ** 2;
      // Sagitta of the chords, along the whole perimeter.
      const sagitta = radius * (1 - Math.cos(Math.PI / segments));
      expect(area - signedArea(sum)).toBeGreaterThan(0);
      expect(area - signedArea(sum)).toBeLessThan(sagitta * (perimeter(k) + 2 * Math.PI * radius));
      expect(perimeter(sum)).toBeCloseTo(perimeter(k) + perimeter(disk), 9);
    }
  });

  test('area is A + 2 V(A, B) + B, and at least that of Brunn and Minkowski', () => {
    for (let n = 0; n < 40; n++) {
      const [a, b] = [drawnConvex(), drawnConvex()];
      const area = signedArea(convexSum(a, b));
      // Mixed area: half the sum of B's reach along A's outward normals times the edges' lengths.
      const mixed =
        a.reduce((sum, p, i) => {
          const [dx, dy] = sub(a[(i + 1) % a.length], p);
          return sum + Math.max(...b.map(([x, y]) => dy * x - dx * y));
        }, 0) / 2;
      expect(area).toBeCloseTo(ringArea(a) + 2 * mixed + ringArea(b), 9);
      expect(Math.sqrt(area)).toBeGreaterThan(
        Math.sqrt(ringArea(a)) + Math.sqrt(ringArea(b)) - 1e-9,
      );
      expect(signedArea(convexSum(b, a))).toBeCloseTo(area, 9);
    }
  });

  test('is the hull of all sums of two corners', () => {
    for (let n = 0; n < 20; n++) {
      const [a, b] = [drawnConvex(), drawnConvex()];
      const sums = a.flatMap(([x, y]) => b.map(([p, q]): Point2 => [x + p, y + q]));
      expect(signedArea(convexSum(a, b))).toBeCloseTo(ringArea(convexHull(sums)), 9);
    }
  });
});
