import { describe, expect, it } from 'vitest';
import { seededDraws } from '../../src/geometry/random.js';
import { rectRing } from '../../src/geometry/ring.js';
import { checkNest } from '../../src/nest/check.js';
import { bestDraft } from '../../src/nest/draft.js';
import type { Block, Nest, NestPart, NestRules } from '../../src/nest/nest.js';
import { packerFor } from '../../src/nest/packer.js';
import { volumeMm3 } from '../../src/nest/pile.js';
import { planNest } from '../../src/nest/plan.js';
import type { BestSoFar, Search } from '../../src/nest/search.js';
import { block, drawnOutline, lure, part, RULES, SEARCH } from './outlines.js';

/** Plans and has the plan judged. */
function plan(
  parts: readonly NestPart[],
  blocks: readonly Block[],
  rules: Partial<NestRules> = {},
  search: Search = SEARCH,
): Nest {
  const all = { ...RULES, ...rules };
  const nest = planNest(parts, blocks, all, search);
  expect(checkNest(nest, parts, blocks, all).complaints).toEqual([]);
  return nest;
}

/**
 * Bars across a face as wide as they are: nothing but their lengths matters, which is one-dimensional
 * cutting stock. Each with its gap takes `lengthMm` less a hair, which the nest's outlines grow by.
 */
const HAIR_MM = 0.1;
const WIDE = { gapMm: 1, tries: 1 };
const bar = (lengthMm: number, count: number): NestPart =>
  part(`bar-${lengthMm}`, rectRing(0, 0, lengthMm - WIDE.gapMm - HAIR_MM, 20), count);
const stock = (lengthMm: number, count: number): Block =>
  block(`stock-${lengthMm}`, [lengthMm - WIDE.gapMm, 20], count, { marginMm: 0 });

const blocksUsed = (nest: Nest): number =>
  Object.values(nest.blocksUsed).reduce((a, b) => a + b, 0);

describe('one-dimensional cutting stock', () => {
  it('needs no more than a plan made by hand', () => {
    // 70 + 30 and 60 + 40 fill a stock of 100; longest first on its own would pair nothing amiss here,
    // but 50 + 30 + 20 must be found beside them: 10 stocks filled to the end, and no plan has fewer.
    const bars = [bar(70, 3), bar(60, 3), bar(50, 4), bar(40, 3), bar(30, 7), bar(20, 4)];
    const nest = plan(bars, [stock(100, 30)], WIDE);
    expect(blocksUsed(nest)).toBe(10);
    expect(nest.timberBoundMm3).toBe(nest.timberUsedMm3);
  });

  it('meets the optimum of a published order of paper rolls', () => {
    // Rolls of 5600 mm, 13 widths: at least 407 160 / 5600 = 72.7 rolls by length, and 73 are enough. An
    // example often printed for the method of P. Gilmore and R. Gomory (1961); widths, counts and the
    // 73 from memory, their sum and the bound by arithmetic. Here a tenth of the size.
    const widths = [1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200];
    const counts = [22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20];
    expect(widths.reduce((sum, w, i) => sum + w * counts[i], 0)).toBe(407160);
    const bars = widths.map((w, i) => bar(w / 10, counts[i]));
    const nest = plan(bars, [stock(560, 100)], { ...WIDE, layouts: 150 });
    expect(blocksUsed(nest)).toBe(73);
    expect(nest.timberAreaBoundMm3).toBeLessThanOrEqual(nest.timberUsedMm3);
    // Bars are a hair short, so by area 72.7 less 0.05 % stay above 72.
    expect(nest.timberAreaBoundMm3).toBe(73 * volumeMm3(stock(560, 1)));
  });

  it('agrees with every plan there is, on tiny orders drawn by chance', () => {
    const draw = seededDraws(7);
    const pick = (from: readonly number[]): number => from[Math.floor(draw() * from.length)];
    for (let i = 0; i < 12; i++) {
      const lengths = [pick([23, 27, 31]), pick([37, 41, 43]), pick([52, 57, 61])];
      const wanted = lengths.map(() => 1 + Math.floor(draw() * 3));
      const stocks = [
        [pick([70, 85]), 2 + Math.floor(draw() * 3)],
        [pick([100, 120]), 2 + Math.floor(draw() * 2)],
      ];
      const bars = lengths.map((l, k) => bar(l, wanted[k]));
      const blocks = stocks.map(([l, n]) => stock(l, n));
      const nest = plan(bars, blocks, WIDE);
      const least = leastByEnumeration(lengths, wanted, stocks);
      const missing = Object.values(nest.missing).reduce((a, b) => a + b, 0);
      const told = { order: i, missing, lengthMm: usedLength(nest, blocks) };
      expect(told).toEqual({ order: i, ...least });
      expect(nest.timberAreaBoundMm3).toBeLessThanOrEqual(nest.timberUsedMm3);
    }
  });
});

const usedLength = (nest: Nest, blocks: readonly Block[]): number =>
  blocks.reduce((sum, b) => sum + nest.blocksUsed[b.name] * (b.lengthMm + WIDE.gapMm), 0);

/** Fewest bars missing, then least length of stock, over all ways to cut the stocks one after the other. */
function leastByEnumeration(
  lengths: readonly number[],
  wanted: readonly number[],
  stocks: readonly (readonly number[])[],
): { missing: number; lengthMm: number } {
  const pieces = stocks.flatMap(([l, n]) => Array.from({ length: n }, () => l));
  const known = new Map<string, { missing: number; lengthMm: number }>();
  const visit = (at: number, left: readonly number[]): { missing: number; lengthMm: number } => {
    const missing = left.reduce((a, b) => a + b, 0);
    if (at === pieces.length || missing === 0) return { missing, lengthMm: 0 };
    const key = `${at} ${left.join(' ')}`;
    const found = known.get(key);
    if (found) return found;
    let best = visit(at + 1, left);
    for (const cut of cuts(lengths, left, pieces[at])) {
      if (cut.every((n) => n === 0)) continue;
      const rest = visit(
        at + 1,
        left.map((n, i) => n - cut[i]),
      );
      const here = { missing: rest.missing, lengthMm: rest.lengthMm + pieces[at] };
      const less = here.missing - best.missing || here.lengthMm - best.lengthMm;
      if (less < 0) best = here;
    }
    known.set(key, best);
    return best;
  };
  return visit(0, wanted);
}

function cuts(lengths: readonly number[], most: readonly number[], room: number): number[][] {
  if (lengths.length === 0) return [[]];
  const [first, ...others] = lengths;
  const out: number[][] = [];
  for (let n = 0; n <= most[0] && n * first <= room; n++) {
    for (const rest of cuts(others, most.slice(1), room - n * first)) out.push([n, ...rest]);
  }
  return out;
}

describe('a whole run', () => {
  it('is never worse than its first draft, on orders drawn by chance', () => {
    const draw = seededDraws(11);
    for (let i = 0; i < 6; i++) {
      const parts = Array.from({ length: 2 + (i % 2) }, (_, k) =>
        part(`p${k}`, drawnOutline(draw), 2 + Math.floor(draw() * 12)),
      );
      const knots = [{ xMm: 60 + 100 * draw(), yMm: 30, radiusMm: 6 }];
      const blocks = [
        block('a', [260 + 60 * draw(), 70], 3 + i),
        block('b', [200, 60], 2 + i),
        block('c', [200, 60], 2, { knots }),
      ];
      const rules = { ...RULES, tries: 4, layouts: 12 };
      const nest = plan(parts, blocks, rules);
      const draft = bestDraft({ packer: packerFor(parts, rules), parts, blocks, rules });
      const total = (counts: readonly number[]): number => counts.reduce((a, b) => a + b, 0);
      const draftMm3 = total(
        draft.steps.map((s) => s.layers * s.copies * volumeMm3(s.option.like)),
      );
      const missing = total(Object.values(nest.missing));
      expect(missing).toBeLessThanOrEqual(total(draft.missing));
      if (missing === total(draft.missing)) {
        expect(nest.timberUsedMm3).toBeLessThanOrEqual(draftMm3);
      }
    }
  });

  it('spends least of what is asked: of two piles that serve alike, the cheaper', () => {
    const parts = [part('p', lure(100, 30), 4)];
    const blocks = [
      { ...block('dear', [240, 40], 4), costEach: 3 },
      { ...block('cheap', [260, 40], 4), costEach: 2 },
    ];
    expect(plan(parts, blocks).blocksUsed).toEqual({ dear: 0, cheap: 2 });
    const byVolume = blocks.map(({ costEach: _, ...b }) => b);
    expect(plan(parts, byVolume).blocksUsed).toEqual({ dear: 2, cheap: 0 });
  });

  it('takes an order of a million', () => {
    const nest = plan([part('p', lure(120, 30), 1_000_000)], [block('b', [450, 95], 1_000_000)], {
      tries: 2,
    });
    expect(nest.missing).toEqual({});
    expect(nest.made.p).toBeLessThan(1_000_000 + RULES.layers);
    expect(nest.faces.length).toBeLessThanOrEqual(3);
  });

  it('tells of every better plan, and of a limit reached', () => {
    const told: BestSoFar[] = [];
    const parts = [part('a', lure(110, 28), 14), part('b', lure(70, 22), 15)];
    const blocks = [block('a', [330, 70], 8), block('b', [250, 60], 8)];
    const nest = plan(parts, blocks, { layouts: 10 }, { ...SEARCH, tell: (b) => told.push(b) });
    expect(told.length).toBeGreaterThan(0);
    for (let i = 1; i < told.length; i++) {
      expect(told[i].timberUsedMm3).toBeLessThan(told[i - 1].timberUsedMm3);
    }
    expect(told[told.length - 1]).toEqual({ timberUsedMm3: nest.timberUsedMm3, blanks: 29 });
    expect(plan(parts, blocks, { layouts: 0 }).limitReached).toBe(true);
  });

  it('can be stopped, keeps the best it has, and says so', () => {
    let asked = 0;
    const parts = [part('a', lure(110, 28), 14), part('b', lure(70, 22), 15)];
    const blocks = [block('a', [330, 70], 8), block('b', [250, 60], 8)];
    const stopping = { ...SEARCH, shouldStop: () => ++asked > 2 };
    const nest = plan(parts, blocks, { tries: 2 }, stopping);
    expect(nest.interrupted).toBe(true);
    expect(nest.missing).toEqual({});
    expect(plan(parts, blocks, { tries: 2, layouts: 3 }).interrupted).toBe(false);
  });
});
