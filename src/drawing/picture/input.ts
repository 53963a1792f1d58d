/** What the pictures are made from: only what is drawn. Lengths in the frame of the lure (x aft, y to port, z up). */
import type { BodyShape } from '../../body/shape.js';
import type { Attitude } from '../../float/attitude.js';
import type { RightingPoint } from '../../float/righting.js';
import type { Speed } from '../../float/speed.js';
import type { Verdict } from '../../float/verdict.js';
import type { Point2, Point3 } from '../../geometry/vec.js';

/**
 * A ballast hole in the finished body, with metal from its floor downwards. Places and heights are
 * those of the side view turned by the tilt about the nose, in which the hole stands upright; without
 * a tilt they are stations and heights (z).
 */
export type DrawnHole = {
  readonly tiltDeg: number;
  /** Of the axis. */
  readonly placeMm: number;
  readonly diameterMm: number;
  /** Height of the full-diameter floor; the bit's point goes further up. */
  readonly floorMm: number;
  /** Height of the metal's lower end on the axis: the finished belly, or less when the metal ends inside. */
  readonly bellyMm: number;
  /** Diameter of a ready-made weight, which stands on the full-diameter floor; null for metal that fills the hole and its point. */
  readonly metalDiameterMm: number | null;
  /** Included angle of the bit's point, degrees; 180 is flat. */
  readonly pointAngleDeg: number;
};

/**
 * The lip plate: its edge seen from the side (station, height) from the inner end along one face to the
 * tip and back along the other, as wide as given to both sides together. What is not a plain rectangle
 * has a face: points across from the center line and along from the inner end; no hole is no points.
 */
export type DrawnLip = {
  readonly corners: readonly Point2[];
  readonly widthMm: number;
  readonly face: { readonly outline: readonly Point2[]; readonly hole: readonly Point2[] } | null;
};

/** An eye of wire or a screw eye, drawn as a small ring about its middle (station, height), and what hangs on it. */
export type DrawnEye = {
  readonly at: Point2;
  readonly radiusMm: number;
  readonly ring: boolean;
  readonly treble: boolean;
};

export type DrawnLure = {
  /** The finished body. */
  readonly shape: BodyShape;
  readonly cgMm: Point3;
  readonly lip: DrawnLip | null;
  readonly eyes: readonly DrawnEye[];
  readonly holes: readonly DrawnHole[];
};

/** Up or down, with the spread of what is known of it. */
export type DrawnSpeed = Pick<Speed, 'kind' | 'cmS' | 'lowCmS' | 'highCmS'> & {
  /** Of the long axis under way, positive nose up; null where it is not told. */
  readonly trimDeg: number | null;
};

export type FloatInput = {
  readonly name: string;
  readonly version: string;
  readonly verdict: Verdict;
  readonly waterDensityKgM3: number;
  readonly lure: DrawnLure;
  /** The attitude that is drawn large. */
  readonly attitude: Attitude;
  /** The other stable attitudes. */
  readonly others: readonly Attitude[];
  /** From −180° to 180° from rest; empty when there is none. */
  readonly righting: readonly RightingPoint[];
  /** When let go under water. */
  readonly speed: DrawnSpeed | null;
  readonly items: readonly { readonly name: string; readonly massG: number }[];
  readonly stages: readonly {
    readonly name: string;
    readonly massG: number;
    readonly spreadG: number;
  }[];
};

/** What a small change does to a choice, e.g. `per: '1 mm aft'`. */
export type DrawnSensitivity = {
  readonly per: string;
  readonly massG: number;
  /** Null for a lure on end, where trim has no rate. */
  readonly trimDeg: number | null;
  readonly freeboardNoseMm: number;
  readonly freeboardTailMm: number;
};

export type Choice = {
  readonly lure: DrawnLure;
  readonly verdict: Verdict;
  readonly massG: number;
  /** One standard deviation to expect of the mass. */
  readonly spreadG: number;
  readonly attitude: Attitude;
  /** For wishes that rise or sink. */
  readonly speed: DrawnSpeed | null;
  /** As drilled into the sawn blank. */
  readonly drilling: readonly {
    readonly diameterMm: number;
    readonly stationMm: number;
    readonly depthMm: number;
    readonly tipDepthMm: number;
    readonly metal: string;
  }[];
  readonly sensitivity: readonly DrawnSensitivity[];
};

export type ChoicesInput = {
  readonly name: string;
  readonly version: string;
  /** The wish in words. */
  readonly wish: string;
  /** Best first; no more than `MOST_CHOICES` are drawn. */
  readonly choices: readonly Choice[];
  /** Why there is no choice, in sentences. */
  readonly unmet: string | null;
};
