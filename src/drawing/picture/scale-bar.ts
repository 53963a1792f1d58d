/** How large a picture is: scales in steps, and a bar of exactly 100 mm of paper. */
import type { Point2 } from '../../geometry/vec.js';
import { Fault } from '../../problem.js';
import { stroke } from './lure-view.js';
import type { Shape } from './picture.js';
import { words } from './words.js';

export const BAR_MM = 100;
const TICK_MM = 1.5;

/** ISO 5455 has 1, 2 and 5 in each ten (from memory); the others stand between for what would be drawn too small. */
const REDUCTIONS = [1, 1.5, 2, 2.5, 4, 5, 7.5] as const;
/** What is drawn larger still shows its facets. */
const ENLARGEMENTS = [5, 2] as const;

/**
 * The largest scale (mm of paper for a mm) at which `size` fits into `room`, both [width, height].
 * @throws Fault where nothing fits: a size that is not finite, or no room.
 */
export function scaleFor(size: Point2, room: Point2): number {
  const fits = (scale: number) => scale * size[0] <= room[0] && scale * size[1] <= room[1];
  const tens = [1, 10, 100, 1000];
  const scales = [
    ...ENLARGEMENTS,
    ...tens.flatMap((ten) => REDUCTIONS.map((reduction) => 1 / (reduction * ten))),
  ];
  const scale = scales.find(fits);
  if (scale === undefined)
    throw new Fault(`${size.join(' by ')} fits into ${room.join(' by ')} at no scale`);
  return scale;
}

export const scaleWords = (scale: number): string =>
  scale >= 1 ? `${rounded(scale)} : 1` : `1 : ${rounded(1 / scale)}`;

const rounded = (value: number): number => Number(value.toFixed(2));

/** A bar with ends and a mark in the middle; `at` is its left end. */
export function scaleBar([x, y]: Point2): Shape[] {
  const tick = (t: number) =>
    stroke(
      [
        [x + t, y - TICK_MM],
        [x + t, y + TICK_MM],
      ],
      'ink',
      'fine',
    );
  return [
    stroke(
      [
        [x, y],
        [x + BAR_MM, y],
      ],
      'ink',
      'fine',
    ),
    ...[0, BAR_MM / 2, BAR_MM].map(tick),
    words('0', x, y + 2.6, { anchor: 'middle' }),
    words('50', x + BAR_MM / 2, y + 2.6, { anchor: 'middle' }),
    words('100 mm on paper', x + BAR_MM, y + 2.6, { anchor: 'end' }),
  ];
}
