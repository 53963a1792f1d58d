/** Strip searches: perfect packings known by hand, bounds, the same result from the same seed. */
import { describe, expect, test } from 'vitest';
import { type Instance, problemOf, readInstance } from '../../src/bench/nest-instance.js';
import { seededDraws } from '../../src/geometry/random.js';
import { type Ring, rectRing, ringArea, ringBox } from '../../src/geometry/ring.js';
import { depthOfOverlap, outside } from '../../src/pack/check.js';
import { copyOfPlaces, crowdOf, totalLoss } from '../../src/pack/crowd.js';
import { separator } from '../../src/pack/separate.js';
import { type StripLayout, type StripProblem, stripSearch } from '../../src/pack/strip.js';
import { tableOf } from '../../src/pack/table.js';
import { greatestCommonArea, laidOut } from './second-opinion.js';
import { BLAZ1_TEXT, outlineOf, star } from './stars.js';

type Order = readonly (readonly [outline: Ring, demand: number, turnsDeg?: readonly number[]])[];

function instanceOf(height: number, order: Order): Instance {
  const items = order.map(([data, demand, turnsDeg = [0]]) => ({
    demand,
    allowed_orientations: turnsDeg,
    shape: { data },
  }));
  return readInstance('drawn', JSON.stringify({ strip_height: height, items }));
}

/** Rings about the middles of their boxes, as the problem moves them. */
const centered = ({ rings }: Instance): Ring[] =>
  rings.map((r) => {
    const [left, bottom, right, top] = ringBox(r);
    return r.map(([x, y]) => [x - (left + right) / 2, y - (bottom + top) / 2]) as unknown as Ring;
  });

type Run = { readonly looks: number; readonly seed: number };

/** Runs to the end of the budget, in ten parts as a team would. */
function packed(problem: StripProblem, { looks, seed }: Run): readonly StripLayout[] {
  const guide = { spent: 0, other: null };
  const search = stripSearch(problem, guide, seededDraws(seed));
  const found: StripLayout[] = [];
  for (let part = 0; part < 10; part++) {
    guide.spent = part / 10;
    const ended = search.run(looks / 10);
    const best = search.best();
    if (best) found.push(best);
    if (ended) break;
  }
  return found;
}

/** The strip height's millionth by which outlines are searched too small, twice, and rounding. */
const tolerance = (height: number): number => 2.5e-6 * height;

function expectSound(instance: Instance, problem: StripProblem, layout: StripLayout): void {
  const laid = laidOut(problem.table, centered(instance), layout.places);
  expect(laid).toHaveLength(instance.items.length);
  laid.forEach((a, i) => {
    expect(outside(a, [0, 0, layout.length, instance.height])).toBeLessThan(1e-9);
    for (const b of laid.slice(i + 1)) {
      // Sides that meet at sharp angles lie deeper than the trace they were drawn in by.
      expect(depthOfOverlap(a, b)).toBeLessThan(10 * tolerance(instance.height));
    }
  });
  // polyclip-ts: no area beyond a trace along the outlines.
  expect(greatestCommonArea(laid)).toBeLessThan(20 * instance.height * tolerance(instance.height));
  const reach = Math.max(...laid.map((r) => ringBox(r)[2]));
  expect(layout.length).toBeCloseTo(reach, 9);
}

describe('perfect packings known by hand are reached', () => {
  const orders: Readonly<Record<string, readonly [number, number, Order]>> = {
    'eight squares of 2 in a strip of 4: length 8': [4, 8, [[rectRing(0, 0, 2, 2), 8]]],
    'two bars of 3 × 2, four squares of 2, four bars of 3 × 1 in a strip of 4: length 10': [
      4,
      10,
      [
        [rectRing(0, 0, 3, 2), 2],
        [rectRing(0, 0, 2, 2), 4],
        [rectRing(0, 0, 3, 1), 4],
      ],
    ],
    'six bars of 4 × 1 that may be turned, in a strip of 4: length 6': [
      4,
      6,
      [[rectRing(0, 0, 4, 1), 6, [0, 90]]],
    ],
  };
  for (const [name, [height, length, order]] of Object.entries(orders)) {
    test(name, () => {
      const instance = instanceOf(height, order);
      const problem = problemOf(instance);
      const found = packed(problem, { looks: 300_000, seed: 3 });
      const last = found[found.length - 1];
      expect(last.length).toBeGreaterThan(length - 20 * tolerance(height));
      expect(last.length).toBeLessThan(length * (1 + 1e-4));
      expectSound(instance, problem, last);
    });
  }
});

describe('where nothing can be shorter the search ends', () => {
  const long = rectRing(0, 0, 10, 1);
  const chip = rectRing(0, 0, 1, 1);
  test.each<readonly [string, number, number, Order]>([
    ['one item alone', 3, 2, [[rectRing(0, 0, 2, 2), 1]]],
    ['one item as high as the strip', 2, 3, [[rectRing(0, 0, 3, 2), 1]]],
    [
      'as long as its longest item',
      2,
      10,
      [
        [long, 1],
        [chip, 3],
      ],
    ],
    ['a bar that must be turned to fit', 11, 1, [[rectRing(0, 0, 1, 10.5), 1, [90, 0]]]],
    [
      'a bar that fits one way only',
      5,
      10,
      [
        [long, 2, [0, 90]],
        [chip, 2],
      ],
    ],
  ])('%s', (_, height, length, order) => {
    const instance = instanceOf(height, order);
    const problem = problemOf(instance);
    const search = stripSearch(problem, { spent: 0, other: null }, seededDraws(1));
    expect(search.run(1_000_000)).toBe(true);
    const best = search.best();
    if (!best) throw new Error('no layout');
    expect(best.length).toBeCloseTo(length, 8);
    expectSound(instance, problem, best);
    expect(search.run(1)).toBe(true);
  });

  test('an item higher than the strip at all its turns is a fault', () => {
    const table = tableOf([outlineOf(long, [0])]);
    const problem = { table, areas: [10], items: [0], height: 0.5, start: null };
    expect(() => stripSearch(problem, { spent: 0, other: null }, seededDraws(1))).toThrow(
      'item 0 is higher than the strip at all its turns',
    );
  });
});

describe('a published instance', () => {
  const instance = readInstance('blaz1', BLAZ1_TEXT);
  const problem = problemOf(instance);
  const run = { looks: 150_000, seed: 4 };
  const found = packed(problem, run);

  test('gets shorter as the run goes on, and every layout is sound', () => {
    expect(found.length).toBeGreaterThan(4);
    for (let n = 1; n < found.length; n++)
      expect(found[n].length).toBeLessThanOrEqual(found[n - 1].length);
    const last = found[found.length - 1];
    expect(last.length).toBeLessThan(found[0].length);
    // Record of arXiv:2509.13329 (2025): 86.224 %.
    const density = instance.area / (instance.height * last.length);
    expect(density).toBeGreaterThan(0.72);
    expect(density).toBeLessThan(0.863);
    expectSound(instance, problem, found[0]);
    expectSound(instance, problem, last);
  });

  test('the same seed and looks give the same layout, another seed another', () => {
    expect(packed(problem, run)).toEqual(found);
    const other = packed(problem, { ...run, seed: 5 });
    expect(other[other.length - 1]).not.toEqual(found[found.length - 1]);
  });

  test('a shorter layout of others is taken over', () => {
    const guide: { spent: number; other: StripLayout | null } = { spent: 0, other: null };
    const search = stripSearch(problem, guide, seededDraws(9));
    search.run(15_000);
    const own = search.best();
    const other = found[found.length - 2];
    guide.other = other;
    guide.spent = 0.9;
    search.run(60_000);
    const best = search.best();
    if (!own || !best) throw new Error('no layout');
    expect(own.length).toBeGreaterThan(other.length);
    // It goes on from there: by steps of compressing, 0.05 % and less.
    expect(best.length).toBeLessThan(other.length);
    expect(best.length).toBeGreaterThan(0.97 * other.length);
    expectSound(instance, problem, best);
  });
});

describe('separation', () => {
  const rings = [star(seededDraws(2), 7, 3), star(seededDraws(3), 8, 3)];
  const table = tableOf(rings.map((r) => outlineOf(r, [0, 180])));
  const areas = rings.map(ringArea);
  const items = Array.from({ length: 20 }, (_, i) => i % 2);
  const crowdIn = (length: number, seed: number) => {
    const draw = seededDraws(seed);
    return crowdOf({
      table,
      areas,
      items,
      movable: 20,
      container: [0, 0, length, 20],
      places: {
        turned: Int32Array.from(items, (o) => 2 * o),
        x: Float64Array.from(items, () => 3 + (length - 6) * draw()),
        y: Float64Array.from(items, () => 3 + 14 * draw()),
      },
    });
  };
  const effort = { draws: { near: 10, touching: 2, far: 20 }, sweeps: 15, strikes: 1 };
  const run = (crowd: ReturnType<typeof crowdIn>, seed: number, isOver = () => false) => {
    const steps = separator(crowd, seededDraws(seed))(effort, isOver);
    let step = steps.next();
    while (!step.done) step = steps.next();
    return step.value;
  };

  test('frees a crowd with room, and what it tells is so', () => {
    const area = items.reduce((sum, o) => sum + areas[o], 0);
    const crowd = crowdIn(area / (0.5 * 20), 6);
    expect(totalLoss(crowd)).toBeGreaterThan(0);
    const { loss, places } = run(crowd, 7);
    expect(loss).toBe(0);
    const laid = laidOut(table, rings, places);
    expect(greatestCommonArea(laid)).toBeLessThan(1e-4);
    laid.forEach((a, i) => {
      for (const b of laid.slice(i + 1)) expect(depthOfOverlap(a, b)).toBeLessThan(1e-5);
    });
  });

  test('of a crowd without room keeps the least loss it saw, and tells it right', () => {
    const crowd = crowdIn(8, 8);
    const before = totalLoss(crowd);
    const { loss, places } = run(crowd, 9);
    expect(loss).toBeGreaterThan(0);
    expect(loss).toBeLessThanOrEqual(before);
    const again = crowdOf({
      table,
      areas,
      items,
      movable: 20,
      container: [0, 0, 8, 20],
      places: copyOfPlaces(places),
    });
    expect(totalLoss(again)).toBeCloseTo(loss, 3);
  });

  test('ends after the sweep in which it is told to', () => {
    let asked = 0;
    run(crowdIn(8, 8), 9, () => ++asked === 2);
    expect(asked).toBe(2);
  });
});
