/** What a sawn blank weighs: the number a maker can hold against a kitchen scale. */
import { pathArea } from '../geometry/arcpath.js';
import type { Timber } from '../tables/timbers.js';
import type { Blank } from './blank.js';

export type SawnMass = {
  /** What the saw leaves of the outline, times the thickness: without the lip slot only where that saw cuts it. */
  readonly volumeMm3: number;
  readonly densityKgM3: number;
  readonly massG: number;
  /** One standard deviation between boards of the species; null when blocks were weighed. */
  readonly spreadG: number | null;
  readonly from: 'weighed blocks' | 'table';
};

/** A pile of blocks by the density of the one that was weighed; null when none was. */
export type Pile = { readonly count: number; readonly densityKgM3: number | null };

/** Weighed blocks beat the table; piles that were not weighed count only when none was. */
export function sawnMass(
  blank: Blank,
  {
    timber,
    piles,
    slotIsCut,
  }: { readonly timber: Timber; readonly piles: readonly Pile[]; readonly slotIsCut: boolean },
): SawnMass {
  const sawn = slotIsCut ? blank.outline : blank.profile;
  const volumeMm3 = pathArea(sawn.path) * blank.thicknessMm;
  const grams = (densityKgM3: number) => volumeMm3 * densityKgM3 * 1e-6;
  const weighed = piles.flatMap(({ count, densityKgM3 }) =>
    densityKgM3 === null ? [] : [{ count, densityKgM3 }],
  );
  if (weighed.length === 0) {
    const { densityKgM3, spreadKgM3 } = timber;
    return {
      volumeMm3,
      densityKgM3,
      massG: grams(densityKgM3),
      spreadG: grams(spreadKgM3),
      from: 'table',
    };
  }
  const blocks = weighed.reduce((sum, w) => sum + w.count, 0);
  const mean = weighed.reduce((sum, w) => sum + w.count * w.densityKgM3, 0) / blocks;
  return {
    volumeMm3,
    densityKgM3: mean,
    massG: grams(mean),
    spreadG: null,
    from: 'weighed blocks',
  };
}
