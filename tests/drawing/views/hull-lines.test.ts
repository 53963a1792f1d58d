import { describe, expect, test } from 'vitest';
import { chordsOf } from '../../../src/body/chord.js';
import { type BodyShape, offsetAt, offsetSquared } from '../../../src/body/shape.js';
import { greatests } from '../../../src/drawing/views/greatest.js';
import {
  buttocks,
  planCurve,
  sectionCurve,
  sectionPoint,
  sideCurve,
  waterlines,
} from '../../../src/drawing/views/hull-lines.js';
import { monotoneCurve } from '../../../src/geometry/monotone.js';
import { seededDraws } from '../../../src/geometry/random.js';

/** Half axes of an ellipsoid-like body with the nose at the origin. */
const A = 60;
const [BACK, BELLY, BREADTH] = [14, 18, 11];

/** With a point at the peak the squares of an ellipse are one parabola, and come out exactly. */
function ellipsoid(upper = 2, lower = 2): BodyShape {
  const side = (offsetMm: number) =>
    offsetSquared(2 * A, [{ stationMm: A, offsetMm }], {
      noseRadiusMm: offsetMm ** 2 / A,
      tailRadiusMm: offsetMm ** 2 / A,
    });
  return {
    lengthMm: 2 * A,
    backSquared: side(BACK),
    bellySquared: side(BELLY),
    halfBreadthSquared: side(BREADTH),
    upperExponent: monotoneCurve([0], [upper]),
    lowerExponent: monotoneCurve([0], [lower]),
  };
}

/** x²/a² + |y/b|ⁿ … of the closed form: at a station the section shrinks as the root of 1 − x²/a². */
function outside(upper: number, lower: number, [x, y, z]: readonly [number, number, number]) {
  const share = Math.sqrt(Math.max(0, 1 - ((x - A) / A) ** 2));
  if (share < 1e-9) return Math.hypot(y, z) < 1e-6 ? 0 : 1;
  const [h, n] = z >= 0 ? [BACK, upper] : [BELLY, lower];
  return (Math.abs(y) / (BREADTH * share)) ** n + (Math.abs(z) / (h * share)) ** n - 1;
}

// Roots of the parabola are found to 1e-6 mm, so a curve's end may be off by the square root of what that makes.
const CLOSE = 1e-9;

describe.each([
  [2, 2],
  [3.4, 2.6],
  [1, 12],
])(
  'lines of a body with sections of exponents %d and %d lie on its closed form',
  (upper, lower) => {
    const shape = ellipsoid(upper, lower);
    const off = (p: readonly [number, number, number]) => outside(upper, lower, p);

    test('sections', () => {
      for (const x of [0.5, 7, 33.3, 60, 101, 119]) {
        const curve = sectionCurve(shape, x);
        expect(curve.length).toBeGreaterThan(60);
        for (const [y, z] of curve) expect(Math.abs(off([x, y, z]))).toBeLessThan(CLOSE);
        const share = Math.sqrt(1 - ((x - A) / A) ** 2);
        expect(curve[0][1]).toBeCloseTo(-BELLY * share, 9);
        expect(curve[curve.length - 1][1]).toBeCloseTo(BACK * share, 9);
        expect(Math.max(...curve.map(([y]) => y))).toBeCloseTo(BREADTH * share, 9);
      }
    });

    test('waterlines, above and below', () => {
      for (const z of [4, 13.9, -0.5, -9, -17.5]) {
        const lines = waterlines(shape, z);
        expect(lines).toHaveLength(1);
        for (const [x, y] of lines[0].slice(1, -1)) {
          expect(y).toBeGreaterThan(0);
          expect(Math.abs(off([x, y, z]))).toBeLessThan(CLOSE);
        }
        // Where the profile passes the height: x = a ± a·√(1 − z²/h²).
        const reach = A * Math.sqrt(1 - (z / (z > 0 ? BACK : BELLY)) ** 2);
        expect(lines[0][0][0]).toBeCloseTo(A - reach, 5);
        expect(lines[0][lines[0].length - 1][0]).toBeCloseTo(A + reach, 5);
        expect(lines[0][0][1]).toBe(0);
      }
      expect(waterlines(shape, BACK + 0.01)).toEqual([]);
      expect(waterlines(shape, -BELLY - 0.01)).toEqual([]);
    });

    test('buttocks', () => {
      for (const y of [0.5, 5, 10.9]) {
        const [line, ...more] = buttocks(shape, y);
        expect(more).toEqual([]);
        // At the very ends the half-breadth is y only to the root's 1e-6 mm.
        for (const [x, z] of line)
          expect(Math.abs(off([x, y, z]))).toBeLessThan(z === 0 ? 1e-5 : CLOSE);
        const reach = A * Math.sqrt(1 - (y / BREADTH) ** 2);
        expect(Math.min(...line.map(([x]) => x))).toBeCloseTo(A - reach, 5);
        expect(Math.max(...line.map(([x]) => x))).toBeCloseTo(A + reach, 5);
      }
      expect(buttocks(shape, BREADTH + 0.01)).toEqual([]);
    });

    test('profile and plan', () => {
      for (const [x, y] of planCurve(shape)) expect(Math.abs(off([x, y, 0]))).toBeLessThan(CLOSE);
      for (const side of [1, -1] as const)
        for (const [x, z] of sideCurve(shape, side))
          expect(Math.abs(off([x, 0, z]))).toBeLessThan(CLOSE);
    });
  },
);

test('a point is seen from the middle of the datum line under the angle asked for', () => {
  const shape = ellipsoid(3, 2);
  for (const angle of [-1.5, -0.7, 0, 0.3, 1.2]) {
    const [y, z] = sectionPoint(shape, A, angle);
    const h = angle >= 0 ? BACK : BELLY;
    expect(Math.atan2(z / h, y / BREADTH)).toBeCloseTo(angle, 12);
  }
});

describe('bodies drawn by chance, seed 11', () => {
  const draw = seededDraws(11);
  const between = (low: number, high: number) => low + (high - low) * draw();
  const shapes = Array.from({ length: 12 }, (): BodyShape => {
    const lengthMm = between(40, 250);
    const stations = [0.08, 0.25, 0.4, 0.6, 0.85];
    // Any offsets at all: hollows, flat backs.
    const side = (most: number) =>
      offsetSquared(
        lengthMm,
        stations.map((s) => ({ stationMm: s * lengthMm, offsetMm: between(0.2, 1) * most })),
        { noseRadiusMm: 0.02 * lengthMm, tailRadiusMm: 0.01 * lengthMm },
      );
    return {
      lengthMm,
      backSquared: side(0.15 * lengthMm),
      bellySquared: side(0.15 * lengthMm),
      halfBreadthSquared: side(0.1 * lengthMm),
      upperExponent: monotoneCurve([0, lengthMm], [between(1, 6), between(1, 6)]),
      lowerExponent: monotoneCurve([0, lengthMm], [between(1, 6), between(1, 6)]),
    };
  });

  test('waterlines and buttocks lie on the surface that upright chords end on', () => {
    let looked = 0;
    for (const shape of shapes) {
      const chords = chordsOf(shape, 0);
      for (const share of [0.3, 0.6]) {
        const z = share * 0.15 * shape.lengthMm;
        for (const [x, y] of waterlines(shape, z).flatMap((line) => line.slice(1, -1))) {
          // Straight up from under the waterline the body ends at its height; the chord is the inverse of what was drawn.
          expect(chords(x)(y).high).toBeCloseTo(z, 6);
          looked++;
        }
        const beside = share * 0.1 * shape.lengthMm;
        // Both ends lie on the datum line, at a root of 1e-6 mm where a full section rises like a wall.
        for (const line of buttocks(shape, beside))
          for (const [x, height] of line.filter(([, z]) => z !== 0)) {
            const { low, high } = chords(x)(beside);
            expect(Math.min(Math.abs(height - low), Math.abs(height - high))).toBeLessThan(1e-9);
            looked++;
          }
      }
    }
    expect(looked).toBeGreaterThan(2000);
  });

  test('a body hollow in the middle has a waterline in parts', () => {
    const parts = shapes.flatMap((shape) =>
      [0.3, 0.5, 0.7, 0.85].map((s) => waterlines(shape, s * 0.15 * shape.lengthMm).length),
    );
    expect(Math.max(...parts)).toBeGreaterThan(1);
  });

  test('nowhere is it higher or broader than at its greatest', () => {
    for (const shape of shapes) {
      const { height, breadth, section } = greatests(shape);
      const looks = Array.from({ length: 2001 }, (_, i) => (i * shape.lengthMm) / 2000);
      const high = (x: number) => offsetAt(shape.backSquared, x) + offsetAt(shape.bellySquared, x);
      expect(high(height.stationMm)).toBe(height.mm);
      expect(Math.max(...looks.map(high)) - height.mm).toBeLessThan(1e-9);
      expect(
        Math.max(...looks.map((x) => 2 * offsetAt(shape.halfBreadthSquared, x))) - breadth.mm,
      ).toBeLessThan(1e-9);
      expect(section.mm2).toBeGreaterThan(0);
    }
  });
});

test('the greatest sizes of an ellipsoid are its axes, in the middle', () => {
  const { height, breadth, section } = greatests(ellipsoid());
  expect(height).toEqual({ stationMm: A, mm: BACK + BELLY });
  expect(breadth).toEqual({ stationMm: A, mm: 2 * BREADTH });
  expect(section.stationMm).toBe(A);
  // Two halves of ellipses: π/2·b·h each.
  expect(section.mm2).toBeCloseTo((Math.PI / 2) * BREADTH * (BACK + BELLY), 9);
});
