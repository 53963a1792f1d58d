/**
 * The order of sawing: a short round that keeps what must come first first. Nearest next, then
 * every stretch of up to three moved to where the round is shortest, until no move helps
 * (or-opt: I. Or, 1976).
 */
import { distance, type Point2 } from '../geometry/vec.js';

/** One cut on the round: where it is begun and where it ends. */
export type Stop = { readonly start: Point2; readonly end: Point2 };

export type Round = {
  readonly stops: readonly Stop[];
  /** For each stop, those that come before it. A circle among them is broken at its nearest stop. */
  readonly after: readonly (readonly number[])[];
  readonly from: Point2;
};

/** Moves looked at before the round is taken as it is: counted, so the same anywhere. */
const MOST_MOVES = 2_000_000;
const LONGEST_STRETCH = 3;
const GAIN_MM = 1e-6;

/** Indices of the stops, each once. */
export function shortRound(round: Round): number[] {
  return improved(round, nearestNext(round));
}

function nearestNext({ stops, after, from }: Round): number[] {
  const left = new Set(stops.keys());
  const order: number[] = [];
  let at = from;
  while (left.size > 0) {
    const free = [...left].filter((i) => after[i].every((j) => !left.has(j)));
    const next = (free.length > 0 ? free : [...left]).reduce((a, b) =>
      distance(at, stops[b].start) < distance(at, stops[a].start) ? b : a,
    );
    left.delete(next);
    order.push(next);
    at = stops[next].end;
  }
  return order;
}

function improved(round: Round, first: readonly number[]): number[] {
  const { stops, from } = round;
  let order = [...first];
  let moves = 0;
  const way = (a: number | undefined, b: number | undefined): number =>
    b === undefined ? 0 : distance(a === undefined ? from : stops[a].end, stops[b].start);
  const betterMove = (): number[] | null => {
    for (let long = 1; long <= LONGEST_STRETCH; long++) {
      for (let i = 0; i + long <= order.length; i++) {
        const [head, tail] = [order[i], order[i + long - 1]];
        const [before, behind] = [order[i - 1], order[i + long]];
        const saved = way(before, head) + way(tail, behind) - way(before, behind);
        for (let to = 0; to <= order.length; to++) {
          if (to >= i && to <= i + long) continue;
          if (++moves > MOST_MOVES) return null;
          const [a, b] = [order[to - 1], order[to]];
          if (way(a, head) + way(tail, b) - way(a, b) > saved - GAIN_MM) continue;
          const moved = movedStretch(order, { at: i, long, to });
          if (keepsOrder(round, moved, first)) return moved;
        }
      }
    }
    return null;
  };
  for (let next = betterMove(); next; next = betterMove()) order = next;
  return order;
}

type Move = { readonly at: number; readonly long: number; readonly to: number };

function movedStretch(order: readonly number[], { at, long, to }: Move): number[] {
  const stretch = order.slice(at, at + long);
  const rest = [...order.slice(0, at), ...order.slice(at + long)];
  const place = to > at ? to - long : to;
  return [...rest.slice(0, place), ...stretch, ...rest.slice(place)];
}

/** True when nothing comes before what it must follow, but where the first order broke that too. */
function keepsOrder({ after }: Round, order: readonly number[], first: readonly number[]): boolean {
  const place = ranks(order);
  const before = ranks(first);
  return after.every((all, i) => all.every((j) => place[j] < place[i] || before[j] > before[i]));
}

function ranks(order: readonly number[]): number[] {
  const out: number[] = [];
  order.forEach((stop, k) => {
    out[stop] = k;
  });
  return out;
}

/** Length of the moves between the stops of an order. */
export const travelOf = ({ stops, from }: Omit<Round, 'after'>, order: readonly number[]): number =>
  order.reduce(
    (sum, stop, k) => sum + distance(k === 0 ? from : stops[order[k - 1]].end, stops[stop].start),
    0,
  );
