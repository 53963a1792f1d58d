/**
 * Parting cuts: across the block from its lower edge to its upper one, straight or with one gentle
 * bend, wherever the waste lets one through, so that what is held in the hand is no longer than it
 * need be.
 */
import type { Ring } from '../geometry/ring.js';
import type { Point2 } from '../geometry/vec.js';
import { bentCuts, type Cut, leftOf, rightOf, straightCuts, xAt } from './crossing.js';
import type { Piece } from './cutplan.js';
import type { Waste } from './waste.js';

/** A piece longer than this is awkward to guide by hand, mm: common practice, no source. */
export const HANDY_LENGTH_MM = 300;
/** A shorter offcut is not worth a cut of its own, mm: common practice, no source. */
const LEAST_OFFCUT_MM = 60;
/** A cut that leans or bends is taken only if it lies this much further on for each unit of lean and bend, mm. */
const LEAN_COSTS_MM = 80;

export type Parting = {
  readonly cuts: readonly (readonly Point2[])[];
  readonly pieces: readonly Piece[];
};

/** What a parting cut keeps off beside the outlines: so much wander of the saw, and knots and splits. */
export type Room = { readonly wanderMm: number; readonly flaws: readonly Ring[] };

/** As few cuts as leave no piece longer than is handy, as far as the layout allows; bent ones where straight ones do not do. */
export function partingOf(waste: Waste, { wanderMm, flaws }: Room): Parting {
  // For a saw that strays the kerf is as wide as it may stray to both sides.
  const open = {
    ...waste,
    kerfMm: waste.kerfMm + 2 * wanderMm,
    outlines: [...waste.outlines, ...flaws],
  };
  const worthIt = (cut: Cut) => isWorthIt(waste, cut);
  const straight = straightCuts(open).filter(worthIt);
  const plain = chosen(straight, waste.lengthMm);
  const cuts =
    longest(plain, waste.lengthMm) <= HANDY_LENGTH_MM
      ? plain
      : chosen([...straight, ...bentCuts(open).filter(worthIt)], waste.lengthMm);
  return { cuts: cuts.map((c) => c.line), pieces: piecesOf(waste, cuts) };
}

/** From left to right: each as far right as the piece stays handy; if none does, the next there is. */
function chosen(possible: readonly Cut[], lengthMm: number): Cut[] {
  const cuts: Cut[] = [];
  for (let from = 0; lengthMm - from > HANDY_LENGTH_MM; ) {
    const last = cuts[cuts.length - 1];
    const open = possible.filter((c) => !last || liesRightOf(c, last));
    const handy = open.filter((c) => rightOf(c) - from <= HANDY_LENGTH_MM);
    const pick =
      handy.length > 0
        ? best(handy, (c) => leftOf(c) - (c.lean + c.bend) * LEAN_COSTS_MM)
        : best(open, (c) => -rightOf(c) - (c.lean + c.bend) * LEAN_COSTS_MM);
    if (!pick) break;
    cuts.push(pick);
    from = leftOf(pick);
  }
  return cuts;
}

const liesRightOf = (a: Cut, b: Cut): boolean =>
  [...a.line, ...b.line].every(([, y]) => xAt(a, y) > xAt(b, y));

const best = (cuts: readonly Cut[], worth: (cut: Cut) => number): Cut | null =>
  cuts.reduce<Cut | null>((a, b) => (a === null || worth(b) > worth(a) ? b : a), null);

const longest = (cuts: readonly Cut[], lengthMm: number): number =>
  Math.max(...lengthsOf(cuts, lengthMm));

const lengthsOf = (cuts: readonly Cut[], lengthMm: number): number[] =>
  [...cuts, null].map((to, k) => (to ? rightOf(to) : lengthMm) - (k > 0 ? leftOf(cuts[k - 1]) : 0));

/** False for a cut that only trims a short end off. */
const isWorthIt = ({ outlines, lengthMm }: Waste, cut: Cut): boolean =>
  Math.min(rightOf(cut), lengthMm - leftOf(cut)) >= LEAST_OFFCUT_MM ||
  [false, true].every((behind) => outlines.some(([p]) => isBehind(p, cut) === behind));

const isBehind = ([x, y]: Point2, cut: Cut): boolean => x > xAt(cut, y);

function piecesOf({ outlines, lengthMm }: Waste, cuts: readonly Cut[]): Piece[] {
  const pieceOf = outlines.map(([p]) => cuts.filter((cut) => isBehind(p, cut)).length);
  return lengthsOf(cuts, lengthMm).map((length, k) => ({
    placements: pieceOf.flatMap((piece, i) => (piece === k ? [i] : [])),
    lengthMm: length,
  }));
}
