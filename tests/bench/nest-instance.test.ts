/** Open nesting instances read, searched, settled, written and judged. */
import { describe, expect, test } from 'vitest';
import {
  flawOf,
  type Instance,
  problemOf,
  type Result,
  readInstance,
  resultOf,
  settledLayout,
} from '../../src/bench/nest-instance.js';
import { seededDraws } from '../../src/geometry/random.js';
import { movedRing, ringArea } from '../../src/geometry/ring.js';
import { loadSolver } from '../../src/linear/solver.js';
import { stripSearch } from '../../src/pack/strip.js';
import { greatestCommonArea } from '../pack/second-opinion.js';
import { BLAZ1_TEXT, star } from '../pack/stars.js';

type Points = readonly (readonly number[])[];
const item = (data: Points, demand = 1, more: object = {}) => ({
  demand,
  shape: { data },
  ...more,
});
const SQUARE: Points = [
  [0, 0],
  [2, 0],
  [2, 2],
  [0, 2],
];
const text = (height: unknown, ...items: unknown[]): string =>
  JSON.stringify({ strip_height: height, items });

async function solved(instance: Instance, looks: number): Promise<Result> {
  const problem = problemOf(instance);
  const search = stripSearch(problem, { spent: 0, other: null }, seededDraws(2));
  search.run(looks);
  const layout = search.best();
  if (!layout) throw new Error('no layout');
  return resultOf(instance, problem, settledLayout(await loadSolver(), instance, problem, layout));
}

describe('reading', () => {
  test('a published instance: rings, turns, items, area', () => {
    const { height, rings, turnsDeg, items } = readInstance('blaz1', BLAZ1_TEXT);
    expect(height).toBe(15.0015);
    expect(rings).toHaveLength(7);
    expect(turnsDeg).toEqual(Array(7).fill([0, 180]));
    expect(items).toEqual([0, 1, 2, 3, 4, 5, 6].flatMap((i) => [i, i, i, i]));
    // By hand: a 4 × 3 with two gables of 2, a triangle of 4 × 3 and a square of 2.
    expect([rings[0], rings[5], rings[6]].map(ringArea)).toEqual([16, 6, 4]);
  });

  test('a ring that goes clockwise and repeats its first point, turns left out or said twice', () => {
    const back = [...SQUARE, SQUARE[0]].reverse();
    const read = readInstance(
      'x',
      text(3, item(back), item(SQUARE, 2, { allowed_orientations: [0, 90, 0] })),
    );
    expect(read.rings.map(ringArea)).toEqual([4, 4]);
    expect(read.turnsDeg).toEqual([[0], [0, 90]]);
    expect(read.area).toBe(12);
  });

  test.each<readonly [string, string, RegExp]>([
    ['no JSON', '{', /JSON/],
    ['a list', '[]', /^the file: .*expected object/],
    ['no height', text(undefined, item(SQUARE)), /^strip_height: /],
    ['a height of 0', text(0, item(SQUARE)), /^strip_height: /],
    ['no items', text(3), /^items: /],
    ['a demand of half', text(3, item(SQUARE, 0.5)), /^items\.0\.demand: /],
    ['two points', text(3, item(SQUARE.slice(2))), /^items\.0\.shape\.data: /],
    [
      'a point of three numbers',
      text(
        3,
        item([
          [0, 0, 0],
          [1, 0],
          [0, 1],
        ]),
      ),
      /^items\.0\.shape\./,
    ],
    ['no turn', text(3, item(SQUARE, 1, { allowed_orientations: [] })), /allowed_orientations/],
    [
      'a line',
      text(
        3,
        item(SQUARE),
        item([
          [0, 0],
          [1, 0],
          [2, 0],
        ]),
      ),
      /^item 1: ring without area$/,
    ],
    [
      'a crossing',
      text(
        9,
        item([
          [0, 0],
          [4, 0],
          [1, 3],
          [3, 3],
          [0, 1],
        ]),
      ),
      /^item 0: ring crosses/,
    ],
    ['too high', text(1.5, item(SQUARE)), /^item 0 is 2 high; the strip is 1.5 high$/],
  ])('%s is refused with one line', (_, file, line) => {
    expect(() => readInstance('x', file)).toThrow(line);
    expect(() => readInstance('x', file)).not.toThrow(/\n/);
  });

  test('an item higher than the strip at one turn but not at another is taken', () => {
    const bar: Points = [
      [0, 0],
      [1, 0],
      [1, 5],
      [0, 5],
    ];
    const read = readInstance('x', text(2, item(bar, 1, { allowed_orientations: [0, 90] })));
    expect(read.items).toEqual([0]);
  });
});

describe('packing', () => {
  test('a published instance: sound by the judge and by polyclip', async () => {
    const instance = readInstance('blaz1', BLAZ1_TEXT);
    const result = await solved(instance, 30_000);
    expect(flawOf(instance, result)).toBeNull();
    const laid = result.placements.map(({ item: i, turnDeg, x, y }) =>
      movedRing({ turnDeg, move: [x, y] }, instance.rings[i]),
    );
    expect(greatestCommonArea(laid)).toBeLessThan(1e-6);
    expect(Math.max(...laid.flat().map(([x]) => x))).toBeCloseTo(result.length, 9);
    // Record of arXiv:2509.13329 (2025): 86.224 %.
    expect(instance.area / (instance.height * result.length)).toBeLessThan(0.86224);
  });

  test('a groove just as wide as what fits into it is a place', async () => {
    // A U with a groove of 2 × 2 and the square that fills it: nothing is left of 4 × 3.
    const u: Points = [
      [0, 0],
      [4, 0],
      [4, 3],
      [3, 3],
      [3, 1],
      [1, 1],
      [1, 3],
      [0, 3],
    ];
    const instance = readInstance('groove', text(3, item(u), item(SQUARE)));
    const result = await solved(instance, 400_000);
    expect(flawOf(instance, result)).toBeNull();
    expect(result.length).toBeCloseTo(4, 6);
  });

  test('a comb at four turns: many corners in line but for rounding', async () => {
    const teeth = [3, 2, 1, 0].flatMap((i) => [
      [1000 * i + 500, 1500],
      [1000 * i, 1500],
      ...(i > 0
        ? [
            [1000 * i, 500],
            [1000 * i - 500, 500],
          ]
        : []),
    ]);
    const comb: Points = [[0, 0], [3500, 0], ...teeth];
    const turns = { allowed_orientations: [0, 90, 180, 270] };
    const instance = readInstance('comb', text(13013.136811554432, item(comb, 3, turns)));
    const result = await solved(instance, 5_000);
    expect(flawOf(instance, result)).toBeNull();
  });

  test('an outline that touches itself', async () => {
    // Two squares with one corner in common.
    const pinched: Points = [
      [1, 0],
      [1, 1],
      [0, 1],
      [0, 0],
      [-1, 0],
      [-1, -1],
      [0, -1],
      [0, 0],
    ];
    const instance = readInstance('pinched', text(4, item(pinched, 3), item(SQUARE)));
    const result = await solved(instance, 20_000);
    expect(flawOf(instance, result)).toBeNull();
  });

  test.each([1e-3, 1, 1e5])('drawn outlines of size %s: sound', async (size) => {
    const draw = seededDraws(3);
    for (let n = 0; n < 3; n++) {
      const stars = Array.from({ length: 3 }, () =>
        item(star(draw, 4 + Math.floor(6 * draw()), 2 * size), 3, {
          allowed_orientations: [0, 37],
        }),
      );
      const instance = readInstance('drawn', text(9 * size, ...stars));
      const result = await solved(instance, 8_000);
      expect(flawOf(instance, result)).toBeNull();
    }
  });

  test('equal outlines that turn by half: sound, from rows', async () => {
    const wedge: Points = [
      [0, 0],
      [6, 0],
      [6, 1],
      [0, 3],
    ];
    const instance = readInstance(
      'wedges',
      text(8, item(wedge, 12, { allowed_orientations: [0, 180] })),
    );
    expect(problemOf(instance).start).not.toBeNull();
    const result = await solved(instance, 20_000);
    expect(flawOf(instance, result)).toBeNull();
    // Head to tail two wedges fill 6 × 4: twelve fill 18 × 8.
    expect(result.length).toBeGreaterThan(18 - 1e-6);
    expect(result.length).toBeLessThan(18.01);
  });
});

describe('the judge', () => {
  const instance = readInstance(
    'pair',
    text(2, item(SQUARE, 2), item(SQUARE, 1, { allowed_orientations: [90] })),
  );
  /** Three squares side by side; the last is turned by a quarter about its corner. */
  const good: Result = {
    name: 'pair',
    stripHeight: 2,
    length: 6,
    placements: [
      { item: 0, turnDeg: 0, x: 0, y: 0 },
      { item: 0, turnDeg: 0, x: 2, y: 0 },
      { item: 1, turnDeg: 90, x: 6, y: 0 },
    ],
  };
  const changed = (at: number, more: Partial<Result['placements'][number]>): Result => ({
    ...good,
    placements: good.placements.map((p, i) => (i === at ? { ...p, ...more } : p)),
  });

  test('is content with a tiling', () => {
    expect(flawOf(instance, good)).toBeNull();
  });

  test.each<readonly [string, Result, RegExp]>([
    ['one on another', changed(1, { x: 0 }), /^items 0 and 1 overlap by 1$/],
    ['an overlap of 1e-3', changed(1, { x: 1.999 }), /^items 0 and 1 overlap by 0\.00(1|099)/],
    ['an item missing', { ...good, placements: good.placements.slice(1) }, /^not the items/],
    ['another item', changed(0, { item: 1 }), /^not the items ordered$/],
    ['another turn', changed(2, { turnDeg: 0, x: 4 }), /^item 2 turned by 0$/],
    ['out at the start', changed(0, { x: -0.01 }), /^item 0 reaches 0\.0(1|099)/],
    ['out at the top', changed(0, { y: 0.01 }), /^item 0 reaches 0\.0(1|099)/],
    ['too short', { ...good, length: 5.9 }, /^item 2 reaches 0\.0?9?/],
    ['a place that is no number', changed(1, { x: Number.NaN }), /^item 1 reaches NaN/],
    ['a length that is none', { ...good, length: Number.NaN }, /^item 0 reaches NaN/],
  ])('complains of %s', (_, result, line) => {
    expect(flawOf(instance, result)).toMatch(line);
  });
});
