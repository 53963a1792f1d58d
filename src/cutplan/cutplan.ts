/**
 * A plan of cuts for one face: where the blade goes in, what is sawn first, and what is in the way.
 * Value types only. Frame of the face: origin at its lower left corner, x along the grain, mm.
 */
import type { ArcPath, Circle } from '../geometry/arcpath.js';
import type { Point2 } from '../geometry/vec.js';

/** A part as this cutter makes it, in the frame of its blank. */
export type SawnPart = {
  /** Nominal outline: what is left standing. A slot the cutter does not make is not in it. */
  readonly outline: ArcPath;
  /** The outline without its lip slot, which a saw goes straight into and backs out of. */
  readonly profile: ArcPath;
  /** What a following tool's middle runs along; for a steered saw the outline itself. */
  readonly path: ArcPath;
  /** Closed openings inside the outline. */
  readonly openings: readonly Circle[];
};

/** A straight cut into a hollow, from its mouth to the outline. */
export type ReliefCut = { readonly placement: number; readonly path: readonly Point2[] };

/** A stretch where two paths run as one: it belongs to `placement` and is cut with `cutWith`, earlier in the order. */
export type SharedLine = {
  readonly placement: number;
  readonly cutWith: number;
  readonly path: readonly Point2[];
};

/** What the parting cuts leave, from left to right. */
export type Piece = {
  readonly placements: readonly number[];
  /** Along the grain, from its leftmost to its rightmost point. */
  readonly lengthMm: number;
};

export type CutPlan = {
  /**
   * One for each placement, same index. Steered: the middle of the cut from a point on the block's
   * edge to where the blade's side touches the outline, and from there square onto the outline (its
   * last piece, half a kerf long, is not sawn); empty for an outline no blade reaches. Following:
   * the lead-in, from a point in the waste to the start of the contour.
   */
  readonly entryPaths: readonly (readonly Point2[])[];
  /** From the lower edge of the block to the upper one, from left to right. */
  readonly partingCuts: readonly (readonly Point2[])[];
  readonly pieces: readonly Piece[];
  /** Indices into the placements, each once, in the order of sawing. */
  readonly cutOrder: readonly number[];
  readonly reliefCuts: readonly ReliefCut[];
  readonly sharedLines: readonly SharedLine[];
  /** Parting cuts, entries, relief cuts and outlines together; shared lines once. */
  readonly sawnMm: number;
  /** From the end of each cut straight to the start of the next. */
  readonly travelMm: number;
};

export const NO_CUTS: CutPlan = {
  entryPaths: [],
  partingCuts: [],
  pieces: [],
  cutOrder: [],
  reliefCuts: [],
  sharedLines: [],
  sawnMm: 0,
  travelMm: 0,
};

/** Length of an open line. */
export const lineLength = (line: readonly Point2[]): number =>
  line.reduce(
    (sum, [x, y], i) => (i === 0 ? 0 : sum + Math.hypot(x - line[i - 1][0], y - line[i - 1][1])),
    0,
  );
