/** The density of the water a lure swims in. */
import { WATER_RANGE } from '../pattern/water-schema.js';
import { Fault } from '../problem.js';

/**
 * Coefficients in rising powers of t: N. P. Fofonoff and R. C. Millard, "Algorithms for computation
 * of fundamental properties of seawater", UNESCO Technical Papers in Marine Science 44 (1983), eqs.
 * 13–14; fitted by F. J. Millero and A. Poisson, Deep-Sea Research 28A (1981) 625–629.
 */
const FRESH = [999.842594, 6.793952e-2, -9.09529e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9];
const SALT = [8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9];
const SALT_ROOT = [-5.72466e-3, 1.0227e-4, -1.6546e-6];
const SALT_SQUARE = 4.8314e-4;

/**
 * Density at the surface, kg/m³, by the equation of state of sea water of 1980 (EOS-80) at one
 * atmosphere; its standard error is 0.0036 kg/m³. The temperature is on the scale of 1968: taking a
 * reading on today's scale for it (t68 = 1.00024 t90) changes the result by at most 0.004 kg/m³.
 *
 * @throws Fault outside 0–40 °C and practical salinity 0–43: nothing is extrapolated.
 */
export function waterDensityKgM3(temperatureC: number, salinityPsu: number): number {
  const { leastC, mostC, leastPsu, mostPsu } = WATER_RANGE;
  const inside =
    temperatureC >= leastC &&
    temperatureC <= mostC &&
    salinityPsu >= leastPsu &&
    salinityPsu <= mostPsu;
  if (!inside) throw new Fault(`water of ${temperatureC} °C and salinity ${salinityPsu}`);
  return (
    power(FRESH, temperatureC) +
    power(SALT, temperatureC) * salinityPsu +
    power(SALT_ROOT, temperatureC) * salinityPsu ** 1.5 +
    SALT_SQUARE * salinityPsu ** 2
  );
}

/** Mass of a volume of water, g. */
export const waterG = (volumeMm3: number, densityKgM3: number): number =>
  volumeMm3 * densityKgM3 * 1e-6;

/** Volume of a mass of water. */
export const waterMm3 = (massG: number, densityKgM3: number): number =>
  massG / (densityKgM3 * 1e-6);

const power = (coefficients: readonly number[], t: number): number =>
  coefficients.reduceRight((sum, c) => sum * t + c, 0);
