/**
 * No-fit polygons: where one outline must not be moved to while another lies at the origin. The
 * Minkowski sum of the one with the other turned by half a turn, made from their convex pieces.
 */
import { asRegion, woundRound } from '../geometry/clip.js';
import { type Convex, convexPieces, convexSum } from '../geometry/pieces.js';
import { type Region, type Ring, ring } from '../geometry/ring.js';
import type { Point2 } from '../geometry/vec.js';

/** What of an outline its no-fit polygons need, made once. */
export type Pieces = readonly Convex[];

export const piecesOf = (outline: Ring): Pieces => convexPieces(outline);

/**
 * Moves of `moving` at which it overlaps `fixed`; places where both merely touch lie on the edge of
 * the regions. A place so tight that it has no area (a groove just as wide as the outline) is lost.
 */
export function noFit(fixed: Pieces, moving: Pieces): Region[] {
  const sums = fixed.flatMap((a) => moving.map((b) => convexSum(a, b.map(opposite))));
  if (sums.length === 1) return [asRegion(ring(sums[0]))];
  // As lines, not rings: where corners are in line but for rounding, pieces and their sums have no area.
  return woundRound(sums);
}

const opposite = ([x, y]: Point2): Point2 => [-x, -y];
