/** The set-up file of the wire form. Every length is mm. */
import { mm, positiveMm } from '../../pattern/fields.js';
import { commonSections, jigForm, type SetupOf } from '../setup.js';

const { letters, bed, ...head } = commonSections('wire-form');

export const wireFormSections = {
  ...head,
  boardMm: positiveMm('Thickness of the board: it holds the pins.', 40, 3),
  marginMm: positiveMm('How far the board goes beyond wire and pins.', 60, 3),
  leastPrintedPegMm: mm(
    'Pegs of this diameter and more are printed; a thinner one would break off, so the board gets a bore for a steel pin.',
    0,
    60,
  ),
  pegHeightMm: positiveMm('How far a printed peg stands over the board.', 40, 1),
  pinClearanceMm: mm('Added to the diameter of the pins’ bores.', 0, 1),
  webMm: positiveMm('Least plastic between two bores.', 10, 0.4),
  grooveMm: positiveMm('Depth of the groove that shows the way of the wire.', 3),
  letters,
  bed,
};

export type WireFormSetup = SetupOf<typeof wireFormSections>;

export const wireFormForm = jigForm('wire-form', 'wire form', wireFormSections);
