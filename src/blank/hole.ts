/**
 * A ballast hole as the bit makes it: an axis in the center plane from the sawn belly into the wood,
 * a cylinder of full diameter, and over its floor the cone of the bit's point.
 */
import { add, cosSinDeg, type Point2, times, turned } from '../geometry/vec.js';
import type { Ballast } from '../pattern/pattern.js';
import { type BallastHole, pointBeyondMm } from './blank.js';

type Drilled = Pick<Ballast, 'diameterMm' | 'depthMm' | 'pointAngleDeg'>;

/** Where the axis meets the sawn belly: station and height. */
export const mouthOf = ({
  stationMm,
  bellyMm,
}: Pick<BallastHole, 'stationMm' | 'bellyMm'>): Point2 => [stationMm, bellyMm];

/** Unit vector along the axis into the wood: aft and up. */
export function axisOf({ tiltDeg }: Pick<Ballast, 'tiltDeg'>): Point2 {
  const [c, s] = cosSinDeg(tiltDeg);
  return [s, c];
}

type OnBelly = Pick<BallastHole, 'stationMm' | 'bellyMm' | 'tiltDeg'>;

/** The point of the axis so deep under the sawn belly. */
export const onAxis = (hole: OnBelly, depthMm: number): Point2 =>
  add(mouthOf(hole), times(axisOf(hole), depthMm));

/** Depth of the tip of the bit's point, on the axis from the sawn belly. */
export const tipDepthMm = (hole: Drilled): number => hole.depthMm + pointBeyondMm(hole);

/**
 * The mouth in the side view turned by the tilt about the nose, where the hole stands upright: its
 * place across the axis, and its height along it. Without a tilt those are station and height.
 */
export const uprightMouth = (hole: OnBelly): Point2 => turned(mouthOf(hole), hole.tiltDeg);

/** From that turned view to the frame of the lure. */
export const fromUpright = ({ tiltDeg }: Pick<Ballast, 'tiltDeg'>, p: Point2): Point2 =>
  turned(p, -tiltDeg);

/**
 * How far fore and aft of its station a hole reaches: its rim on a belly along the datum line, its
 * full-diameter floor, its tip.
 */
export function reachOf(hole: Drilled & Pick<Ballast, 'tiltDeg'>): {
  readonly foreMm: number;
  readonly aftMm: number;
} {
  const r = hole.diameterMm / 2;
  const [s, c] = axisOf(hole);
  const floor = hole.depthMm * s;
  const tip = tipDepthMm(hole) * s;
  return {
    foreMm: Math.max(r / c, r * c - floor, -tip),
    aftMm: Math.max(r / c, r * c + floor, tip),
  };
}

/**
 * The hole seen from the side, counter-clockwise: its rim on a belly along the datum line, its floor
 * and its tip.
 */
export function sideView(hole: Drilled & OnBelly): readonly Point2[] {
  const r = hole.diameterMm / 2;
  const [s, c] = axisOf(hole);
  const [x, low] = uprightMouth(hole);
  const floor = low + hole.depthMm;
  const rise = (r * s) / c;
  const tip = pointBeyondMm(hole);
  const corners: Point2[] = [
    [x - r, Math.min(floor, low - rise)],
    [x + r, Math.min(floor, low + rise)],
    [x + r, floor],
    ...(tip > 0 ? [[x, floor + tip] as const] : []),
    [x - r, floor],
  ];
  return corners.map((p) => fromUpright(hole, p));
}
