/** The tail of a twisted eye, wound round the standing part of the wire beyond the eye. */
import type { Point2 } from '../geometry/vec.js';
import type { WireEye } from './piece.js';

/**
 * Wire in one turn of the winding: wire of diameter d lies on wire of diameter d, so its center line
 * is a helix of radius d, and turns that touch rise by d each: √((2πd)² + d²) = d·√(4π² + 1). (Slanted
 * turns need 1/cos of the slant more, 1.3 %, which makes the turn 0.03 % longer: left out.) A winding
 * is bent tighter than any peg, round the wire itself.
 */
export const turnMm = (diameterMm: number): number => diameterMm * Math.sqrt(4 * Math.PI ** 2 + 1);

/** Room a winding takes across the wire: one wire between two. */
export const twistedMm = (diameterMm: number): number => 3 * diameterMm;

export type Twist = {
  readonly eye: WireEye;
  readonly turns: number;
  /** The standing part it is wound round: from the neck inward. */
  readonly from: Point2;
  readonly to: Point2;
  /** Wire from the end of the loop on: along the neck, then the turns. */
  readonly lengthMm: number;
};
