/**
 * What a jig too long for the bed is cut into: pieces across x, joined by dowels. Every piece lies on
 * the bed as the whole would.
 */
import type { Mesh } from '../../geometry/mesh.js';
import type { Point3 } from '../../geometry/vec.js';
import type { Matrix } from '../../solid/placement.js';

/** Dowels, and the bores for them: half of each dowel goes into either piece. */
export type DowelSetup = {
  readonly diameterMm: number;
  readonly lengthMm: number;
  /** Added to the diameter of the bore. */
  readonly clearanceMm: number;
  /** How much deeper a bore is than half a dowel, for glue and dust. */
  readonly endClearanceMm: number;
  /** Least plastic round a bore and beyond its end. */
  readonly wallMm: number;
};

export const boreRadiusMm = (dowel: DowelSetup): number =>
  (dowel.diameterMm + dowel.clearanceMm) / 2;
export const boreDepthMm = (dowel: DowelSetup): number => dowel.lengthMm / 2 + dowel.endClearanceMm;

export type SplitOrder = {
  /** As printed: resting on z = 0. */
  readonly mesh: Mesh;
  readonly bed: { readonly xMm: number; readonly yMm: number; readonly zMm: number };
  readonly dowel: DowelSetup;
  /** Where not to cut, from one x to another: guides, slots, letters. */
  readonly keepWholeMm: readonly (readonly [fromX: number, toX: number])[];
};

export type Joint = {
  readonly xMm: number;
  /** Area that is glued, before it is bored. */
  readonly sectionMm2: number;
  /** The middle of each dowel, in the cut. */
  readonly dowels: readonly Point3[];
};

export type Piece = {
  /** No coordinate negative, resting on z = 0. */
  readonly mesh: Mesh;
  /** From coordinates of the piece to those of the whole. */
  readonly toWhole: Matrix;
  readonly sizeMm: Point3;
  readonly volumeMm3: number;
};

export type Split = {
  /** In the order of x. */
  readonly pieces: readonly Piece[];
  /** One between each piece and the next; none when the whole fits the bed. */
  readonly joints: readonly Joint[];
};

/** How many dowels it takes. */
export const dowelCount = ({ joints }: Split): number =>
  joints.reduce((sum, joint) => sum + joint.dowels.length, 0);

export type SplitProblemCode = 'split-too-high' | 'split-too-wide' | 'split-no-plane';

/** Why a jig cannot be split: code and numbers, each with its unit in its name. */
export type SplitProblem = {
  readonly code: SplitProblemCode;
  readonly facts: Readonly<Record<string, number>>;
};

export type SplitOutcome =
  | { readonly split: Split; readonly problem: null }
  | { readonly split: null; readonly problem: SplitProblem };
