/** The set-up file of the drill-stop jig. Every length is mm. What older files do not have may be left out. */
import { z } from 'zod';
import { mm, positiveMm } from '../../pattern/fields.js';
import { commonSections, jigForm, type SetupOf, seatClearance } from '../setup.js';

const { letters, bed, ...head } = commonSections('drill-stop');

const pilotsSection = z
  .strictObject({
    guideLengthMm: positiveMm('Least length in which a pilot’s guide encloses the bit.', 100, 3),
    holeClearanceMm: mm('Added to the diameter of the bit.', 0, 1),
    collarDiameterMm: positiveMm(
      'The widest thing that turns over a pilot’s guide: the collar on the bit, or the chuck where that is the stop.',
      60,
    ),
    webMm: positiveMm('Least plastic between a pilot’s guide and its neighbors.', 30),
    wireStartMm: positiveMm(
      'How deep the bore of a through-wire is begun at nose and tail, from the sawn blank; a long bit or a sawn slot does the rest.',
      200,
    ),
  })
  .describe(
    'Guides for the pilots of screw eyes and the bores of the through-wire, at every eye the pattern has. With a tail eye the cradle goes round the whole blank. Left out: none.',
  );

const earsSection = z
  .strictObject({
    lengthMm: positiveMm('How far each ear goes out beyond the nose and the tail end.', 80, 5),
    thicknessMm: positiveMm('Height of the ears over the table.', 40, 1),
    boltMm: mm('Hole through each ear for a bolt; 0 for none.', 0, 20),
    clampHeightMm: mm('How high the clamp, or the head of the bolt, stands over an ear.', 0, 200),
  })
  .describe(
    'Ears of the base, at the nose end and the tail end, for clamps or bolts on the table of a drill press. With ears the cradle goes round the whole blank. Left out: none.',
  );

const spreadSection = z
  .strictObject({
    runOutMm: mm(
      'Run-out of the bit in its chuck, read on a dial: twice how far its middle is off.',
      0,
      3,
    ),
    collarErrorMm: mm('How well the collar is set: one standard deviation.', 0, 5),
  })
  .describe('What the errors of the holes are reckoned from, with the printer’s own error.');

const SPREAD = { runOutMm: 0.1, collarErrorMm: 0.25 };

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
  holeClearanceMm: mm('Added to the diameter of the bit.', 0, 2),
  bushingOuterDiameterMm: mm(
    'Outer diameter of a steel sleeve seated in the guides of ballast holes; 0 for none.',
    0,
    60,
  ),
  bushingFitMm: mm(
    'Seat of the sleeve, wider than the sleeve by this: above 0 it slips in and is glued, at 0 or below it is pressed in.',
    -0.3,
    1,
  ).default(0.1),
  bushingLengthMm: mm(
    'Length of the sleeve; its end is flush with the stop face. 0: as long as the guide less its shoulder.',
    0,
    100,
  ).default(0),
  bushingShoulderMm: positiveMm(
    'Plastic left between the sleeve and the blank, with room for the bit only: the sleeve cannot be pushed into the blank.',
    20,
  ).default(2),
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
  pilots: pilotsSection.optional(),
  ears: earsSection.optional(),
  spread: spreadSection.default(SPREAD),
  letters,
  bed,
};

export type Pilots = z.output<typeof pilotsSection>;
export type Ears = z.output<typeof earsSection>;
export type DrillStopSetup = SetupOf<typeof drillStopSections>;

export const drillStopForm = jigForm('drill-stop', 'drill-stop jig', drillStopSections);
