/**
 * Parting cuts: straight across the block, from its lower edge to its upper one, wherever the waste
 * lets one through, so that what is held in the hand is no longer than it need be.
 *
 * Seen along a direction, each outline covers a stretch of the lower edge; a cut in that direction
 * goes where no stretch is. So nothing is tried out: every free direction's cuts are all found.
 */
import type { Point2 } from '../geometry/vec.js';
import type { Piece } from './cutplan.js';
import type { Waste } from './waste.js';

/** A piece longer than this is awkward to guide by hand, mm: common practice, no source. */
export const HANDY_LENGTH_MM = 300;
/** A shorter offcut is not worth a cut of its own, mm: common practice, no source. */
const LEAST_OFFCUT_MM = 60;
/** Steepest lean of a parting cut, along over across; a saw is led the more easily the straighter it goes over. */
const GREATEST_LEAN = 0.6;
const LEAN_STEPS = 12;
/** A cut that leans is taken only if it comes this much further for each 0.05 of lean, mm. */
const LEAN_COSTS_MM = 4;

/** A straight cut by where it meets the lower and the upper edge. */
type Cut = { readonly low: number; readonly high: number; readonly lean: number };

export type Parting = {
  readonly cuts: readonly (readonly Point2[])[];
  readonly pieces: readonly Piece[];
};

/** As few cuts as leave no piece longer than is handy, as far as the layout allows. */
export function partingOf(waste: Waste): Parting {
  const cuts = chosen(possibleCuts(waste), waste.lengthMm).filter((cut) => isWorthIt(waste, cut));
  const lines = cuts.map(({ low, high }): Point2[] => [
    [low, 0],
    [high, waste.widthMm],
  ]);
  return { cuts: lines, pieces: piecesOf(waste, cuts) };
}

/** From left to right: each as far right as the piece stays handy; if none does, the next there is. */
function chosen(possible: readonly Cut[], lengthMm: number): Cut[] {
  const cuts: Cut[] = [];
  let last: Cut = { low: 0, high: 0, lean: 0 };
  while (lengthMm - left(last) > HANDY_LENGTH_MM) {
    const open = possible.filter((c) => c.low > last.low && c.high > last.high);
    const handy = open.filter((c) => right(c) - left(last) <= HANDY_LENGTH_MM);
    const pick =
      handy.length > 0
        ? best(handy, (c) => left(c) - (Math.abs(c.lean) / 0.05) * LEAN_COSTS_MM)
        : best(open, (c) => -right(c));
    if (!pick) break;
    cuts.push(pick);
    last = pick;
  }
  return cuts;
}

/** False for a cut that only trims a short end off. */
const isWorthIt = ({ outlines, lengthMm, widthMm }: Waste, cut: Cut): boolean =>
  Math.min(right(cut), lengthMm - left(cut)) >= LEAST_OFFCUT_MM ||
  [false, true].every((behind) => outlines.some(([p]) => isRightOf(p, cut, widthMm) === behind));

const isRightOf = ([x, y]: Point2, { low, high }: Pick<Cut, 'low' | 'high'>, widthMm: number) =>
  x > low + ((high - low) * y) / widthMm;

const left = (c: Cut): number => Math.min(c.low, c.high);
const right = (c: Cut): number => Math.max(c.low, c.high);

const best = (cuts: readonly Cut[], worth: (cut: Cut) => number): Cut | null =>
  cuts.reduce<Cut | null>((a, b) => (a === null || worth(b) > worth(a) ? b : a), null);

function possibleCuts(waste: Waste): Cut[] {
  const leans = [0];
  for (let k = 1; k <= LEAN_STEPS; k++) {
    const lean = (GREATEST_LEAN * k) / LEAN_STEPS;
    leans.push(lean, -lean);
  }
  return leans.flatMap((lean) => cutsLeaning(waste, lean));
}

/** Through the middle of each gap between the stretches that outlines cover; after the last outline, close to it. */
function cutsLeaning({ outlines, kerfMm, lengthMm, widthMm }: Waste, lean: number): Cut[] {
  const room = (kerfMm / 2) * Math.hypot(1, lean);
  const covered = outlines
    .map((outline) => {
      let [from, to] = [Infinity, -Infinity];
      for (const [x, y] of outline) {
        const u = x - lean * y;
        if (u < from) from = u;
        if (u > to) to = u;
      }
      return { from: from - room, to: to + room };
    })
    .sort((a, b) => a.from - b.from);
  const cuts: Cut[] = [];
  const add = (low: number) => {
    const high = low + lean * widthMm;
    const inside = (x: number) => x > kerfMm && x < lengthMm - kerfMm;
    if (inside(low) && inside(high)) cuts.push({ low, high, lean });
  };
  let reached = -Infinity;
  for (const { from, to } of covered) {
    if (from > reached && reached > -Infinity) add((from + reached) / 2);
    reached = Math.max(reached, to);
  }
  if (reached > -Infinity) add(reached);
  return cuts;
}

function piecesOf({ outlines, lengthMm, widthMm }: Waste, cuts: readonly Cut[]): Piece[] {
  const bounds = [{ low: 0, high: 0 }, ...cuts, { low: lengthMm, high: lengthMm }];
  const places = outlines.map((ring) => ring[0]);
  return bounds.slice(1).map((to, k) => {
    const from = bounds[k];
    return {
      placements: places.flatMap((p, i) =>
        (k === 0 || isRightOf(p, from, widthMm)) &&
        (k === cuts.length || !isRightOf(p, to, widthMm))
          ? [i]
          : [],
      ),
      lengthMm: Math.max(to.low, to.high) - Math.min(from.low, from.high),
    };
  });
}
