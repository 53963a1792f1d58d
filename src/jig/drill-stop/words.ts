/** How a drill-stop jig is used, in short sentences for the sheet; cautions last. */
import { capital, told } from '../wording.js';
import type { DrillGuide } from './jig.js';
import type { Ears } from './setup.js';

export function drillStopWords(guides: readonly DrillGuide[], ears: Ears | undefined): string[] {
  const belly = guides.filter((g) => g.for === 'ballast' || g.for === 'hanger');
  const ends = guides.filter((g) => g.for === 'tow eye' || g.for === 'tail eye');
  return [
    'Lay the blank in from the open side: nose to the nose wall, back to the base, flat on the floor. Keep it pressed there with a clamp or a pad, never with fingers near the bit.',
    ...(belly.length > 0 ? [standing(ears)] : []),
    ...(ends.length > 0
      ? [
          'Tow eye and tail eye: a hand drill, the jig held in a vise; no clamp on the ear at the end that is drilled.',
        ]
      : []),
    ...guides.map(wordsOf),
    'Set the collar with a rule on the bit, lock it, and try it on scrap. Withdraw the bit often to clear the chips; do not force it.',
    'Never pour metal in or over this jig: it is plastic. Take the blank out first.',
    'Local rules and the instructions of drill and bits come first. Eye protection on, no loose cuffs or hair.',
  ];
}

const standing = (ears: Ears | undefined): string =>
  ears
    ? `Drill press: stand the jig on its base, belly up, and ${ears.boltMm > 0 ? 'bolt or clamp' : 'clamp'} it by its ears; clamps no higher than ${told(ears.clampHeightMm)} mm over them. Hand drill: hold the jig in a vise; the guides keep the bit square.`
    : 'Drill press: stand the jig on its base, belly up, against a fence or in a vise. Hand drill: hold the jig in a vise; the guides keep the bit square.';

function wordsOf(g: DrillGuide): string {
  const place =
    g.for === 'ballast' || g.for === 'hanger'
      ? `at station ${told(g.stationMm)}`
      : `at height ${told(g.heightMm)}`;
  const through = g.sleeve ? 'in the steel sleeve' : `in a guide ${told(g.guideLengthMm)} mm long`;
  return [
    `${capital(g.for)} ${place}: bit ${told(g.bitDiameterMm)} mm, ${through};`,
    `collar ${told(g.collarSettingMm)} mm from where the bit is full, ${told(g.collarFromTipMm)} mm from its tip;`,
    `${told(g.depthMm)} mm deep at full diameter, ${told(g.tipDepthMm)} mm at the tip.`,
    ...(g.tiltDeg === 0 ? [] : [leaning(g.tiltDeg)]),
  ].join(' ');
}

/** Standing belly up, an axis that leans aft comes upright when the nose end is lifted. */
const leaning = (tiltDeg: number): string =>
  `It leans ${told(Math.abs(tiltDeg))}° ${tiltDeg > 0 ? 'aft' : 'forward'}: a hand drill, or a wedge of ${told(Math.abs(tiltDeg))}° under the ${tiltDeg > 0 ? 'nose' : 'tail'} end of the base.`;
