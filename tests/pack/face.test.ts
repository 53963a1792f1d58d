/** Faces made better: never worse, inside, off the keep-outs, no more than wanted. */
import { describe, expect, test } from 'vitest';
import { seededDraws } from '../../src/geometry/random.js';
import { type Ring, rectRing, ringArea, ringBox } from '../../src/geometry/ring.js';
import { depthOfOverlap, outside } from '../../src/pack/check.js';
import { type FaceProblem, packMore, packShorter, type Spot } from '../../src/pack/face.js';
import { tableOf } from '../../src/pack/table.js';
import { commonArea, laidOut } from './second-opinion.js';
import { outlineOf, star } from './stars.js';

const RINGS: readonly Ring[] = [star(seededDraws(1), 7, 4), star(seededDraws(2), 9, 6)];
const KNOT = rectRing(-2, -2, 2, 2);
const ALL = [...RINGS, KNOT];
const TURNS = [0, 180];
/** Turned outlines: 0 and 1 of the first ring, 2 and 3 of the second, 4 the knot. */
const TABLE = tableOf([
  ...RINGS.map((r) => outlineOf(r, TURNS)),
  { ...outlineOf(KNOT), keepsOut: 'all' as const },
]);
const AREAS = ALL.map(ringArea);
const BOX = [0, 0, 50, 20] as const;

const problem: FaceProblem = {
  table: TABLE,
  areas: AREAS,
  grownAreas: AREAS,
  container: BOX,
  mostGrownArea: 50 * 20 - 16,
  keepOuts: [{ turned: 4, x: 25, y: 10 }],
  wanted: [6, 5, 0],
};
const search = (seed: number, looks: number) => ({
  draw: seededDraws(seed),
  looks,
  shouldStop: () => false,
});
const outlinesOf = (spots: readonly Spot[]): number[] =>
  spots.map((s) => TABLE.turned[s.turned].outline);
const areaOf = (spots: readonly Spot[]): number =>
  outlinesOf(spots).reduce((sum, o) => sum + AREAS[o], 0);
const laid = (spots: readonly Spot[]): Ring[] =>
  laidOut(TABLE, ALL, {
    turned: Int32Array.from(spots, (s) => s.turned),
    x: Float64Array.from(spots, (s) => s.x),
    y: Float64Array.from(spots, (s) => s.y),
  });
const endOf = (spots: readonly Spot[]): number =>
  Math.max(...laid(spots).map((r) => ringBox(r)[2]));

function expectSound({ keepOuts, wanted }: FaceProblem, spots: readonly Spot[]): void {
  wanted.forEach((count, o) => {
    expect(outlinesOf(spots).filter((p) => p === o).length).toBeLessThanOrEqual(count);
  });
  const rings = laid(spots);
  const all = [...rings, ...laid(keepOuts)];
  rings.forEach((a, i) => {
    expect(outside(a, BOX)).toBeLessThan(1e-9);
    for (const b of all.slice(i + 1)) {
      // Clipping keeps 1e-6.
      expect(depthOfOverlap(a, b)).toBeLessThan(1e-5);
      expect(commonArea(a, b)).toBeLessThan(1e-4);
    }
  });
}

const START: readonly Spot[] = [
  { turned: 0, x: 6, y: 6 },
  { turned: 2, x: 40, y: 8 },
];

describe('more on a face', () => {
  const { spots, looks } = packMore(problem, START, search(3, 40_000));

  test('never less area, sound, within the budget but for one trial', () => {
    expectSound(problem, spots);
    expect(areaOf(spots)).toBeGreaterThan(2 * areaOf(START));
    expect(looks).toBeLessThan(40_000 + 5_000);
  });

  test('no budget leaves the face as it is; a larger one of the same draws is no worse', () => {
    expect(packMore(problem, START, search(3, 0))).toEqual({ spots: START, looks: 0 });
    let before = areaOf(START);
    for (const budget of [1, 5_000, 15_000]) {
      const now = packMore(problem, START, search(3, budget)).spots;
      expectSound(problem, now);
      expect(areaOf(now)).toBeGreaterThanOrEqual(areaOf(START));
      before = Math.max(before, areaOf(now));
    }
    expect(areaOf(spots)).toBeGreaterThanOrEqual(before);
  });

  test('the same draws give the same face', () => {
    expect(packMore(problem, START, search(3, 40_000)).spots).toEqual(spots);
  });

  test('not beyond the area there is, nor with nothing wanted', () => {
    const full = { ...problem, mostGrownArea: areaOf(START) };
    expect(packMore(full, START, search(3, 10_000)).spots).toEqual(START);
    const none = { ...problem, wanted: [1, 1, 0] };
    expect(packMore(none, START, search(3, 10_000))).toEqual({ spots: START, looks: 0 });
  });

  test('with only a large one more wanted and no room for both, it takes the small one’s place', () => {
    const small = rectRing(0, 0, 4, 4);
    const large = rectRing(0, 0, 6, 6);
    const table = tableOf([outlineOf(small), outlineOf(large)]);
    const areas = [16, 36];
    const tight: FaceProblem = {
      table,
      areas,
      grownAreas: areas,
      container: [0, 0, 7, 7],
      mostGrownArea: 49,
      keepOuts: [],
      wanted: [1, 1],
    };
    const found = packMore(tight, [{ turned: 0, x: 0, y: 0 }], search(1, 20_000)).spots;
    expect(found.map((s) => s.turned)).toEqual([1]);
  });

  test('stops when told', () => {
    const stopped = { ...search(3, 1e9), shouldStop: () => true };
    expect(packMore(problem, START, stopped)).toEqual({ spots: START, looks: 0 });
  });
});

describe('a shorter face', () => {
  const apart: readonly Spot[] = [
    { turned: 0, x: 5, y: 5 },
    { turned: 2, x: 16, y: 7 },
    { turned: 1, x: 34, y: 5 },
    { turned: 3, x: 43, y: 12 },
  ];

  test('the same outlines, never longer, off the keep-out', () => {
    const { spots } = packShorter(problem, apart, search(5, 30_000));
    expectSound(problem, spots);
    expect(outlinesOf(spots)).toEqual(outlinesOf(apart));
    expect(endOf(spots)).toBeLessThan(0.8 * endOf(apart));
    for (const budget of [1, 3_000, 10_000]) {
      const now = packShorter(problem, apart, search(6, budget)).spots;
      expectSound(problem, now);
      expect(endOf(now)).toBeLessThanOrEqual(endOf(apart));
    }
  });

  test('squares that fill their length stay', () => {
    const table = tableOf([outlineOf(rectRing(0, 0, 2, 2))]);
    const tight: FaceProblem = {
      table,
      areas: [4],
      grownAreas: [4],
      container: [0, 0, 10, 2],
      mostGrownArea: 20,
      keepOuts: [],
      wanted: [3],
    };
    const spots = [0, 2, 4].map((x) => ({ turned: 0, x, y: 0 }));
    expect(packShorter(tight, spots, search(1, 5_000)).spots).toEqual(spots);
  });
});
