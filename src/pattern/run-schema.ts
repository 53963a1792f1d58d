/** The run file: what to make, from which timber, with which tools. */
import { z } from 'zod';
import { overrideSection } from '../tables/overrides.js';
import { deg, mm, nameText, plainText, pointMm, positiveMm, ratio } from './fields.js';
import { paperSection } from './paper-schema.js';
import { waterSection } from './water-schema.js';

const order = z
  .strictObject({
    pattern: z
      .string()
      .min(1)
      .max(300)
      .describe('Pattern file, its path relative to this run file.'),
    count: z.int().min(1).max(1000000).describe('How many blanks of it.'),
    scaleRatio: ratio(
      'Makes another size of the pattern; takes the place of the pattern’s own scaleRatio.',
      0.1,
      10,
    ).optional(),
    name: nameText(
      'Name of this size. Left out: the pattern’s name, with the length added when scaleRatio is given here.',
    ).optional(),
    blockThicknessMm: positiveMm(
      'Saw this size from blocks of this thickness instead of the pattern’s own, scaled.',
      300,
    ).optional(),
  })
  .describe('One line of the order.');

const knot = z
  .strictObject({
    xMm: mm('Middle of the knot, along the block from its left end.', 0, 6000),
    yMm: mm('Middle of the knot, across the block from its lower edge.', 0, 1000),
    radiusMm: positiveMm('Radius of the knot and the disturbed grain round it.', 500),
  })
  .describe('A knot or other bad place: no blank touches it.');

const split = z
  .strictObject({
    fromMm: pointMm('One end of the split', 6000, 1000),
    toMm: pointMm('Its other end', 6000, 1000),
    widthMm: positiveMm('Width of the split and of the torn grain beside it.', 200),
  })
  .describe('A split or shake: no blank touches it.');

const poorZone = z
  .strictObject({
    xMm: mm('Middle of the zone, along the block from its left end.', 0, 6000),
    yMm: mm('Middle of the zone, across the block from its lower edge.', 0, 1000),
    radiusMm: positiveMm('Radius of the zone.', 3000),
  })
  .describe(
    'Pin knots, sapwood or wild grain: a blank may lie over it, but not with its nose (clearNoseRatio).',
  );

const block = z
  .strictObject({
    name: nameText('What is written on the block or the pile.'),
    timber: z.string().min(1).max(60).describe('A name from shared/timbers.yaml.'),
    lengthMm: positiveMm('Length, along the grain.', 6000),
    widthMm: positiveMm('Width of the face.', 1000),
    thicknessMm: positiveMm('Thickness.', 300),
    count: z.int().min(1).max(1000000).describe('How many blocks like this.'),
    marginMm: mm('No blank comes closer to the block’s edge than this.', 0, 200).default(0),
    massG: z
      .number()
      .min(0.1)
      .max(1e6)
      .optional()
      .describe(
        'Weight of one of these blocks on the scale. It gives the timber’s true density; left out, the table’s is used, with its spread.',
      ),
    priceEach: z
      .number()
      .min(0.01)
      .max(1e6)
      .optional()
      .describe('Price of one of these blocks, in any currency; needed when timberLeast is price.'),
    grain: z.enum(['length']).default('length').describe('The grain runs along the length.'),
    knots: z
      .array(knot)
      .max(200)
      .default([])
      .describe('Knots on the face of each of these blocks.'),
    splits: z
      .array(split)
      .max(200)
      .default([])
      .describe('Splits and shakes on the face of each of these blocks.'),
    poorZones: z
      .array(poorZone)
      .max(200)
      .default([])
      .describe('Zones of poorer wood on the face of each of these blocks.'),
  })
  .describe('Blocks of timber of one size, ready to saw.');

const guidance = z
  .enum(['steered', 'follows'])
  .describe(
    'steered: a hand guides the cut along a drawn line, on its waste side (band saw, scroll saw, hand saw). follows: the machine’s path is the middle of the cut (laser, router), so paths are moved off the line by half a kerf.',
  );

export const cutterSection = (about: string) =>
  z
    .strictObject({
      guidance,
      kerfMm: mm('Width the cut removes. For a router, the bit’s diameter.', 0.01, 20),
      wanderMm: mm('How far a steered cut may stray from its line.', 0, 10).default(0),
      bladeWidthMm: positiveMm(
        'Width of the blade from teeth to back; a wide blade cannot turn tightly. Left out: not checked.',
        50,
      ).optional(),
      cutsLipSlot: z
        .boolean()
        .optional()
        .describe(
          'true: the outline has the lip slot cut in. false: the slot is only marked, and sawn later with the guide. Left out: true when the cutter follows, false when it is steered.',
        ),
    })
    .describe(about);

/** A cutter that meets no lip slot. */
const plateCutter = (about: string) =>
  cutterSection(about).omit({ cutsLipSlot: true }).describe(about);

/** What every sheet has that parts are laid out on. */
const sheetSize = {
  lengthMm: positiveMm('Length of the sheet.', 3000),
  widthMm: positiveMm('Width of the sheet.', 3000),
  thicknessMm: positiveMm('Thickness of the sheet.', 30),
  marginMm: mm(
    'No part comes closer to the sheet’s edge than this: room for clamps, and edges are seldom clean. 5 is common practice, no source.',
    1,
    200,
  ).default(5),
  webMm: mm(
    'Sheet left standing between neighboring cuts, so that it stays in one piece. 2 is common practice, no source.',
    0.5,
    50,
  ).default(2),
};

/** Every section of a run file, by its key. */
export const runSections = {
  schema: z.literal(1).describe('Version of this file format.'),
  kind: z.literal('run').describe('What this file is.'),
  name: nameText('Name of the run.'),
  note: z.string().max(2000).default('').describe('Anything worth remembering.'),
  orders: z.array(order).min(1).max(200).describe('Which patterns, and how many of each.'),
  blocks: z.array(block).min(1).max(500).describe('The timber there is.'),
  timberLeast: z
    .enum(['volume', 'price', 'weight'])
    .default('volume')
    .describe(
      'What the plan spends least of. volume: timber in whole blocks. price: priceEach of the blocks taken. weight: massG of the blocks taken, or by the table where they were not weighed.',
    ),
  stack: z
    .strictObject({
      layers: z.int().min(1).max(20).describe('Blocks taped face to face and sawn together.'),
      tapeThicknessMm: mm('Thickness of the double-sided tape between two blocks.', 0, 5),
      largestHeightMm: positiveMm('Most that passes under the saw’s guide.', 1000),
    })
    .describe('How blocks are stacked.'),
  saw: cutterSection('What saws the blanks.'),
  webMm: mm(
    'Wood left standing between neighboring cuts. 0: one cut parts two blanks.',
    0,
    50,
  ).default(0),
  clearNoseRatio: ratio(
    'Share of a blank’s length, from the nose, that lies in clear wood, off every poor zone: nose and lip slot take the knocks. 0: poor zones count for nothing. The usual third is common practice, no source.',
    0,
    1,
  ).default(0.35),
  largestTiltDeg: deg(
    'Most a blank may be tilted off the grain to save timber; 0 keeps every datum line along it.',
    0,
    5,
  ).default(0),
  templateSheet: z
    .strictObject({
      material: plainText(
        'What templates are made of; it stands on the drawing, so plain letters only (ASCII).',
        60,
      ),
      ...sheetSize,
      cutter: cutterSection('What cuts the templates.'),
      hangHoleMm: mm('Diameter of the hole to hang a template up by; 0 for none.', 0, 30).default(
        5,
      ),
      pencilHoleMm: mm('Diameter of the pencil hole at each weight mark.', 0.5, 10).default(2.5),
      leastWallMm: mm(
        'Thinnest neck that may hold two parts of a template together.',
        0,
        20,
      ).default(2),
    })
    .describe('The sheet templates are cut from, singly or several together.'),
  lipSheets: z
    .array(
      z
        .strictObject({
          material: plainText(
            'What the lips are cut from; it stands on the drawing, so plain letters only (ASCII).',
            60,
          ),
          ...sheetSize,
          cutter: plateCutter('What cuts the lips.'),
        })
        .describe('Clear sheet of one thickness.'),
    )
    .min(1)
    .max(10)
    .optional()
    .describe(
      'Sheets the lips of all blanks ordered are cut from, one entry a thickness; a lip takes the first entry of its own. Left out: no lips are laid out.',
    ),
  water: waterSection
    .optional()
    .describe('The water of this run’s lures, in place of their patterns’ own.'),
  materials: overrideSection.optional(),
  shop: z
    .strictObject({
      inches: z
        .boolean()
        .default(false)
        .describe(
          'true: the shop sheet shows inches and fractions beside the millimeters. A display choice; nothing is computed in inches.',
        ),
      benchHoursPerDay: z
        .number()
        .min(0.5)
        .max(24)
        .default(6)
        .describe(
          'Hours of work at the bench in a day; coats go on drying over night. 6 is common practice, no source.',
        ),
    })
    .optional()
    .describe('How the shop sheet is made.'),
  paper: paperSection.optional(),
  jigs: z
    .array(z.string().min(1).max(300))
    .max(20)
    .optional()
    .describe(
      'Jig set-up files, relative to this run file; copy one of those that come with the program to start from. Only the jigs named here are made; an empty list makes none. A printer file may be among them. Left out: all jigs, with the set-ups and the printer that come with the program.',
    ),
} as const;

export const runSchema = z.strictObject(runSections).describe('A run: a production order.');

export type RunFile = z.output<typeof runSchema>;
export type CutterFile = z.output<ReturnType<typeof cutterSection>>;
