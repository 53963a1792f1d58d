/** The set-up file of the gauges, for those that are printed and those that are cut from sheet. Every length is mm. */
import { z } from 'zod';
import { mm, positiveMm, ratio } from '../../pattern/fields.js';
import { commonSections, jigForm, type SetupOf, seatClearance } from '../setup.js';

const { letters, bed, ...head } = commonSections('gauges');
const MOST = 24;

export const gaugesSections = {
  ...head,
  stations: z
    .number()
    .int()
    .min(0)
    .max(MOST)
    .describe(
      'How many section gauges: the widest section, both shoulders, the deepest section, then where the section changes fastest between.',
    ),
  stationsMm: z
    .array(mm('Distance aft of the nose.', 0, 1000))
    .max(MOST)
    .default([])
    .describe('Stations that get a gauge whatever the rule says; the rule adds up to `stations`.'),
  stationRatios: z
    .array(ratio('As a share of the length: 0 nose, 1 tail.', 0, 1))
    .max(MOST)
    .default([])
    .describe('The same as shares of the length.'),
  rimMm: positiveMm('Plate beyond the deepest back and belly of the section gauges.', 60, 4),
  spineMm: positiveMm('Plate beside the widest section, to hold it by and for letters.', 80, 10),
  profileRimMm: positiveMm('Plate beyond the highest place of a profile gauge’s edge.', 80, 14),
  endMm: positiveMm('Plate of a profile gauge beyond nose and tail, on the datum line.', 60, 10),
  thicknessMm: positiveMm('Thickness of the printed plates.', 10, 0.5),
  edgeMm: positiveMm(
    'Thickness of the gauging edge at the lettered face; behind it the plate gives way where the body is fuller.',
    5,
    0.2,
  ),
  overlapMm: mm('How far lengths of a profile gauge too long for the bed overlap.', 0, 100),
  seatClearanceMm: seatClearance,
  letters,
  bed,
};

export type GaugesSetup = SetupOf<typeof gaugesSections>;

export const gaugesForm = jigForm(
  'gauges',
  'set of gauges',
  gaugesSections,
  'Set-up of the section gauges and profile gauges.',
);
