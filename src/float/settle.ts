/**
 * How far a lure at some tilt is from rest.
 *
 * With the displaced volume held, the potential energy over the weight is E(up) = up · (G − B(up)),
 * G the center of gravity and B that of buoyancy, on the sphere of directions to the sky. A small
 * tilt t (a vector of the surface) moves B by −(I/V) t, I the second moments of the waterplane about
 * its center. So the slope of E is the part of G − B along the surface, and its second variation is
 * K = I/V − (up · (G − B)) 1: the metacentric heights, as a tensor. Rest is where the slope is none;
 * it is stable where K is positive.
 */
import type { Point2, Point3 } from '../geometry/vec.js';
import { along3, dot3, length3, sub3 } from '../geometry/vec3.js';
import { ellipsoidOffset, heave } from './heave.js';
import { type Immersion, immerse } from './immerse.js';
import type { Immersible } from './immersible.js';
import { type Eigen2, eigen2, type Symmetric2, spread3, tilted } from './tilt.js';

/** What is looked for: so much under, the weight acting there. */
export type Sought = {
  readonly solid: Immersible;
  readonly volumeMm3: number;
  readonly cgMm: Point3;
  /** How deep the solid's ellipsoid lies with this share under, in its half-heights. */
  readonly depth: number;
  /** Length to which tolerances refer: edge of the cube with the displaced volume. */
  readonly sizeMm: number;
};

export type Pose = { readonly up: Point3; readonly planeOffsetMm: number };

/** A pose with its slope and curvature, corrected to the volume sought where it is a little off. */
export type Look = Pose & {
  readonly immersion: Immersion;
  /** Volume still to be put under. */
  readonly missingMm3: number;
  readonly energyMm: number;
  /** The slope of the energy in the tangents. */
  readonly slopeMm: Point2;
  readonly stiffness: Symmetric2;
  readonly eigen: Eigen2;
};

/** Share of what is under, or of what is dry if that is less, up to which one linear step mends the depth together with the tilt. */
const NEAR_VOLUME = 0.1;
/** What the depth is mended to first where it was further off. */
const ROUGH_VOLUME = 0.02;

export function look(sought: Sought, pose: Pose): Look {
  const { solid, volumeMm3, cgMm } = sought;
  let { planeOffsetMm } = pose;
  let immersion = immerse(solid, pose.up, planeOffsetMm);
  const part = Math.min(volumeMm3, solid.volumeMm3 - volumeMm3);
  if (!(Math.abs(volumeMm3 - immersion.volumeMm3) <= NEAR_VOLUME * part)) {
    const rough = (ROUGH_VOLUME * part) / volumeMm3;
    ({ planeOffsetMm, immersion } = heave(solid, pose.up, volumeMm3, planeOffsetMm, rough));
  }
  const missingMm3 = volumeMm3 - immersion.volumeMm3;
  const { cbMm, centroidMm, secondMm4: i, tangents } = immersion;
  // The missing slice lies at the waterplane and pulls the center of buoyancy there.
  const cb = along3(cbMm, missingMm3 / volumeMm3, sub3(centroidMm, cbMm));
  const lever = sub3(cgMm, cb);
  const energyMm = dot3(pose.up, lever);
  const stiffness = {
    uu: i.uu / volumeMm3 - energyMm,
    uv: i.uv / volumeMm3,
    vv: i.vv / volumeMm3 - energyMm,
  };
  return {
    up: pose.up,
    planeOffsetMm,
    immersion,
    missingMm3,
    energyMm,
    slopeMm: [dot3(tangents[0], lever), dot3(tangents[1], lever)],
    stiffness,
    eigen: eigen2(stiffness),
  };
}

/** A first pose for a direction. */
export const poseAt = ({ solid, depth }: Sought, up: Point3): Pose => ({
  up,
  planeOffsetMm: ellipsoidOffset(solid, up, depth),
});

/** Tilts up to here keep the linear forecast of depth; farther the ellipsoid tells better. Radians. */
const LINEAR_TILT = 0.1;

/** The pose after a tilt given in the tangents, its depth forecast for the volume sought. */
export function advanced(sought: Sought, from: Look, tilt: Point2): Pose {
  const { immersion, missingMm3, planeOffsetMm } = from;
  const up = tilted(from.up, spread3(immersion.tangents, tilt));
  const mended = planeOffsetMm + (immersion.areaMm2 > 0 ? missingMm3 / immersion.areaMm2 : 0);
  const change =
    length3([tilt[0], tilt[1], 0]) <= LINEAR_TILT
      ? dot3(immersion.centroidMm, sub3(up, from.up))
      : ellipsoidOffset(sought.solid, up, sought.depth) -
        ellipsoidOffset(sought.solid, from.up, sought.depth);
  return { up, planeOffsetMm: mended + change };
}

/**
 * The tilt that Newton's method asks for, each of the two curvatures taken with the sign wanted
 * (index 0: both up, 1: the lesser down, 2: both down), never weaker than `least`, and no longer
 * than `longest`. Where the signs are the true ones and neither bound acts it is Newton's step; else
 * it still leads down, or up, toward a rest of the kind wanted.
 */
export function tiltToward(
  { slopeMm, eigen }: Look,
  index: 0 | 1 | 2,
  { least, longest }: { readonly least: number; readonly longest: number },
): Point2 {
  const [a, b] = eigen.lowWay;
  const alongLow = slopeMm[0] * a + slopeMm[1] * b;
  const alongHigh = -slopeMm[0] * b + slopeMm[1] * a;
  const low = (index >= 1 ? 1 : -1) * (alongLow / Math.max(Math.abs(eigen.low), least));
  const high = (index === 2 ? 1 : -1) * (alongHigh / Math.max(Math.abs(eigen.high), least));
  const shrink = Math.min(1, longest / Math.hypot(low, high)) || 0;
  return [shrink * (low * a - high * b), shrink * (low * b + high * a)];
}

/** How many of the two curvatures lead down: 0 a hollow of the energy, 1 a saddle, 2 a summit. */
export const indexOf = ({ eigen }: Look): 0 | 1 | 2 => (eigen.high < 0 ? 2 : eigen.low < 0 ? 1 : 0);

export const slopeOf = ({ slopeMm }: Look): number => Math.hypot(slopeMm[0], slopeMm[1]);
