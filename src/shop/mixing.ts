/** Liquid to measure out: by mass and by volume, whole or in two parts. */
import { Fault } from '../problem.js';
import { isClearMix, type Mix } from '../tables/coating.js';
import type { CoatMaterial } from '../tables/materials.js';
import type { Measured, MixParts } from './shop.js';

/** Both ratios of a mix of which one was given: mass is volume times density. By mass A is 100, by volume 1, where they follow. */
export function partsOf(mix: Mix): MixParts {
  if (!isClearMix(mix)) throw new Fault(`a mix of two ratios: ${JSON.stringify(mix)}`);
  const { aByVolume, bByVolume, aByMass, bByMass, densityAKgM3, densityBKgM3 } = mix;
  const parts = {
    densityAKgM3,
    densityBKgM3,
    aName: mix.aName ?? null,
    bName: mix.bName ?? null,
  };
  if (aByVolume !== undefined && bByVolume !== undefined) {
    const heavier = (bByVolume * densityBKgM3) / (aByVolume * densityAKgM3);
    return { aByMass: 100, bByMass: 100 * heavier, aByVolume, bByVolume, ...parts };
  }
  const [a, b] = [aByMass ?? Number.NaN, bByMass ?? Number.NaN];
  const larger = b / densityBKgM3 / (a / densityAKgM3);
  return { aByMass: a, bByMass: b, aByVolume: 1, bByVolume: larger, ...parts };
}

/** Liquid for a cured film: solvent leaves it, and some never reaches a lure. */
export const mixFor = (
  filmG: number,
  { solidsRatio, wasteRatio }: Pick<CoatMaterial, 'solidsRatio' | 'wasteRatio'>,
): number => (filmG / solidsRatio) * (1 + wasteRatio);

/** Milliliters of so many grams: a kg/m³ is a mg/ml. */
const ml = (massG: number, densityKgM3: number): number => (massG / densityKgM3) * 1000;

/** @param liquidKgM3 of a one-part coat */
export function measured(totalG: number, parts: MixParts | null, liquidKgM3: number): Measured {
  if (!parts) {
    const totalMl = ml(totalG, liquidKgM3);
    return { totalG, totalMl, partAG: null, partBG: null, partAMl: null, partBMl: null };
  }
  const partAG = (totalG * parts.aByMass) / (parts.aByMass + parts.bByMass);
  const partBG = totalG - partAG;
  const [partAMl, partBMl] = [ml(partAG, parts.densityAKgM3), ml(partBG, parts.densityBKgM3)];
  return { totalG, totalMl: partAMl + partBMl, partAG, partBG, partAMl, partBMl };
}
