/** Blanks and blocks of a run → nest. Each timber is nested on its own blocks; the nests are told as one. */
import type { Blank } from '../blank/blank.js';
import { type Problem, problem } from '../problem.js';
import { checkNest } from './check.js';
import { limitComplaints } from './check-limits.js';
import type { NestComplaint } from './complaint.js';
import type { Block, Nest, NestEffort, NestObstacle, NestPart, NestRules } from './nest.js';
import { planner } from './plan.js';
import { orderedMade, planInRounds } from './rounds.js';
import type { Search } from './search.js';
import { THICKNESS_TOLERANCE_MM } from './stack.js';

export type Wanted = { readonly blank: Blank; readonly timber: string; readonly count: number };
export type Stock = Block & { readonly timber: string };

type TimberOrder = { readonly parts: readonly NestPart[]; readonly blocks: readonly Block[] };

export type OrderResult = { readonly nest: Nest; readonly problems: readonly Problem[] };

/**
 * Plans every timber and joins the plans. What keeps the order from being filled is told as problems.
 * @param isTimeUp if given, the order is planned again with more and more effort until it says so
 */
export function nestOrder(
  wanted: readonly Wanted[],
  stock: readonly Stock[],
  rules: NestRules,
  search: Search,
  isTimeUp?: () => boolean,
): OrderResult {
  const planners = ordersByTimber(wanted, stock).map(({ parts, blocks }) =>
    planner(parts, blocks, rules),
  );
  const plan = (effort: NestEffort, watched: Search): Nest => {
    const plans: Nest[] = [];
    for (const each of planners) plans.push(each.plan(effort, beside(plans, watched)));
    return plans.reduce(joined);
  };
  const planned = isTimeUp
    ? planInRounds(plan, { stock, rules, search, isTimeUp })
    : plan(rules, search);
  const limitRatios = Object.assign({}, ...planners.map((p) => p.limitRatios()));
  const nest = { ...planned, limitRatios };
  const index = (name: string) => wanted.findIndex((w) => w.blank.name === name);
  const hindered = new Set(nest.obstacles.flatMap((o) => ('part' in o ? [o.part] : [])));
  const problems = nest.obstacles
    .flatMap((o) => told(o, nest, wanted, stock, hindered))
    .map(({ part, problem: p }) => (part === null ? p : { ...p, path: ['orders', index(part)] }));
  return { nest, problems };
}

/** What is told of one timber, told with the plans of those before it. */
const beside = (plans: readonly Nest[], search: Search): Search => ({
  ...search,
  tell: ({ timberUsedMm3, blanks }) =>
    search.tell?.({
      timberUsedMm3: plans.reduce((sum, n) => sum + n.timberUsedMm3, timberUsedMm3),
      blanks: plans.reduce((sum, n) => sum + orderedMade(n), blanks),
    }),
});

/** Checks the joined nest as if it had been planned at once: every part against every block. */
export function checkOrder(
  nest: Nest,
  wanted: readonly Wanted[],
  stock: readonly Stock[],
  rules: NestRules,
): readonly NestComplaint[] {
  const orders = ordersByTimber(wanted, stock);
  const { complaints } = checkNest(
    nest,
    orders.flatMap((o) => o.parts),
    orders.flatMap((o) => o.blocks),
    rules,
  );
  return [...complaints, ...limitComplaints(nest)];
}

function ordersByTimber(wanted: readonly Wanted[], stock: readonly Stock[]): TimberOrder[] {
  const timbers = [...new Set(wanted.map((w) => w.timber))];
  return timbers.map((timber) => ({
    parts: wanted
      .filter((w) => w.timber === timber)
      .map(({ blank, count }) => ({
        id: blank.name,
        outline: blank.outlineRing,
        thicknessMm: blank.thicknessMm,
        orderedCount: count,
      })),
    blocks: stock.filter((b) => b.timber === timber),
  }));
}

function joined(a: Nest, b: Nest): Nest {
  const faces = [...a.faces, ...b.faces.map((f) => ({ ...f, id: f.id + a.faces.length }))];
  const [areaA, areaB] = [sawnArea(a), sawnArea(b)];
  return {
    faces,
    made: { ...a.made, ...b.made },
    ordered: { ...a.ordered, ...b.ordered },
    missing: { ...a.missing, ...b.missing },
    stacks: a.stacks + b.stacks,
    blocksUsed: { ...a.blocksUsed, ...b.blocksUsed },
    usedRatio:
      areaA + areaB > 0 ? (a.usedRatio * areaA + b.usedRatio * areaB) / (areaA + areaB) : 0,
    limitRatios: { ...a.limitRatios, ...b.limitRatios },
    obstacles: [...a.obstacles, ...b.obstacles],
    timberUsedMm3: a.timberUsedMm3 + b.timberUsedMm3,
    timberBoundMm3: a.timberBoundMm3 + b.timberBoundMm3,
    timberBoundKind: a.timberBoundKind === 'every-plan' ? b.timberBoundKind : a.timberBoundKind,
    timberAreaBoundMm3: a.timberAreaBoundMm3 + b.timberAreaBoundMm3,
    limitReached: a.limitReached || b.limitReached,
    interrupted: a.interrupted || b.interrupted,
  };
}

/** Face area of all blocks a nest saws, mm². */
const sawnArea = (nest: Nest): number =>
  nest.faces.reduce((sum, f) => sum + f.lengthMm * f.widthMm * f.layers * f.copies, 0);

type ToldOf = { readonly part: string | null; readonly problem: Problem };

function told(
  o: NestObstacle,
  nest: Nest,
  wanted: readonly Wanted[],
  stock: readonly Stock[],
  hindered: ReadonlySet<string>,
): ToldOf[] {
  switch (o.kind) {
    case 'no-thickness': {
      const timber = wanted.find((w) => w.blank.name === o.part)?.timber ?? '';
      const same = stock.filter((b) => b.timber === timber);
      const facts = {
        name: o.part,
        timber,
        thicknessMm: o.thicknessMm,
        withinMm: THICKNESS_TOLERANCE_MM,
      };
      if (same.length === 0)
        return [{ part: o.part, problem: problem('no-block-of-timber', [], facts) }];
      const found = [...new Set(same.map((b) => b.thicknessMm))].join(', ');
      return [{ part: o.part, problem: problem('no-block-of-thickness', [], { ...facts, found }) }];
    }
    case 'too-large': {
      const { part, kind: _, ...facts } = o;
      return [{ part, problem: problem('blank-larger-than-block', [], { name: part, ...facts }) }];
    }
    case 'knots':
      return [
        {
          part: o.part,
          problem: problem('knots-everywhere', [], { name: o.part, blocks: o.blocks.join(', ') }),
        },
      ];
    case 'too-high': {
      const at = ['blocks', stock.findIndex((b) => b.name === o.block), 'thicknessMm'];
      const facts = { name: o.block, thicknessMm: o.thicknessMm, limitMm: o.largestHeightMm };
      return [{ part: null, problem: problem('stack-too-high', at, facts) }];
    }
    case 'short':
      // A part that fits nowhere is not short of timber.
      return Object.keys(o.missing)
        .filter((part) => !hindered.has(part))
        .map((part) => {
          const enough = o.moreBlocks.filter((m) => m.parts.includes(part));
          const more = enough.map((m) => `${m.count} more of ${m.block}`).join(', or ');
          const facts = {
            name: part,
            made: nest.made[part],
            ordered: nest.ordered[part],
            more: more
              ? `Add ${more} (free of knots), or order fewer.`
              : 'Add blocks, or order fewer.',
          };
          return { part, problem: problem('timber-short', [], facts) };
        });
  }
}
