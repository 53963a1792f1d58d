/** A crowd's book-keeping against a crowd made from nothing, and against all pairs. */
import { describe, expect, test } from 'vitest';
import { seededDraws } from '../../src/geometry/random.js';
import { type Ring, rectRing, ringArea } from '../../src/geometry/ring.js';
import {
  type Crowd,
  clampX,
  clampY,
  copyOfPlaces,
  crowdOf,
  fitsIn,
  lossAt,
  lossOf,
  measureAll,
  type Places,
  put,
  reweigh,
  setContainer,
  totalLoss,
} from '../../src/pack/crowd.js';
import { placer } from '../../src/pack/place.js';
import { exchangeTwo } from '../../src/pack/shake.js';
import { type Outline, type Table, tableOf } from '../../src/pack/table.js';
import { outlineOf, star } from './stars.js';

const draw = seededDraws(31);
const RINGS: readonly Ring[] = [star(draw, 6, 4), star(draw, 9, 7), rectRing(-1, -3, 2, 3)];
const ZONE: Outline = { ...outlineOf(rectRing(0, 0, 5, 5)), keepsOut: 'all' };
const TABLE: Table = tableOf([...RINGS.map((r) => outlineOf(r, [0, 90, 180])), ZONE]);
const AREAS = [...RINGS.map(ringArea), 25];
const MOVABLE = 24;
const ITEMS = [...Array.from({ length: MOVABLE }, (_, i) => i % 3), 3, 3];
/** Turned outlines of the table come outline by outline, three turns each. */
const FIRST_TURN = [0, 3, 6, 9];
const BOX = [0, 0, 60, 20] as const;

function drawnPlaces(): Places {
  return {
    turned: Int32Array.from(ITEMS, (o) => FIRST_TURN[o] + (o === 3 ? 0 : Math.floor(3 * draw()))),
    x: Float64Array.from(ITEMS, () => 60 * draw()),
    y: Float64Array.from(ITEMS, () => 20 * draw()),
  };
}
const crowdAt = (places: Places, container: readonly [number, number, number, number] = BOX) =>
  crowdOf({ table: TABLE, areas: AREAS, items: ITEMS, movable: MOVABLE, places, container });

function moveAnyOf(crowd: Crowd, far = 60): void {
  const i = Math.floor(MOVABLE * draw());
  const k = FIRST_TURN[ITEMS[i]] + Math.floor(3 * draw());
  put(crowd, i, k, far * (1.4 * draw() - 0.2), 20 * draw());
}

/** Losses of all pairs, without columns. */
function lossesOfAllPairs({ overlap, kinds, places, scale }: Crowd): number[][] {
  return ITEMS.map((_, i) =>
    ITEMS.map((_, j) => {
      const [moving, fixed] = i < j ? [i, j] : [j, i];
      if (i === j || moving >= MOVABLE) return 0;
      const { turned, x, y } = places;
      const depth = overlap.depth(
        turned[moving] * kinds + turned[fixed],
        x[moving] - x[fixed],
        y[moving] - y[fixed],
      );
      return depth * scale[i] * scale[j];
    }),
  );
}

describe('losses', () => {
  test('after many moves are those of a crowd made from nothing, and of all pairs', () => {
    const crowd = crowdAt(drawnPlaces());
    let overlapping = 0;
    for (let n = 0; n < 300; n++) {
      // Some moves go far outside: left of the first column, and right of the container.
      moveAnyOf(crowd, n % 10 === 9 ? 400 : 60);
      if (n % 15 !== 0) continue;
      const anew = crowdAt(copyOfPlaces(crowd.places));
      const all = lossesOfAllPairs(crowd);
      for (let i = 0; i < ITEMS.length; i++) {
        for (let j = 0; j < ITEMS.length; j++) {
          const held = crowd.loss[i * ITEMS.length + j];
          // A pair measured the other way round differs by clipping's 1e-6.
          expect(Math.abs(held - all[i][j])).toBeLessThan(1e-4);
          expect(Math.abs(held - anew.loss[i * ITEMS.length + j])).toBeLessThan(1e-4);
          expect(held).toBe(crowd.loss[j * ITEMS.length + i]);
          if (held > 0) overlapping++;
        }
      }
      const sum = all.slice(0, MOVABLE).reduce((s, row, i) => s + half(row, i), 0);
      expect(totalLoss(crowd)).toBeCloseTo(sum, 3);
    }
    expect(overlapping).toBeGreaterThan(500);
  });

  test('far away from the origin, beyond the last column, are the same', () => {
    const near = drawnPlaces();
    const far = { ...copyOfPlaces(near), x: near.x.map((x) => x + 3e6) };
    // 3e6 and 60 leave some 1e-9 of rounding.
    expect(totalLoss(crowdAt(far))).toBeCloseTo(totalLoss(crowdAt(near)), 4);
    expect(totalLoss(crowdAt(near))).toBeGreaterThan(0);
  });

  test('of a place thought of are those held once the item lies there', () => {
    const crowd = crowdAt(drawnPlaces());
    for (let n = 0; n < 5; n++) reweigh(crowd);
    for (let n = 0; n < 200; n++) {
      const i = Math.floor(MOVABLE * draw());
      const k = FIRST_TURN[ITEMS[i]] + Math.floor(3 * draw());
      const [x, y] = [60 * draw(), 20 * draw()];
      const thought = lossAt(crowd, i, k, x, y, Infinity);
      put(crowd, i, k, x, y);
      expect(thought).toBeCloseTo(lossOf(crowd, i), 9);
      if (thought > 0) {
        expect(lossAt(crowd, i, k, x, y, 0.99 * thought)).toBe(Infinity);
        expect(lossAt(crowd, i, k, x, y, 1.01 * thought)).toBeCloseTo(thought, 9);
      }
    }
  });

  test('places looked at are counted', () => {
    const crowd = crowdAt(drawnPlaces());
    expect(crowd.work.looks).toBe(0);
    for (let n = 0; n < 7; n++) lossAt(crowd, 0, 0, 1, 1, Infinity);
    expect(crowd.work.looks).toBe(7);
  });
});

const half = (row: readonly number[], i: number): number =>
  row.slice(i + 1).reduce((sum, v) => sum + v, 0);

describe('weights', () => {
  test('grow by 1.2 to 2 with the loss, fall back by 0.95 to 1, the same both ways round', () => {
    // The factors are those of arXiv:2509.13329 (2025).
    const crowd = crowdAt(drawnPlaces());
    const count = ITEMS.length;
    const greatest = Math.max(...crowd.loss);
    for (let round = 0; round < 3; round++) {
      const before = crowd.weight.slice();
      reweigh(crowd);
      for (let i = 0; i < MOVABLE; i++) {
        for (let j = i + 1; j < count; j++) {
          const p = i * count + j;
          const factor = crowd.weight[p] / before[p];
          if (crowd.loss[p] > 0)
            expect(factor).toBeCloseTo(1.2 + (0.8 * crowd.loss[p]) / greatest, 9);
          else expect(factor).toBe(1);
          expect(crowd.weight[j * count + i]).toBe(crowd.weight[p]);
        }
      }
    }
    const heaviest = Math.max(...crowd.weight);
    expect(heaviest).toBeCloseTo(8, 9);
    const at = crowd.weight.indexOf(heaviest);
    put(crowd, Math.floor(at / count), crowd.places.turned[Math.floor(at / count)], 1000, 0);
    reweigh(crowd);
    expect(crowd.weight[at]).toBeCloseTo(0.95 * heaviest, 9);
    for (let n = 0; n < 60; n++) reweigh(crowd);
    expect(crowd.weight[at]).toBe(1);
  });

  test('stay as they are where nothing overlaps', () => {
    const places = drawnPlaces();
    const crowd = crowdAt({ ...places, x: places.x.map((_, i) => 100 * i) });
    expect(totalLoss(crowd)).toBe(0);
    reweigh(crowd);
    expect(new Set(crowd.weight)).toEqual(new Set([1]));
  });
});

describe('the container', () => {
  test('holds every outline that is clamped to it', () => {
    const crowd = crowdAt(drawnPlaces());
    TABLE.turned.forEach(({ box }, k) => {
      expect(fitsIn(crowd, k)).toBe(true);
      for (let n = 0; n < 20; n++) {
        const x = clampX(crowd, k, 300 * draw() - 100);
        const y = clampY(crowd, k, 300 * draw() - 100);
        expect(x + box[0]).toBeGreaterThanOrEqual(-1e-9);
        expect(x + box[2]).toBeLessThanOrEqual(60 + 1e-9);
        expect(y + box[1]).toBeGreaterThanOrEqual(-1e-9);
        expect(y + box[3]).toBeLessThanOrEqual(20 + 1e-9);
      }
    });
  });

  test('as large as an outline holds it; a hair smaller does not', () => {
    const crowd = crowdAt(drawnPlaces());
    // The bar is 3 × 6, upright at 0° and 180°.
    setContainer(crowd, [0, 0, 3, 6]);
    expect([6, 7, 8].map((k) => fitsIn(crowd, k))).toEqual([true, false, true]);
    setContainer(crowd, [0, 0, 3 - 1e-6, 6]);
    expect([6, 7, 8].map((k) => fitsIn(crowd, k))).toEqual([false, false, false]);
  });
});

test('better places are better, as told, in the container, and leave the crowd as it was', () => {
  const crowd = crowdAt(drawnPlaces());
  for (let i = 0; i < MOVABLE; i++) {
    const { turned, x, y } = crowd.places;
    put(crowd, i, turned[i], clampX(crowd, turned[i], x[i]), clampY(crowd, turned[i], y[i]));
  }
  const better = placer(crowd, draw);
  let found = 0;
  for (let n = 0; n < 40; n++) {
    const i = n % MOVABLE;
    const [before, places] = [lossOf(crowd, i), copyOfPlaces(crowd.places)];
    const place = better(i, { near: 8, touching: 4, far: 10 });
    expect(crowd.places).toEqual(places);
    if (!place) continue;
    found++;
    const { k, x, y, loss } = place;
    expect(crowd.turns[i]).toContain(k);
    expect([clampX(crowd, k, x), clampY(crowd, k, y)]).toEqual([x, y]);
    put(crowd, i, k, x, y);
    expect(lossOf(crowd, i)).toBeCloseTo(loss, 4);
    expect(lossOf(crowd, i)).toBeLessThan(before);
  }
  expect(found).toBeGreaterThan(10);
  const sum = totalLoss(crowd);
  measureAll(crowd);
  expect(totalLoss(crowd)).toBeCloseTo(sum, 3);
});

test('an exchange swaps the middles of two unlike items and takes along what lies inside', () => {
  const [big, bar, chip] = [rectRing(0, 0, 10, 10), rectRing(0, 0, 20, 4), rectRing(0, 0, 1, 1)];
  const table = tableOf([big, bar, chip].map((r) => outlineOf(r)));
  const crowd = crowdOf({
    table,
    areas: [100, 80, 1],
    items: [0, 1, 2],
    movable: 3,
    places: {
      turned: Int32Array.of(0, 1, 2),
      x: Float64Array.of(0, 40, 3),
      y: Float64Array.of(0, 3, 3),
    },
    container: [0, 0, 60, 10],
  });
  exchangeTwo(crowd, { areas: [100, 80, 1], items: [0, 1, 2] }, draw);
  // Middles before: (5, 5) and (50, 5), the chip at (−2, −2) from the first corner's middle.
  expect([...crowd.places.x]).toEqual([45, 0, 48]);
  expect([...crowd.places.y]).toEqual([0, 3, 3]);
  expect(totalLoss(crowd)).toBeCloseTo(totalLoss(crowdOf({ ...start(crowd) })), 9);
});

const start = ({ table, places }: Crowd) => ({
  table,
  areas: [100, 80, 1],
  items: [0, 1, 2],
  movable: 3,
  places,
  container: [0, 0, 60, 10] as const,
});
