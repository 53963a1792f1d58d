/** What is known of a drill-stop jig beyond what every jig tells. */
import type { Axis, Jig } from '../jig.js';
import type { BoringFor } from './boring.js';
import type { HoleSpread } from './spread.js';

/** One guide of a drill-stop jig. */
export type DrillGuide = {
  readonly for: BoringFor;
  /** Where the axis enters the sawn blank. */
  readonly stationMm: number;
  readonly heightMm: number;
  /** How far aft the hole leans against the perpendicular to the datum line; 0 for holes along it. */
  readonly tiltDeg: number;
  readonly bitDiameterMm: number;
  /** Of the hole in the jig the bit runs in. */
  readonly holeDiameterMm: number;
  /** Seat of a steel sleeve, from the stop face to its shoulder. */
  readonly sleeve: { readonly seatDiameterMm: number; readonly lengthMm: number } | null;
  /** Full-diameter depth in the wood, on the axis. */
  readonly depthMm: number;
  /** Depth of the tip of the bit's point. */
  readonly tipDepthMm: number;
  /** From the shoulder of the bit (where it reaches its full diameter) to the collar. */
  readonly collarSettingMm: number;
  /** The same from the tip of its point: what the bit must stand out of its chuck, and more. */
  readonly collarFromTipMm: number;
  /** The widest thing that may turn over the stop face. */
  readonly collarDiameterMm: number;
  /** Length in which the guide encloses the bit all round. */
  readonly guideLengthMm: number;
  /** From the middle of its stop face into the wood. */
  readonly axis: Axis;
  readonly spread: HoleSpread;
};

export type DrillStopJig = Jig & {
  readonly kind: 'drill-stop';
  /** Of the deepest ballast hole; without one, of the first guide. */
  readonly axis: Axis;
  /** Those from the belly from nose to tail, then tow eye and tail eye. */
  readonly guides: readonly DrillGuide[];
  /** The tail stands out of the cradle. */
  readonly openAtTail: boolean;
  /** Height of the face the collar stops at, blank frame (negative: under the belly). */
  readonly stopFaceMm: number;
};

export const isDrillStop = (jig: Jig): jig is DrillStopJig => jig.kind === 'drill-stop';
