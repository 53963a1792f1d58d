/** Flaws of the wood as polygons that contain them, little larger than they are. */
import { circleRing, type Ring, ring } from '../geometry/ring.js';
import type { Point2 } from '../geometry/vec.js';
import type { Flaws, Knot, Split } from './nest.js';

/** Sides of the polygon round a circle: it stands off by at most 0.5 % of the radius. */
const SIDES = 32;

export const roundFlaw = ({ xMm, yMm, radiusMm }: Knot): Ring =>
  circleRing([xMm, yMm], radiusMm, { segments: SIDES, circumscribed: true });

/** Two half circles and the two lines that touch both; a circle when both ends are one point. */
export function splitFlaw({ fromMm, toMm, widthMm }: Split): Ring {
  const along = Math.atan2(toMm[1] - fromMm[1], toMm[0] - fromMm[0]);
  const radius = widthMm / 2 / Math.cos(Math.PI / SIDES);
  const halfRound = ([x, y]: Point2, ahead: number): Point2[] =>
    Array.from({ length: SIDES / 2 }, (_, k) => {
      const angle = ahead - Math.PI / 2 + ((2 * k + 1) * Math.PI) / SIDES;
      return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    });
  return ring([...halfRound(toMm, along), ...halfRound(fromMm, along + Math.PI)]);
}

/** Flaws moved along x. */
export const movedFlaws = ({ knots, splits, poorZones }: Flaws, byMm: number): Flaws => {
  const round = (k: Knot): Knot => ({ ...k, xMm: k.xMm + byMm });
  const point = ([x, y]: Point2): Point2 => [x + byMm, y];
  return {
    knots: knots.map(round),
    splits: splits.map((s) => ({ ...s, fromMm: point(s.fromMm), toMm: point(s.toMm) })),
    poorZones: poorZones.map(round),
  };
};
