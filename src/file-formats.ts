/** The file formats there are, for whoever lists them all: the manual, the JSON Schemas, `explain`. */
import type { z } from 'zod';
import { printerSchema, printerSections } from './jig/printer.js';
import { JIG_FORMS } from './jig/set-ups.js';
import { runSchema, runSections } from './pattern/run-schema.js';
import { patternSchema, patternSections } from './pattern/schema.js';

export type FileFormat = {
  readonly name: string;
  readonly title: string;
  readonly schema: z.ZodType;
  readonly sections: Readonly<Record<string, z.ZodType>>;
};

export const FILE_FORMATS: readonly FileFormat[] = [
  { name: 'pattern', title: 'Pattern file', schema: patternSchema, sections: patternSections },
  { name: 'run', title: 'Run file', schema: runSchema, sections: runSections },
  ...JIG_FORMS.map(({ kind, called, schema, sections }) => ({
    name: kind,
    title: `Set-up of the ${called}`,
    schema,
    sections,
  })),
  { name: 'printer', title: 'Printer file', schema: printerSchema, sections: printerSections },
];
