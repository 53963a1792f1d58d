/** What the maker wants of the lure in the water, and what there is to get it with. */
import { z } from 'zod';
import { deg, itemName, mm, positiveMm, ratio } from './fields.js';

const BUOYANCIES = ['floats', 'suspends', 'rises', 'sinks'] as const;

/** What a wish has that says nothing of it. */
export const USUAL_WISH = { leastGmMm: 0.5, mostHoles: 2 };

export const wishSection = z
  .strictObject({
    buoyancy: z
      .enum(BUOYANCIES)
      .describe(
        'floats: lies at the surface. suspends: stays where it is. rises or sinks: at speedCmS when let go under water.',
      ),
    freeboardMm: mm(
      'For floats: the highest point of the lure stands so far out of the water. Scales with the lure.',
      0.5,
      200,
    ).optional(),
    dryRatio: ratio(
      'For floats: so much of the lure’s volume is out of the water.',
      0.01,
      0.95,
    ).optional(),
    speedCmS: z
      .number()
      .min(0.1)
      .max(200)
      .optional()
      .describe('For rises and sinks: how fast, in still water.'),
    noseDownDeg: deg(
      'Angle of the datum line at rest, nose down; negative is nose up. Left out: whatever the holes’ best stations give.',
      -80,
      80,
    ).optional(),
    leastGmMm: mm('Upright with at least so much metacentric height across.', 0, 100).default(
      USUAL_WISH.leastGmMm,
    ),
    bitsMm: z
      .array(positiveMm('Diameter of a bit.', 60))
      .min(1)
      .max(40)
      .optional()
      .describe('The bits in the drawer. Left out: the wood bits of shared/bits.yaml.'),
    metals: z
      .array(itemName('A name from shared/metals.yaml.'))
      .min(1)
      .max(10)
      .optional()
      .describe('The metals at hand. Left out: those of the ballast there is, or lead and tin.'),
    weights: z
      .boolean()
      .default(false)
      .describe(
        'true: choose among the ready-made weights of shared/weights.yaml to glue in, instead of pouring.',
      ),
    mostHoles: z
      .int()
      .min(1)
      .max(2)
      .default(USUAL_WISH.mostHoles)
      .describe('At most so many holes.'),
  })
  .describe('What the lure shall do in the water; `blankwright ballast` finds the holes for it.');

export type WishFile = z.output<typeof wishSection>;
