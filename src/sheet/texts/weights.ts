/** Words of the shop sheet: the scale at every stage. */
import type { HeavyCode, LightCode } from '../../shop/shop.js';

export const weights = {
  heading: 'Weights to expect',
  about:
    'Weigh a few blanks at every stage. Nineteen of twenty lie between the two limits. The change against the stage before tells more than the weight: in it the density of the board hardly counts.',
  title: '{pattern}, lures: {count}',
  columns: {
    stage: 'Stage',
    mass: 'Expect g',
    low: 'From',
    high: 'to',
    change: 'Change g',
    lure: 'Lure:',
  },
  changes: '{low} to {high}',
  outside: 'When a lure is outside',
  outsideColumns: { stage: 'At', light: 'Lighter', heavy: 'Heavier' },
  log: 'Log of lures',
  logColumns: [
    'Lure',
    'Pattern',
    'Sawn',
    'Poured',
    'Shaped',
    'Sealed',
    'Coated',
    'Rigged',
    'Nose mm',
    'Tail mm',
  ],
  stages: {
    'sawn blank': 'sawn blank',
    drilled: 'drilled',
    poured: 'ballast in',
    'rounded over': 'rounded over',
    shaped: 'shaped',
    sealed: 'sealed',
    rigged: 'rigged',
  } as Readonly<Record<string, string>>,
  light: {
    'lighter-timber':
      'The timber is lighter than reckoned. Note it on the blank, and drill that blank deeper: the command *float* with its blank mass tells the depth.',
    'hole-deep': 'Drilled deeper or wider than told. Check the collar; more metal goes in.',
    'plug-short': 'The metal did not fill the hole. Top it up, or drill the void out and fill it.',
    'weight-light': 'A lighter weight is in than told, or the glue is short. Check which one.',
    'rounded-much': 'The bit is larger than told, or it dipped. Check it against the gauges.',
    'sanded-much': 'Sanded under the gauges. Check each station; do not sand the others alike.',
    'coat-thin': 'The coat is thin or has run off. Look for dry patches; the next may be fuller.',
    'fittings-light': 'Something is missing or smaller: ring, treble, lip, wire.',
  } satisfies Record<LightCode, string>,
  heavy: {
    'heavier-timber':
      'The timber is heavier than reckoned, or damp. Dry it before metal is poured. Note it on the blank, and drill that blank less deep: the command *float* with its blank mass tells the depth.',
    'hole-shallow': 'Not as deep as told. Clear the chips, check the collar, drill again.',
    'plug-long': 'More metal is in than told: the hole is deeper or wider, or a bead stands out.',
    'weight-heavy': 'A heavier weight is in than told, or much glue. Check which one.',
    'rounded-little': 'The bit is smaller than told, or was not run all round.',
    'sanded-little': 'Wood still stands outside the gauges. Go on.',
    'coat-thick': 'The coat is thick. Let it drip longer; warm the pot’s room, never the pot.',
    'fittings-heavy': 'Larger rings, trebles or more glue than told.',
  } satisfies Record<HeavyCode, string>,
} as const;
