/**
 * What a lure is made of, by name: densities, masses and sizes from the files of `shared/`. Each
 * schema is that of one file; descriptions are the manual of the run file's `materials:` too.
 */
import { z } from 'zod';
import type { Blades, bladeTable } from './blades.js';
import { workingFields } from './coating.js';
import type { Steps, stepTable } from './steps.js';
import type { Timbers } from './timbers.js';

const source = z.string().min(1).max(400).describe('Where the figures come from.');

/** Above osmium (22 590), the heaviest there is, a density is a slip of the pen. */
const density = (about: string) => z.number().min(20).max(23000).describe(about);
const spread = z
  .number()
  .min(0)
  .max(5000)
  .default(0)
  .describe('One standard deviation of the density between what is sold under the name.');
const mm = (about: string) => z.number().min(0.01).max(300).describe(about);
const massG = z.number().min(0.001).max(1000).describe('Mass of one, on the scale.');

const metalRow = z.strictObject({
  densityKgM3: density('Density of the solid metal near 20 °C.'),
  spreadKgM3: spread,
  liquidKgM3: density(
    'Density as poured, at the melting point: what a hole filled once ends at. null: this metal is not poured.',
  ).nullable(),
  meltsAtC: z.number().min(-50).max(4000).optional().describe('Where it melts.'),
  meltExtraRatio: z
    .number()
    .min(0)
    .max(2)
    .default(0.1)
    .describe(
      'More to melt than goes into the holes, as a share: dross, and what stays in ladle and pot. A tenth is common practice, no source.',
    ),
  note: z.string().max(400).default('').describe('What to know before using it.'),
  source,
});

export const plateRow = z.strictObject({
  densityKgM3: density('Density of the plate a lip is cut from.'),
  source,
});

export const coatRow = z.strictObject({
  densityKgM3: density('Density of the cured film.'),
  spreadKgM3: spread,
  ...workingFields,
  source,
});

export const glueRow = z.strictObject({
  densityKgM3: density(
    'Density, cured, of the glue that closes holes, holds the lip and fills the bore beside the wire.',
  ),
  spreadKgM3: spread,
  source,
});

export const wireRow = z.strictObject({
  densityKgM3: density('Density of the through-wire.'),
  loopMm: mm(
    'How wide an eye bent from the wire is inside; a wire whose bends need more gets a wider one.',
  ),
  bendRatio: z
    .number()
    .min(1)
    .max(20)
    .describe('Least radius inside a bend, in diameters of the wire.'),
  holdMm: z
    .number()
    .min(0)
    .max(200)
    .describe('Wire to hold on to at each eye at an end while it is bent; trimmed off afterwards.'),
  source,
});

const fittingDensity = density('Density of what it is made of: how much water it keeps out.');

export const fittingRow = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('screw-eye').describe('A screw eye.'),
    massG,
    densityKgM3: fittingDensity,
    wireMm: mm('Diameter of its wire.'),
    loopMm: mm('How wide the loop is inside.'),
    shankMm: mm('Length of the part in the wood.'),
    pilotMm: mm(
      'Diameter of the bit for its pilot hole. Left out: three quarters of the wire.',
    ).optional(),
    source,
  }),
  z.strictObject({
    kind: z.literal('ring').describe('A split ring.'),
    massG,
    densityKgM3: fittingDensity,
    outerMm: mm('Diameter over all.'),
    wireMm: mm('Diameter of its wire.'),
    source,
  }),
  z.strictObject({
    kind: z.literal('treble').describe('A treble hook.'),
    massG,
    densityKgM3: fittingDensity,
    source,
  }),
]);

export const weightRow = z.strictObject({
  metal: z.string().min(1).max(60).describe('A name from shared/metals.yaml.'),
  massG,
  diameterMm: mm('Diameter of the cylinder; the hole to bore for it.'),
  lengthMm: mm('Length of the cylinder.'),
  source,
});

const bitRow = z.strictObject({
  drillMm: z.array(mm('Diameter of a wood bit.')).default([]),
  roundOverMm: z.array(mm('Radius of a round-over bit.')).default([]),
  source,
});

export const metalTable = z.strictObject({ metals: z.record(z.string(), metalRow) });
export const plateTable = z.strictObject({ plates: z.record(z.string(), plateRow) });
export const coatTable = z.strictObject({ coats: z.record(z.string(), coatRow), glue: glueRow });
export const fittingTable = z.strictObject({
  fittings: z.record(z.string(), fittingRow),
  wire: wireRow,
});
export const weightTable = z.strictObject({ weights: z.record(z.string(), weightRow) });
export const bitTable = z.strictObject({ bits: z.record(z.string(), bitRow) });

type Rows<Row> = Readonly<Record<string, Row>>;
export type Metal = z.output<typeof metalRow>;
export type Plate = z.output<typeof plateRow>;
export type CoatMaterial = z.output<typeof coatRow>;
export type Fitting = z.output<typeof fittingRow>;
export type ScrewEye = Extract<Fitting, { kind: 'screw-eye' }>;
export type Weight = z.output<typeof weightRow>;

export type Materials = {
  readonly timbers: Timbers;
  readonly metals: Rows<Metal>;
  readonly plates: Rows<Plate>;
  readonly coats: Rows<CoatMaterial>;
  readonly glue: z.output<typeof glueRow>;
  readonly wire: z.output<typeof wireRow>;
  readonly fittings: Rows<Fitting>;
  readonly weights: Rows<Weight>;
  /** All bits of all sets, small to large, each size once. */
  readonly bits: { readonly drillMm: readonly number[]; readonly roundOverMm: readonly number[] };
  readonly blades: Blades;
  readonly steps: Steps;
};

/** The tables as their files hold them. */
export type TableFiles = { readonly timbers: Timbers } & z.output<typeof metalTable> &
  z.output<typeof plateTable> &
  z.output<typeof coatTable> &
  z.output<typeof fittingTable> &
  z.output<typeof weightTable> &
  z.output<typeof bitTable> &
  z.output<typeof bladeTable> &
  z.output<typeof stepTable>;

export function materialsOf(files: TableFiles): Materials {
  const { timbers, metals, plates, coats, glue, wire, fittings, weights, blades, steps } = files;
  const sets = Object.values(files.bits);
  const bits = {
    drillMm: rising(sets.flatMap((s) => s.drillMm)),
    roundOverMm: rising(sets.flatMap((s) => s.roundOverMm)),
  };
  return { timbers, metals, plates, coats, glue, wire, fittings, weights, bits, blades, steps };
}

/** Small to large, each number once. */
export const rising = (numbers: readonly number[]): number[] =>
  [...new Set(numbers)].sort((a, b) => a - b);
