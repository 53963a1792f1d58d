/** The file formats there are, for whoever lists them all: the manual, the JSON Schemas, `explain`. */
import type { z } from 'zod';
import {
  drillStopSchema,
  drillStopSections,
  lipSlotGuideSchema,
  lipSlotGuideSections,
} from './jig/setup-schema.js';
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
  {
    name: 'drill-stop',
    title: 'Set-up of the drill-stop jig',
    schema: drillStopSchema,
    sections: drillStopSections,
  },
  {
    name: 'lip-slot-guide',
    title: 'Set-up of the lip-slot guide',
    schema: lipSlotGuideSchema,
    sections: lipSlotGuideSections,
  },
];
