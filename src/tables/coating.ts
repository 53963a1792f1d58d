/** How a coat is mixed, put on and dried: part of a row of shared/coats.yaml. */
import { z } from 'zod';

const part = (about: string) => z.number().min(0.01).max(10000).optional().describe(about);

const BY_VOLUME = 'by volume; give both parts by volume or both by mass, not both ways.';
const BY_MASS = 'by mass (weight); give both parts by volume or both by mass, not both ways.';
const liquid = (about: string) => z.number().min(20).max(23000).describe(about);

const mix = z
  .strictObject({
    aByVolume: part(`Part A, ${BY_VOLUME}`),
    bByVolume: part(`Part B, ${BY_VOLUME}`),
    aByMass: part(`Part A, ${BY_MASS}`),
    bByMass: part(`Part B, ${BY_MASS}`),
    densityAKgM3: liquid(
      'Density of liquid part A; with it a ratio by volume becomes one by mass.',
    ),
    densityBKgM3: liquid('Density of liquid part B.'),
    aName: z.string().min(1).max(30).optional().describe('What part A is, as on its tin.'),
    bName: z.string().min(1).max(30).optional().describe('What part B is, as on its tin.'),
  })
  .describe(
    'Of a two-part coat: its two parts. Left out: a one-part coat, out of the tin. A row of the program calls the lighter liquid A, for epoxy the hardener; go by what stands on your tins.',
  );

const ABOUT = {
  liquidKgM3: 'Density of the wet liquid of a one-part coat.',
  solidsRatio:
    'Share of the wet liquid that stays as film, by mass; the rest is solvent or water and leaves.',
  wasteRatio: 'Liquid that stays in pot, brush and drips, as a share of what goes on the lures.',
  potLifeMin: 'Of a two-part coat: how long it can be put on after it is mixed.',
  largestPotG:
    'Of a two-part coat: the most to mix at once; larger pots heat themselves and set early.',
  minutesPerLure: 'Time to put one coat on one lure.',
  dryHours: 'Wait before the next coat goes on.',
  cureHours: 'Wait after the last coat before lures are rigged and put in water.',
} as const;

/** Least, most, and what stands for a row of one's own that does not say: common practice, no source. */
const RANGES: Readonly<Record<keyof typeof ABOUT, readonly [number, number, number]>> = {
  liquidKgM3: [20, 23000, 1000],
  solidsRatio: [0.01, 1, 1],
  wasteRatio: [0, 10, 0.3],
  potLifeMin: [1, 1440, 30],
  largestPotG: [0.1, 10000, 60],
  minutesPerLure: [0.1, 240, 1.5],
  dryHours: [0, 1000, 12],
  cureHours: [0, 2000, 48],
};

const number = (key: keyof typeof ABOUT) => {
  const [least, most] = RANGES[key];
  return z.number().min(least).max(most).describe(ABOUT[key]);
};
const preset = (key: keyof typeof ABOUT) => number(key).default(RANGES[key][2]);

/** Of a row of the table, and of a whole row of one's own. */
export const workingFields = {
  mix: mix.optional(),
  liquidKgM3: preset('liquidKgM3'),
  solidsRatio: preset('solidsRatio'),
  wasteRatio: preset('wasteRatio'),
  potLifeMin: preset('potLifeMin'),
  largestPotG: preset('largestPotG'),
  minutesPerLure: preset('minutesPerLure'),
  dryHours: preset('dryHours'),
  cureHours: preset('cureHours'),
};

/** Of what a run changes of a row. */
export const workingOverrides = {
  mix: mix.optional(),
  liquidKgM3: number('liquidKgM3').optional(),
  solidsRatio: number('solidsRatio').optional(),
  wasteRatio: number('wasteRatio').optional(),
  potLifeMin: number('potLifeMin').optional(),
  largestPotG: number('largestPotG').optional(),
  minutesPerLure: number('minutesPerLure').optional(),
  dryHours: number('dryHours').optional(),
  cureHours: number('cureHours').optional(),
};

export type Mix = z.output<typeof mix>;

/** Both parts by volume or both by mass, and not both ways. */
export function isClearMix({ aByVolume, bByVolume, aByMass, bByMass }: Mix): boolean {
  const given = (...parts: readonly (number | undefined)[]) =>
    parts.filter((p) => p !== undefined).length;
  const [volume, mass] = [given(aByVolume, bByVolume), given(aByMass, bByMass)];
  return volume + mass === 2 && volume !== 1;
}
