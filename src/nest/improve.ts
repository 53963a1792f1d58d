/** A draft made better: by layouts searched for, and by choosing between all of them at once. */
import { chordArea } from './chords.js';
import { bestDraft, type Draft, type Order, type Step } from './draft.js';
import { isLess } from './judged.js';
import { type Chosen, type Demand, excessCost, leastCost, relaxed } from './master.js';
import type { Nest } from './nest.js';
import { costOf, pilesOf, volumeMm3 } from './pile.js';
import { type Pool, poolOf } from './pool.js';
import { sawingsOf } from './sawings.js';
import { type Search, type Searched, searchLayouts } from './search.js';
import { chordsOf, leastTimberMm3 } from './timber-bound.js';
import { leastWork } from './tracings.js';

/** What is told of a plan's timber and of the search for it. */
export type TimberFacts = Pick<
  Nest,
  | 'timberUsedMm3'
  | 'timberBoundMm3'
  | 'timberBoundKind'
  | 'timberAreaBoundMm3'
  | 'limitReached'
  | 'interrupted'
>;

export type Plan = Draft & { readonly timber: TimberFacts };

/** Branchings in a choice of whole blocks, at most. */
const NODES = 100;
/** Layouts between which the work is weighed, at most, beside those chosen. */
const WEIGHED_LAYOUTS = 40;

/** The best plan found; never worse than the first draft. */
export function bestPlan(order: Order, search: Search): Plan {
  const draft = bestDraft(order);
  const { packer, parts, blocks, rules } = order;
  const piles = pilesOf(blocks, rules);
  const pool = poolOf(packer, parts, piles);
  const ordered = parts.map((p, i) =>
    piles.some((_, pile) => pool.fits(i, pile)) ? p.orderedCount : 0,
  );
  if (ordered.every((n) => n === 0)) return { ...draft, timber: NO_TIMBER };
  const demand: Demand = { pool, ordered, costs: piles.map((p) => p.cost) };
  const first = chosenOf(pool, draft.steps);
  const areasMm2 = parts.map((part) => chordArea(chordsOf(part, rules.gapMm).along));
  const covered = { areasMm2, gapMm: rules.gapMm };
  const limits = { layouts: rules.layouts, nodes: NODES };
  const searched = searchLayouts(search, demand, { limits, covered, first });
  const { best, ended } = searched;
  const among = worthWeighing(demand, search, best);
  const light = leastWork(search.solver, demand, best, { among, nodes: NODES });
  const plan = [best, light]
    .map((chosen) => draftOf(order, sawingsOf({ packer, parts, pool }, chosen)))
    .reduce((a, b) => (isLess(judgedBy(b), judgedBy(a)) ? b : a), draft);
  const bounds = boundsOf(order, demand, { search, searched, plan });
  return {
    ...plan,
    timber: {
      timberUsedMm3: timberOf(plan.steps),
      ...bounds,
      limitReached: ended === 'limit' || !searched.proved,
      interrupted: ended === 'stopped',
    },
  };
}

const NO_TIMBER: TimberFacts = {
  timberUsedMm3: 0,
  timberBoundMm3: 0,
  timberBoundKind: 'every-plan',
  timberAreaBoundMm3: 0,
  limitReached: false,
  interrupted: false,
};

/** A draft's steps as a choice among the pool's layouts, which it takes up. */
function chosenOf(pool: Pool, steps: readonly Step[]): Chosen[] {
  const pileOf = new Map(pool.piles.flatMap((p, i) => p.entries.map((b) => [b.name, i])));
  return steps.flatMap((step) => {
    const shares = step.stacks.flatMap(({ copies, blocks }) =>
      blocks.map((b) => ({ pile: pileOf.get(b.block) as number, blocks: b.count * copies })),
    );
    const layout = pool.add(shares[0].pile, step.layout);
    return shares.map((share) => ({ layout, ...share }));
  });
}

/** Layouts to weigh the work of: those chosen, and those that cost least beyond their worth. */
function worthWeighing(
  demand: Demand,
  { solver }: Search,
  chosen: readonly Chosen[],
): ReadonlySet<number> {
  const prices = relaxed(solver, demand);
  const excess = demand.pool.layouts.map(({ piles }, layout) =>
    Math.min(...piles.map((pile) => excessCost(demand, prices, { layout, pile }))),
  );
  const others = excess.map((_, i) => i).sort((a, b) => excess[a] - excess[b] || a - b);
  return new Set([...chosen.map((c) => c.layout), ...others.slice(0, WEIGHED_LAYOUTS)]);
}

function draftOf({ parts }: Order, steps: readonly Step[]): Draft {
  const made = (part: number): number =>
    steps.reduce((sum, s) => sum + s.counts[part] * s.layers * s.copies, 0);
  return { steps, missing: parts.map((p, i) => Math.max(0, p.orderedCount - made(i))) };
}

const total = <T>(items: readonly T[], of: (item: T) => number): number =>
  items.reduce((sum, item) => sum + of(item), 0);

/** Of whole blocks, mm³. */
const timberOf = (steps: readonly Step[]): number =>
  total(steps, (s) => s.layers * s.copies * volumeMm3(s.option.like));

/** What a plan is judged by, first things first: blanks missing, cost, faces, stacks, timber not left over as offcuts. */
function judgedBy({ steps, missing }: Draft): number[] {
  const costs = new Map(steps.flatMap((s) => s.option.from.map((b) => [b.name, costOf(b)])));
  const cost = total(
    steps.flatMap((s) => s.stacks),
    (mix) => mix.copies * total(mix.blocks, (b) => b.count * (costs.get(b.block) ?? 0)),
  );
  const laid = total(
    steps,
    (s) => s.layers * s.copies * s.layout.usedLengthMm * s.option.like.widthMm,
  );
  return [total(missing, (n) => n), cost, steps.length, total(steps, (s) => s.copies), laid];
}

/**
 * What any plan needs, and what plans of the layouts found need. None is told above what is used:
 * where fewer missing blanks than the plan's would put it there, the plan meets it.
 */
function boundsOf(
  { parts, rules }: Order,
  demand: Demand,
  { search, searched, plan }: { search: Search; searched: Searched; plan: Draft },
): Pick<Nest, 'timberBoundMm3' | 'timberBoundKind' | 'timberAreaBoundMm3'> {
  const { pool, ordered, costs } = demand;
  const usedMm3 = timberOf(plan.steps);
  const hopeless = total(parts, (p) => p.orderedCount) - total(ordered, (n) => n);
  const missing = total(plan.missing, (n) => n) - hopeless;
  const mayTilt = rules.largestTiltDeg > 0;
  const order = { parts, wanted: ordered, missing, gapMm: rules.gapMm, mayTilt, ...pool };
  const every = Math.min(usedMm3, leastTimberMm3(search.solver, order, NODES));
  const volumes = pool.piles.map((p) => p.volumeMm3);
  const found = volumes.every((v, pile) => v === costs[pile])
    ? searched.bound
    : leastCost(search.solver, { ...demand, costs: volumes }, NODES, searched.best)?.bound;
  const timberBoundMm3 = Math.max(every, Math.min(usedMm3, found ?? 0));
  return {
    timberBoundMm3,
    timberBoundKind: timberBoundMm3 > every ? 'layouts-found' : 'every-plan',
    timberAreaBoundMm3: every,
  };
}
