/** A run file's own figures in place of the tables' (`materials:`), and rows of its own. */
import { z } from 'zod';
import { isClearMix, workingOverrides } from './coating.js';
import {
  coatRow,
  fittingRow,
  glueRow,
  type Materials,
  plateRow,
  rising,
  weightRow,
  wireRow,
} from './materials.js';
import { stepOverrides, stepsWith } from './steps.js';

const number = (about: string, least: number, most: number) =>
  z.number().min(least).max(most).optional().describe(about);
const densityKgM3 = number('Density of yours.', 20, 23000);
const spreadKgM3 = number('One standard deviation of it; 0 when weighed.', 0, 5000);
const massG = number('Mass of one of yours, on the scale.', 0.001, 1000);
const mm = (about: string) => number(about, 0.01, 300);
const source = z.string().min(1).max(400).optional().describe('Where your figures come from.');

const rows = <S extends z.ZodType>(row: S, about: string) =>
  z.record(z.string().max(60), row).optional().describe(about);

const timber = z.strictObject({ densityKgM3, spreadKgM3, source });
const metal = z.strictObject({
  densityKgM3,
  spreadKgM3,
  liquidKgM3: number('Density as poured.', 20, 23000),
  meltExtraRatio: number(
    'More to melt than goes into the holes, as a share: dross and what stays in ladle and pot.',
    0,
    2,
  ),
  source,
});
const plate = z.strictObject({ densityKgM3, source });
const coat = z.strictObject({ densityKgM3, spreadKgM3, ...workingOverrides, source });
const glue = z.strictObject({ densityKgM3, spreadKgM3, source });
const wire = z.strictObject({
  densityKgM3,
  loopMm: mm('How wide its eyes are inside, where its bends need no more.'),
  bendRatio: number('Least radius inside its bends, in diameters.', 1, 20),
  holdMm: number(
    'Length held by the pliers at each eye at an end, trimmed off afterwards.',
    0,
    200,
  ),
  source,
});
const fitting = z.strictObject({
  kind: z
    .enum(['screw-eye', 'ring', 'treble'])
    .optional()
    .describe('What it is; needed for a row of your own.'),
  massG,
  densityKgM3,
  wireMm: mm('Screw eye or ring: diameter of its wire.'),
  loopMm: mm('Screw eye: how wide the loop is inside.'),
  shankMm: mm('Screw eye: length of the part in the wood.'),
  pilotMm: mm('Screw eye: diameter of the bit for its pilot hole.'),
  outerMm: mm('Ring: diameter over all.'),
  source,
});
const weight = z.strictObject({
  metal: z.string().min(1).max(60).optional().describe('A name from shared/metals.yaml.'),
  massG,
  diameterMm: mm('Diameter of the cylinder.'),
  lengthMm: mm('Length of the cylinder.'),
  source,
});
const bits = z.strictObject({
  drillMm: z
    .array(z.number().min(0.5).max(60).describe('Diameter of a bit.'))
    .min(1)
    .max(100)
    .optional()
    .describe('Wood bits, for ballast holes.'),
  roundOverMm: z
    .array(z.number().min(0.5).max(60).describe('Radius of a bit.'))
    .min(1)
    .max(100)
    .optional()
    .describe('Round-over bits, for the edges.'),
});

/** The section `materials:` of a run file. */
export const overrideSection = z
  .strictObject({
    timbers: rows(timber, 'Timbers of shared/timbers.yaml with your figures.'),
    metals: rows(metal, 'Metals of shared/metals.yaml with your figures.'),
    plates: rows(plate, 'Plates, or plates of your own.'),
    coats: rows(coat, 'Coats, or coats of your own.'),
    glue: glue.optional().describe('Your glue.'),
    wire: wire.optional().describe('Your through-wire.'),
    fittings: rows(fitting, 'Screw eyes, rings and trebles, or rows of your own.'),
    weights: rows(weight, 'Ready-made weights, or rows of your own.'),
    bits: bits.optional().describe('The bits you have, in place of those of shared/bits.yaml.'),
    steps: stepOverrides.optional().describe('How long the steps at your bench take.'),
  })
  .describe('Your own figures in place of those of the tables in shared/, row by row.');

export type Overrides = z.output<typeof overrideSection>;

/** What is wrong with an override: there is no such row to change, or a new row lacks something. */
export type OverrideFlaw =
  | { readonly kind: 'unknown'; readonly table: 'timbers' | 'metals'; readonly name: string }
  | {
      readonly kind: 'incomplete';
      readonly table: 'plates' | 'coats' | 'fittings' | 'weights';
      readonly name: string;
      /** Keys the row lacks, or may not have. */
      readonly keys: readonly string[];
    }
  /** A two-part coat whose ratio is not said once, whole, by volume or by mass. */
  | { readonly kind: 'mix'; readonly table: 'coats'; readonly name: string };

export type Overridden = {
  readonly materials: Materials;
  readonly flaws: readonly OverrideFlaw[];
};

/** Stands as the source of figures a run file gives without one. */
export const OWN_SOURCE = 'the run file';

/**
 * The tables with a run file's figures in. Rows that are wrong are left as they were and told: only
 * known timbers and metals can be changed, and a new row must be whole. What a row does not give stays as
 * the table has it, the spread too.
 */
export function overridden(materials: Materials, overrides: Overrides): Overridden {
  const flaws: OverrideFlaw[] = [];
  const known = <Row extends object>(table: 'timbers' | 'metals', old: Table<Row>): Table<Row> => {
    const out = { ...old };
    for (const [name, change] of Object.entries(overrides[table] ?? {})) {
      if (!Object.hasOwn(old, name)) flaws.push({ kind: 'unknown', table, name });
      else out[name] = { ...old[name], ...own(change) };
    }
    return out;
  };
  const open = <Row>(
    table: 'plates' | 'coats' | 'fittings' | 'weights',
    schema: z.ZodType<Row>,
    old: Table<Row>,
  ): Table<Row> => {
    const out = { ...old };
    for (const [name, change] of Object.entries(overrides[table] ?? {})) {
      const row = schema.safeParse({
        ...(Object.hasOwn(old, name) ? old[name] : {}),
        ...own(change),
      });
      if (row.success) out[name] = row.data;
      else flaws.push({ kind: 'incomplete', table, name, keys: keysOf(row.error.issues) });
    }
    return out;
  };
  const changed: Materials = {
    timbers: known('timbers', materials.timbers),
    metals: known('metals', materials.metals),
    plates: open('plates', plateRow, materials.plates),
    coats: open('coats', coatRow, materials.coats),
    glue: glueRow.parse({ ...materials.glue, ...(overrides.glue ? own(overrides.glue) : {}) }),
    wire: wireRow.parse({ ...materials.wire, ...(overrides.wire ? own(overrides.wire) : {}) }),
    fittings: open('fittings', fittingRow, materials.fittings),
    weights: open('weights', weightRow, materials.weights),
    bits: {
      drillMm: rising(overrides.bits?.drillMm ?? materials.bits.drillMm),
      roundOverMm: rising(overrides.bits?.roundOverMm ?? materials.bits.roundOverMm),
    },
    blades: materials.blades,
    steps: stepsWith(materials.steps, overrides.steps ?? {}),
  };
  for (const [name, { mix }] of Object.entries(overrides.coats ?? {}))
    if (mix && !isClearMix(mix)) flaws.push({ kind: 'mix', table: 'coats', name });
  return { materials: changed, flaws };
}

type Table<Row> = Record<string, Row>;
type Change = { readonly [key: string]: unknown };

/** The keys an override really gives, with where they come from. */
const own = (change: Change): Change => ({
  source: OWN_SOURCE,
  ...Object.fromEntries(Object.entries(change).filter(([, v]) => v !== undefined)),
});

const keysOf = (issues: readonly z.core.$ZodIssue[]): string[] =>
  [
    ...new Set(
      issues.flatMap((i) =>
        i.code === 'unrecognized_keys' ? i.keys : [String(i.path[i.path.length - 1] ?? '')],
      ),
    ),
  ].sort();
