/** What is drilled through a drill-stop jig: axes into the sawn blank, in its side view. x aft, z up, mm. */
import { axisOf, mouthOf } from '../../blank/hole.js';
import { dot, type Point2, quarterLeft } from '../../geometry/vec.js';
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

export const ballastBorings = (holes: JigBlank['holes']): Boring[] =>
  holes.map((hole, i) => ({
    for: 'ballast',
    path: ['ballast', i],
    mouth: mouthOf(hole),
    inward: axisOf(hole),
    diameterMm: hole.diameterMm,
    pointAngleDeg: hole.pointAngleDeg,
    depthMm: hole.depthMm,
  }));

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
