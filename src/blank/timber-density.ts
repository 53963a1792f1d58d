/** Which density to take for the timber of a lure, and how sure of it one can be. */
import type { Timber } from '../tables/timbers.js';

export type Density = {
  readonly densityKgM3: number;
  /** One standard deviation from lure to lure. */
  readonly spreadKgM3: number;
};

export type TimberDensity = Density & {
  readonly from: 'weighed blocks' | 'pattern' | 'table';
};

/** A pile of blocks by the density of the one that was weighed; null when none was. */
export type Pile = { readonly count: number; readonly densityKgM3: number | null };

/** What is left of the spread when the very timber was weighed: within a board, damp, the scale. Common practice, no source. */
const WEIGHED_SPREAD = 0.02;

/** Weighed blocks beat what the pattern says, and that beats the table; piles that were not weighed count only when none was. */
export function timberDensity(
  timber: Timber,
  patternKgM3: number | null,
  piles: readonly Pile[],
): TimberDensity {
  const weighed = piles.flatMap(({ count, densityKgM3 }) =>
    densityKgM3 === null ? [] : [{ count, densityKgM3 }],
  );
  if (weighed.length > 0) {
    const blocks = weighed.reduce((sum, w) => sum + w.count, 0);
    const mean = weighed.reduce((sum, w) => sum + w.count * w.densityKgM3, 0) / blocks;
    return weighedDensity(mean, 'weighed blocks');
  }
  if (patternKgM3 !== null) return weighedDensity(patternKgM3, 'pattern');
  return { densityKgM3: timber.densityKgM3, spreadKgM3: timber.spreadKgM3, from: 'table' };
}

export const weighedDensity = (
  densityKgM3: number,
  from: 'weighed blocks' | 'pattern',
): TimberDensity => ({ densityKgM3, spreadKgM3: WEIGHED_SPREAD * densityKgM3, from });
