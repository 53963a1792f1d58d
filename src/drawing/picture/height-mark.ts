/** A dimension of a height over the water, beside what it is the height of. */
import { add, type Point2 } from '../../geometry/vec.js';
import type { Marked } from './centers.js';
import { stroke } from './lure-view.js';
import type { Line } from './picture.js';
import { textWidthMm } from './picture.js';
import { SIZES } from './words.js';

type Height = {
  readonly text: string;
  /** What is so high, on the sheet. */
  readonly from: Point2;
  /** Where the dimension stands on the surface. */
  readonly foot: Point2;
};

/** Under this a figure does not fit between the ends of its dimension, mm. */
const LOW_MM = 4.6;
/** How far the line of a low dimension goes on beyond both its ends, mm. */
const BEYOND_MM = 2;
/** From the dimension to its figure, mm. */
const GAP_MM = 1.8;

/**
 * A level line from the point, an upright between it and the surface with cross strokes at its ends,
 * and the figure outside of it: beside its middle, or where the dimension is too low for that, over
 * it in the air or under it in the water.
 */
export function heightMark({ text, from, foot: [x, surface] }: Height): Marked {
  const out = x < from[0] ? -1 : 1;
  const [low, high] = [Math.min(from[1], surface), Math.max(from[1], surface)];
  const isLow = high - low < LOW_MM;
  const beyond = isLow ? BEYOND_MM : 0;
  const level = upright([from, [x + out, from[1]]]);
  const shapes = [
    level,
    upright([
      [x, low - beyond],
      [x, high + beyond],
    ]),
    ...[from[1], surface].map((y) => tick([x, y])),
  ];
  const middle: Point2 = [x, (low + high) / 2];
  if (!isLow)
    return { shapes, labels: [{ text, at: middle, firstDeg: out < 0 ? 180 : 0, gapMm: GAP_MM }] };
  const side = x + out * (GAP_MM + textWidthMm(text, SIZES.note) / 2);
  const isOver = from[1] >= surface;
  return {
    shapes,
    labels: [{ text, at: [side, isOver ? high : low], firstDeg: isOver ? 90 : -90, gapMm: 0.8 }],
  };
}

const upright = (points: readonly Point2[]): Line => ({
  ...stroke(points, 'line', 'hair'),
  clear: true,
});

const tick = (at: Point2): Line => stroke([add(at, [-1, -0.6]), add(at, [1, 0.6])], 'line', 'fine');
