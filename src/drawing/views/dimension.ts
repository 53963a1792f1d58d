/**
 * Dimensions after the habits of ISO 129-1: thin lines, filled arrows, extension lines that begin a
 * little off the outline and end a little beyond the arrows, the number over its line and read from
 * below or from the right.
 */
import type { Point2 } from '../../geometry/vec.js';
import { type Shape, type Text, textWidthMm } from '../picture/picture.js';
import { SIZES, words } from '../picture/words.js';
import { arrowhead, ink } from './ink.js';

/** From the outline to its extension line, and how far that goes beyond the arrow, mm. */
const OFF_MM = 0.8;
const BEYOND_MM = 1.2;
/** Less room than this between the extension lines, and the arrows stand outside, mm. */
const LEAST_INSIDE_MM = 6;
const OUTSIDE_MM = 4;
/** From a line to the baseline of the number over it. */
const OVER_MM = 1.3;

/** From an upright line to a number that stands level beside it: clear of the extension lines. */
const ASIDE_MM = BEYOND_MM + 0.6;

/** Height a level dimension takes over its line, mm. */
export const OVER_LINE_MM = BEYOND_MM + OVER_MM + SIZES.note;

/** Between two places, along a level line at `y`; a number wider than that begins over its left end. */
export function levelDimension(
  { from, to, y }: { readonly from: Point2; readonly to: Point2; readonly y: number },
  text: string,
): Shape[] {
  const isInside = isRoomFor(text, Math.abs(to[0] - from[0]));
  const left = Math.min(from[0], to[0]);
  return [
    ...[from, to].map((p) => extension(p, [p[0], y])),
    ...arrowed([from[0], y], [to[0], y]),
    isInside
      ? words(text, (from[0] + to[0]) / 2, y + OVER_MM, { anchor: 'middle' })
      : words(text, left, y + BEYOND_MM + OVER_MM),
  ];
}

const isRoomFor = (text: string, mm: number): boolean =>
  textWidthMm(text, SIZES.note) + 2 * OFF_MM <= mm;

/** From an upright dimension's line to the end of what stands right of it, for one so long on paper. */
export const besideLineMm = (text: string, longMm: number): number =>
  isRoomFor(text, longMm) ? BEYOND_MM : ASIDE_MM + textWidthMm(text, SIZES.note);

/**
 * Between two places, along an upright line at `x`; the number is read from the right, or stands level
 * beside the line where that has no room for it.
 */
export function uprightDimension(
  { low, high, x }: { readonly low: Point2; readonly high: Point2; readonly x: number },
  text: string,
): Shape[] {
  const middle = (low[1] + high[1]) / 2;
  return [
    ...[low, high].map((p) => extension(p, [x, p[1]])),
    ...arrowed([x, low[1]], [x, high[1]]),
    isRoomFor(text, high[1] - low[1])
      ? turned(text, x - OVER_MM, middle, 'middle')
      : words(text, x + ASIDE_MM, middle - 0.28 * SIZES.note),
  ];
}

/** Text that runs upward, its baseline on x. */
export const turned = (text: string, x: number, y: number, anchor: Text['anchor']): Text => ({
  ...words(text, x, y, { anchor }),
  turnDeg: 90,
});

/** From beside an outline to beyond a dimension line; nothing but a point where they are one. */
function extension(from: Point2, to: Point2): Shape {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const long = Math.hypot(dx, dy) || 1;
  const at = (p: Point2, mm: number): Point2 => [p[0] + (mm * dx) / long, p[1] + (mm * dy) / long];
  return ink([at(from, Math.min(OFF_MM, long)), at(to, BEYOND_MM)], 'hair');
}

/** A line with an arrow at either end: within it, or pointing in from outside. */
function arrowed(a: Point2, b: Point2): Shape[] {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const way: Point2 = long > 0 ? [(b[0] - a[0]) / long, (b[1] - a[1]) / long] : [1, 0];
  const back: Point2 = [-way[0], -way[1]];
  if (long >= LEAST_INSIDE_MM) return [ink([a, b], 'hair'), arrowhead(a, back), arrowhead(b, way)];
  const out = (p: Point2, [dx, dy]: Point2): Point2 => [
    p[0] + OUTSIDE_MM * dx,
    p[1] + OUTSIDE_MM * dy,
  ];
  return [ink([out(a, back), out(b, way)], 'hair'), arrowhead(a, way), arrowhead(b, back)];
}
