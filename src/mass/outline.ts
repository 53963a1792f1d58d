/** Sums over the sawn blank: a side view of lines and arcs, times its thickness. */

import type { BallastHole, Blank } from '../blank/blank.js';
import { fromUpright, uprightMouth } from '../blank/hole.js';
import { sawnBellyAlong } from '../blank/sawn-belly.js';
import {
  type ArcPath,
  arcOf,
  directions,
  pointOn,
  segmentLength,
  segmentsOf,
} from '../geometry/arcpath.js';
import { UNIT_RULE } from '../geometry/quadrature.js';
import { quarterLeft } from '../geometry/vec.js';
import type { Moments } from './moments.js';
import { floorOf, pointCone } from './plug.js';

/** Amount and first moments: what a stage needs for its mass and its center. */
export type Sums = Pick<Moments, 'amount' | 'x' | 'z'>;

export const added = (parts: readonly (readonly [factor: number, part: Sums])[]): Sums =>
  parts.reduce(
    (sum, [k, p]) => ({
      amount: sum.amount + k * p.amount,
      x: sum.x + k * p.x,
      z: sum.z + k * p.z,
    }),
    { amount: 0, x: 0, z: 0 },
  );

/** A slab with this side view, counter-clockwise: by Green's theorem along lines and arcs, to rounding. */
export function slab(path: ArcPath, thicknessMm: number): Sums {
  const sum = { amount: 0, x: 0, z: 0 };
  for (const s of segmentsOf(path)) {
    const length = segmentLength(s);
    for (const { t, weight } of UNIT_RULE) {
      const [x, z] = pointOn(s, t);
      const [dx, dz] = along(s, t);
      const w = weight * length * thicknessMm;
      sum.amount += (w * (x * dz - z * dx)) / 2;
      sum.x += (w * x * x * dz) / 2;
      sum.z -= (w * z * z * dx) / 2;
    }
  }
  return sum;
}

/** Unit direction of travel a share along a segment. */
function along(s: Parameters<typeof pointOn>[0], t: number) {
  const [[ax, az]] = directions(s);
  const turn = 4 * Math.atan(s.bulge) * t;
  const [c, n] = [Math.cos(turn), Math.sin(turn)];
  return [c * ax - n * az, n * ax + c * az] as const;
}

const QUARTER = 1 - Math.PI / 4; // of R²: what a quarter round takes from a square edge
const INSET = (10 - 3 * Math.PI) / (12 - 3 * Math.PI); // of R: its centroid from either face (standard; from memory)

/**
 * What the router takes from the edges of both faces: a quarter round's area times the way its
 * centroid goes, which on a smooth outline is shorter than it by the inset's turn (Pappus). Corners
 * tighter than the inset, and the mouth of a slot that is sawn already, are counted as if smooth and
 * whole: hundredths of a gram.
 */
export function roundedOff(path: ArcPath, radiusMm: number): Sums {
  const inset = INSET * radiusMm;
  const area = 2 * QUARTER * radiusMm ** 2;
  const sum = { amount: 0, x: 0, z: 0 };
  for (const s of segmentsOf(path)) {
    const curvature = s.bulge === 0 ? 0 : Math.sign(s.bulge) / arcOf(s).radius;
    const length = segmentLength(s) * (1 - inset * curvature);
    for (const { t, weight } of UNIT_RULE) {
      const [x, z] = pointOn(s, t);
      const [nx, nz] = quarterLeft(along(s, t));
      const w = weight * length * area;
      sum.amount += w;
      sum.x += w * (x + inset * nx);
      sum.z += w * (z + inset * nz);
    }
  }
  return sum;
}

/**
 * What lies in a hole of the sawn blank between the sawn belly and a flat top at a height along the
 * axis (`floorOf`): the belly is a curve seen from the side and straight across.
 */
export const sawnUpTo = (profile: Blank['profile'], hole: BallastHole, topMm: number): Sums =>
  asDrilled(hole, uprightUpTo(profile, hole, topMm));

function uprightUpTo(profile: Blank['profile'], hole: BallastHole, topMm: number): Sums {
  const r = hole.diameterMm / 2;
  const [place] = uprightMouth(hole);
  const sum = { amount: 0, x: 0, z: 0 };
  for (const { t, weight } of UNIT_RULE) {
    const angle = Math.PI * (t - 0.5);
    const x = place + r * Math.sin(angle);
    const low = Math.min(topMm, sawnBellyAlong(profile.path, x, hole.tiltDeg));
    const w = weight * Math.PI * 2 * (r * Math.cos(angle)) ** 2;
    sum.amount += w * (topMm - low);
    sum.x += w * (topMm - low) * x;
    sum.z += (w * (topMm ** 2 - low ** 2)) / 2;
  }
  return sum;
}

/** The whole hole in the sawn blank, point and all. */
export function sawnHole(profile: Blank['profile'], hole: BallastHole): Sums {
  const [stationMm] = uprightMouth(hole);
  const floorMm = floorOf(hole);
  const upright = added([
    [1, uprightUpTo(profile, hole, floorMm)],
    [1, pointCone({ ...hole, stationMm }, floorMm)],
  ]);
  return asDrilled(hole, upright);
}

/** From the side view in which a hole stands upright. */
function asDrilled(hole: BallastHole, { amount, x, z }: Sums): Sums {
  const [backX, backZ] = fromUpright(hole, [x, z]);
  return { amount, x: backX, z: backZ };
}
