import { describe, expect, test } from 'vitest';
import { bodyShape } from '../../src/body/body.js';
import { chordsOf } from '../../src/body/chord.js';
import { halves } from '../../src/body/properties.js';
import { rootBetween } from '../../src/geometry/root.js';
import { ellipsoid, patternOf, seeded } from '../mass/lures.js';

describe('roots', () => {
  test.each([
    ['x³ = 2', (x: number) => x ** 3 - 2, 0, 3, Math.cbrt(2)],
    ['cos x = 0', Math.cos, 0, 3, Math.PI / 2],
    ['a root of slope without end', (x: number) => Math.cbrt(x - 0.7), 0, 1, 0.7],
    ['a root at an end', (x: number) => x - 1, 1, 4, 1],
  ] as const)('%s', (_, f, a, b, want) => {
    expect(rootBetween(f, [a, b], 1e-12)).toBeCloseTo(want, 10);
  });
});

describe('lines through an ellipsoid, by the quadratic they solve', () => {
  const [a, b, c] = [50, 8, 12];
  const shape = ellipsoid(a, b, c);
  const random = seeded(5);

  test.each([-60, -33, -5, 0, 14, 60])('leaning %d°', (tiltDeg) => {
    const t = (tiltDeg * Math.PI) / 180;
    const chordsAt = chordsOf(shape, tiltDeg);
    for (let k = 0; k < 200; k++) {
      const place = a * Math.cos(t) + (2 * random() - 1) * 40;
      const y = (2 * random() - 1) * 8;
      // ((x − a)/a)² + (y/b)² + (z/c)² = 1 on x = place cos t + s sin t, z = s cos t − place sin t.
      const [x0, z0] = [place * Math.cos(t) - a, -place * Math.sin(t)];
      const A = (Math.sin(t) / a) ** 2 + (Math.cos(t) / c) ** 2;
      const B = (x0 * Math.sin(t)) / a ** 2 + (z0 * Math.cos(t)) / c ** 2;
      const C = (x0 / a) ** 2 + (y / b) ** 2 + (z0 / c) ** 2 - 1;
      const rest = B * B - A * C;
      const { low, high } = chordsAt(place)(y);
      if (rest <= 0) expect(high - low).toBe(0);
      else {
        const half = Math.sqrt(rest) / A;
        // Where the line only grazes, a rounding of 1e-13 moves its ends by the root of it.
        const within = half > 0.05 ? 1e-8 : 1e-5;
        expect(Math.abs(low - (-B / A - half))).toBeLessThan(within);
        expect(Math.abs(high - (-B / A + half))).toBeLessThan(within);
      }
    }
  });
});

test('on a lure both ends lie on its surface, and the way between them inside', () => {
  const shape = bodyShape(patternOf('diver'));
  const random = seeded(6);
  let inside = 0;
  for (let k = 0; k < 300; k++) {
    const tiltDeg = 120 * random() - 60;
    const t = (tiltDeg * Math.PI) / 180;
    const [x0, z0] = [100 * random(), 30 * random() - 15];
    const place = x0 * Math.cos(t) - z0 * Math.sin(t);
    const y = 18 * random() - 9;
    const { low, high } = chordsOf(shape, tiltDeg)(place)(y);
    if (high - low < 1e-6) continue;
    inside++;
    const level = (s: number): number => {
      const x = place * Math.cos(t) + s * Math.sin(t);
      const z = s * Math.cos(t) - place * Math.sin(t);
      const { b, h, n } = halves(shape, x)[z >= 0 ? 0 : 1];
      return (Math.abs(y) / b) ** n + (Math.abs(z) / h) ** n;
    };
    expect(level(low)).toBeCloseTo(1, 6);
    expect(level(high)).toBeCloseTo(1, 6);
    for (let i = 1; i < 20; i++) expect(level(low + ((high - low) * i) / 20)).toBeLessThan(1);
  }
  expect(inside).toBeGreaterThan(100);
});
