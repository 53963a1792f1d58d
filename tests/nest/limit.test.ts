import { describe, expect, it } from 'vitest';
import { type Ring, rectRing, ring } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import { limitComplaints } from '../../src/nest/check-limits.js';
import { faceLimitRatio } from '../../src/nest/limit.js';
import type { Nest, NestPart, NestRules } from '../../src/nest/nest.js';
import { planner } from '../../src/nest/plan.js';
import { planInRounds } from '../../src/nest/rounds.js';
import type { BestSoFar } from '../../src/nest/search.js';
import { block, lure, part, RULES, SEARCH } from './outlines.js';

const polygon = (corners: number, radiusMm: number): Ring =>
  ring(
    Array.from({ length: corners }, (_, i): Point2 => {
      const angle = (2 * Math.PI * i) / corners;
      return [radiusMm * Math.cos(angle), radiusMm * Math.sin(angle)];
    }),
  );

const limitOf = (outline: Ring, gapMm: number): number =>
  planner([part('p', outline, 1)], [block('b', [300, 90], 1)], { ...RULES, gapMm }).limitRatios().p;

describe('the limit of a part', () => {
  it('is that of its densest double lattice', () => {
    // Regular pentagon: (5 − √5)/3 (shared/references.md §10; G. and W. Kuperberg 1990).
    // Outlines are grown by 0.012 mm at least, 0.024 mm at most, so the limit is low by up to 2·0.024/r, r = 32 mm inside.
    const pentagon = (5 - Math.sqrt(5)) / 3;
    expect(limitOf(polygon(5, 40), 0)).toBeLessThan(pentagon);
    expect(limitOf(polygon(5, 40), 0)).toBeGreaterThan(pentagon * (1 - 0.048 / 32));
    // Rectangles with a gap g, its corners rounded: a·b/((a + g)(b + g)).
    const closed = (100 * 30) / (103 * 33);
    expect(limitOf(rectRing(0, 0, 100, 30), 3)).toBeLessThanOrEqual(closed);
    expect(limitOf(rectRing(0, 0, 100, 30), 3)).toBeGreaterThan(
      closed * (1 - 0.048 / 30 - 0.048 / 100),
    );
  });
});

const parts = [part('a', lure(120, 30), 12), part('b', lure(80, 22), 9)];
const blocks = [block('pine', [450, 95], 6)];
const order = planner(parts, blocks, RULES);
const good: Nest = { ...order.plan(RULES, SEARCH), limitRatios: order.limitRatios() };

describe('the limit of a face', () => {
  it('is the limit of its only part, and between those of two', () => {
    const { limitRatios } = good;
    const face = good.faces.find((f) => new Set(f.placements.map((p) => p.part)).size === 2);
    if (!face) throw new Error('no face of both parts');
    const onlyA = { placements: face.placements.filter((p) => p.part === 'a') };
    expect(faceLimitRatio(onlyA, limitRatios)).toBeCloseTo(limitRatios.a, 12);
    const mixed = faceLimitRatio(face, limitRatios);
    expect(mixed).toBeGreaterThan(Math.min(limitRatios.a, limitRatios.b));
    expect(mixed).toBeLessThan(Math.max(limitRatios.a, limitRatios.b));
  });

  it('adds up the wood each part needs', () => {
    const at = (id: string, outline: Ring) => ({ part: id, xMm: 0, yMm: 0, turnDeg: 0, outline });
    const placements = [at('a', rectRing(0, 0, 30, 10)), at('b', rectRing(0, 0, 10, 10))];
    // 300 mm² at 0.75 need 400, 100 mm² at 0.5 need 200: 400 of 600.
    expect(faceLimitRatio({ placements }, { a: 0.75, b: 0.5 })).toBeCloseTo(400 / 600, 12);
  });
});

describe('the check of limits', () => {
  const single = (p: NestPart, rules: NestRules): Nest => {
    const one = planner([p], [block('pine', [450, 95], 6)], rules);
    return { ...one.plan(rules, SEARCH), limitRatios: one.limitRatios() };
  };

  it('is content with good nests, also with one that fills its face to the limit', () => {
    expect(limitComplaints(good)).toEqual([]);
    const tight = { ...RULES, gapMm: 1 };
    // Five by three of them fill the clear face but for the gaps.
    const slabs = single(part('p', rectRing(0, 0, (442 - 4) / 5, (87 - 2) / 3), 30), tight);
    expect(slabs.faces[0].placements.length).toBe(15);
    expect(slabs.faces[0].usedRatio).toBeGreaterThan(0.85);
    expect(limitComplaints(slabs)).toEqual([]);
  });

  it('complains of a limit that is no share, or is missing, or is passed by a face', () => {
    const nest = single(part('p', lure(120, 30), 30), RULES);
    const kinds = (p: number) =>
      limitComplaints({ ...nest, limitRatios: { p } }).map((c) => c.kind);
    expect(limitComplaints(nest)).toEqual([]);
    expect(kinds(0)).toEqual(['limit']);
    expect(kinds(1.01)).toEqual(['limit']);
    expect(limitComplaints({ ...nest, limitRatios: {} }).map((c) => c.kind)).toEqual(['limit']);
    expect(kinds(0.4)).toContain('beyond-limit');
  });
});

describe('planning in rounds', () => {
  const dear = blocks.map((b) => ({ ...b, costEach: 1 }));

  it('goes on with more effort until the time is up, tells only what is better, and says why it ended', () => {
    const tries: number[] = [];
    const told: BestSoFar[] = [];
    let asked = 0;
    const nest = planInRounds(
      (effort, search) => {
        tries.push(effort.tries);
        search.tell?.({ timberUsedMm3: 1e6 / effort.tries, blanks: 21 });
        search.tell?.({ timberUsedMm3: 2e6, blanks: 21 });
        return { ...good, timberUsedMm3: 1e6 / effort.tries };
      },
      {
        stock: dear,
        rules: { tries: 3, seed: 1, layouts: 5 },
        search: { ...SEARCH, tell: (b) => told.push(b) },
        isTimeUp: () => ++asked > 3,
      },
    );
    expect(tries).toEqual([3, 6, 12, 24]);
    expect(told.length).toBe(4);
    expect(nest).toMatchObject({ limitReached: true, interrupted: false });
  });

  it('ends when the plan is proved least, and keeps the best of its rounds', () => {
    const plans = [
      { ...good, missing: { a: 2 } },
      { ...good, timberAreaBoundMm3: good.timberUsedMm3, limitReached: false },
    ];
    let rounds = 0;
    const nest = planInRounds(() => plans[rounds++], {
      stock: blocks,
      rules: RULES,
      search: SEARCH,
      isTimeUp: () => rounds > 5,
    });
    expect(rounds).toBe(2);
    expect(nest).toMatchObject({ missing: {}, limitReached: false, interrupted: false });
  });

  it('is stopped by an interrupt, and says so', () => {
    let rounds = 0;
    const nest = planInRounds(
      () => {
        rounds++;
        return good;
      },
      {
        stock: dear,
        rules: RULES,
        search: { ...SEARCH, shouldStop: () => rounds >= 2 },
        isTimeUp: () => false,
      },
    );
    expect(rounds).toBe(2);
    expect(nest.interrupted).toBe(true);
  });
});
