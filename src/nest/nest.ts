/**
 * A nest: which outlines lie where on the faces of which taped stacks, and how many blanks that
 * makes. Value types only.
 *
 * Frame of a face: origin at its lower left corner, x along the grain (the block's length), y across
 * (its width), mm. An outline keeps its nose left (turned 0°) or right (turned 180°), so its long
 * axis stays along the grain, but for a tilt the rules may allow.
 */
import type { Ring } from '../geometry/ring.js';
import type { Point2 } from '../geometry/vec.js';

/** One outline to be sawn: blank frame (nose at the left, x aft, y up), mm. */
export type NestPart = {
  /** Unique in an order. */
  readonly id: string;
  readonly outline: Ring;
  readonly thicknessMm: number;
  readonly orderedCount: number;
};

/** A place no outline may touch, on a block's face. */
export type Knot = { readonly xMm: number; readonly yMm: number; readonly radiusMm: number };

/**
 * A split or shake on a block's face: all within half its width of the straight piece between two
 * points. No outline may touch it.
 */
export type Split = { readonly fromMm: Point2; readonly toMm: Point2; readonly widthMm: number };

/** Pin knots, sapwood, wild grain: an outline may lie over it, but not with its nose part. */
export type PoorZone = { readonly xMm: number; readonly yMm: number; readonly radiusMm: number };

/** What is wrong with the wood of a face. */
export type Flaws = {
  readonly knots: readonly Knot[];
  readonly splits: readonly Split[];
  readonly poorZones: readonly PoorZone[];
};

/** Blocks that are all alike: same size, same margin, the same flaws in each. */
export type Block = Flaws & {
  /** Unique in an order. */
  readonly name: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  /** Left free along all four edges of the face. */
  readonly marginMm: number;
  readonly count: number;
  /** What one block costs in whatever a plan shall spend least of, money or weight; left out, its volume. */
  readonly costEach?: number | undefined;
};

/** What of a block matters to the layout of its face. */
export type FaceSize = Flaws & Pick<Block, 'lengthMm' | 'widthMm' | 'marginMm'>;

/** How hard a nest is searched for. */
export type NestEffort = Pick<NestRules, 'tries' | 'seed' | 'layouts'>;

export type NestRules = {
  /** Least distance between two outlines; half of it is kept from a flaw. */
  readonly gapMm: number;
  /**
   * Share of an outline's length, from the nose, that must lie in clear wood: off the poor zones, by
   * half the gap. 0 to 1; 0 makes poor zones count for nothing.
   */
  readonly clearNoseRatio: number;
  /** Most an outline may be tilted off the grain to either side; 0 for none. */
  readonly largestTiltDeg: number;
  /** Blocks taped face to face, at most. */
  readonly layers: number;
  readonly tapeThicknessMm: number;
  /** What passes under the saw's guide. */
  readonly largestHeightMm: number;
  /**
   * Layouts tried per face beside the systematic ones; one of more than 16 outlines counts as
   * several. Counted, not timed, so the result is the same anywhere. 24 is plenty for blocks.
   */
  readonly tries: number;
  readonly seed: number;
  /**
   * Face layouts a whole plan may try beside those of its first draft; one of more than 16 outlines
   * counts as several. Counted, not timed. 0 leaves it at the draft.
   */
  readonly layouts: number;
};

/** 0 or 180, plus a tilt of at most the rules' `largestTiltDeg` to either side; counter-clockwise. */
export type TurnDeg = number;

/** An outline on a face: turned about the origin of the blank frame, then moved by (xMm, yMm). */
export type Placement = {
  readonly part: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly turnDeg: TurnDeg;
  /** The outline so placed, face frame. */
  readonly outline: Ring;
};

/** How many blocks of one entry go into one stack. */
export type StackShare = { readonly block: string; readonly count: number };

/** Stacks put together alike: `copies` of them, each of these blocks. */
export type StackMix = { readonly copies: number; readonly blocks: readonly StackShare[] };

/** Clear face beyond the last outline and its gap, to the block's end. */
export type Offcut = { readonly fromMm: number; readonly lengthMm: number };

/**
 * One layout of outlines, traced once and sawn in `copies` stacks of `layers` blocks. Its flaws are
 * those of all layers of all copies.
 */
export type NestFace = Flaws & {
  /** Counts from 1. */
  readonly id: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  readonly marginMm: number;
  readonly gapMm: number;
  readonly layers: number;
  /** Stacks sawn with this layout. */
  readonly copies: number;
  /** What those stacks are made of; their copies add up to `copies`. */
  readonly stacks: readonly StackMix[];
  /** Height of a stack: its blocks and the tape between them. */
  readonly stackHeightMm: number;
  /** From left to right. */
  readonly placements: readonly Placement[];
  /** Area of the outlines over the area of the face, 0..1. */
  readonly usedRatio: number;
  readonly offcut: Offcut;
};

/** Blocks of one entry's size, clear of flaws, that would fill what is missing of `parts`. */
export type MoreBlocks = {
  readonly block: string;
  readonly count: number;
  readonly parts: readonly string[];
};

/** Why an order cannot be filled, as facts. */
export type NestObstacle =
  /** No block within 0.2 mm of the part's thickness. */
  | { readonly kind: 'no-thickness'; readonly part: string; readonly thicknessMm: number }
  /** Larger than the face inside the margins of every block of its thickness; `block` comes nearest. */
  | {
      readonly kind: 'too-large';
      readonly part: string;
      readonly lengthMm: number;
      readonly heightMm: number;
      readonly block: string;
      readonly clearLengthMm: number;
      readonly clearWidthMm: number;
    }
  /** Would fit a block by size, but knots and other flaws leave no room for it on any. */
  | { readonly kind: 'knots'; readonly part: string; readonly blocks: readonly string[] }
  /** One layer alone does not pass under the guide; these blocks were left out. */
  | {
      readonly kind: 'too-high';
      readonly block: string;
      readonly thicknessMm: number;
      readonly largestHeightMm: number;
    }
  /**
   * The timber ran out. `moreBlocks` lists the alternatives, best first: each entry alone would fill
   * the missing of its `parts`. It is a count that suffices, found by nesting what is missing on
   * further blocks, not proved least.
   */
  | {
      readonly kind: 'short';
      readonly thicknessMm: number;
      readonly missing: Readonly<Record<string, number>>;
      readonly moreBlocks: readonly MoreBlocks[];
    };

export type Nest = {
  readonly faces: readonly NestFace[];
  /** Blanks made and ordered, by part. */
  readonly made: Readonly<Record<string, number>>;
  readonly ordered: Readonly<Record<string, number>>;
  /** Blanks that are not made; only the parts that are short. */
  readonly missing: Readonly<Record<string, number>>;
  /** Stacks sawn. */
  readonly stacks: number;
  /** Blocks used, by block entry. */
  readonly blocksUsed: Readonly<Record<string, number>>;
  /** Area of all blanks made over the area of all blocks used, 0..1; 0 if none is used. */
  readonly usedRatio: number;
  /**
   * Share of endless wood that copies of a part can take in their densest double lattice with the
   * gap, by part, 0..1; empty where nobody asked.
   */
  readonly limitRatios: Readonly<Record<string, number>>;
  readonly obstacles: readonly NestObstacle[];
  /** Whole blocks taken. */
  readonly timberUsedMm3: number;
  /** Whole blocks that are needed at least, for the blanks that are made (surplus aside). */
  readonly timberBoundMm3: number;
  /**
   * What that bound holds for: every plan of these blanks on these blocks, or only plans made of the
   * face layouts that the search found.
   */
  readonly timberBoundKind: 'every-plan' | 'layouts-found';
  /** The bound that holds for every plan. */
  readonly timberAreaBoundMm3: number;
  /** The search ended at its limit of layouts or of branchings, before it had nothing left to try. */
  readonly limitReached: boolean;
  /** The search was told to stop; this is the best it had. */
  readonly interrupted: boolean;
};
