import { describe, expect, it } from 'vitest';
import { rectRing } from '../../src/geometry/ring.js';
import { checkNest } from '../../src/nest/check.js';
import type { Block, Nest, NestPart, NestRules } from '../../src/nest/nest.js';
import { planNest } from '../../src/nest/plan.js';
import { block, lure, part, RULES, SEARCH } from './outlines.js';

/** Plans and has the plan judged. */
function plan(
  parts: readonly NestPart[],
  blocks: readonly Block[],
  rules: NestRules = RULES,
): Nest {
  const nest = planNest(parts, blocks, rules, SEARCH);
  expect(checkNest(nest, parts, blocks, rules).complaints).toEqual([]);
  return nest;
}

describe('stacks', () => {
  it('two outlines on a face and two taped blocks give four blanks in one sawing', () => {
    // Common practice, no source.
    const nest = plan([part('skerry', lure(100, 30), 4)], [block('pine', [240, 40], 2)]);
    expect(nest.stacks).toBe(1);
    expect(nest.faces.length).toBe(1);
    expect(nest.faces[0].layers).toBe(2);
    expect(nest.faces[0].placements.length).toBe(2);
    expect(nest.faces[0].stackHeightMm).toBeCloseTo(40.2, 12);
    expect(nest.made).toEqual({ skerry: 4 });
    expect(nest.blocksUsed).toEqual({ pine: 2 });
  });

  it('is as high as the guide, the rules, the blocks and the order allow', () => {
    const layers = (rules: Partial<NestRules>, count: number, ordered: number): number =>
      plan([part('p', lure(100, 30), ordered)], [block('b', [240, 40], count)], {
        ...RULES,
        layers: 4,
        ...rules,
      }).faces[0].layers;
    expect(layers({}, 8, 16)).toBe(4);
    // Nine blocks make three stacks either way; alike, they need one face, not two.
    expect(layers({}, 9, 20)).toBe(3);
    expect(layers({ layers: 3 }, 9, 20)).toBe(3);
    expect(layers({ largestHeightMm: 60.4 }, 9, 20)).toBe(3); // 3 × 20 + 2 × 0.2
    expect(layers({ largestHeightMm: 60.3 }, 9, 20)).toBe(2);
    expect(layers({}, 2, 20)).toBe(2);
    // Two outlines on each of two blocks; three layers of one outline would take a third block.
    expect(layers({}, 9, 3)).toBe(2);
    expect(layers({}, 9, 1)).toBe(1);
  });

  it('repeats one layout as often as the order allows, and makes what is left on one more', () => {
    const nest = plan([part('p', lure(120, 30), 95)], [block('b', [450, 95], 20)]);
    expect(nest.faces.length).toBe(2);
    const [full, last] = nest.faces;
    const perStack = full.placements.length * full.layers;
    expect(full.copies).toBe(Math.floor(95 / perStack));
    expect(last.copies).toBe(1);
    expect(last.placements.length).toBe(Math.ceil((95 - full.copies * perStack) / last.layers));
    expect(last.offcut.lengthMm).toBeGreaterThan(full.offcut.lengthMm);
    expect(nest.made.p - 95).toBeLessThan(2);
  });

  it('tapes blocks of one size together though they come from two entries', () => {
    const nest = plan(
      [part('p', lure(100, 30), 4)],
      [block('a', [240, 40], 1), block('b', [240, 40], 1)],
    );
    expect(nest.faces[0].stacks).toEqual([
      {
        copies: 1,
        blocks: [
          { block: 'a', count: 1 },
          { block: 'b', count: 1 },
        ],
      },
    ]);
  });

  it('keeps clear blocks together, away from a knot', () => {
    const knots = [{ xMm: 60, yMm: 20, radiusMm: 10 }];
    const nest = plan(
      [part('p', lure(100, 30), 6)],
      [block('knotty', [240, 40], 2, { knots }), block('clear', [240, 40], 2)],
    );
    expect(nest.missing).toEqual({});
    const clear = nest.faces.find((f) => f.knots.length === 0);
    expect(clear?.stacks).toEqual([{ copies: 1, blocks: [{ block: 'clear', count: 2 }] }]);
    expect(clear?.placements.length).toBe(2);
    expect(nest.faces.find((f) => f.knots.length === 1)?.placements.length).toBe(1);
  });

  it('takes all knots of a stack together when unlike blocks share it', () => {
    const nest = plan(
      [part('p', lure(90, 30), 4)],
      [
        block('a', [240, 40], 1, { knots: [{ xMm: 20, yMm: 20, radiusMm: 5 }] }),
        block('b', [240, 40], 1, { knots: [{ xMm: 220, yMm: 20, radiusMm: 5 }] }),
      ],
    );
    expect(nest.stacks).toBe(1);
    expect(nest.faces[0].knots.length).toBe(2);
  });

  it('saws each part from blocks of its own thickness', () => {
    const nest = plan(
      [part('thin', lure(90, 24), 4, 12), part('thick', lure(90, 24), 4, 20)],
      [block('b12', [240, 40], 2, { thicknessMm: 12.04 }), block('b20', [240, 40], 2)],
    );
    expect(nest.missing).toEqual({});
    expect(nest.obstacles).toEqual([]);
  });
});

describe('a run', () => {
  const parts = [
    part('skerry-120', lure(120, 30), 12),
    part('skerry-90', lure(90, 23), 12),
    part('ghyll', lure(100, 22, 3), 8),
    part('holm', lure(75, 26), 8),
  ];
  const blocks = [
    block('a', [450, 95], 8),
    block('b', [600, 120], 4, { knots: [{ xMm: 200, yMm: 50, radiusMm: 8 }] }),
  ];

  it('is filled, and told the same every time', () => {
    const nest = plan(parts, blocks);
    expect(nest.missing).toEqual({});
    expect(nest.obstacles).toEqual([]);
    for (const { id, orderedCount } of parts) {
      expect(nest.made[id]).toBeGreaterThanOrEqual(orderedCount);
      // Only what a stack of two forces.
      expect(nest.made[id]).toBeLessThan(orderedCount + 2);
    }
    expect(JSON.stringify(planNest(parts, blocks, RULES, SEARCH))).toBe(JSON.stringify(nest));
  });

  it('tells used ratio and offcut as they are', () => {
    const nest = plan([part('p', rectRing(0, -10, 100, 10), 2)], [block('b', [208, 28], 1)]);
    // One row: 4 + 100 + 3 + 100 + 4 = 211 does not fit in 208, so one outline a face.
    expect(nest.made).toEqual({ p: 1 });
    expect(nest.faces[0].offcut).toEqual({ fromMm: 107, lengthMm: 101 });
    expect(nest.usedRatio).toBeCloseTo(2000 / (208 * 28), 12);
    expect(nest.faces[0].usedRatio).toBeCloseTo(2000 / (208 * 28), 12);
  });

  it('leaves long blocks to the parts that need them', () => {
    const nest = plan(
      [part('long', lure(170, 30), 2), part('short', lure(80, 22), 8)],
      [block('long', [190, 40], 2), block('short', [190 - 40, 70], 4)],
    );
    expect(nest.missing).toEqual({});
  });

  it('makes an order of a thousand from two layouts', () => {
    const nest = plan([part('p', lure(120, 30), 1000)], [block('b', [2000, 200], 100)]);
    expect(nest.made.p).toBe(1000);
    expect(nest.faces.length).toBe(2);
  });
});

describe('what can not be made', () => {
  it('a part larger than every block, with both sizes', () => {
    const nest = plan(
      [part('p', rectRing(0, -10, 200, 10), 2)],
      [block('a', [150, 60], 5), block('b', [205, 60], 5)],
    );
    expect(nest.missing).toEqual({ p: 2 });
    expect(nest.obstacles).toEqual([
      {
        kind: 'too-large',
        part: 'p',
        lengthMm: 200,
        heightMm: 20,
        block: 'b',
        clearLengthMm: 197,
        clearWidthMm: 52,
      },
    ]);
  });

  it('a part of a thickness nobody has', () => {
    const nest = plan([part('p', lure(90, 24), 2, 18)], [block('a', [450, 95], 5)]);
    expect(nest.obstacles).toEqual([{ kind: 'no-thickness', part: 'p', thicknessMm: 18 }]);
    expect(plan([part('p', lure(90, 24), 2)], []).obstacles).toEqual([
      { kind: 'no-thickness', part: 'p', thicknessMm: 20 },
    ]);
  });

  it('a block too high for the guide by itself', () => {
    const nest = plan([part('p', lure(90, 24), 2)], [block('a', [450, 95], 5)], {
      ...RULES,
      largestHeightMm: 19,
    });
    expect(nest.faces).toEqual([]);
    expect(nest.obstacles).toEqual([
      { kind: 'too-high', block: 'a', thicknessMm: 20, largestHeightMm: 19 },
    ]);
  });

  it('a part kept off every block by knots', () => {
    const knots = [{ xMm: 60, yMm: 20, radiusMm: 15 }];
    const nest = plan([part('p', lure(100, 30), 2)], [block('a', [120, 40], 5, { knots })]);
    expect(nest.faces).toEqual([]);
    expect(nest.obstacles).toContainEqual({ kind: 'knots', part: 'p', blocks: ['a'] });
  });

  it('timber that runs out, with the blocks that would be enough', () => {
    const parts = [part('p', lure(120, 30), 50)];
    const nest = plan(parts, [block('a', [450, 95], 3), block('big', [600, 120], 0)]);
    const missing = 50 - nest.made.p;
    expect(nest.missing).toEqual({ p: missing });
    expect(nest.blocksUsed).toEqual({ a: 3, big: 0 });
    const short = nest.obstacles.find((o) => o.kind === 'short');
    expect(short?.missing).toEqual({ p: missing });
    expect(short?.moreBlocks.map((m) => m.block).sort()).toEqual(['a', 'big']);
    // The counts told are enough: with them the order is filled.
    for (const { block: name, count } of short?.moreBlocks ?? []) {
      const blocks = [
        block('a', [450, 95], 3 + (name === 'a' ? count : 0)),
        block('big', [600, 120], name === 'big' ? count : 0),
      ];
      expect(plan(parts, blocks).missing).toEqual({});
    }
  });

  it('nothing ordered, and names given twice', () => {
    const nest = plan([part('p', lure(90, 24), 0)], [block('a', [450, 95], 5)]);
    expect(nest.faces).toEqual([]);
    expect(nest.usedRatio).toBe(0);
    expect(() =>
      planNest([part('p', lure(90, 24), 1), part('p', lure(80, 24), 1)], [], RULES, SEARCH),
    ).toThrow();
    expect(() =>
      planNest([], [block('a', [450, 95], 5), block('a', [450, 95], 5)], RULES, SEARCH),
    ).toThrow();
  });
});
