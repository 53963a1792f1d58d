/** How a lure lies in the water. */
import type { Point3 } from '../geometry/vec.js';

/**
 * A rest attitude, told in the frame of the lure (x aft, y to port, z up along the section): the
 * lure stays where it is and the water's surface is tilted instead.
 */
export type Attitude = {
  /** True when every small tilt is righted. */
  readonly stable: boolean;
  /** True when a tilt one way or another neither rights nor goes on: a round log in roll. Not stable then, and told once for its whole family. */
  readonly neutral: boolean;
  /** Unit vector to the sky. */
  readonly upInBody: Point3;
  /** The water surface is up · p = planeOffsetMm; for a lure that is wholly under, the lowest surface that covers it. */
  readonly planeOffsetMm: number;
  readonly displacedG: number;
  readonly displacedMm3: number;
  /** Center of buoyancy. */
  readonly cbMm: Point3;
  /** Positive nose up. */
  readonly trimDeg: number;
  /** Positive port down; beyond ±90 belly up. */
  readonly heelDeg: number;
  /** Metacentric height against heel and against trim; for a lure that is under, CB over CG. */
  readonly gmAcrossMm: number;
  readonly gmAlongMm: number;
  /** Height above the water, negative under it. */
  readonly freeboardNoseMm: number;
  readonly freeboardTailMm: number;
  /** Highest point of body and lip above the surface. */
  readonly freeboardMm: number;
  /** Share of the displacing volume that is above water. */
  readonly dryRatio: number;
  /** CG over CB, mm: the potential energy but for the factor of weight; the stable attitudes are its hollows. */
  readonly cgAboveCbMm: number;
};
