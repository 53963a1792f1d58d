/** The set-up file of the center scribe. Every length is mm. */
import { mm, positiveMm } from '../../pattern/fields.js';
import { commonSections, jigForm, type SetupOf, seatClearance } from '../setup.js';

const { letters, bed, ...head } = commonSections('center-scribe');

export const centerScribeSections = {
  ...head,
  clearanceMm: mm('Room between the wall and the blank’s edge, for the saw’s wander.', 0.02, 3),
  seatClearanceMm: seatClearance,
  wallMm: positiveMm('Thickness of the wall whose rim the pencil slides on.', 30, 1),
  floorMm: positiveMm('Thickness of the plate the blank’s side lies on.', 30, 1),
  pencilMm: mm(
    'From the rim up to the line the pencil draws while its sleeve rests on the rim: half the sleeve’s width.',
    0,
    20,
  ),
  tickMm: positiveMm('Width of the notches the ticks are drawn in.', 12, 0.4),
  tickDepthMm: positiveMm(
    'How far a notch goes down from the rim: the length of a tick. On a thin blank it is as long as leaves 1 mm of wall.',
    30,
    1,
  ),
  apronMm: positiveMm(
    'How far the plate stands out beyond the wall; letters for the ticks lie on it.',
    60,
    1,
  ),
  letters,
  bed,
};

export type CenterScribeSetup = SetupOf<typeof centerScribeSections>;

export const centerScribeForm = jigForm('center-scribe', 'center scribe', centerScribeSections);
