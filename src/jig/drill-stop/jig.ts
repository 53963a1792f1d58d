/** What is known of a drill-stop jig beyond what every jig tells. */
import type { Axis, Jig } from '../jig.js';

/** One guide hole of a drill-stop jig. */
export type DrillGuide = {
  readonly stationMm: number;
  readonly bitDiameterMm: number;
  /** Of the hole in the jig. */
  readonly holeDiameterMm: number;
  /** Full-diameter depth in the wood, on the axis. */
  readonly depthMm: number;
  /** From the shoulder of the bit (where it reaches its full diameter) to the collar. */
  readonly collarSettingMm: number;
  /** Length in which the guide encloses the bit all round. */
  readonly guideLengthMm: number;
  readonly axis: Axis;
};

export type DrillStopJig = Jig & {
  readonly kind: 'drill-stop';
  /** Of the deepest hole. */
  readonly axis: Axis;
  readonly guides: readonly DrillGuide[];
  /** The tail stands out of the cradle. */
  readonly openAtTail: boolean;
  /** Height of the face the collar stops at, blank frame (negative: under the belly). */
  readonly stopFaceMm: number;
};

export const isDrillStop = (jig: Jig): jig is DrillStopJig => jig.kind === 'drill-stop';
