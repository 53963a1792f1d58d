/**
 * Drafts of a plan: stacks are chosen one kind after the other, each the best use of timber at that
 * moment, until the order is filled or nothing more fits.
 */
import { bestSawing, type Sawing } from './choose.js';
import { fitsBySize } from './fit.js';
import type { Block, NestPart, NestRules, StackMix } from './nest.js';
import type { Packer } from './packer.js';
import {
  groupedBy,
  layersUnderGuide,
  type Stock,
  sizeKey,
  stackOptions,
  takeStacks,
} from './stack.js';

/** A sawing with the blocks it takes. */
export type Step = Sawing & { readonly stacks: readonly StackMix[] };

/** Steps of a plan and the blanks it leaves to be made, by part. */
export type Draft = { readonly steps: readonly Step[]; readonly missing: readonly number[] };

/** An order as the planning sees it. */
export type Order = {
  readonly packer: Packer;
  readonly parts: readonly NestPart[];
  readonly blocks: readonly Block[];
  readonly rules: NestRules;
};

/**
 * The first draft that fills the order, else the one with fewest blanks missing: with all layers
 * allowed, with the parts left short going first, then both with fewer layers (which makes fewer
 * blanks nobody ordered).
 */
export function bestDraft(order: Order): Draft {
  const ordered = order.parts.map((p) => p.orderedCount);
  let best = draft(order, ordered, { layers: order.rules.layers, first: [] });
  for (let layers = order.rules.layers; layers >= 1 && canGain(order, best); layers--) {
    const first = order.parts.flatMap((_, part) => (best.missing[part] > 0 ? [part] : []));
    for (const choice of layers < order.rules.layers ? [[], first] : [first]) {
      const next = draft(order, ordered, { layers, first: choice });
      if (total(next.missing) < total(best.missing)) best = next;
    }
  }
  return best;
}

const total = (counts: readonly number[]): number => counts.reduce((sum, n) => sum + n, 0);

/** True if something is missing that some block could give. */
const canGain = ({ packer, parts, blocks }: Order, { missing }: Draft): boolean =>
  parts.some(
    (part, i) => missing[i] > 0 && blocks.some((b) => fitsBySize(packer.kit.set, part, i, b)),
  );

/** Stacks compared per size of block, when every block has knots of its own. */
const OPTIONS_WEIGHED = 4;

/** What is found for the first items that give something, up to `most` of them. */
function firstFound<T, R>(items: readonly T[], find: (item: T) => R | null, most: number): R[] {
  const out: R[] = [];
  for (const item of items) {
    const found = out.length < most ? find(item) : null;
    if (found) out.push(found);
  }
  return out;
}

/** One plan under a limit of layers, with some parts going first. */
export function draft(
  { packer, parts, blocks, rules }: Order,
  ordered: readonly number[],
  { layers, first }: { readonly layers: number; readonly first: readonly number[] },
): Draft {
  let stock: Stock = new Map(blocks.map((b) => [b.name, b.count]));
  let missing: readonly number[] = ordered;
  const steps: Step[] = [];
  const sizes = groupedBy(blocks, sizeKey);
  const nextSawing = (): Sawing | null => {
    const found = sizes.flatMap((entries) => {
      const blanks = missing.map((n, i) =>
        fitsBySize(packer.kit.set, parts[i], i, entries[0]) ? n : 0,
      );
      const guide = layersUnderGuide(entries[0].thicknessMm, rules);
      const height = Math.min(layers, guide, Math.max(...blanks));
      const options = height > 0 ? stackOptions(entries, stock, height) : [];
      return firstFound(options, (o) => bestSawing(packer, o, { blanks, first }), OPTIONS_WEIGHED);
    });
    const pressing = found.filter(({ sawing }) => first.some((p) => sawing.counts[p] > 0));
    const open = pressing.length > 0 ? pressing : found;
    if (open.length === 0) return null;
    return open.reduce((a, b) => (b.worth > a.worth + 1e-9 ? b : a)).sawing;
  };
  for (let next = nextSawing(); next; next = nextSawing()) {
    const { counts, copies } = next;
    const taken = takeStacks({ ...next.option, layers: next.layers }, stock, copies);
    stock = taken.left;
    const made = next.layers * copies;
    missing = missing.map((n, part) => Math.max(0, n - counts[part] * made));
    steps.push({ ...next, stacks: taken.stacks });
  }
  return { steps, missing };
}
