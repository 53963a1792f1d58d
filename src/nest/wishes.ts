/** Which counts of outlines to ask the packer for, pile by pile, and what its answers teach. */
import type { Demand, Relaxed } from './master.js';
import type { Layout } from './place.js';
import { bestWish, byDensity, type Item } from './wish.js';

export type Wish = {
  readonly pile: number;
  readonly wanted: readonly number[];
  /** Worth beyond the block's own, as a share of that. */
  readonly gain: number;
};

export type Wishes = {
  /** The best wish of each pile that may be worth more than its block less `slack`, best first. */
  readonly best: (prices: Relaxed, slack: number) => readonly Wish[];
  readonly learn: (pile: number, wanted: readonly number[], layout: Layout) => void;
};

/** Share of its clear area that the outlines on a face may cover, at first; every wish that failed lowers it. */
const HOPED_RATIO = 0.9;
const LOWERED = 0.93;
/** But no less than the most area that lay on the face, and so much of the smallest outline. */
const HOPED_OUTLINES = 0.5;
/** Wishes that differ by less than this share of the face are one to the packer. */
const ALIKE_RATIO = 0.02;
/** Counts looked at for one wish, at most. */
const STEPS = 4000;
/** Smallest gain that is worth a layout, as a share of the block. */
const LEAST_GAIN = 1e-6;

/** What outlines cover: both they and the clear face are grown by half the gap. */
export type Covered = { readonly areasMm2: readonly number[]; readonly gapMm: number };

export function wishesOf(demand: Demand, { areasMm2, gapMm }: Covered): Wishes {
  const { pool, ordered, costs } = demand;
  const seenMm2 = pool.piles.map(() => 0);
  /** Outlines of one part that a face can hold, as far as is known. */
  const alone = pool.piles.map(() => [...ordered]);
  const failed = pool.piles.map((): (readonly number[])[] => []);
  const area = (counts: readonly number[]): number =>
    counts.reduce((sum, n, part) => sum + n * areasMm2[part], 0);
  const hopedMm2 = (pile: number, parts: readonly number[]): number => {
    const { lengthMm, widthMm, marginMm } = pool.piles[pile].like;
    const clear = (lengthMm - 2 * marginMm + gapMm) * (widthMm - 2 * marginMm + gapMm);
    const most = Math.max(seenMm2[pile], ...held(pile).map(area));
    const smallest = Math.min(...parts.map((part) => areasMm2[part]));
    const hoped = HOPED_RATIO * LOWERED ** failed[pile].length * clear;
    return Math.min(clear, Math.max(hoped, most + HOPED_OUTLINES * smallest));
  };
  const held = (pile: number): (readonly number[])[] =>
    pool.layouts.flatMap(({ piles, counts }) => (piles.includes(pile) ? [counts] : []));

  const wish = (pile: number, prices: Relaxed, slack: number): Wish[] => {
    const parts = ordered.flatMap((n, part) =>
      n > 0 && pool.fits(part, pile) && prices.partPrices[part] > 0 ? [part] : [],
    );
    if (parts.length === 0) return [];
    const block = costs[pile] + prices.pilePrices[pile];
    const capacityMm2 = hopedMm2(pile, parts);
    const items = byDensity(
      parts.map(
        (part): Item => ({
          part,
          value: prices.partPrices[part],
          areaMm2: areasMm2[part],
          most: alone[pile][part],
        }),
      ),
    );
    const spread = (counts: readonly number[]): number[] => {
      const wanted = ordered.map(() => 0);
      counts.forEach((n, i) => {
        wanted[items[i].part] = n;
      });
      return wanted;
    };
    const have = held(pile);
    const isHopeless = (counts: readonly number[]): boolean => {
      const wanted = spread(counts);
      return (
        have.some((counts) => within(wanted, counts)) ||
        failed[pile].some((f) => within(f, wanted) || isAlike(f, wanted, capacityMm2))
      );
    };
    const above = Math.max(0, block * (1 + LEAST_GAIN) - slack);
    const found = bestWish(items, { capacityMm2, above, isHopeless, steps: STEPS });
    return found
      ? [{ pile, wanted: spread(found.counts), gain: (found.value - block) / costs[pile] }]
      : [];
  };
  const isAlike = (a: readonly number[], b: readonly number[], faceMm2: number): boolean =>
    area(a.map((n, part) => Math.abs(n - b[part]))) < ALIKE_RATIO * faceMm2;

  return {
    best: (prices, slack) =>
      pool.piles
        .flatMap((_, pile) => wish(pile, prices, slack))
        .sort((a, b) => b.gain - a.gain || a.pile - b.pile),
    learn: (pile, wanted, layout) => {
      const counts = pool.countsOf(layout);
      seenMm2[pile] = Math.max(seenMm2[pile], area(counts));
      if (within(wanted, counts)) return;
      const kinds = wanted.filter((n) => n > 0).length;
      failed[pile].push(wanted);
      // Of one part alone the packer lays as many as it can.
      if (kinds === 1) {
        const part = wanted.findIndex((n) => n > 0);
        alone[pile][part] = Math.min(alone[pile][part], counts[part]);
      }
    },
  };
}

/** True if no count of `a` is above its counterpart in `b`. */
const within = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((n, part) => n <= b[part]);
