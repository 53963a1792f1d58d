/** The printer file: what the printer in the shop can do. Shipped values are in `jigs/printer.yaml`. */
import { z } from 'zod';
import { deg, density, mm, positiveMm } from '../pattern/fields.js';

export const bedSection = z
  .strictObject({
    xMm: positiveMm('Width of the printer’s bed.', 2000, 20),
    yMm: positiveMm('Depth of the printer’s bed.', 2000, 20),
    zMm: positiveMm('Height the printer can build.', 2000, 20),
  })
  .describe('What the printer can hold.');

/** Width, depth, height. A jig may lie either way round on it. */
export type Bed = z.output<typeof bedSection>;

export const printerSections = {
  schema: z.literal(1).describe('Version of this file format.'),
  kind: z.literal('printer').describe('What this file is.'),
  note: z.string().max(2000).default('').describe('Anything worth remembering.'),
  bed: bedSection,
  nozzleMm: positiveMm('Diameter of the nozzle: no wall can be thinner than a line of it.', 2, 0.1),
  layerMm: positiveMm('Height of a layer.', 1, 0.02),
  overhangDeg: deg(
    'Steepest underside that prints without support, from the vertical: 0 is an upright wall, 90 a ceiling.',
    0,
    89,
  ),
  bridgeMm: mm('Longest ceiling that prints in free air between two walls.', 0, 100),
  errorMm: mm('How far a printed face may lie from where it shall: one standard deviation.', 0, 2),
  plasticDensityKgM3: density('Density of the plastic.', 500, 5000),
} as const;

export const printerSchema = z.strictObject(printerSections).describe('A printer.');

export type Printer = z.output<typeof printerSchema>;
