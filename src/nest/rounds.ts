/** Planning for as long as there is time: the same order again with more and more effort, the best plan kept. */
import { isLess } from './judged.js';
import type { Block, Nest, NestEffort } from './nest.js';
import { costOf } from './pile.js';
import type { BestSoFar, Search } from './search.js';

export type Rounds = {
  readonly stock: readonly Block[];
  /** Effort of the first round; each further one has twice the tries and layouts and a seed of its own. */
  readonly rules: NestEffort;
  readonly search: Search;
  readonly isTimeUp: () => boolean;
};

/** No round has more tries than this, so that counts stay counts. */
const MOST_TRIES = 1 << 20;
/** Volumes that agree to this are equal, relative. */
const SAME = 1e-9;

/**
 * Rounds until the time is up, the search is stopped, or the plan is proved least: it uses no more
 * timber than any plan must, and all blocks count by their volume. Time that is up shows as
 * `limitReached`, not as `interrupted`.
 */
export function planInRounds(
  plan: (effort: NestEffort, search: Search) => Nest,
  { stock, rules, search, isTimeUp }: Rounds,
): Nest {
  const isStopped = (): boolean => search.shouldStop?.() ?? false;
  const watched: Search = {
    ...search,
    shouldStop: () => isStopped() || isTimeUp(),
    tell: tellBetter(search),
  };
  const effort = (round: number): NestEffort => ({
    tries: Math.min(MOST_TRIES, rules.tries * 2 ** round),
    layouts: Math.min(MOST_TRIES, rules.layouts * 2 ** round),
    seed: rules.seed + round,
  });
  let best = plan(effort(0), watched);
  for (let round = 1; !watched.shouldStop?.() && !isLeast(best, stock); round++) {
    const next = plan(effort(round), watched);
    if (isLess(judgedBy(next, stock), judgedBy(best, stock))) best = next;
  }
  const isProved = isLeast(best, stock);
  return { ...best, limitReached: best.limitReached || !isProved, interrupted: isStopped() };
}

/** Blanks made of those ordered, surplus aside. */
export const orderedMade = ({ ordered, missing }: Nest): number =>
  sum(Object.values(ordered)) - sum(Object.values(missing));

const sum = (values: readonly number[]): number => values.reduce((total, v) => total + v, 0);

/** Further rounds begin anew; only what beats all before it is told. */
function tellBetter({ tell }: Search): (now: BestSoFar) => void {
  let best: BestSoFar | null = null;
  return (now) => {
    const isWorse =
      best !== null &&
      (now.blanks < best.blanks ||
        (now.blanks === best.blanks && now.timberUsedMm3 >= best.timberUsedMm3));
    if (isWorse) return;
    best = now;
    tell?.(now);
  };
}

const isLeast = (nest: Nest, stock: readonly Block[]): boolean =>
  Object.keys(nest.missing).length === 0 &&
  stock.every((b) => b.costEach === undefined) &&
  nest.timberUsedMm3 <= nest.timberAreaBoundMm3 * (1 + SAME);

/** As plans are judged: blanks missing, cost, faces, stacks. */
const judgedBy = (nest: Nest, stock: readonly Block[]): number[] => [
  sum(Object.values(nest.missing)),
  sum(stock.map((b) => (nest.blocksUsed[b.name] ?? 0) * costOf(b))),
  nest.faces.length,
  nest.stacks,
];
