/**
 * What the set-ups of all jigs share. A set-up says what the shop and its printer decide, not the
 * pattern; the files that come with the program, with reasons for their values, are in `jigs/`.
 */
import { z } from 'zod';
import { mm, positiveMm } from '../pattern/fields.js';
import { type Bed, bedSection, type Printer } from './printer.js';

export const lettersSection = z
  .strictObject({
    heightMm: positiveMm('Height of a capital when there is room.', 20),
    leastHeightMm: positiveMm(
      'Letters are made smaller down to this to fit; what still does not fit is left out and told.',
      20,
    ),
    strokeMm: positiveMm('Width of a stroke; at least two lines of the nozzle.', 1.5, 0.3),
    depthMm: positiveMm('How deep the letters are sunk.', 3),
  })
  .describe('Letters sunk into a face.');

export type Letters = z.output<typeof lettersSection>;

/** The first sections of every set-up file, and the last: what the file is, letters, bed. */
export const commonSections = <K extends string>(kind: K) => ({
  schema: z.literal(1).describe('Version of this file format.'),
  kind: z.literal('jig').describe('What this file is.'),
  note: z.string().max(2000).default('').describe('Anything worth remembering.'),
  jig: z.literal(kind).describe('Which jig this sets up.'),
  letters: lettersSection,
  bed: bedSection
    .optional()
    .describe('What the printer can hold, for this jig alone. Left out: that of the printer file.'),
});

export const seatClearance = mm(
  'Gap the model leaves where the blank rests, so that the solids do not touch.',
  0.01,
  1,
);

/** What is known of any set-up. */
export type JigSetup = {
  readonly jig: string;
  readonly letters: Letters;
  readonly bed?: Bed | undefined;
};

/** The set-up's own bed goes before the printer's. */
export const bedOf = ({ bed }: Pick<JigSetup, 'bed'>, printer: Printer): Bed => bed ?? printer.bed;

type Sections = Readonly<Record<string, z.ZodType>>;

/** What a set-up file of these sections says, defaults filled in. */
export type SetupOf<S extends Sections> = z.output<z.ZodObject<S>>;

/** The set-up file of a kind of jig: what is known of the kind without making one. */
export type JigForm = {
  /** The word for it under `jig`, and the name of the shipped file in `jigs/`. */
  readonly kind: string;
  /** What it is called when it is spoken of. */
  readonly called: string;
  readonly sections: Sections;
  readonly schema: z.ZodType;
};

export const jigForm = (
  kind: string,
  called: string,
  sections: Sections,
  about = `Set-up of the ${called}.`,
): JigForm => ({ kind, called, sections, schema: z.strictObject(sections).describe(about) });
