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

/** Height a level dimension takes over its line, mm. */
export const OVER_LINE_MM = OVER_MM + SIZES.note;

/** Between two places, along a level line at `y`. */
export function levelDimension(
  { from, to, y }: { readonly from: Point2; readonly to: Point2; readonly y: number },
  text: string,
): Shape[] {
  return [
    ...[from, to].map((p) => extension(p, [p[0], y])),
    ...arrowed([from[0], y], [to[0], y]),
    words(text, (from[0] + to[0]) / 2, y + OVER_MM, { anchor: 'middle' }),
  ];
}

/**
 * Between two places, along an upright line at `x`; the number is read from the right. One that has no
 * room between the extension lines stands beyond them, at the end told, beside the line drawn on.
 */
export function uprightDimension(
  { low, high, x }: { readonly low: Point2; readonly high: Point2; readonly x: number },
  text: string,
  beyond: 'up' | 'down' = 'up',
): Shape[] {
  const long = textWidthMm(text, SIZES.note);
  const isInside = long + 2 * OFF_MM <= high[1] - low[1];
  const [end, way] = beyond === 'up' ? [high[1], 1] : [low[1], -1];
  const from = end + way * (OUTSIDE_MM + OFF_MM);
  return [
    ...[low, high].map((p) => extension(p, [x, p[1]])),
    ...arrowed([x, low[1]], [x, high[1]]),
    ...(isInside
      ? [turned(text, x - OVER_MM, (low[1] + high[1]) / 2, 'middle')]
      : [
          ink(
            [
              [x, end],
              [x, from + way * long],
            ],
            'hair',
          ),
          turned(text, x - OVER_MM, from, beyond === 'up' ? 'start' : 'end'),
        ]),
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
