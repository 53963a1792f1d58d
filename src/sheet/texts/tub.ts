/** Words of the shop sheet: the test in water. */
import type { Says } from '../../shop/shop.js';

export const tub = {
  heading: 'Tub test',
  title: 'Tub test of {pattern} {version}',
  first:
    'Lay the lure, coated and rigged as in the last row of its weights, in still water at {temperature}, salinity {salinity} psu ({density}). Wet it, let the bubbles go, and let it come to rest.',
  told: '{pattern} in the water as it should lie.',
  verdicts: {
    floats: 'It floats.',
    suspends: 'It stays where it is let go.',
    sinks: 'It sinks.',
  },
  figures: {
    verdict: 'It should',
    nose: 'Nose tip',
    tail: 'Tail tip',
    trim: 'Trim',
    mass: 'Rigged',
  },
  over: '{value} over water',
  under: '{value} under water',
  up: 'nose up {value}',
  down: 'nose down {value}',
  band: 'right within {band} of it',
  bandG: 'right from {low} to {high}',
  net: 'It weighs {net} more than the water it takes the place of.',
  lift: 'It lacks {net} to go under.',
  noRest: 'It has no attitude in which it stays; see the float picture and think the ballast over.',
  readings: '{pattern}: readings',
  readingColumns: {
    lure: 'Lure',
    mass: 'Rigged g',
    nose: 'Nose mm',
    tail: 'Tail mm',
    trim: 'Trim °',
    hung: 'Hung on, g',
    where: 'Where',
  },
  hang: '{pattern}: what a trial weight does',
  hangColumns: {
    at: 'Hung at',
    station: 'Station mm',
    nose: 'Nose mm for each g',
    tail: 'Tail mm for each g',
    trim: 'Trim ° for each g',
  },
  hangAbout:
    'Grams are those a weight has under water; lead keeps {share} of its weight there. A plus is up, nose up.',
  trial: '{pattern} rides too high: hang this, and look again',
  trialColumns: {
    nose: 'Nose high mm',
    tail: 'Tail high mm',
    mass: 'Hang g',
    station: 'Under station mm',
  },
  trialAbout:
    'Twice as much off wants twice the weight. Once it sits right, write weight and place down: glue so much into this lure under a last coat, and drill the next ones deeper. One that rides too low is too heavy and no weight mends it: take metal out of it, and drill the next ones less deep.',
  unwished:
    '*This is not what the pattern wishes.* The command *ballast* looks for holes that do, before wood is cut.',
  why: {
    'needs-lift': 'no weight does it: it needs lift',
    'off-the-lure': 'no weight on the lure does it',
    'hardly-afloat': 'it hardly floats: any weight takes it under',
    'under-water': 'it hangs under water',
    'no-stable-rest': 'it has no stable rest',
  },
  says: '{pattern}: what a difference says',
  saysColumns: {
    cause: 'One such slip',
    nose: 'Nose mm',
    tail: 'Tail mm',
    trim: 'Trim °',
    mass: 'Mass g',
  },
  cause: {
    'timber-heavier': 'timber {step} heavier',
    'timber-lighter': 'timber {step} lighter',
    'hole-deeper': 'hole {number}: {step} deeper, and its metal',
    'hole-shallower': 'hole {number}: {step} shallower, and its metal',
    'hole-aft': 'hole {number}: {step} too far aft',
    'hole-forward': 'hole {number}: {step} too far forward',
    'plug-short': 'hole {number}: metal {step} short',
  } satisfies Record<Says['cause'], string>,
  saysAbout:
    'Find the row, or two, whose signs and sizes are those of the lure in the tub. The command *float* with what was seen does the same reckoning with all of them at once.',
} as const;
