/** The judge's part on flaws of the wood: by brute force, sharing nothing with the placement. */
import type { Point2 } from '../geometry/vec.js';
import { distanceBelow, distanceTo, extentOf, partLeftOf } from './apart.js';
import { type NestComplaint, ROUNDING_MM } from './complaint.js';
import type { NestFace, NestPart, NestRules, Placement } from './nest.js';

/** Outlines nearer to a knot or split, nose parts nearer to a poor zone, than half the gap. */
export const flawComplaints = (
  face: NestFace,
  parts: readonly NestPart[],
  rules: NestRules,
): NestComplaint[] => [
  ...knotComplaints(face),
  ...splitComplaints(face),
  ...noseComplaints(face, parts, rules),
];

function knotComplaints({ id, placements, knots, gapMm }: NestFace): NestComplaint[] {
  const leastMm = gapMm / 2;
  return placements.flatMap(({ outline }, a) =>
    knots.flatMap(({ xMm, yMm, radiusMm }, knot): NestComplaint[] => {
      const distanceMm = distanceTo([xMm, yMm], outline) - radiusMm;
      if (distanceMm >= leastMm - ROUNDING_MM) return [];
      return [{ kind: 'knot', face: id, a, knot, distanceMm, leastMm }];
    }),
  );
}

function splitComplaints({ id, placements, splits, gapMm }: NestFace): NestComplaint[] {
  const leastMm = gapMm / 2;
  return placements.flatMap(({ outline }, a) =>
    splits.flatMap(({ fromMm, toMm, widthMm }, split): NestComplaint[] => {
      const far = widthMm / 2 + leastMm + ROUNDING_MM;
      const distanceMm = distanceBelow([fromMm, toMm], outline, far) - widthMm / 2;
      if (distanceMm >= leastMm - ROUNDING_MM) return [];
      return [{ kind: 'split', face: id, a, split, distanceMm, leastMm }];
    }),
  );
}

/** The nose part is cut from the part's own outline, then turned and moved as the placement says. */
function noseComplaints(
  { id, placements, poorZones, gapMm }: NestFace,
  parts: readonly NestPart[],
  { clearNoseRatio }: NestRules,
): NestComplaint[] {
  const leastMm = gapMm / 2;
  if (clearNoseRatio === 0 || poorZones.length === 0) return [];
  return placements.flatMap((placement, a) => {
    const part = parts.find((p) => p.id === placement.part);
    if (!part) return [];
    const { left, right } = extentOf(part.outline);
    const nose = partLeftOf(part.outline, left + clearNoseRatio * (right - left));
    const onFace = nose.map((p) => turnedAndMoved(p, placement));
    return poorZones.flatMap(({ xMm, yMm, radiusMm }, zone): NestComplaint[] => {
      const distanceMm = distanceTo([xMm, yMm], onFace) - radiusMm;
      if (distanceMm >= leastMm - ROUNDING_MM) return [];
      return [{ kind: 'poor-zone', face: id, a, zone, distanceMm, leastMm }];
    });
  });
}

/** A point of a part where a placement says it lies. */
export function turnedAndMoved([x, y]: Point2, { turnDeg, xMm, yMm }: Placement): Point2 {
  const angle = (turnDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [c * x - s * y + xMm, s * x + c * y + yMm];
}
