/** What a sawn blank weighs: the number a maker can hold against a kitchen scale. */
import { pathArea } from '../geometry/arcpath.js';
import type { Blank } from './blank.js';
import type { TimberDensity } from './timber-density.js';

export type SawnMass = {
  /** What the saw leaves of the outline, times the thickness: without the lip slot only where that saw cuts it. */
  readonly volumeMm3: number;
  readonly densityKgM3: number;
  readonly massG: number;
  /** One standard deviation between boards of the species; null when the timber was weighed. */
  readonly spreadG: number | null;
  readonly from: TimberDensity['from'];
};

export function sawnMass(
  blank: Blank,
  timber: TimberDensity,
  { slotIsCut }: { readonly slotIsCut: boolean },
): SawnMass {
  const sawn = slotIsCut ? blank.outline : blank.profile;
  const volumeMm3 = pathArea(sawn.path) * blank.thicknessMm;
  const grams = (densityKgM3: number) => volumeMm3 * densityKgM3 * 1e-6;
  return {
    volumeMm3,
    densityKgM3: timber.densityKgM3,
    massG: grams(timber.densityKgM3),
    spreadG: timber.from === 'table' ? grams(timber.spreadKgM3) : null,
    from: timber.from,
  };
}
