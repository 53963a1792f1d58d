/** Sharing lures out among pots, against trying every way to do it. */
import { describe, expect, test } from 'vitest';
import { type Batch, type PotLimits, potEnds } from '../../src/shop/pots.js';
import { seeded } from '../mass/lures.js';

const alike = (count: number, mixG = 1): Batch[] => [{ count, mixG }];
const sizes = (ends: readonly number[]) => ends.map((end, i) => end - (ends[i - 1] ?? 0));

test.each([
  [56, 20, [19, 19, 18]],
  [20, 20, [20]],
  [21, 20, [11, 10]],
  [3, 1, [1, 1, 1]],
  [1, 5, [1]],
])('%i lures alike, %i a pot', (count, mostLures, wanted) => {
  expect(sizes(potEnds(alike(count), { largestPotG: 1e6, mostLures }))).toEqual(wanted);
});

test('a pot of exactly what it may hold is full, not too full, whatever rounding says', () => {
  // 0.1 + 0.1 + 0.1 is more than 0.3 in binary.
  expect(potEnds(alike(3, 0.1), { largestPotG: 0.3, mostLures: 9 })).toEqual([3]);
  expect(potEnds(alike(300, 0.1), { largestPotG: 3, mostLures: 99 })).toHaveLength(10);
});

/** Lures one by one. */
const spread = (row: readonly Batch[]) =>
  row.flatMap(({ count, mixG }) => Array.from({ length: count }, () => mixG));

function greedy(row: readonly Batch[], { largestPotG, mostLures }: PotLimits): number {
  let [pots, grams, lures] = [0, Infinity, 0];
  for (const mixG of spread(row)) {
    if (grams + mixG > largestPotG * (1 + 1e-9) || lures === mostLures) {
      [pots, grams, lures] = [pots + 1, 0, 0];
    }
    grams += mixG;
    lures++;
  }
  return pots;
}

describe('rows drawn by chance (seed 11)', () => {
  const draw = seeded(11);
  const whole = (most: number) => 1 + Math.floor(draw() * most);
  const cases = Array.from({ length: 300 }, () => {
    const row = Array.from({ length: whole(5) }, () => ({
      count: whole(12),
      mixG: 0.5 + 3 * draw(),
    }));
    const heaviest = Math.max(...row.map((b) => b.mixG));
    return { row, limits: { largestPotG: heaviest * (1 + 6 * draw()), mostLures: whole(15) } };
  });

  test('every lure once, within the limits, in as few pots as filling each to the brim takes', () => {
    expect(cases).toHaveLength(300);
    for (const { row, limits } of cases) {
      const ends = potEnds(row, limits);
      const lures = spread(row);
      expect(ends[ends.length - 1]).toBe(lures.length);
      sizes(ends).forEach((size, i) => {
        const grams = lures.slice(ends[i] - size, ends[i]).reduce((s, g) => s + g, 0);
        expect(size).toBeGreaterThan(0);
        expect(size).toBeLessThanOrEqual(limits.mostLures);
        expect(grams).toBeLessThanOrEqual(limits.largestPotG * (1 + 1e-6));
      });
      // In order, the fewest pots are those filled one after the other.
      expect(ends).toHaveLength(greedy(row, limits));
    }
  });

  test('where time fills them, pots of lures alike differ by one lure', () => {
    for (let count = 1; count < 80; count++) {
      const filled = sizes(potEnds(alike(count), { largestPotG: 1e6, mostLures: 7 }));
      expect(Math.max(...filled) - Math.min(...filled)).toBeLessThanOrEqual(1);
    }
  });
});
