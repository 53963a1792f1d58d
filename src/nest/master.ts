/**
 * The choice of layouts as a linear program (P. Gilmore and R. Gomory, 1961): how many blocks of each
 * pile to saw with each layout, so that the order is filled and the blocks cost least.
 */

import { type LinearSolver, type Program, type Row, solve } from '../linear/solver.js';
import type { Pool } from './pool.js';

/** A layout sawn from a pile; places in the pool. */
export type Use = { readonly layout: number; readonly pile: number };
export type Chosen = Use & { readonly blocks: number };

/** What is to be filled. */
export type Demand = {
  readonly pool: Pool;
  /** Blanks, by part. */
  readonly ordered: readonly number[];
  /** Of one block, by pile. */
  readonly costs: readonly number[];
};

/** The best mix of layouts when blocks can be divided, and what that makes things worth. */
export type Relaxed = {
  /** What one more blank would cost, by part. */
  readonly partPrices: readonly number[];
  /** What one more block would save, by pile. */
  readonly pilePrices: readonly number[];
  readonly cost: number;
};

export type Choice = {
  readonly chosen: readonly Chosen[];
  /** Blanks not made, by part. */
  readonly missing: readonly number[];
  /** Nothing chosen among these layouts that leaves no more blanks missing costs less. */
  readonly bound: number;
  readonly proved: boolean;
};

/** A missing blank counts as so many of the costliest block. */
const MISSING_BLOCKS = 10;

export function relaxed(solver: LinearSolver, demand: Demand): Relaxed {
  const unit = unitOf(demand.costs);
  const program = fillProgram(demand, usesOf(demand.pool), weighed(demand, unit), false);
  const solved = solve(solver, program, { nodes: 0 });
  const parts = demand.ordered.length;
  const duals = solved?.duals ?? program.rows.map(() => 0);
  return {
    partPrices: duals.slice(0, parts).map((d) => unit * Math.max(0, d)),
    pilePrices: duals.slice(parts).map((d) => unit * Math.max(0, -d)),
    cost: unit * (solved?.cost ?? 0),
  };
}

/**
 * Whole blocks: fewest blanks missing first, then least cost. A use that costs more beyond its worth
 * than the known choice costs beyond the relaxed one is in no better choice, and left aside.
 * @param from a choice that is known
 * @returns null if the solver finds none within so many branchings
 */
export function leastCost(
  solver: LinearSolver,
  demand: Demand,
  nodes: number,
  from: readonly Chosen[],
): Choice | null {
  const { pool, ordered, costs } = demand;
  const prices = relaxed(solver, demand);
  const slack = (totalCost(demand, from) - prices.cost) * (1 + SLACK);
  const known = new Set(from.map((c) => `${c.layout} ${c.pile}`));
  const uses = usesOf(pool).filter(
    (u) => excessCost(demand, prices, u) <= slack || known.has(`${u.layout} ${u.pile}`),
  );
  const unit = unitOf(costs);
  const start = { nodes, from: valuesOf(demand, uses, from) };
  const choice = (values: readonly number[]) =>
    uses.flatMap((use, i) => (values[i] > 0 ? [{ ...use, blocks: values[i] }] : []));
  const all = fillProgram(demand, uses, weighed(demand, unit), true);
  let best = solve(solver, all, start);
  const lacking = (values: readonly number[]) => sum(values.slice(uses.length));
  if (best && lacking(best.values) > 0) {
    const counted = fillProgram(demand, uses, { block: () => 0, missing: 1 }, true);
    const fewest = solve(solver, counted, { nodes, from: best.values });
    const least = fewest && fewest.cost < lacking(best.values) ? fewest : best;
    best = solve(
      solver,
      atMostMissing(demand, uses, lacking(least.values), (pile) => costs[pile] / unit),
      { nodes, from: least.values },
    );
  }
  if (!best) return null;
  const chosen = choice(best.values);
  const missing = missingOf(pool, ordered, chosen);
  return { chosen, missing, bound: unit * best.bound, proved: best.proved };
}

/** The filling of the order with at most so many blanks missing in all; `block` gives a block's cost. */
export function atMostMissing(
  demand: Demand,
  uses: readonly Use[],
  most: number,
  block: (pile: number) => number,
): Program {
  const { unknowns, rows } = fillProgram(demand, uses, { block, missing: 0 }, true);
  const terms = demand.ordered.map((_, part) => [uses.length + part, 1] as const);
  return { unknowns, rows: [...rows, { terms, least: -Infinity, most }] };
}

type Weights = { readonly block: (pile: number) => number; readonly missing: number };

const weighed = ({ costs }: Demand, unit: number): Weights => ({
  block: (pile) => costs[pile] / unit,
  missing: (MISSING_BLOCKS * Math.max(...costs)) / unit,
});

/** Unknowns are the blocks of each use, then the blanks missing of each part; rows are the parts, then the piles. */
function fillProgram(
  { pool: { layouts, piles }, ordered }: Demand,
  uses: readonly Use[],
  weights: Weights,
  whole: boolean,
): Program {
  const blocks = uses.map(({ pile }) => ({
    cost: weights.block(pile),
    most: piles[pile].count,
    whole,
  }));
  const missing = ordered.map((most) => ({ cost: weights.missing, most, whole }));
  const made = ordered.map((_, part): [number, number][] => [[uses.length + part, 1]]);
  const taken = piles.map((): [number, number][] => []);
  uses.forEach(({ layout, pile }, i) => {
    taken[pile].push([i, 1]);
    layouts[layout].counts.forEach((n, part) => {
      if (n > 0) made[part].push([i, n]);
    });
  });
  const filled = made.map((terms, i): Row => ({ terms, least: ordered[i], most: Infinity }));
  const stock = taken.map((terms, i): Row => ({ terms, least: -Infinity, most: piles[i].count }));
  return { unknowns: [...blocks, ...missing], rows: [...filled, ...stock] };
}

/** Every use of every layout. */
export const usesOf = ({ layouts }: Pool): readonly Use[] =>
  layouts.flatMap(({ piles }, layout) => piles.map((pile) => ({ layout, pile })));

/** The unknowns' values for a choice. */
export function valuesOf(
  { pool, ordered }: Demand,
  uses: readonly Use[],
  chosen: readonly Chosen[],
): number[] {
  const blocks = new Map<string, number>();
  for (const c of chosen) {
    const key = `${c.layout} ${c.pile}`;
    blocks.set(key, (blocks.get(key) ?? 0) + c.blocks);
  }
  const of = uses.map((use) => blocks.get(`${use.layout} ${use.pile}`) ?? 0);
  return [...of, ...missingOf(pool, ordered, chosen)];
}

/** Blanks a choice leaves to be made, by part. */
export const missingOf = (
  { layouts }: Pool,
  ordered: readonly number[],
  chosen: readonly Chosen[],
): number[] =>
  ordered.map((n, part) =>
    Math.max(0, n - sum(chosen.map((c) => c.blocks * layouts[c.layout].counts[part]))),
  );

/** What a use of a block costs beyond what it makes is worth; 0 for those in the relaxed choice. */
export function excessCost(
  { pool, costs }: Demand,
  prices: Relaxed,
  { layout, pile }: Use,
): number {
  const worth = sum(pool.layouts[layout].counts.map((n, part) => n * prices.partPrices[part]));
  return costs[pile] + prices.pilePrices[pile] - worth;
}

/** Room for rounding where a use is left aside, relative. */
const SLACK = 1e-6;

/** Cost of the blocks taken, and of the blanks missing as the relaxed choice counts them. */
export function totalCost({ pool, ordered, costs }: Demand, chosen: readonly Chosen[]): number {
  const missing = sum(missingOf(pool, ordered, chosen));
  return (
    sum(chosen.map((c) => c.blocks * costs[c.pile])) + missing * MISSING_BLOCKS * Math.max(...costs)
  );
}

/** The most that blocks of this stock can cost together and yet less than a choice does. */
export function nextBelow(solver: LinearSolver, demand: Demand, chosen: readonly Chosen[]): number {
  const { pool, costs } = demand;
  const unit = unitOf(costs);
  const below = totalCost(demand, chosen) / unit;
  const unknowns = pool.piles.map(({ count }, pile) => ({
    cost: -costs[pile] / unit,
    most: count,
    whole: true,
  }));
  const terms = costs.map((cost, pile) => [pile, cost / unit] as const);
  const rows = [{ terms, least: -Infinity, most: below - LESS }];
  return -unit * (solve(solver, { unknowns, rows }, { nodes: 0 })?.bound ?? -below);
}

/** Costs this much apart are different, in units. */
const LESS = 0.5;

const sum = (values: readonly number[]): number => values.reduce((s, n) => s + n, 0);

/** What costs are counted in: their greatest common measure, if they have one, so that the solver sees whole numbers. */
export function unitOf(costs: readonly number[]): number {
  const most = Math.max(...costs);
  const measure = costs.reduce(common, 0);
  return Number.isInteger(measure) && most / measure < MOST_UNITS ? measure : most;
}

const MOST_UNITS = 1e5;

function common(a: number, b: number): number {
  return b === 0 ? a : common(b, a % b);
}
