/** Lures in a row shared out among pots, each no larger and no longer in use than it may be. */

/** So many lures alike, one behind the other. */
export type Batch = { readonly count: number; readonly mixG: number };

export type PotLimits = {
  readonly largestPotG: number;
  /** Lures that can be coated before the pot sets; at least one. */
  readonly mostLures: number;
};

const SAME = 1e-9; // of a pot: rounding alone fills no pot

/**
 * The fewest pots that hold the row in its order, as even as whole lures allow: in lures where it is
 * time that fills the pots, in grams where it is their size. Gives where each pot ends, as lures from
 * the start.
 *
 * From the end of the row follows the earliest lure that so many last pots can begin with; a pot then
 * ends next to its even share of what is left, but not before that lure nor beyond its own limits.
 * Needs every lure to fit in a pot.
 */
export function potEnds(row: readonly Batch[], limits: PotLimits): number[] {
  const whole = rowOf(row);
  const latest: number[] = [whole.lures];
  while (latest[latest.length - 1] > 0)
    latest.push(earliestStart(whole, limits, latest[latest.length - 1]));
  const pots = latest.length - 1;
  const ends: number[] = [];
  for (let p = 1, start = 0; p <= pots; p++) {
    const wanted = evenEnd(whole, limits, { start, pots: pots - p + 1 });
    const most = farthestEnd(whole, limits, start);
    start = Math.min(most, Math.max(latest[pots - p], start + 1, wanted));
    ends.push(start);
  }
  return ends;
}

/** Where the next pot ends if what is left is shared out evenly among so many pots. */
function evenEnd(
  row: Row,
  { largestPotG, mostLures }: PotLimits,
  { start, pots }: { readonly start: number; readonly pots: number },
): number {
  const grams = row.gramsAt(row.lures);
  const byTime = row.lures / mostLures >= grams / largestPotG;
  if (byTime) return start + Math.round((row.lures - start) / pots);
  return nearest(row, row.gramsAt(start) + (grams - row.gramsAt(start)) / pots);
}

type Row = {
  readonly lures: number;
  /** Grams of so many first lures; between two whole ones in proportion. */
  readonly gramsAt: (lures: number) => number;
  /** Lures that take so many grams, the other way round. */
  readonly luresAt: (grams: number) => number;
};

function rowOf(batches: readonly Batch[]): Row {
  let [lures, grams] = [0, 0];
  const starts = batches.map(({ count, mixG }) => {
    const start = { lures, grams, mixG };
    lures += count;
    grams += count * mixG;
    return start;
  });
  const from = (is: (start: (typeof starts)[number]) => boolean) =>
    starts[Math.max(0, starts.filter(is).length - 1)];
  return {
    lures,
    gramsAt: (n) => {
      const batch = from((s) => s.lures <= n);
      return batch.grams + (n - batch.lures) * batch.mixG;
    },
    luresAt: (g) => {
      const batch = from((s) => s.grams <= g);
      return batch.lures + (g - batch.grams) / batch.mixG;
    },
  };
}

/** Last lure of a pot that begins there, at most. */
function farthestEnd(row: Row, { largestPotG, mostLures }: PotLimits, start: number): number {
  const full = row.luresAt(row.gramsAt(start) + largestPotG * (1 + SAME));
  return Math.min(row.lures, start + mostLures, Math.floor(full));
}

/** First lure of a pot that ends there, at least. */
function earliestStart(row: Row, { largestPotG, mostLures }: PotLimits, end: number): number {
  const full = row.luresAt(Math.max(0, row.gramsAt(end) - largestPotG * (1 + SAME)));
  return Math.max(0, end - mostLures, Math.ceil(full));
}

/** The whole lure after which the row weighs next to so much. */
function nearest(row: Row, grams: number): number {
  const low = Math.floor(row.luresAt(grams) + SAME);
  return row.gramsAt(low + 1) - grams < grams - row.gramsAt(low) ? low + 1 : low;
}
