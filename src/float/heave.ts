/** How deep a solid sits at a given attitude. */
import type { Point3 } from '../geometry/vec.js';
import { dot3 } from '../geometry/vec3.js';
import { Fault } from '../problem.js';
import { type Immersion, immerse } from './immerse.js';
import type { Immersible } from './immersible.js';

/** A surface with what it puts under. */
export type Heaved = { readonly planeOffsetMm: number; readonly immersion: Immersion };

/** Relative to the volume wanted; rounding of the sums is a hundredth of it. */
const VOLUME_TOLERANCE = 1e-12;

/** Halving alone reaches the last bit of the offset in 60 steps. */
const MOST_STEPS = 120;

/**
 * The surface square to `up` under which lies so much of the solid: Newton's method, the area of the
 * waterplane being the slope, kept inside a bracket that halves where Newton would leave it.
 *
 * @param start a planeOffsetMm to begin from; absent, that of the solid's ellipsoid
 * @throws Fault unless the volume is more than nothing and less than all
 */
export function heave(
  solid: Immersible,
  up: Point3,
  volumeMm3: number,
  start = ellipsoidOffset(solid, up, ellipsoidDepth(volumeMm3 / solid.volumeMm3)),
  tolerance = VOLUME_TOLERANCE,
): Heaved {
  if (!(volumeMm3 > 0 && volumeMm3 < solid.volumeMm3)) {
    throw new Fault(`${volumeMm3} mm³ of ${solid.volumeMm3} under water`);
  }
  const middle = dot3(up, solid.centroidMm);
  let low = middle - solid.radiusMm;
  let high = middle + solid.radiusMm;
  let at = start > low && start < high ? start : middle;
  let immersion = immerse(solid, up, at);
  for (let step = 0; step < MOST_STEPS; step++) {
    const missing = volumeMm3 - immersion.volumeMm3;
    if (Math.abs(missing) <= tolerance * volumeMm3) break;
    if (missing > 0) low = at;
    else high = at;
    let next = at + missing / immersion.areaMm2;
    // Also true for NaN and infinity, where there is no waterplane.
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (next === at || next <= low || next >= high) break;
    at = next;
    immersion = immerse(solid, up, at);
  }
  return { planeOffsetMm: at, immersion };
}

/** Depth of a unit ellipsoid, 0..2 of its half-height, with this share of it under: h²(3 − h)/4. */
export function ellipsoidDepth(share: number): number {
  let [low, high] = [0, 2];
  for (let i = 0; i < 40; i++) {
    const h = (low + high) / 2;
    if ((h * h * (3 - h)) / 4 < share) low = h;
    else high = h;
  }
  return low;
}

/** Where the surface would be if the solid were the ellipsoid with its moments: a good first guess for anything lure-like. */
export function ellipsoidOffset(
  { centroidMm, ellipsoid: [xx, yy, zz, xy, xz, yz] }: Immersible,
  up: Point3,
  depth: number,
): number {
  const [x, y, z] = up;
  const square = xx * x * x + yy * y * y + zz * z * z + 2 * (xy * x * y + xz * x * z + yz * y * z);
  return dot3(up, centroidMm) + (depth - 1) * Math.sqrt(square);
}
