/** The set-up file of the drying comb. Every length is mm. */
import { z } from 'zod';
import { mm, positiveMm } from '../../pattern/fields.js';
import { commonSections, jigForm, type SetupOf } from '../setup.js';

const { letters, bed, ...head } = commonSections('drying-comb');

export const dryingCombSections = {
  ...head,
  lengthMm: positiveMm(
    'Longest comb to print; it is shortened to whole lures and to the bed.',
    2000,
    20,
  ),
  gapMm: mm('Least air between two lures that turn on their hooks toward each other.', 0, 100),
  slotMm: positiveMm('Width of a slot: the wire of the hook that hangs in it, with room.', 10, 0.8),
  dimpleMm: positiveMm('Diameter of the round end of a slot, in which the hook settles.', 20, 1),
  shelfMm: positiveMm('How far the comb lies on the shelf, where it is screwed down.', 100, 10),
  thicknessMm: positiveMm('Thickness of the comb.', 30, 2),
  hangBy: z
    .enum(['tail', 'tow'])
    .describe('The eye the lures hang by; the other one where a pattern lacks it.'),
  toothMm: positiveMm('Plastic in front of a slot’s round end, which keeps the hook in.', 30, 1),
  screwHoleMm: positiveMm('Diameter of the screw holes.', 12, 2),
  letters,
  bed,
};

export type DryingCombSetup = SetupOf<typeof dryingCombSections>;

export const dryingCombForm = jigForm('drying-comb', 'drying comb', dryingCombSections);
