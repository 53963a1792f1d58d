/** Judges the limits told of a nest: against what a share can be, and against the faces that were made. */
import type { Point2 } from '../geometry/vec.js';
import type { NestComplaint } from './complaint.js';
import type { Nest, NestFace } from './nest.js';

/**
 * A face of one pattern may pass its limit by this share: the limit is told up to 0.3 % low, since
 * outlines are grown by 0.024 mm more than the gap asks, and for a hollow outline it is the best
 * lattice that was found, not one proved densest.
 */
const LIMIT_TOLERANCE = 0.02;

/**
 * Every part has a limit above 0 and at most 1. Copies of one part without tilt, each grown by half
 * the gap, lie in the face grown by as much, and such rectangles tile the plane, so they take no more
 * of it than the limit says.
 */
export function limitComplaints({ faces, made, limitRatios }: Nest): NestComplaint[] {
  const wrong = Object.keys(made).filter(
    (part) => !(limitRatios[part] > 0 && limitRatios[part] <= 1),
  );
  return [
    ...wrong.map((part): NestComplaint => ({ kind: 'limit', part, limitRatio: limitRatios[part] })),
    ...faces.flatMap((face): NestComplaint[] => {
      const part = onlyPart(face);
      if (part === null || wrong.includes(part)) return [];
      const { id, lengthMm, widthMm, gapMm } = face;
      const grown = ((lengthMm + gapMm) * (widthMm + gapMm)) / (lengthMm * widthMm);
      const mostRatio = limitRatios[part] * grown * (1 + LIMIT_TOLERANCE);
      const usedRatio =
        face.placements.reduce((sum, p) => sum + shoelace(p.outline), 0) / (lengthMm * widthMm);
      return usedRatio <= mostRatio
        ? []
        : [{ kind: 'beyond-limit', face: id, part, usedRatio, mostRatio }];
    }),
  ];
}

/** The part a face has nothing but copies of, all along the grain; else null. */
function onlyPart({ placements }: NestFace): string | null {
  const [{ part }] = placements;
  const isPlain = placements.every((p) => p.part === part && p.turnDeg % 180 === 0);
  return isPlain ? part : null;
}

const shoelace = (outline: readonly Point2[]): number =>
  Math.abs(
    outline.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = outline[(i + 1) % outline.length];
      return sum + (x * nextY - nextX * y) / 2;
    }, 0),
  );
