/**
 * Sums of bands (Minkowski sums): their high line is the greatest, their low line the least sum of
 * heights that add up to an x. Exact for convex bands; with hollows it exceeds the sum a little and
 * never falls short.
 */
import type { Point2 } from '../geometry/vec.js';
import { type Band, bandBetween, heightAt, type Line, lineOf } from './band.js';

/** Hollows are followed to this, mm: what is filled lies outside the outline. */
const HOLLOW_MM = 0.05;
/** With hollows, a sum's line is kept with fewer points and lies up to twice this outside, mm. */
const SUM_MM = 0.01;

export const bandSum = (a: Band, b: Band): Band =>
  bandBetween(negated(greatestSum(negated(a.low), negated(b.low))), greatestSum(a.high, b.high));

/** The band turned by 180° about the origin. */
export const turnedBand = ({ low, high }: Band): Band => bandBetween(turned(high), turned(low));

const negated = (line: Line): Line => lineOf(line.points.map(([x, y]): Point2 => [x, -y]));

const turned = (line: Line): Line =>
  lineOf(line.points.map(([x, y]): Point2 => [-x, -y]).reverse());

/** h(x) = greatest f(t) + g(x − t). */
function greatestSum(f: Line, g: Line): Line {
  const sums = arches(f).flatMap((a) => arches(g).map((b) => archSum(a, b)));
  if (sums.length === 1) return lineOf(sums[0]);
  const lines = sums.map(lineOf);
  const xs = [...new Set(sums.flat().map((p) => p[0]))].sort((a, b) => a - b);
  // Between corners every sum is straight or absent, so the straight line between greatest values
  // lies on or above them all.
  const top = xs.map((x): Point2 => [x, Math.max(...lines.map((l) => valueAt(l, x)))]);
  return lineOf(thinned(top, SUM_MM).map(([x, y]): Point2 => [x, y + SUM_MM]));
}

const valueAt = (line: Line, x: number): number =>
  x < line.x[0] || x > line.x[line.x.length - 1] ? -Infinity : heightAt(line, x);

/**
 * Few arches (lines that bend downward) that together lie on or above a line, and above it by at most
 * HOLLOW_MM: each spans as far to the right as its hull stays that near.
 */
function arches(line: Line): Point2[][] {
  const { points } = line;
  const out: Point2[][] = [];
  for (let start = 0; start < points.length - 1; ) {
    let end = start + 1;
    let arch = points.slice(start, end + 1);
    while (end + 1 < points.length) {
      const next = arched(arch, points[end + 1]);
      if (hollowUnder(next, points, start, end + 1) > HOLLOW_MM) break;
      arch = next;
      end++;
    }
    out.push(arch);
    start = end;
  }
  return out;
}

/** The arch over an arch and one more point to its right. */
function arched(arch: readonly Point2[], p: Point2): Point2[] {
  const out = [...arch];
  while (out.length > 1 && steeper([out[out.length - 2], p], 0, out, out.length - 2) >= 0)
    out.pop();
  return [...out, p];
}

/** Greatest height of an arch's last segment above the points it spans. */
function hollowUnder(
  arch: readonly Point2[],
  points: readonly Point2[],
  start: number,
  end: number,
): number {
  const [a, b] = arch.slice(-2);
  let depth = 0;
  for (let i = end - 1; i > start && points[i][0] > a[0]; i--) {
    const [x, y] = points[i];
    depth = Math.max(depth, a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]) - y);
  }
  return depth;
}

/** Sum of two lines that bend downward: their segments in order of falling slope. */
function archSum(a: readonly Point2[], b: readonly Point2[]): Point2[] {
  const out: Point2[] = [[a[0][0] + b[0][0], a[0][1] + b[0][1]]];
  let i = 0;
  let j = 0;
  while (i < a.length - 1 || j < b.length - 1) {
    const side = j === b.length - 1 ? 1 : i === a.length - 1 ? -1 : steeper(a, i, b, j);
    if (side >= 0) i++;
    if (side <= 0) j++;
    out.push([a[i][0] + b[j][0], a[i][1] + b[j][1]]);
  }
  return out;
}

const steeper = (a: readonly Point2[], i: number, b: readonly Point2[], j: number): number =>
  (a[i + 1][1] - a[i][1]) * (b[j + 1][0] - b[j][0]) -
  (b[j + 1][1] - b[j][1]) * (a[i + 1][0] - a[i][0]);

/** Points between which the line strays from the others by at most `tolerance` up or down. */
function thinned(points: readonly Point2[], tolerance: number): Point2[] {
  const [[x0, y0], [x1, y1]] = [points[0], points[points.length - 1]];
  let far = 0;
  let at = 0;
  points.forEach(([x, y], i) => {
    const off = Math.abs(y - y0 - ((y1 - y0) * (x - x0)) / (x1 - x0));
    if (off > far) [far, at] = [off, i];
  });
  if (far <= tolerance || at === 0 || at === points.length - 1)
    return [points[0], points[points.length - 1]];
  return [
    ...thinned(points.slice(0, at + 1), tolerance).slice(0, -1),
    ...thinned(points.slice(at), tolerance),
  ];
}
