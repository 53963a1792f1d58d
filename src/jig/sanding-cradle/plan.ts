/** The measures of a sanding cradle, before any solid is made. */

import { profilePath } from '../../blank/profile.js';
import type { Body } from '../../body/body.js';
import { flatten } from '../../geometry/arcpath.js';
import { type Ring, rectRing, ring, ringBox } from '../../geometry/ring.js';
import type { Point2 } from '../../geometry/vec.js';
import { type Matrix, placement } from '../../solid/placement.js';
import { grown } from '../outline.js';
import type { SandingCradleSetup } from './setup.js';

const OUTLINE_CHORD = 0.1; // mm the outer wall may be flattened: nothing rests on it
const LEAST_EAR_WIDTH_MM = 24;

/** The block round the hollow and the plate with the ears, in X and Y; heights above the bed. */
export type CradleLayout = {
  readonly block: Ring;
  readonly ears: Ring;
  /** Middles of the screw holes, at nose and tail. */
  readonly screws: readonly [Point2, Point2];
  readonly topZ: number;
  readonly jigToBlank: Matrix;
};

export function layoutOf(
  { shape }: Body,
  halfBreadthMm: number,
  depthMm: number,
  setup: SandingCradleSetup,
): CradleLayout {
  const { liningMm, wallMm, floorMm, earMm, screwHoleMm } = setup;
  const profile = flatten(profilePath(shape), OUTLINE_CHORD);
  const outside = grown(profile, liningMm + wallMm, OUTLINE_CHORD);
  const [noseX, , tailX, highZ] = ringBox(outside);
  const half = Math.max(LEAST_EAR_WIDTH_MM, 3 * screwHoleMm) / 2;
  const [left, top] = [noseX - earMm, Math.max(highZ, half)];
  const flat = ([x, z]: Point2): Point2 => [x - left, top - z];
  const length = tailX + earMm - left;
  const inset = 1.5 * screwHoleMm;
  return {
    block: ring(outside.map(flat)),
    ears: rectRing(0, top - half, length, top + half),
    screws: [
      [inset, top],
      [length - inset, top],
    ],
    topZ: floorMm + liningMm + depthMm,
    jigToBlank: placement(
      [1, 0, 0],
      [0, 0, -1],
      [0, 1, 0],
      [left, 0 - (halfBreadthMm + liningMm + floorMm), top],
    ),
  };
}
