import { beforeEach, describe, expect, it, vi } from 'vitest';
import { rectRing, ring } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import { checkNest } from '../../src/nest/check.js';
import type { Block, Nest, NestPart, NestRules } from '../../src/nest/nest.js';
import * as place from '../../src/nest/place.js';
import { planNest } from '../../src/nest/plan.js';
import { block, lure, part, RULES, SEARCH } from './outlines.js';

// Work is counted in faces packed, never timed.
vi.mock(import('../../src/nest/place.js'), async (original) => {
  const real = await original();
  return { ...real, packFace: vi.fn(real.packFace) };
});
const packFace = vi.mocked(place.packFace);
beforeEach(() => {
  packFace.mockClear();
});

/** A plan that has been checked: whatever it was asked, what it gives is sound. */
function plan(
  parts: readonly NestPart[],
  blocks: readonly Block[],
  more: Partial<NestRules> = {},
): Nest {
  const rules = { ...RULES, ...more };
  const nest = planNest(parts, blocks, rules, SEARCH);
  expect(checkNest(nest, parts, blocks, rules).complaints).toEqual([]);
  return nest;
}

const bar = (id: string, count: number, [lengthMm, heightMm] = [100, 20]): NestPart =>
  part(id, rectRing(0, -heightMm / 2, lengthMm, heightMm / 2), count);
const kinds = ({ obstacles }: Nest): string[] => obstacles.map((o) => o.kind);

describe('an order no block can hold', () => {
  it('makes what fits and names what does not, with both sizes', () => {
    const nest = plan(
      [bar('long', 3, [500, 20]), bar('high', 3, [80, 90]), bar('fits', 4)],
      [block('b', [450, 95], 5)],
    );
    expect(nest.missing).toEqual({ long: 3, high: 3 });
    expect(nest.made.fits).toBeGreaterThanOrEqual(4);
    const clear = { block: 'b', clearLengthMm: 442, clearWidthMm: 87 };
    expect(nest.obstacles).toEqual([
      { kind: 'too-large', part: 'long', lengthMm: 500, heightMm: 20, ...clear },
      { kind: 'too-large', part: 'high', lengthMm: 80, heightMm: 90, ...clear },
    ]);
    expect(packFace.mock.calls.length).toBeLessThan(20);
  });

  it('that nothing can hold, packs no face at all', () => {
    const nest = plan([bar('long', 3, [500, 20])], [block('b', [450, 95], 5)]);
    expect(nest.faces).toEqual([]);
    expect(kinds(nest)).toEqual(['too-large']);
    expect(packFace).not.toHaveBeenCalled();
  });

  it('by margins that meet: the clear face is told as it is', () => {
    const nest = plan([bar('p', 2)], [block('b', [450, 95], 5, { marginMm: 60 })]);
    expect(nest.obstacles).toEqual([
      expect.objectContaining({ kind: 'too-large', clearLengthMm: 330, clearWidthMm: -25 }),
    ]);
  });

  it('by knots over the whole face, or one large enough', () => {
    const over = { xMm: 225, yMm: 47, radiusMm: 300 };
    const many = Array.from({ length: 60 }, (_, i) => ({
      xMm: 15 * (i % 30),
      yMm: i < 30 ? 30 : 65,
      radiusMm: 18,
    }));
    for (const knots of [[over], many]) {
      const nest = plan([bar('p', 2)], [block('b', [450, 95], 5, { knots })]);
      expect(nest.faces).toEqual([]);
      expect(nest.missing).toEqual({ p: 2 });
      expect(nest.obstacles).toContainEqual({ kind: 'knots', part: 'p', blocks: ['b'] });
    }
  });

  it('by knots on one of two entries: the other is sawn', () => {
    const knots = [{ xMm: 225, yMm: 47, radiusMm: 300 }];
    const nest = plan(
      [bar('p', 9)],
      [block('bad', [450, 95], 5, { knots }), block('good', [450, 95], 5)],
    );
    expect(nest.missing).toEqual({});
    expect(nest.blocksUsed.bad).toBe(0);
    expect(nest.obstacles).toEqual([]);
  });
});

describe('a gap wider than the block', () => {
  it('leaves one outline a face; the margins stay as asked', () => {
    const nest = plan([bar('p', 5)], [block('b', [450, 95], 9)], { gapMm: 600, layers: 1 });
    expect(nest.made).toEqual({ p: 5 });
    expect(nest.blocksUsed).toEqual({ b: 5 });
    expect(nest.faces.map((f) => f.placements.length)).toEqual([1]);
    expect(nest.faces[0].offcut.lengthMm).toBe(0);
  });

  it('and a knot anywhere leaves none: half the gap is kept from it', () => {
    const knots = [{ xMm: 440, yMm: 90, radiusMm: 1 }];
    const blocks = [block('b', [450, 95], 9, { knots })];
    expect(kinds(plan([bar('p', 5)], blocks, { gapMm: 1000 }))).toContain('knots');
    expect(plan([bar('p', 5)], blocks, { gapMm: 400 }).missing).toEqual({});
  });
});

describe('outlines that are none', () => {
  it.each<[string, Point2[], RegExp]>([
    [
      'two points',
      [
        [0, 0],
        [9, 0],
      ],
      /2 distinct points/,
    ],
    [
      'one point many times',
      [
        [1, 1],
        [1, 1],
        [1, 1],
        [1, 1],
      ],
      /1 distinct points/,
    ],
    [
      'all on a line',
      [
        [0, 0],
        [50, 5],
        [100, 10],
      ],
      /without area/,
    ],
    [
      'a height of a tenth of a nanometer',
      [
        [0, 0],
        [100, 0],
        [100, 1e-10],
        [0, 1e-10],
      ],
      /2 distinct points/,
    ],
    [
      'crossed in the middle',
      [
        [0, 0],
        [100, 20],
        [100, 0],
        [0, 30],
      ],
      /crosses itself at edges 0 and 2/,
    ],
    [
      'a point that is no number',
      [
        [0, 0],
        [Number.NaN, 0],
        [9, 9],
      ],
      /not finite/,
    ],
    [
      'a point far beyond all blocks',
      [
        [0, 0],
        [Infinity, 0],
        [9, 9],
      ],
      /not finite/,
    ],
  ])('%s: no ring, so no part', (_, points, told) => {
    expect(() => ring(points)).toThrow(told);
  });

  // A ring may touch itself at a corner; what comes of it is placed apart like any other.
  it.each<[string, Point2[]]>([
    [
      'a spike without width',
      [
        [0, 0],
        [60, 0],
        [90, 0],
        [60, 0],
        [60, 20],
        [0, 20],
      ],
    ],
    [
      'two lobes that meet in a point',
      [
        [0, 0],
        [30, 10],
        [60, 0],
        [60, 20],
        [30, 10],
        [0, 20],
      ],
    ],
    [
      'an edge there and back',
      [
        [0, 0],
        [60, 0],
        [60, 20],
        [60, 5],
        [60, 20],
        [0, 20],
      ],
    ],
  ])('%s is nested like any other', (_, points) => {
    const nest = plan([part('p', ring(points), 6)], [block('b', [450, 95], 2)]);
    expect(nest.missing).toEqual({});
  });

  // Only edges that properly cross keep a ring from being made; through a corner the nest's door sees it.
  it.each<[string, Point2[], string]>([
    [
      'crossed in a corner of both edges',
      [
        [0, 0],
        [30, 10],
        [60, 20],
        [60, 0],
        [30, 10],
        [0, 30],
      ],
      'the outline of p crosses itself',
    ],
    [
      'crossed in a corner of one',
      [
        [0, 0],
        [60, 20],
        [60, 0],
        [30, 10],
        [0, 30],
      ],
      'the outline of p crosses itself',
    ],
    [
      'wound twice round',
      [
        [0, 0],
        [60, 0],
        [60, 20],
        [0, 20],
        [0, 0],
        [60, 0],
        [60, 20],
        [0, 20],
      ],
      'the outline of p crosses itself',
    ],
    [
      'a hundredth of a micrometer high',
      [
        [0, 0],
        [100, 0],
        [100, 1e-8],
        [0, 1e-8],
      ],
      'the outline of p covers no area',
    ],
  ])('%s: a ring, but no part', (_, points, told) => {
    expect(() => plan([part('p', ring(points), 6)], [block('b', [450, 95], 2)])).toThrow(told);
  });

  it('one as thin as paper is nested like any other', () => {
    const nest = plan([bar('p', 40, [100, 0.01])], [block('b', [450, 95], 2)]);
    expect(nest.missing).toEqual({});
  });
});

describe('orders of 1000, 100 000 and 1 000 000', () => {
  const three = (count: number): NestPart[] => [
    part('a', lure(120, 30), count),
    bar('b', count, [80, 22]),
    bar('c', count),
  ];
  const workFor = (count: number, timber: number): { nest: Nest; packed: number } => {
    packFace.mockClear();
    const blocks = [block('b', [450, 95], timber), block('c', [300, 120], timber)];
    const nest = plan(three(count), blocks, { tries: 2 });
    return { nest, packed: packFace.mock.calls.length };
  };

  it('are made in full from timber enough, in no more than a little more work', () => {
    const base = workFor(1_000, 1_000_000);
    expect(base.packed).toBeGreaterThan(0);
    for (const count of [100_000, 1_000_000]) {
      const { nest, packed } = workFor(count, 1_000_000);
      expect(nest.missing).toEqual({});
      for (const id of ['a', 'b', 'c']) expect(nest.made[id]).toBeGreaterThanOrEqual(count);
      expect(packed).toBeLessThanOrEqual(2 * base.packed);
      expect(nest.faces.length).toBeLessThanOrEqual(2 * base.nest.faces.length);
    }
  });

  it('run out of timber at once, and tell how much more would do', () => {
    const base = workFor(1_000, 5);
    for (const count of [100_000, 1_000_000]) {
      const { nest, packed } = workFor(count, 5);
      expect(packed).toBeLessThanOrEqual(2 * base.packed);
      // As much is made as of the order of 1000: the timber decides.
      expect(nest.blocksUsed).toEqual(base.nest.blocksUsed);
      const short = nest.obstacles.find((o) => o.kind === 'short');
      expect(short?.missing).toEqual(nest.missing);
      expect(Object.keys(nest.missing).length).toBeGreaterThan(0);
      const enough = short?.moreBlocks[0];
      // Three kinds, and no block holds more than 30 outlines of them.
      expect(enough?.count).toBeGreaterThan(count / 10);
      expect(enough?.count).toBeLessThan(3 * count);
    }
  });
});

describe('the same thing twice', () => {
  it('two parts of one outline are two parts, each made as ordered', () => {
    const nest = plan([bar('p', 5), bar('q', 5)], [block('b', [450, 95], 4)]);
    expect(nest.missing).toEqual({});
    expect(Object.keys(nest.made)).toEqual(['p', 'q']);
  });

  it('two entries of like blocks are one pile, each with its own count', () => {
    const nest = plan([bar('p', 24)], [block('b', [450, 95], 1), block('c', [450, 95], 1)]);
    expect(nest.missing).toEqual({});
    expect(nest.blocksUsed).toEqual({ b: 1, c: 1 });
    expect(nest.stacks).toBe(1);
  });

  it('one knot given twice, or off the block, changes nothing', () => {
    const knot = { xMm: 100, yMm: 40, radiusMm: 6 };
    const away = { xMm: -500, yMm: 900, radiusMm: 5 };
    const made = (knots: Block['knots']) =>
      plan([bar('p', 99)], [block('b', [450, 95], 1, { knots })]).faces[0].placements;
    expect(made([knot, knot])).toEqual(made([knot]));
    expect(made([knot, away])).toEqual(made([knot]));
  });

  it('a name given twice is our fault', () => {
    expect(() => plan([bar('p', 1), bar('p', 1)], [])).toThrow('two parts');
    expect(() => plan([], [block('b', [9, 9], 1), block('b', [9, 9], 1)])).toThrow('two blocks');
  });
});

describe('numbers no order can have', () => {
  const asked = (
    rules: Partial<NestRules>,
    of: Partial<NestPart> = {},
    from: Partial<Block> = {},
  ) => plan([{ ...bar('p', 5), ...of }], [{ ...block('b', [450, 95], 9), ...from }], rules);

  it.each<[string, () => Nest, string]>([
    [
      'a gap below nothing, which would let outlines overlap',
      () => asked({ gapMm: -3 }),
      'gapMm -3',
    ],
    ['a gap that is no number', () => asked({ gapMm: Number.NaN }), 'gapMm NaN'],
    ['no layers', () => asked({ layers: 0 }), 'no layers'],
    ['half a layer', () => asked({ layers: 1.5 }), 'layers 1.5'],
    ['tries without end', () => asked({ tries: Infinity }), 'tries Infinity'],
    ['half a blank', () => asked({}, { orderedCount: 2.5 }), 'orderedCount 2.5'],
    ['fewer blanks than none', () => asked({}, { orderedCount: -1 }), 'orderedCount -1'],
    ['blanks without end', () => asked({}, { orderedCount: Infinity }), 'orderedCount Infinity'],
    ['no thickness', () => asked({}, { thicknessMm: 0 }), 'thicknessMm 0'],
    ['a block of no width', () => asked({}, {}, { widthMm: 0 }), 'widthMm 0'],
    ['a margin below nothing', () => asked({}, {}, { marginMm: -1 }), 'marginMm -1'],
    ['half a block', () => asked({}, {}, { count: 0.5 }), 'count 0.5'],
    [
      'a knot of nothing',
      () => asked({}, {}, { knots: [{ xMm: 9, yMm: 9, radiusMm: 0 }] }),
      'radiusMm 0',
    ],
    [
      'a knot nowhere',
      () => asked({}, {}, { knots: [{ xMm: Number.NaN, yMm: 9, radiusMm: 1 }] }),
      'xMm NaN',
    ],
  ])('%s is our fault, and said', (_, ask, told) => {
    expect(ask).toThrow(told);
  });

  it('and none at all is an empty nest', () => {
    for (const nest of [
      plan([], []),
      plan([], [block('b', [450, 95], 9)]),
      asked({}, { orderedCount: 0 }),
    ]) {
      expect(nest.faces).toEqual([]);
      expect(nest.obstacles).toEqual([]);
    }
  });
});
