/** What a jig is, whichever kind: a solid, where it sits on the blank, and what to know about it. */
import type { Blank } from '../blank/blank.js';
import type { Mesh } from '../geometry/mesh.js';
import type { Point3 } from '../geometry/vec.js';
import type { Csg } from '../solid/csg.js';
import type { Matrix } from '../solid/placement.js';
import type { Sunk } from './letters.js';
import type { Hold } from './seat.js';

/** What a jig takes from the blank. */
export type JigBlank = Pick<
  Blank,
  'name' | 'version' | 'thicknessMm' | 'profileRing' | 'slot' | 'holes'
>;

export type JigSlot = NonNullable<JigBlank['slot']>;

/** A line in the blank frame: the axis of a drill, or the way of a saw. */
export type Axis = { readonly originMm: Point3; readonly direction: Point3 };

type JigBody = {
  /** Name of the blank it is for. */
  readonly pattern: string;
  readonly csg: Csg;
  /** As printed: no coordinate negative, resting on z = 0. */
  readonly mesh: Mesh;
  /** From coordinates of the mesh to the frame of the blank. */
  readonly jigToBlank: Matrix;
  readonly axis: Axis;
  /** Way the blank moves to come out, unit, blank frame. */
  readonly freeDirection: Point3;
  readonly sizeMm: Point3;
  readonly volumeMm3: number;
  /** Openings right through the solid, to hold its genus against. */
  readonly openings: number;
  readonly letters: readonly Sunk[];
  /** Texts for which there was no room. */
  readonly lettersLeftOut: readonly string[];
};

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

export type DrillStopJig = JigBody & {
  readonly kind: 'drill-stop';
  readonly guides: readonly DrillGuide[];
  /** The tail stands out of the cradle. */
  readonly openAtTail: boolean;
  /** Height of the face the collar stops at, blank frame (negative: under the belly). */
  readonly stopFaceMm: number;
};

export type LipSlotGuide = JigBody & {
  readonly kind: 'lip-slot-guide';
  readonly angleDeg: number;
  readonly depthMm: number;
  /** Width of the guide's own slot. */
  readonly guideSlotMm: number;
  /** How the saw makes the slot: at once, or along one wall and then the other. */
  readonly passes: 'one' | 'both walls';
  readonly stopHeightMm: number;
  /** Most the slot can be out of square to the sides, from the gap at the cheeks. */
  readonly leanDeg: number;
  /** How well the saddle holds the angle, and how to push. */
  readonly hold: Hold;
};

export type Jig = DrillStopJig | LipSlotGuide;

export type JigProblemCode =
  | 'jig-angle-not-held'
  | 'jig-bed-too-small'
  | 'jig-bushing-too-narrow'
  | 'jig-guides-too-close'
  | 'jig-hole-outside-blank'
  | 'jig-kerf-wider-than-slot'
  | 'jig-stop-height-too-small';

/** Why a jig cannot be made: code and numbers, each with its unit in its name. */
export type JigProblem = {
  readonly code: JigProblemCode;
  readonly facts: Readonly<Record<string, number | string>>;
};

export type JigOutcome<J extends Jig> =
  | { readonly jig: J; readonly problems: readonly [] }
  | { readonly jig: null; readonly problems: readonly JigProblem[] };
