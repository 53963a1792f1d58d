/** The jig set-up file: what the shop and its printer decide about a jig. */
import { z } from 'zod';
import { mm, positiveMm } from '../pattern/fields.js';
import type { DrillStopSetup, LipSlotGuideSetup } from './setup.js';

const letters = z
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

const bed = z
  .strictObject({
    xMm: positiveMm('Width of the printer’s bed.', 2000, 20),
    yMm: positiveMm('Depth of the printer’s bed.', 2000, 20),
    zMm: positiveMm('Height the printer can build.', 2000, 20),
  })
  .describe('What the printer can hold.');

const common = {
  schema: z.literal(1).describe('Version of this file format.'),
  kind: z.literal('jig').describe('What this file is.'),
  note: z.string().max(2000).default('').describe('Anything worth remembering.'),
};

export const drillStopSections = {
  ...common,
  jig: z.literal('drill-stop').describe('Which jig this sets up.'),
  clearanceMm: mm(
    'Room for the saw’s wander: the cradle is this much larger than the blank at the belly and the tail.',
    0.02,
    3,
  ),
  seatClearanceMm: mm(
    'Gap the model leaves where the blank rests, so that the solids do not touch.',
    0.01,
    1,
  ),
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

export const lipSlotGuideSections = {
  ...common,
  jig: z.literal('lip-slot-guide').describe('Which jig this sets up.'),
  seatClearanceMm: mm('Gap the model leaves where the blank’s edge rests in the saddle.', 0.01, 1),
  sideClearanceMm: mm(
    'Gap between each cheek and the blank’s flat side: what the slot can lean.',
    0.01,
    2,
  ),
  reliefMm: mm('Extra room on the side away from the nose, where the blank’s edge is steep.', 0, 3),
  wallMm: positiveMm('Thickness of the walls.', 30, 1),
  cheekMm: positiveMm(
    'Thickness of each cheek; above the slot the cheeks alone hold the guide together.',
    30,
    2,
  ),
  cheekAboveMm: positiveMm('How far the cheeks go above the slot’s inner end.', 60, 3),
  reachMm: mm('How far the saddle goes on from the slot, away from the nose.', 5, 300),
  sawKerfMm: positiveMm('Width of the cut, over the set of the teeth.', 10),
  runningClearanceMm: mm('Added to the kerf when the saw fills the slot in one pass.', 0, 1),
  chipRoomMm: mm('Room in the cheeks beyond the slot’s inner end, for chips.', 0, 3),
  stopHeightMm: positiveMm(
    'From the saw’s teeth to its spine, or to a strip clamped to the blade.',
    150,
    5,
  ),
  letters,
  bed,
};

export const drillStopSchema = z
  .strictObject(drillStopSections)
  .describe('Set-up of the drill-stop jig.');
export const lipSlotGuideSchema = z
  .strictObject(lipSlotGuideSections)
  .describe('Set-up of the lip-slot guide.');

/** Set-ups as the jig stages take them; the compiler holds the schemas to their types. */
export const asDrillStopSetup = (file: z.output<typeof drillStopSchema>): DrillStopSetup => file;
export const asLipSlotGuideSetup = (file: z.output<typeof lipSlotGuideSchema>): LipSlotGuideSetup =>
  file;
