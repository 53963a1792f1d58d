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

/** Pins that join the pieces of a jig that is longer than the bed. */
const dowelSection = z
  .strictObject({
    diameterMm: positiveMm('Diameter of the pins: filament, or skewers of wood.', 12, 0.5),
    lengthMm: positiveMm('Length of the pins, half in either piece.', 60, 3),
    clearanceMm: mm('Added to the diameter of the bores.', 0, 1),
    endClearanceMm: mm('How much deeper a bore is than half a pin, for glue and dust.', 0, 5),
    wallMm: positiveMm('Least plastic round a bore.', 10, 0.3),
  })
  .describe('Pins that join the pieces of a jig too long for the bed.');

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
  gapMm: mm('Least room between two parts that are printed together.', 0, 50),
  dowel: dowelSection,
} as const;

export const printerSchema = z.strictObject(printerSections).describe('A printer.');

export type Printer = z.output<typeof printerSchema>;
