/** The section `paper` of a run file: what true-scale pages are printed on, and how exactly. */
import { z } from 'zod';
import { mm } from './fields.js';

/** Across and along a sheet as it goes through the printer, short side first, mm. */
export const PAPER_SIZES = {
  /** ISO 216. */
  A4: [210, 297],
  A3: [297, 420],
  /** ANSI/ASME Y14.1, size A: 8.5 × 11 in. */
  Letter: [215.9, 279.4],
  /** 8.5 × 14 in; `na_legal_8.5x14in` of PWG 5101.1, Media Standardized Names (from memory). */
  Legal: [215.9, 355.6],
} as const satisfies Record<string, readonly [number, number]>;

export type PaperName = keyof typeof PAPER_SIZES;

export const PAPER_NAMES = Object.keys(PAPER_SIZES) as [PaperName, ...PaperName[]];

/** What a sheet of any size measures at least and at most, mm. */
export const SHEET_RANGE = { leastMm: 50, mostMm: 3000 } as const;

const side = z.number().min(SHEET_RANGE.leastMm).max(SHEET_RANGE.mostMm);

const printed = (way: string, mostMm: number) =>
  mm(
    `Length of the line ${way} the page printer-check.pdf, ${mostMm} mm on the sizes that have a name, as a steel rule reads it. Pages are then scaled so that they come out true. Left out: not corrected that way.`,
    1,
    1000,
  ).optional();

export const paperSection = z
  .strictObject({
    size: z
      .enum(PAPER_NAMES)
      .optional()
      .describe('Size of the sheets, printed either way round. Left out, and no sizeMm: A4.'),
    sizeMm: z
      .tuple([side, side])
      .optional()
      .describe(
        'Size of the sheets where it has no name: [across, along] as a sheet goes through the printer.',
      ),
    marginMm: mm('Edge of the sheet that the printer leaves white.', 0, 100).default(8),
    overlapMm: mm(
      'How far two pages of one drawing overlap. They are cut and laid together in the middle of it.',
      8,
      100,
    ).default(10),
    printedAcrossMm: printed('across', 180),
    printedAlongMm: printed('along', 240),
  })
  .describe(
    'Paper for templates, faces, gauges and the rest at true size. Left out: A4, not corrected.',
  );

export type PaperFile = z.output<typeof paperSection>;
