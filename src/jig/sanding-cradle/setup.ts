/** The set-up file of the sanding cradle. Every length is mm. */
import { mm, positiveMm, ratio } from '../../pattern/fields.js';
import { commonSections, jigForm, type SetupOf } from '../setup.js';

const { letters, bed, ...head } = commonSections('sanding-cradle');

export const sandingCradleSections = {
  ...head,
  liningMm: mm('Felt or foam glued into the hollow: room for it all round the body.', 0.3, 5),
  depthRatio: ratio(
    'How deep the body lies in it, as a share of half its width: 1 is to the centerline.',
    0.2,
    1,
  ),
  wallMm: positiveMm('Thickness of the wall round the hollow.', 30, 1),
  floorMm: positiveMm('Plastic under the deepest place of the hollow.', 30, 1),
  earMm: positiveMm('Length of the ears at both ends that are screwed to the bench.', 60, 8),
  earThicknessMm: positiveMm('Thickness of the ears.', 30, 2),
  screwHoleMm: positiveMm('Diameter of the screw holes in the ears.', 12, 2),
  letters,
  bed,
};

export type SandingCradleSetup = SetupOf<typeof sandingCradleSections>;

export const sandingCradleForm = jigForm('sanding-cradle', 'sanding cradle', sandingCradleSections);
