/** What is asked of a through-wire, and the measures of its center line that follow. */
import type { Point2 } from '../geometry/vec.js';
import { neckOf } from './eye.js';

/** What wire, and where it goes, in the side view (station, height). */
export type WireSpec = {
  readonly diameterMm: number;
  /** Least radius inside a bend; at least the wire's diameter. */
  readonly bendInsideMm: number;
  /** How wide an eye is inside; at least twice the bend radius. */
  readonly loopMm: number;
  /** Turns of the tail at an eye at an end; 0 closes the loop alone. */
  readonly twistTurns: number;
  /** Wire left over at an eye at an end for the pliers, trimmed off afterwards. */
  readonly holdMm: number;
  /** Where the wire leaves the body, and whether it ends there in an eye. */
  readonly nose: WireEnd;
  readonly tail: WireEnd;
  /** The belly over each hanger, which points straight down; from nose to tail. */
  readonly hangers: readonly Point2[];
};

export type WireEnd = { readonly at: Point2; readonly eye: boolean };

/** Measures of the center line. */
export type WireForm = {
  /** Of every bend. */
  readonly bendRadiusMm: number;
  readonly loopRadiusMm: number;
  /** Half the way between the legs of a hanger, which touch. */
  readonly asideMm: number;
  /** From the surface of the body out to the middle of a loop that stands on it. */
  readonly standMm: number;
};

export const formOf = ({ diameterMm: d, bendInsideMm, loopMm }: WireSpec): WireForm => ({
  bendRadiusMm: bendInsideMm + d / 2,
  loopRadiusMm: (loopMm + d) / 2,
  asideMm: d / 2,
  standMm: loopMm / 2 + d,
});

/** How far inside the surface the neck of an eye begins whose wire comes in so far beside its axis. */
export const insetMm = (form: WireForm, asideMm: number): number =>
  neckOf({ ...form, asideMm }).reachMm - form.standMm;
