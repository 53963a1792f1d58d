/** The side view of a body as a closed path of arcs, counter-clockwise: along the belly to the tail, back along the back. */
import { type BodyShape, knotsOf, offsetAt } from '../body/shape.js';
import { type ArcPath, pathOf, type Segment } from '../geometry/arcpath.js';
import { arcsAlong, type SmoothCurve } from '../geometry/biarc.js';
import type { Curve } from '../geometry/monotone.js';

/** How far the arcs may stray from the smooth side view, mm; a quarter of the chord tolerance of outputs. */
export const ARC_FIT_MM = 0.005;

export function profilePath(shape: BodyShape): ArcPath {
  const belly = sideCurve(shape, shape.bellySquared, -1);
  const back = sideCurve(shape, shape.backSquared, 1);
  const backward: SmoothCurve = (t) => {
    const { point, tangent } = back(-t);
    return { point, tangent: [-tangent[0], -tangent[1]] };
  };
  const angles = knotsOf(shape).map((x) => angleAt(shape, x));
  const segments: Segment[] = [];
  for (let i = 1; i < angles.length; i++)
    segments.push(...arcsAlong(belly, angles[i - 1], angles[i], ARC_FIT_MM));
  for (let i = angles.length - 1; i > 0; i--)
    segments.push(...arcsAlong(backward, -angles[i], -angles[i - 1], ARC_FIT_MM));
  return pathOf(segments, true);
}

const angleAt = (shape: BodyShape, x: number): number => Math.acos(1 - (2 * x) / shape.lengthMm);

/**
 * One side over an angle θ, x = L(1 − cos θ)/2. The offset leaves nose and tail like the root of x,
 * which is straight in θ, so the curve and its tangent are tame everywhere.
 */
function sideCurve(shape: BodyShape, squared: Curve, sign: 1 | -1): SmoothCurve {
  const L = shape.lengthMm;
  const atEnds = {
    nose: Math.sqrt(Math.max(0, squared.slope(0)) * L) / 2,
    tail: Math.sqrt(Math.max(0, -squared.slope(L)) * L) / 2,
  };
  return (angle) => {
    const x = (L / 2) * (1 - Math.cos(angle));
    const h = offsetAt(squared, x);
    const dx = (L / 2) * Math.sin(angle);
    const near = 1e-7;
    let dh = h > 0 ? (squared.slope(x) * dx) / (2 * h) : 0;
    if (angle < near) dh = atEnds.nose;
    if (angle > Math.PI - near) dh = -atEnds.tail;
    // A flat side starts along the datum line, where both rates vanish.
    const still = Math.abs(dx) < 1e-9 && dh === 0;
    return { point: [x, sign * h], tangent: still ? [1, 0] : [Math.max(dx, 0), sign * dh] };
  };
}
