/** What is drilled through a drill-stop jig: axes into the sawn blank, in its side view. x aft, z up, mm. */
import { pointBeyondMm } from '../../blank/blank.js';
import { cosSinDeg, dot, type Point2, quarterLeft } from '../../geometry/vec.js';
import type { KeyPath } from '../../problem.js';
import type { JigBlank } from '../jig.js';

export type BoringFor = 'ballast' | 'hanger' | 'tow eye' | 'tail eye';

export type Boring = {
  readonly for: BoringFor;
  /** Of the pattern, where a problem is told. */
  readonly path: KeyPath;
  /** Where the axis enters the sawn blank. */
  readonly mouth: Point2;
  /** Unit, into the wood. */
  readonly inward: Point2;
  readonly diameterMm: number;
  /** Included angle of the bit's point. */
  readonly pointAngleDeg: number;
  /** At full diameter, on the axis from the mouth. */
  readonly depthMm: number;
};

/** A ballast hole that may lean: positive, its floor lies further aft than its mouth. */
type Hole = JigBlank['holes'][number] & { readonly tiltDeg?: number };

/** Into the wood, from a hole's lean against the perpendicular to the datum line. */
export function axisOf({ tiltDeg = 0 }: Pick<Hole, 'tiltDeg'>): Point2 {
  const [cos, sin] = cosSinDeg(tiltDeg);
  return [sin, cos];
}

export const ballastBorings = (holes: readonly Hole[]): Boring[] =>
  holes.map((hole, i) => ({
    for: 'ballast',
    path: ['ballast', i],
    mouth: [hole.stationMm, hole.bellyMm],
    inward: axisOf(hole),
    diameterMm: hole.diameterMm,
    pointAngleDeg: hole.pointAngleDeg,
    depthMm: hole.depthMm,
  }));

/** Depth of the tip of the bit's point. */
export const tipDepthMm = (boring: Boring): number => boring.depthMm + pointBeyondMm(boring);

/** How far aft a boring from the belly leans, degrees; 0 for those along the datum line. */
export const leanDeg = ({ inward: [x, z] }: Boring): number =>
  z > 0 ? (Math.atan2(x, z) * 180) / Math.PI : 0;

export const fromBelly = ({ for: what }: Boring): boolean =>
  what === 'ballast' || what === 'hanger';

/**
 * The side view turned so that an axis stands upright: across it, and along it into the wood. For an
 * axis square to the datum line these are station and height.
 */
export const upright = (inward: Point2, p: Point2): Point2 => [
  0 - dot(p, quarterLeft(inward)),
  dot(p, inward),
];

export const fromUpright = (inward: Point2, [across, along]: Point2): Point2 => [
  across * inward[1] + along * inward[0],
  along * inward[1] - across * inward[0],
];
