/**
 * No-fit polygons: where one outline must not be moved to while another lies at the origin. Two ways
 * to the same polygon: sums of convex pieces united are right where edges of both line up, as in
 * puzzles on a grid; a convolution is far quicker for smooth outlines with hollows, which fall into
 * many pieces and do not line up.
 */
import { asRegion, woundRound } from '../geometry/clip.js';
import { noFitRegion } from '../geometry/nofit.js';
import { type Convex, convexPieces, convexSum } from '../geometry/pieces.js';
import { type Region, type Ring, ring } from '../geometry/ring.js';
import type { Point2 } from '../geometry/vec.js';

/** An outline and its convex pieces, made once. */
export type Pieces = { readonly outline: Ring; readonly convex: readonly Convex[] };

export const piecesOf = (outline: Ring): Pieces => ({ outline, convex: convexPieces(outline) });

/** From so many sums of pieces on, the convolution is used. */
const MANY_SUMS = 400;

/**
 * Moves of `moving` at which it overlaps `fixed`; places where both merely touch lie on the edge of
 * the regions. A place so tight that it has no area (a groove just as wide as the outline) is lost.
 */
export function noFit(fixed: Pieces, moving: Pieces): Region[] {
  if (fixed.convex.length * moving.convex.length >= MANY_SUMS)
    return [noFitRegion(fixed.outline, moving.outline)];
  const sums = convexNoFits(fixed, moving);
  if (sums.length === 1) return [asRegion(ring(sums[0]))];
  // As lines, not rings: where corners are in line but for rounding, pieces and their sums have no area.
  return woundRound(sums);
}

/** The same for each pair of convex pieces alone. */
export const convexNoFits = (fixed: Pieces, moving: Pieces): Convex[] =>
  fixed.convex.flatMap((a) => moving.convex.map((b) => convexSum(a, b.map(opposite))));

const opposite = ([x, y]: Point2): Point2 => [-x, -y];
