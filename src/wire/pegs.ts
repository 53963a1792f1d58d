/** Where the pegs of a form stand that a through-wire is bent on; in the side view, no solids. */
import { arcOf, pathBox, sweep } from '../geometry/arcpath.js';
import { type Ring, rectRing } from '../geometry/ring.js';
import { boxOf, distance, type Point2 } from '../geometry/vec.js';
import type { BentWire } from './bent.js';
import type { WireEye, WirePiece } from './piece.js';
import { twistedMm } from './twist.js';

/** A round peg that the wire is bent about. */
export type Peg = {
  /** `eye`: inside a loop; `neck`: where the wire leaves the straight for it; `bend`: any other. */
  readonly kind: 'eye' | 'neck' | 'bend';
  readonly eye: WireEye | null;
  /** Station and height. */
  readonly center: Point2;
  /** Of the peg: the inside of the bend. */
  readonly radiusMm: number;
  /** How far the wire goes round it on its way from tow end to tail end, positive counter-clockwise. */
  readonly turnDeg: number;
};

/** Pegs in the order in which the wire comes to them, and a board to stand them on. */
export type PegBoard = {
  readonly pegs: readonly Peg[];
  readonly outline: Ring;
  /** An eye at an end crosses itself, so the wire lies in two layers there. */
  readonly leastPegMm: number;
};

/** Gentler bends are made by hand, degrees. */
const LEAST_TURN_DEG = 3;

/**
 * Every bend has a peg of its own; an eye has one inside its loop and one at each neck, which hold the
 * wire between them. The board reaches so far beyond wire, windings and pegs.
 */
export function pegBoard(wire: BentWire, { marginMm }: { readonly marginMm: number }): PegBoard {
  const { pieces, path, spec, twists } = wire;
  const pegs = pieces.flatMap((piece) => pegOf(piece, spec.diameterMm)).reduce(joined, []);
  const kept = pegs.filter((p) => Math.abs(p.turnDeg) >= LEAST_TURN_DEG);
  const [minX, minY, maxX, maxY] = pathBox(path);
  const half = spec.diameterMm / 2;
  const reach = boxOf([
    [minX - half, minY - half],
    [maxX + half, maxY + half],
    ...kept.flatMap(({ center, radiusMm }) => around(center, radiusMm)),
    ...twists.flatMap(({ from, to }) =>
      [from, to].flatMap((p) => around(p, twistedMm(spec.diameterMm) / 2)),
    ),
  ]);
  return {
    pegs: kept,
    outline: rectRing(
      reach[0] - marginMm,
      reach[1] - marginMm,
      reach[2] + marginMm,
      reach[3] + marginMm,
    ),
    leastPegMm: 2 * spec.diameterMm,
  };
}

const around = ([x, z]: Point2, mm: number): Point2[] => [
  [x - mm, z - mm],
  [x + mm, z + mm],
];

function pegOf(piece: WirePiece, diameterMm: number): Peg[] {
  if (piece.bulge === 0) return [];
  const { center, radius } = arcOf(piece);
  const kind = piece.role === 'loop' ? 'eye' : piece.role === 'neck' ? 'neck' : 'bend';
  const turnDeg = (sweep(piece.bulge) * 180) / Math.PI;
  return [{ kind, eye: piece.eye, center, radiusMm: radius - diameterMm / 2, turnDeg }];
}

/** The two halves of a loop go round one peg. */
function joined(pegs: readonly Peg[], next: Peg): Peg[] {
  const last = pegs[pegs.length - 1];
  const same = last?.kind === next.kind && distance(last.center, next.center) < 1e-6;
  return same
    ? [...pegs.slice(0, -1), { ...last, turnDeg: last.turnDeg + next.turnDeg }]
    : [...pegs, next];
}
