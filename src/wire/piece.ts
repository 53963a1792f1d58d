/** What a bent wire is made of: straight lengths and bends of its center line, seen from the side. */
import type { Segment } from '../geometry/arcpath.js';
import { distance, type Point2 } from '../geometry/vec.js';

/**
 * `run`: along the body; `leg`: down to a hanger or up from it; `bend`: from one to the other;
 * `neck`: the bend out of the straight at an eye; `loop`: round the eye.
 */
export type WireRole = 'run' | 'leg' | 'bend' | 'neck' | 'loop';

/** An eye of the wire: one of its ends, or a hanger by its index in the spec. */
export type WireEye = 'tow' | 'tail' | number;

export type WirePiece = Segment & {
  readonly role: WireRole;
  /** The eye it belongs to; null for a run and the bends at its ends. */
  readonly eye: WireEye | null;
};

/** The same piece bent from its other end. */
export const reversed = (piece: WirePiece): WirePiece => ({
  ...piece,
  from: piece.to,
  to: piece.from,
  bulge: piece.bulge === 0 ? 0 : -piece.bulge,
});

const NOTHING_MM = 1e-9;

/** A straight length between two places; nothing where they are one. */
export const straight = (
  from: Point2,
  to: Point2,
  more: Pick<WirePiece, 'role' | 'eye'>,
): WirePiece[] => (distance(from, to) < NOTHING_MM ? [] : [{ ...more, from, to, bulge: 0 }]);
