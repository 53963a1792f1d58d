import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { monotoneCurve, steepestEnd } from '../../src/geometry/monotone.js';
import { gamma, integrate } from '../../src/geometry/quadrature.js';

const SEED = 20261125; // printed by fast-check on failure

/** Rising stations with any heights. */
const tables = fc
  .array(
    fc.tuple(
      fc.double({ min: 0.1, max: 20, noNaN: true }),
      fc.double({ min: 0, max: 400, noNaN: true }),
    ),
    { minLength: 2, maxLength: 12 },
  )
  .map((rows) => {
    let x = 0;
    return { xs: rows.map(([step]) => (x += step)), ys: rows.map(([, y]) => y) };
  });

describe('curves through points', () => {
  test('pass through every point and stay between neighbors', () => {
    fc.assert(
      fc.property(tables, ({ xs, ys }) => {
        const c = monotoneCurve(xs, ys);
        for (let i = 0; i < xs.length; i++) {
          expect(c.value(xs[i])).toBeCloseTo(ys[i], 9);
          if (i === 0) continue;
          const [low, high] = [Math.min(ys[i - 1], ys[i]), Math.max(ys[i - 1], ys[i])];
          for (let k = 1; k < 20; k++) {
            const y = c.value(xs[i - 1] + ((xs[i] - xs[i - 1]) * k) / 20);
            expect(y).toBeGreaterThanOrEqual(low - 1e-9 * (1 + high));
            expect(y).toBeLessThanOrEqual(high + 1e-9 * (1 + high));
          }
        }
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test('slope is the derivative of value', () => {
    const c = monotoneCurve([0, 3, 10, 14], [0, 40, 60, 10]);
    for (let x = 0.1; x < 14; x += 0.37) {
      const h = 1e-5;
      expect(c.slope(x)).toBeCloseTo((c.value(x + h) - c.value(x - h)) / (2 * h), 4);
    }
  });

  test('a parabola with its peak at a point is exact', () => {
    const f = (x: number) => x * (10 - x);
    const xs = [0, 1, 3, 5, 8, 10];
    const c = monotoneCurve(xs, xs.map(f), { start: 10, end: -10 });
    for (let x = 0; x <= 10; x += 0.1) expect(c.value(x)).toBeCloseTo(f(x), 10);
  });

  test('the steepest end slope still stays below the next point, a steeper one is limited to it', () => {
    const steep = monotoneCurve([0, 2, 5], [0, 6, 9], { start: steepestEnd(3) });
    const steeper = monotoneCurve([0, 2, 5], [0, 6, 9], { start: 1000 });
    for (let x = 0; x < 2; x += 0.01) {
      expect(steep.value(x)).toBeLessThanOrEqual(6);
      expect(steeper.value(x)).toBe(steep.value(x));
    }
  });

  test('constant beyond the ends; one point is a constant', () => {
    const c = monotoneCurve([2, 4], [1, 5]);
    expect([c.value(0), c.value(9), c.slope(0), c.slope(9)]).toEqual([1, 5, 0, 0]);
    expect(monotoneCurve([3], [7]).value(100)).toBe(7);
  });

  test.each([
    [[], []],
    [
      [0, 0],
      [1, 2],
    ],
    [
      [0, 1],
      [1, Number.NaN],
    ],
    [[0, 1], [1]],
  ])('refuses %j, %j', (xs, ys) => {
    expect(() => monotoneCurve(xs, ys)).toThrow('curve');
  });
});

describe('quadrature', () => {
  test('20 points are exact for degree 39', () => {
    expect(integrate((t) => t ** 39, 0, 2)).toBeCloseTo(2 ** 40 / 40, -1);
    expect(integrate((t) => t ** 39, 0, 1)).toBeCloseTo(1 / 40, 14);
  });

  test('∫ sin over 0..π is 2, ∫ (1 − x²)² over −1..1 is 16/15', () => {
    expect(integrate(Math.sin, 0, Math.PI)).toBeCloseTo(2, 13);
    expect(integrate((x) => (1 - x * x) ** 2, -1, 1)).toBeCloseTo(16 / 15, 14);
  });

  test('gamma: factorials, Γ(1/2) = √π, reflection', () => {
    let factorial = 1;
    for (let n = 1; n < 15; n++) {
      expect(gamma(n) / factorial).toBeCloseTo(1, 13);
      factorial *= n;
    }
    expect(gamma(0.5)).toBeCloseTo(Math.sqrt(Math.PI), 13);
    expect(gamma(0.25) * gamma(0.75)).toBeCloseTo(Math.PI * Math.SQRT2, 12);
  });
});
