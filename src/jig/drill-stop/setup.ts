/** The set-up file of the drill-stop jig. Every length is mm. */
import { z } from 'zod';
import { mm, positiveMm } from '../../pattern/fields.js';
import { commonSections, seatClearance } from '../setup.js';

const { letters, bed, ...head } = commonSections('drill-stop');

export const drillStopSections = {
  ...head,
  clearanceMm: mm(
    'Room for the saw’s wander: the cradle is this much larger than the blank at the belly and the tail.',
    0.02,
    3,
  ),
  seatClearanceMm: seatClearance,
  wallMm: positiveMm('Thickness of the walls.', 30, 1),
  floorMm: positiveMm('Thickness of the plate the blank’s side lies on.', 30, 1),
  proudMm: mm(
    'How far the blank stands out of the open side, so that a clamp or a hand presses the wood.',
    0,
    3,
  ),
  guideLengthMm: positiveMm('Least length in which the guide encloses the bit all round.', 100, 3),
  holeClearanceMm: mm('Added to the diameter of the bit or bushing.', 0, 2),
  bushingOuterDiameterMm: mm(
    'Outer diameter of a steel sleeve pressed into the guide; 0 for none.',
    0,
    60,
  ),
  webMm: positiveMm('Least plastic between two guides.', 30),
  collarDiameterMm: positiveMm(
    'Collar on the bit: the stop face is at least this wide about the axis.',
    80,
  ),
  reachMm: mm('How far the cradle goes aft of the last hole.', 0, 300),
  pushHoleDiameterMm: mm(
    'Hole in the floor to push the blank out, when the cradle is closed at the tail and has room for it; 0 for none.',
    0,
    60,
  ),
  letters,
  bed,
};

export const drillStopSchema = z
  .strictObject(drillStopSections)
  .describe('Set-up of the drill-stop jig.');

export type DrillStopSetup = z.output<typeof drillStopSchema>;
