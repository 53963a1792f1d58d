/**
 * Bands: areas between a low and a high line over x. A lure's outline is one, and so is the sum of
 * two, hollows and all; in any other outline what hangs over is filled. In this form "is it inside?"
 * and "where do two edges cross?" are quick and never disagree about a shared corner: both ends of
 * every edge are stored, and a height is always looked up in one line at one x.
 */
import { boxOf, type Point2 } from '../geometry/vec.js';

/** A piecewise straight function of x; x rises from point to point. */
export type Line = {
  readonly points: readonly Point2[];
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Rise per run after each point; 0 after the last. */
  readonly slope: Float64Array;
};

export type Band = {
  readonly low: Line;
  readonly high: Line;
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
  /** Corners where the edge turns inward: the bottoms of hollows. */
  readonly pockets: readonly Point2[];
};

/** Coordinates that agree to this are equal, mm. */
const SAME = 1e-9;

/** An upright step inside a line is made a slope of this width, mm, on the outer side. */
const STEP = 1e-4;

/** A line through points of rising x. */
export function lineOf(points: readonly Point2[]): Line {
  const n = points.length;
  const [x, y, slope] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
  for (let i = 0; i < n; i++) {
    [x[i], y[i]] = points[i];
    if (i > 0 && x[i] > x[i - 1]) slope[i - 1] = (y[i] - y[i - 1]) / (x[i] - x[i - 1]);
  }
  return { points, x, y, slope };
}

/** The band between two lines over the same stretch of x. */
export function bandBetween(low: Line, high: Line): Band {
  const [minX, minY, maxX] = boxOf(low.points);
  const maxY = Math.max(...high.y);
  const inward = (line: Line, sign: number): Point2[] =>
    line.points.slice(1, -1).filter((_, i) => sign * (line.slope[i + 1] - line.slope[i]) > SAME);
  return { low, high, minX, maxX, minY, maxY, pockets: [...inward(low, -1), ...inward(high, 1)] };
}

/** The part of a band left of x, which lies right of its left end; all of it if x is beyond its right end. */
export function bandUpTo(band: Band, x: number): Band {
  if (x >= band.maxX) return band;
  const upTo = (line: Line): Line =>
    lineOf([...line.points.filter((p) => p[0] < x), [x, heightAt(line, x)]]);
  return bandBetween(upTo(band.low), upTo(band.high));
}

/** A band's corners, counter-clockwise. */
export function bandPoints({ low, high }: Band): Point2[] {
  const points = [...low.points, ...[...high.points].reverse()];
  return points.filter((p, i) => {
    const q = points[(i + 1) % points.length];
    return p[0] !== q[0] || p[1] !== q[1];
  });
}

/** A rectangle as a band; its width or height may be zero. */
export function rectBand(minX: number, minY: number, maxX: number, maxY: number): Band {
  const level = (y: number): Line =>
    lineOf([
      [minX, y],
      [maxX, y],
    ]);
  return bandBetween(level(minY), level(maxY));
}

/**
 * The band that contains a simple counter-clockwise polygon: the polygon itself if no upright line
 * meets it in two pieces, else with what hangs over filled.
 */
export function bandAround(points: readonly Point2[]): Band {
  const sides = sidesOf(points);
  if (sides) return bandBetween(lineOf(sides.low), lineOf(sides.high));
  return bandBetween(lineOf(outerLine(points, -1)), lineOf(outerLine(points, 1)));
}

/** The polygon's lower and upper side from left to right; null if x does not rise all along both. */
function sidesOf(points: readonly Point2[]): { low: Point2[]; high: Point2[] } | null {
  const n = points.length;
  const [minX, , maxX] = boxOf(points);
  const at = (best: (a: Point2, b: Point2) => boolean): number =>
    points.reduce((k, p, i) => (best(p, points[k]) ? i : k), 0);
  const walk = (from: number, to: number): Point2[] =>
    Array.from({ length: ((to - from + n) % n) + 1 }, (_, i) => points[(from + i) % n]);
  // Upright ends belong to neither side: the sides end at their corners.
  const leftLow = at((p, q) => p[0] < q[0] || (p[0] === minX && q[0] === minX && p[1] < q[1]));
  const leftHigh = at((p, q) => p[0] < q[0] || (p[0] === minX && q[0] === minX && p[1] > q[1]));
  const rightLow = at((p, q) => p[0] > q[0] || (p[0] === maxX && q[0] === maxX && p[1] < q[1]));
  const rightHigh = at((p, q) => p[0] > q[0] || (p[0] === maxX && q[0] === maxX && p[1] > q[1]));
  const low = walk(leftLow, rightLow);
  const high = walk(rightHigh, leftHigh).reverse();
  const rises = (side: Point2[]): boolean => side.every((p, i) => i === 0 || p[0] > side[i - 1][0]);
  return rises(low) && rises(high) ? { low, high } : null;
}

/** The highest (sign 1) or lowest (sign −1) edge over every x, strip by strip between the corners. */
function outerLine(points: readonly Point2[], sign: 1 | -1): Point2[] {
  const xs = [...new Set(points.map((p) => p[0]))].sort((a, b) => a - b);
  const strips = xs.slice(1).map((right, k) => outerEdge(points, sign, xs[k], right));
  const out: Point2[] = [[xs[0], strips[0][0]]];
  for (let k = 1; k < strips.length; k++) {
    const [x, before, after] = [xs[k], strips[k - 1][1], strips[k][0]];
    const step = Math.min(STEP, (x - xs[k - 1]) / 3, (xs[k + 1] - x) / 3);
    if (Math.abs(after - before) <= SAME) out.push([x, after]);
    else if (sign * (after - before) > 0) out.push([x - step, before], [x, after]);
    else out.push([x, before], [x + step, after]);
  }
  out.push([xs[xs.length - 1], strips[strips.length - 1][1]]);
  return out;
}

/** Heights at both ends of a strip of the outermost edge across it. */
function outerEdge(
  points: readonly Point2[],
  sign: 1 | -1,
  left: number,
  right: number,
): [number, number] {
  let best: [number, number] = [-sign * Infinity, -sign * Infinity];
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length];
    const [p, q] = a[0] < b[0] ? [a, b] : [b, a];
    if (p[0] > left || q[0] < right || q[0] === p[0]) return;
    const height = (x: number): number => p[1] + ((q[1] - p[1]) * (x - p[0])) / (q[0] - p[0]);
    const ends: [number, number] = [height(left), height(right)];
    if (sign * (ends[0] + ends[1] - best[0] - best[1]) > 0) best = ends;
  });
  return best;
}

/** Height of a line at x within its span. */
export const heightAt = (line: Line, x: number): number => onSegment(line, segmentAt(line, x), x);

/** Index of the segment that begins at or before x and ends after it; the last one at the end. */
export function segmentAt({ x }: Line, at: number): number {
  let low = 0;
  let high = x.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle] <= at) low = middle;
    else high = middle;
  }
  return low;
}

/** Height at x on segment i. */
export const onSegment = (c: Line, i: number, at: number): number =>
  c.y[i] + c.slope[i] * (at - c.x[i]);
