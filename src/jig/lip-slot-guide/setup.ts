/** The set-up file of the lip-slot guide. Every length is mm. */
import { z } from 'zod';
import { mm, positiveMm } from '../../pattern/fields.js';
import { commonSections, jigForm, type SetupOf } from '../setup.js';

const { letters, bed, ...head } = commonSections('lip-slot-guide');

export const lipSlotGuideSections = {
  ...head,
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
  hand: z
    .enum(['both', 'left', 'right'])
    .default('both')
    .describe(
      'Which hand saws: wings for the other hand on both cheeks, or only on the cheek away from the saw hand.',
    ),
  blank: z
    .enum(['sawn', 'shaped', 'both'])
    .default('sawn')
    .describe(
      'What the guide holds: the blank with its flat sides as it is sawn out, the body once it is shaped, or one guide for each.',
    ),
  wingMm: mm('How far a wing stands out from its cheek; 0 leaves wings out.', 0, 60).default(18),
  guardMm: mm(
    'From the blade’s way to the wing: what a clamped stop strip may take.',
    5,
    60,
  ).default(12),
  letters,
  bed,
};

export type LipSlotGuideSetup = SetupOf<typeof lipSlotGuideSections>;

export const lipSlotGuideForm = jigForm('lip-slot-guide', 'lip-slot guide', lipSlotGuideSections);
