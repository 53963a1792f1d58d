/** The lip angle on the side view: a level line from where the slot meets the belly, an arc to the lip, and the number where it finds room. */
import type { LipSlot } from '../../blank/slot.js';
import type { Box, Point2 } from '../../geometry/vec.js';
import type { Shape } from '../picture/picture.js';
import { labeled } from '../picture/place.js';
import { arcLine } from '../picture/signs.js';
import { ink } from './ink.js';
import { millimeters } from './measure.js';

/** Of the arc, mm of paper, and how far its level side reaches. */
const ARC_MM = { radius: 11, side: 14 } as const;
/** What arc and number take up before the slot's mouth, mm of paper. */
export const ANGLE_MM = 24;
/** Smaller angles have no arc. */
const LEAST_DEG = 2;

/** The shapes with the angle added. */
export function lipAngle(
  { mouth, angleDeg }: LipSlot,
  inSide: (p: Point2) => Point2,
  shapes: readonly Shape[],
  window: Box,
): readonly Shape[] {
  const at = inSide(mouth);
  const half = ((180 + angleDeg / 2) * Math.PI) / 180;
  const middle: Point2 = [
    at[0] + ARC_MM.radius * Math.cos(half),
    at[1] + ARC_MM.radius * Math.sin(half),
  ];
  const arc =
    angleDeg < LEAST_DEG
      ? []
      : [
          ink([at, [at[0] - ARC_MM.side, at[1]]], 'hair'),
          { ...arcLine(at, ARC_MM.radius, 180, 180 + angleDeg), role: 'ink' } as const,
        ];
  return labeled(
    [...shapes, ...arc],
    [{ text: `${millimeters(angleDeg)}°`, at: middle, firstDeg: 180 + angleDeg / 2 }],
    window,
  );
}
