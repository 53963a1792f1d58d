/** From blocks chosen to stacks sawn: how they are taped, and which outlines nobody needs are left out. */
import type { Step } from './draft.js';
import type { Chosen } from './master.js';
import type { NestPart, StackMix } from './nest.js';
import type { Packer } from './packer.js';
import { type Layout, thinnedOut } from './place.js';
import type { Pool } from './pool.js';
import { flawKey, flawsOf, groupedBy, takeStacks } from './stack.js';

/** Blocks of one layout, entry by entry. */
type Pieces = { readonly layout: number; readonly blocks: ReadonlyMap<string, number> };

/**
 * Stacks for a choice of layouts, those sawn most often first. Every stack is as high as the guide
 * allows but for a last one of what is left over; where as many stacks of one height use the same
 * blocks, they are made alike.
 */
export function sawingsOf(
  { packer, parts, pool }: { packer: Packer; parts: readonly NestPart[]; pool: Pool },
  chosen: readonly Chosen[],
): Step[] {
  const stock = new Map(pool.piles.flatMap((p) => p.entries.map((b) => [b.name, b.count])));
  const pieces = groupedBy(
    [...chosen].sort((a, b) => a.layout - b.layout || a.pile - b.pile),
    (c) => String(c.layout),
  ).map((uses): Pieces => {
    const blocks = new Map<string, number>();
    for (const { pile, blocks: wanted } of uses) {
      let open = wanted;
      for (const { name } of pool.piles[pile].entries) {
        const taken = Math.min(open, stock.get(name) ?? 0);
        if (taken > 0) blocks.set(name, taken);
        stock.set(name, (stock.get(name) ?? 0) - taken);
        open -= taken;
      }
    }
    return { layout: uses[0].layout, blocks };
  });
  const steps = pieces.flatMap((p) => stacksOf(pool, p));
  return trimmed(packer, parts, steps.sort(byWork));
}

const byWork = (a: Step, b: Step): number =>
  b.copies * b.layers - a.copies * a.layers || b.layers - a.layers;

function stacksOf({ piles, layouts }: Pool, { layout, blocks }: Pieces): Step[] {
  const from = piles.flatMap((p) => p.entries).filter((b) => blocks.has(b.name));
  const total = [...blocks.values()].reduce((sum, n) => sum + n, 0);
  const highest = Math.min(
    ...piles.filter((p) => p.entries.some((b) => blocks.has(b.name))).map((p) => p.layers),
  );
  let left: ReadonlyMap<string, number> = blocks;
  return heights(total, highest).map(({ layers, copies }): Step => {
    const option = { like: from[0], layers, flaws: flawsOf([]), most: copies, from };
    const taken = takeStacks(option, left, copies);
    left = taken.left;
    const used = from.filter((b) =>
      taken.stacks.some((mix) => mix.blocks.some((s) => s.block === b.name)),
    );
    const unlike = groupedBy(used, (b) => flawKey(b)).map((g) => g[0]);
    return {
      option: { ...option, like: used[0], flaws: flawsOf(unlike) },
      layout: layouts[layout].layout,
      counts: layouts[layout].counts,
      layers,
      copies,
      stacks: taken.stacks,
    };
  });
}

/** How to make the fewest stacks of so many blocks: all of one height if that can be. */
function heights(blocks: number, highest: number): { layers: number; copies: number }[] {
  const stacks = Math.ceil(blocks / highest);
  if (blocks % stacks === 0) return [{ layers: blocks / stacks, copies: stacks }];
  const full = Math.floor(blocks / highest);
  return [
    { layers: highest, copies: full },
    { layers: blocks - full * highest, copies: 1 },
  ].filter((h) => h.copies > 0);
}

/** Outlines nobody needs, left out of so many stacks of a step. */
type Thinning = {
  readonly at: number;
  readonly less: readonly number[];
  readonly copies: number;
  readonly areaMm2: number;
};

/**
 * The steps without outlines nobody needs. They are left out of as few stacks as can be, so that what
 * is spared is one long offcut; first where that takes no further face to trace.
 */
function trimmed(packer: Packer, parts: readonly NestPart[], steps: readonly Step[]): Step[] {
  const out = [...steps];
  for (let next = bestThinning(packer, parts, out); next; next = bestThinning(packer, parts, out)) {
    const { at, less, copies } = next;
    const [kept, thinned] = split(out[at], copies);
    const counts = thinned.counts.map((n, part) => n - less[part]);
    const left = counts.some((n) => n > 0)
      ? [{ ...thinned, counts, layout: lessLayout(packer, thinned, counts) }]
      : [];
    out.splice(at, 1, ...kept, ...left);
  }
  return out;
}

function bestThinning(
  packer: Packer,
  parts: readonly NestPart[],
  steps: readonly Step[],
): Thinning | null {
  const surplus = parts.map(
    ({ orderedCount }, part) =>
      steps.reduce((sum, s) => sum + s.counts[part] * s.layers * s.copies, 0) - orderedCount,
  );
  const thinnings = steps.map(({ counts, layers, copies }, at): Thinning => {
    const less = counts.map((n, part) =>
      Math.max(0, Math.min(n, Math.floor(surplus[part] / layers))),
    );
    // As many stacks at once as can be thinned alike.
    const alike = less.map((n, part) =>
      n > 0 ? Math.floor(surplus[part] / (layers * n)) : copies,
    );
    const areaMm2 = layers * less.reduce((sum, n, part) => sum + n * packer.areaMm2(part), 0);
    return { at, less, copies: Math.min(copies, ...alike), areaMm2 };
  });
  const splits = (t: Thinning): number => (t.copies < steps[t.at].copies ? 1 : 0);
  const [best] = thinnings
    .filter((t) => t.areaMm2 > 0)
    .sort((a, b) => splits(a) - splits(b) || b.areaMm2 - a.areaMm2 || a.at - b.at);
  return best ?? null;
}

/** A step without its last stacks, and these by themselves. */
function split(step: Step, copies: number): [Step[], Step] {
  if (copies === step.copies) return [[], step];
  const [kept, taken]: [StackMix[], StackMix[]] = [[], []];
  let open = copies;
  for (const mix of [...step.stacks].reverse()) {
    const n = Math.min(open, mix.copies);
    open -= n;
    if (n > 0) taken.unshift({ ...mix, copies: n });
    if (n < mix.copies) kept.unshift({ ...mix, copies: mix.copies - n });
  }
  return [
    [{ ...step, copies: step.copies - copies, stacks: kept }],
    { ...step, copies, stacks: taken },
  ];
}

/** A layout of fewer outlines: packed anew, or what is left when the rightmost are taken off, whichever ends sooner. */
function lessLayout(packer: Packer, { option, layout }: Step, counts: readonly number[]): Layout {
  const anew = packer.pack({ ...option.like, ...option.flaws }, counts);
  const left = thinnedOut(packer.kit, layout, counts);
  return anew.spots.length === left.spots.length && anew.usedLengthMm < left.usedLengthMm
    ? anew
    : left;
}
