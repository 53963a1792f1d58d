/**
 * The pattern file as its maker writes it. The descriptions here are the manual: `explain`, the
 * JSON Schema and docs/parameters.md are made from them.
 */
import { z } from 'zod';
import {
  deg,
  density,
  exponent,
  itemName,
  mm,
  nameText,
  positiveMm,
  ratio,
  station,
  versionText,
} from './fields.js';
import { waterSection } from './water-schema.js';
import { wishSection } from './wish-schema.js';

const offsetRow = z
  .strictObject({
    ...station('Where this row of the table of offsets is measured.'),
    backMm: mm('Height of the back above the datum line.', -500, 500).optional(),
    bellyMm: mm(
      'Depth of the belly below the datum line, as a positive number.',
      -500,
      500,
    ).optional(),
    halfBreadthMm: positiveMm(
      'Half the width of the body, from the center plane to its side.',
      250,
    ).optional(),
  })
  .describe(
    'One row of the table of offsets. A row may leave a column out; the curve then runs on between its neighbors.',
  );

const fullnessRow = z
  .strictObject({
    ...station('Where this fullness holds.'),
    upperExponent: exponent(
      'Fullness of the section above the datum line: 2 is an ellipse, larger is slab-sided with round corners.',
    ),
    lowerExponent: exponent('Fullness of the section below the datum line.'),
  })
  .describe(
    'Section fullness at a station; it runs smoothly to the next and stays level beyond the first and last.',
  );

export const bodySection = z
  .strictObject({
    lengthMm: positiveMm(
      'Length of the finished body from nose to tail along the datum line.',
      1000,
      10,
    ),
    noseRadiusMm: positiveMm('Radius of the round at the nose, seen from the side.', 200),
    tailRadiusMm: positiveMm('Radius of the round at the tail, seen from the side.', 200),
    planNoseRadiusMm: positiveMm(
      'Radius of the round at the nose, seen from above. Left out: as the half-breadths suggest.',
      200,
    ).optional(),
    planTailRadiusMm: positiveMm(
      'Radius of the round at the tail, seen from above. Left out: as the half-breadths suggest.',
      200,
    ).optional(),
    offsets: z
      .array(offsetRow)
      .min(1)
      .max(200)
      .describe(
        'Table of offsets, one row a station from nose to tail. Nose and tail themselves lie on the datum line and are not listed. The curves pass through every offset and do not overshoot.',
      ),
    fullness: z
      .array(fullnessRow)
      .min(1)
      .max(50)
      .default([{ stationRatio: 0, upperExponent: 2, lowerExponent: 2 }])
      .describe('Fullness of the sections along the length. Left out: ellipses all along.'),
  })
  .describe('The finished shape, by offsets from the datum line.');

export const lipSection = z
  .strictObject({
    widthMm: positiveMm('Width of the lip across the body.', 300),
    lengthMm: positiveMm('Length of the whole lip plate, the part in the slot included.', 300),
    thicknessMm: positiveMm(
      'Thickness of the lip plate. Scales with the lure only if scaleHardware is true.',
      10,
    ),
    material: itemName('What the plate is made of: a name from shared/plates.yaml.').default(
      'polycarbonate',
    ),
    angleDeg: deg(
      'Angle between the lip and the datum line: 0 is straight ahead, 90 is square to the body.',
      0,
      90,
    ),
    cornerRadiusMm: mm(
      'Radius of the two corners at the front; 0 leaves them square.',
      0,
      150,
    ).default(0),
    tab: z
      .strictObject({
        widthMm: positiveMm('Width of the tab across the body.', 300),
        insideRadiusMm: positiveMm(
          'Radius of the corners between tab and lip: sharp ones crack. Left out: 1 mm, or less where the shoulders or the tab are smaller.',
          20,
        ).optional(),
      })
      .describe(
        'A narrower part of the plate that goes into the slot, as long as the slot is deep. Leave it out for a plate of one width.',
      )
      .optional(),
    eyeHole: z
      .strictObject({
        diameterMm: positiveMm(
          'Diameter of the hole. Scales with the lure only if scaleHardware is true.',
          20,
        ),
        forwardMm: positiveMm(
          'Where its middle is, on the center line: forward along the lip from where it leaves the belly.',
          300,
        ),
      })
      .describe('A hole for a tow eye fixed in the lip.')
      .optional(),
    slot: z
      .strictObject({
        ...station('Where the middle of the slot meets the finished belly.'),
        depthMm: positiveMm(
          'Depth of the slot along the lip, from the finished belly to its inner end.',
          200,
        ),
        fitMm: mm(
          'Room for glue: the slot is this much wider than the lip is thick.',
          0,
          2,
        ).default(0.1),
      })
      .describe('The slot the lip is glued in.'),
  })
  .describe(
    'The clear plate that makes the lure dive (also called bib). Leave the section out for a lure without one.',
  );

/** Of a twist bit: what a hole has that says nothing of its bit's point. */
export const USUAL_POINT_DEG = 118;

const METALS = ['lead', 'tin', 'bismuth', 'tungsten', 'steel'] as const;
const POURS = ['topped-up', 'single'] as const;

const ballastHole = z
  .strictObject({
    ...station('Where the hole’s axis meets the sawn belly: where the bit is set.'),
    tiltDeg: deg(
      'Angle in the center plane between the hole’s axis and the perpendicular to the datum line. Positive: the hole leans aft, its floor lies further aft than its mouth.',
      -60,
      60,
    ).default(0),
    diameterMm: positiveMm(
      'Diameter of the bit. It is a tool’s size and scales with the lure only if scaleHardware is true.',
      60,
    ),
    depthMm: positiveMm(
      'Depth to drill into the sawn blank, full diameter, on the axis from the sawn belly.',
      300,
    ),
    pointAngleDeg: deg(
      'Included angle of the bit’s point: 118 or 135 for twist bits, 180 for one that leaves a flat floor. The point goes deeper than depthMm, and must stay under the back too.',
      60,
      180,
    ).default(USUAL_POINT_DEG),
    metal: z
      .enum(METALS)
      .describe(
        'What fills the hole. Lead is restricted for fishing in some places; tin, bismuth, tungsten and steel are free of it.',
      ),
    pour: z
      .enum(POURS)
      .default('topped-up')
      .describe(
        'topped-up: poured again as it sinks in, so that solid metal fills the hole. single: poured once; the metal shrinks as it sets and the hole ends lighter. Tungsten and steel are not poured at all: leave this out.',
      ),
    fillMm: positiveMm(
      'Height of the metal above the hole’s full-diameter floor; the rest is closed with glue. Left out: filled to the sawn belly, and shaped together with it.',
      300,
    ).optional(),
    weight: itemName(
      'A ready-made weight glued to the floor of the hole instead of poured metal: a name from shared/weights.yaml. The rest of the hole is closed with glue.',
    ).optional(),
  })
  .describe('A hole for ballast, drilled from the belly: square to the datum line, or tilted.');

const eyeKind = z
  .enum(['screw', 'wire'])
  .describe('screw: a screw eye in a pilot hole. wire: a loop of the through-wire.');

/** What hangs on an eye, and the screw eye itself; names from the table of fittings. */
const fittings = {
  screwEye: itemName(
    'Which screw eye, for kind screw: a name from shared/fittings.yaml. Left out: the row screw-eye.',
  ).optional(),
  ring: itemName('The split ring on the eye: a name from shared/fittings.yaml.').optional(),
  treble: itemName('The treble on the eye: a name from shared/fittings.yaml.').optional(),
};

const endEye = (what: string) =>
  z
    .strictObject({
      kind: eyeKind,
      ...fittings,
      heightMm: mm('Height above the datum line; negative is below.', -200, 200).default(0),
    })
    .describe(what);

const hanger = z
  .strictObject({ ...station('Station of the hanger.'), kind: eyeKind, ...fittings })
  .describe('An eye under the belly that carries a treble.');

const coat = z
  .strictObject({
    name: z.string().min(1).max(40).describe('What it is, as on the tin.'),
    thicknessMm: positiveMm('Film thickness of one coat when cured.', 3),
    count: z.int().min(1).max(20).describe('How many coats of it.'),
    densityKgM3: density(
      'Density when cured. Left out: that of the row of shared/coats.yaml whose name is a word of this one’s.',
      100,
      5000,
    ).optional(),
  })
  .describe('Sealer, epoxy or paint, in the order they go on.');

/** Every section of a pattern file, by its key. */
export const patternSections = {
  schema: z.literal(1).describe('Version of this file format.'),
  kind: z.literal('pattern').describe('What this file is.'),
  name: nameText(
    'Name of the pattern: lower case letters, digits and hyphens. It names files and stands on the jigs.',
  ),
  version: versionText('Version of the pattern, in quotes so that "1.10" stays 1.10.'),
  note: z
    .string()
    .max(2000)
    .default('')
    .describe('What this version is for, what changed, how it swam.'),
  scaleRatio: ratio(
    'One number scales the lure to another size: 1.25 is a quarter longer, higher and wider. Hardware, bits, allowances and coats keep their size.',
    0.1,
    10,
  ).default(1),
  scaleHardware: z
    .boolean()
    .default(false)
    .describe('true: wire, bore, lip thickness, slot fit and bit diameters scale too.'),
  body: bodySection,
  lip: lipSection.optional(),
  ballast: z
    .array(ballastHole)
    .max(8)
    .default([])
    .describe('Ballast holes. Leave out for a lure without ballast.'),
  towEye: endEye('The eye the line is tied to, at the nose.').optional(),
  hangers: z.array(hanger).max(8).default([]).describe('Hangers under the belly.'),
  tailEye: endEye('The eye at the tail.').optional(),
  throughWire: z
    .strictObject({
      diameterMm: positiveMm('Diameter of the wire. Does not scale with the lure.', 6),
      boreMm: positiveMm(
        'Diameter of the bore or slot it lies in. Does not scale with the lure.',
        12,
      ),
      twistTurns: z
        .int()
        .min(0)
        .max(12)
        .default(0)
        .describe(
          'Turns that the tail of the wire is wound round the standing part, inside the body, at an eye at either end. 0: the loop is closed and nothing wound. A winding is three wires wide: the bore must take it.',
        ),
    })
    .describe('One wire from tow eye to tail eye with the hangers bent into it.')
    .optional(),
  timber: z
    .string()
    .min(1)
    .max(60)
    .describe('What the body is made of: a name from shared/timbers.yaml.'),
  timberDensityKgM3: density(
    'Density of the very timber, if it was weighed. Left out: the table’s, with its spread. Blocks weighed in a run go before either.',
    60,
    1350,
  ).optional(),
  sandingAllowanceMm: mm(
    'Wood left outside the finished profile all round, to be taken off by router and sandpaper.',
    0,
    10,
  ),
  blockThicknessMm: positiveMm(
    'Thickness of the block the blank is sawn from. Scales with the lure.',
    300,
  ),
  coats: z.array(coat).max(20).default([]).describe('Sealer and coats.'),
  water: waterSection.optional(),
  wish: wishSection.optional(),
} as const;

export const patternSchema = z
  .strictObject(patternSections)
  .describe('A pattern: one lure design.');

/** What a valid pattern file says, before scaling. */
export type PatternFile = z.output<typeof patternSchema>;
