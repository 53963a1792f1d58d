/** What to ask the packer for: the counts of greatest value that a face might hold. */

export type Item = {
  readonly part: number;
  /** What one outline of it is worth. */
  readonly value: number;
  readonly areaMm2: number;
  readonly most: number;
};

export type WishLimits = {
  /** Outlines may cover so much. */
  readonly capacityMm2: number;
  /** Only what is worth more than this is asked for. */
  readonly above: number;
  /** Counts by place in the items; true if they are known not to fit. */
  readonly isHopeless: (counts: readonly number[]) => boolean;
  /** Counts looked at, at most. */
  readonly steps: number;
};

/**
 * The counts, by place in `items`, of greatest value whose areas come to no more than the capacity
 * (a bounded knapsack, searched depth first under the bound of divided items); null if none.
 */
export function bestWish(
  items: readonly Item[],
  limits: WishLimits,
): { readonly counts: readonly number[]; readonly value: number } | null {
  let best: { counts: readonly number[]; value: number } | null = null;
  let steps = 0;
  const counts = items.map(() => 0);
  const bar = (): number => best?.value ?? limits.above;
  const visit = (at: number, value: number, roomMm2: number): void => {
    if (++steps > limits.steps || value + dividedValue(items, at, roomMm2) <= bar() * (1 + SAME))
      return;
    if (at === items.length) {
      if (!limits.isHopeless(counts)) best = { counts: [...counts], value };
      return;
    }
    const { value: each, areaMm2, most } = items[at];
    for (let n = Math.min(most, Math.floor(roomMm2 / areaMm2 + SAME)); n >= 0; n--) {
      counts[at] = n;
      visit(at + 1, value + n * each, roomMm2 - n * areaMm2);
    }
    counts[at] = 0;
  };
  visit(0, 0, limits.capacityMm2);
  return best;
}

/** Values that agree to this are equal, relative. */
const SAME = 1e-9;

/** The most the items from `at` on can be worth if the last one may be cut; they come densest in value first. */
function dividedValue(items: readonly Item[], at: number, roomMm2: number): number {
  let [room, value] = [roomMm2, 0];
  for (let i = at; i < items.length && room > 0; i++) {
    const n = Math.min(items[i].most, room / items[i].areaMm2);
    value += n * items[i].value;
    room -= n * items[i].areaMm2;
  }
  return value;
}

/** Items in the order `bestWish` wants them. */
export const byDensity = (items: readonly Item[]): Item[] =>
  [...items].sort((a, b) => b.value / b.areaMm2 - a.value / a.areaMm2 || a.part - b.part);
