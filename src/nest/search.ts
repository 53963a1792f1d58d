/**
 * Column generation: the relaxed choice of layouts tells what a blank and a block are worth; layouts
 * worth more than their block are looked for; and so on until none is left or the budget is spent.
 * Then the same for layouts that could make the plan in whole blocks a cheaper one.
 */

import type { LinearSolver } from '../linear/solver.js';
import {
  type Chosen,
  type Demand,
  leastCost,
  missingOf,
  nextBelow,
  relaxed,
  totalCost,
} from './master.js';
import { type Covered, wishesOf } from './wishes.js';

/** What the planning is given beside the order: the started solver, and whom to ask and to tell. */
export type Search = {
  readonly solver: LinearSolver;
  /** Asked before every layout that is tried; true ends the search with the best so far. */
  readonly shouldStop?: (() => boolean) | undefined;
  /** Called whenever a plan that needs less was found. */
  readonly tell?: ((best: BestSoFar) => void) | undefined;
};

export type BestSoFar = { readonly timberUsedMm3: number; readonly blanks: number };

export type Limits = {
  /** Layouts tried; one of more than 16 outlines counts as several. */
  readonly layouts: number;
  /** Branchings in a choice of whole blocks. */
  readonly nodes: number;
};

export type Searched = {
  readonly best: readonly Chosen[];
  /** Nothing chosen among the layouts found costs less; 0 if nothing is known. */
  readonly bound: number;
  /** False if a limit of branchings was reached before the best choice was proved. */
  readonly proved: boolean;
  /** `done`: no layout was left that could have made the plan cheaper. */
  readonly ended: 'done' | 'limit' | 'stopped';
};

/** Layouts tried before prices are made anew. */
const TRIED_AT_ONCE = 6;
/** Choices of whole blocks made one from the other, at most. */
const ROUNDS = 3;
/** A layout of more outlines than this counts as several, so that planks take no longer than blocks. */
const OUTLINES_PER_LAYOUT = 16;

export type SearchStart = {
  readonly limits: Limits;
  readonly covered: Covered;
  /** A choice that is known, the first best. */
  readonly first: readonly Chosen[];
};

/** Fills the pool with layouts worth having, and chooses between them. */
export function searchLayouts(
  search: Search,
  demand: Demand,
  { limits, covered, first }: SearchStart,
): Searched {
  const { pool } = demand;
  const wishes = wishesOf(demand, covered);
  let [best, spent, weighed, bound, proved] = [first, 0, 0, 0, true];
  const choose = (): void => {
    if (weighed === pool.layouts.length) return;
    weighed = pool.layouts.length;
    bound = 0;
    // Each time it starts from a better choice, the solver can leave more aside and look closer.
    for (let round = 0; round < ROUNDS; round++) {
      const choice = leastCost(search.solver, demand, limits.nodes, best);
      proved = choice?.proved ?? false;
      bound = Math.max(bound, choice?.bound ?? 0);
      if (!choice || totalCost(demand, choice.chosen) >= totalCost(demand, best)) return;
      best = choice.chosen;
      search.tell?.(soFar(demand, best));
      if (proved) return;
    }
  };
  const end = (ended: Searched['ended']): Searched => {
    choose();
    return { best, bound, proved, ended };
  };
  search.tell?.(soFar(demand, best));
  for (;;) {
    const prices = relaxed(search.solver, demand);
    let next = wishes.best(prices, 0);
    if (next.length === 0) {
      choose();
      const slack = nextBelow(search.solver, demand, best) - prices.cost;
      next = slack < 0 ? [] : wishes.best(prices, slack);
      if (next.length === 0) return end(search.shouldStop?.() ? 'stopped' : 'done');
    }
    for (const { pile, wanted } of next.slice(0, TRIED_AT_ONCE)) {
      if (search.shouldStop?.()) return end('stopped');
      if (spent >= limits.layouts) return end('limit');
      const layout = pool.pack(pile, wanted);
      spent += Math.max(1, layout.spots.length / OUTLINES_PER_LAYOUT);
      pool.add(pile, layout);
      wishes.learn(pile, wanted, layout);
    }
  }
}

function soFar({ pool, ordered }: Demand, chosen: readonly Chosen[]): BestSoFar {
  const total = (counts: readonly number[]): number => counts.reduce((s, n) => s + n, 0);
  return {
    timberUsedMm3: total(chosen.map((c) => c.blocks * pool.piles[c.pile].volumeMm3)),
    blanks: total(ordered) - total(missingOf(pool, ordered, chosen)),
  };
}
