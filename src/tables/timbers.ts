/** Timbers by name: density and spread, from shared/timbers.yaml. */
import { z } from 'zod';

const row = z.strictObject({
  densityKgM3: z.number().positive(),
  /** One standard deviation between boards of the species. */
  spreadKgM3: z.number().positive(),
  latin: z.string(),
  source: z.string().min(1),
});

export const timberTable = z.strictObject({ timbers: z.record(z.string(), row) });

export type Timber = z.output<typeof row>;
export type Timbers = Readonly<Record<string, Timber>>;
