/**
 * A curve through points that never leaves the range of the two points it runs between: piecewise
 * cubic, smooth (continuous slope), no overshoot.
 *
 * Slopes come from the parabola through each point and its neighbors and are then limited to three
 * times the smaller neighboring secant, 0 at a peak or a hollow: F. N. Fritsch and R. E. Carlson,
 * "Monotone piecewise cubic interpolation", SIAM J. Numer. Anal. 17 (1980) 238–246 (from memory).
 * Parabolas are reproduced exactly where no limit acts, so with a point at the peak an ellipse
 * interpolated by the squares of its offsets is exact.
 */
import { Fault } from '../problem.js';

export type Curve = {
  readonly knots: readonly number[];
  /** Constant beyond the first and the last knot. */
  readonly value: (x: number) => number;
  /** Zero beyond the first and the last knot. */
  readonly slope: (x: number) => number;
};

/** Slopes wanted at the ends; where absent the parabola through the three end points gives one. */
export type EndSlopes = { readonly start?: number; readonly end?: number };

/** @throws Fault unless xs rise strictly and there are as many finite ys; one point gives a constant. */
export function monotoneCurve(
  xs: readonly number[],
  ys: readonly number[],
  ends: EndSlopes = {},
): Curve {
  if (xs.length === 0 || xs.length !== ys.length)
    throw new Fault(`curve of ${xs.length} and ${ys.length} numbers`);
  for (let i = 0; i < xs.length; i++) {
    if (!Number.isFinite(ys[i]) || !(i === 0 || xs[i] > xs[i - 1]))
      throw new Fault(`curve knot ${i}: ${xs[i]}, ${ys[i]}`);
  }
  const slopes = limitedSlopes(xs, ys, ends);
  const last = xs.length - 1;
  const interval = (x: number): number => {
    let [low, high] = [0, last];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (xs[middle] <= x) low = middle;
      else high = middle;
    }
    return low;
  };
  return {
    knots: xs,
    value: (x) => {
      if (x <= xs[0]) return ys[0];
      if (x >= xs[last]) return ys[last];
      const i = interval(x);
      const h = xs[i + 1] - xs[i];
      const t = (x - xs[i]) / h;
      const [u, tt] = [1 - t, t * t];
      return (
        ys[i] * (1 + 2 * t) * u * u +
        slopes[i] * h * t * u * u +
        ys[i + 1] * tt * (3 - 2 * t) -
        slopes[i + 1] * h * tt * u
      );
    },
    slope: (x) => {
      if (x < xs[0] || x > xs[last] || last === 0) return 0;
      const i = interval(x);
      const h = xs[i + 1] - xs[i];
      const t = (x - xs[i]) / h;
      return (
        ((ys[i + 1] - ys[i]) * 6 * t * (1 - t)) / h +
        slopes[i] * (1 - t) * (1 - 3 * t) +
        slopes[i + 1] * t * (3 * t - 2)
      );
    },
  };
}

/** Steepest end slope that still cannot overshoot between the end point and its neighbor. */
export const steepestEnd = (secant: number): number => 3 * secant;

function limitedSlopes(xs: readonly number[], ys: readonly number[], ends: EndSlopes): number[] {
  const n = xs.length;
  if (n === 1) return [0];
  const h = Array.from({ length: n - 1 }, (_, i) => xs[i + 1] - xs[i]);
  const secants = h.map((step, i) => (ys[i + 1] - ys[i]) / step);
  return xs.map((_, i) => {
    if (i === 0)
      return limited(
        ends.start ?? endSlope(h[0], h[1], secants[0], secants[1]),
        secants[0],
        secants[0],
      );
    if (i === n - 1) {
      const wanted = ends.end ?? endSlope(h[n - 2], h[n - 3], secants[n - 2], secants[n - 3]);
      return limited(wanted, secants[n - 2], secants[n - 2]);
    }
    const parabola = (secants[i - 1] * h[i] + secants[i] * h[i - 1]) / (h[i - 1] + h[i]);
    return limited(parabola, secants[i - 1], secants[i]);
  });
}

const endSlope = (
  h0: number,
  h1: number | undefined,
  s0: number,
  s1: number | undefined,
): number => (h1 === undefined || s1 === undefined ? s0 : s0 + ((s0 - s1) * h0) / (h0 + h1));

function limited(slope: number, before: number, after: number): number {
  if (before * after <= 0) return 0;
  const most = 3 * Math.min(Math.abs(before), Math.abs(after));
  return Math.sign(before) * Math.min(Math.max(0, slope * Math.sign(before)), most);
}
