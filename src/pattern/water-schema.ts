/** The water a lure is meant for, as a file says it. */
import { z } from 'zod';

/** Temperatures and practical salinities the equation for its density was fitted to, fresh water included: EOS-80, see `float/water.ts`. */
export const WATER_RANGE = { leastC: 0, mostC: 40, leastPsu: 0, mostPsu: 43 } as const;

export const waterSection = z
  .strictObject({
    temperatureC: z
      .number()
      .min(WATER_RANGE.leastC)
      .max(WATER_RANGE.mostC)
      .default(15)
      .describe('Temperature of the water.'),
    salinityPsu: z
      .number()
      .min(WATER_RANGE.leastPsu)
      .max(WATER_RANGE.mostPsu)
      .default(0)
      .describe(
        'Salinity, about grams of salt in a kilogram: 0 a lake, 7 the inner Baltic, 35 the open sea.',
      ),
  })
  .describe('The water the lure is meant for. Left out: fresh, 15 °C.');

export type WaterFile = z.output<typeof waterSection>;
