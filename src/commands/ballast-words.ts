/** Why holes are refused, and what stands in the way of a wish, in sentences. */
import type { Missed } from '../ballast/miss.js';
import type { Refusal, Why } from '../ballast/refuse.js';
import type { Height, Unmet } from '../ballast/unmet.js';
import type { Hole } from '../ballast/workpiece.js';
import { tipDepthMm } from '../blank/hole.js';
import { trimmed } from '../formats/number.js';
import { DENSITY_RANGE } from '../pattern/run.js';
import type { WishFile } from '../pattern/wish-schema.js';
import { signed } from './signed.js';

type Facts = Refusal['facts'];

/** Each reason in a few words, for a list of refusals. */
const WHY_TEXT: Readonly<Record<Why, string>> = {
  'not-poured': 'the metal is not poured; glue in ready-made weights of it (--weights)',
  'metal-too-light': 'the metal is no heavier than the wood it takes the place of',
  'no-bit': 'no bit is wide enough for the weight',
  'no-weight': 'there is no ready-made weight of the metal in shared/weights.yaml or the run',
  'station-outside': 'the trim asks for a hole beyond nose or tail',
  outside: 'the hole would leave the body at nose or tail',
  'too-wide': 'the hole leaves too little wood at its sides',
  'through-back': 'the hole would come through the back',
  'sanded-into': 'shaping the belly would sand into the metal or take it away',
  'meets-slot': 'the hole meets the lip slot',
  'meets-hanger': 'the hole meets a hanger',
  'holes-meet': 'two holes meet',
  'gm-too-low': 'the lure would not be stiff enough upright',
  'rolls-over': 'the lure would roll over',
  'misses-wish': 'what can be set out with rule and stop ends too far from the wish',
};

const mm = (facts: Facts, name: string): string => `${trimmed(Number(facts[name] ?? 0), 2)} mm`;

/** The numbers behind each reason, in words. */
const NUMBERS: Readonly<Record<Why, (facts: Facts) => string>> = {
  'not-poured': (f) => `${f.metal}`,
  'metal-too-light': (f) =>
    `${f.metal}: ${trimmed(Number(f.densityKgM3), 0)} kg/m³ in timber of ${trimmed(Number(f.timberKgM3), 0)}`,
  'no-bit': (f) => `${f.weight}`,
  'no-weight': (f) => `${f.metal}`,
  'station-outside': (f) => `beyond the ${f.end}`,
  outside: (f) =>
    `at station ${mm(f, 'stationMm')}; ${mm(f, 'leastMm')} to ${mm(f, 'mostMm')} would do`,
  'too-wide': (f) => `a ${mm(f, 'diameterMm')} bit; at most ${mm(f, 'limitMm')}`,
  'through-back': (f) =>
    `at station ${mm(f, 'stationMm')}, ${mm(f, 'depthMm')} deep: at most ${mm(f, 'limitMm')} deep leaves ${mm(f, 'leastMm')} of wood`,
  'sanded-into': (f) =>
    f.leftMm === undefined
      ? `at station ${mm(f, 'stationMm')}, ${mm(f, 'depthMm')} deep; shaping takes ${mm(f, 'limitMm')}`
      : `at station ${mm(f, 'stationMm')}, ${mm(f, 'depthMm')} deep: ${mm(f, 'leftMm')} of metal or cover would be left at the rim, at least ${mm(f, 'limitMm')} is wanted`,
  'meets-slot': (f) => `${mm(f, 'betweenMm')} of wood between, at least ${mm(f, 'limitMm')}`,
  'meets-hanger': (f) => `${mm(f, 'betweenMm')} of wood between, at least ${mm(f, 'limitMm')}`,
  'holes-meet': (f) => `${mm(f, 'betweenMm')} of wood between, at least ${mm(f, 'limitMm')}`,
  'gm-too-low': (f) =>
    `GM ${trimmed(Number(f.gmMm), 2)} mm; at least ${trimmed(Number(f.leastMm), 2)} mm is wished`,
  'rolls-over': (f) =>
    f.heelDeg === undefined ? '' : `it ends heeled ${trimmed(Math.abs(Number(f.heelDeg)), 0)}°`,
  'misses-wish': (f) => {
    const [unit, factor] = MISSED[f.what as keyof Missed];
    return `off by ${trimmed(factor * Number(f.missed), 2)}${unit}; within ${trimmed(factor * Number(f.most), 2)}${unit} counts`;
  },
};

/** Units of a miss, and what turns its number into them. */
const MISSED: Readonly<Record<keyof Missed, readonly [unit: string, factor: number]>> = {
  trimDeg: ['° of trim', 1],
  freeboardMm: [' mm of freeboard', 1],
  dryRatio: [' % dry', 100],
  cmS: [' cm/s', 1],
  netG: [' g', 1],
};

/** One refusal with its numbers. */
export function refusalText({ why, facts }: Pick<Refusal, 'why' | 'facts'>): string {
  const numbers = NUMBERS[why](facts);
  return `${WHY_TEXT[why]}${numbers === '' ? '' : ` (${numbers})`}`;
}

/** `14.2 mm deep (16.6 to the tip)`: for the full diameter and for the bit's point, both on the axis. */
export function depthText(hole: Pick<Hole, 'depthMm' | 'diameterMm' | 'pointAngleDeg'>): string {
  const tip = tipDepthMm(hole);
  const toTip = tip > hole.depthMm ? ` (${trimmed(tip, 1)} to the tip)` : '';
  return `${trimmed(hole.depthMm, 1)} mm deep${toTip}`;
}

/** `, leaning 20° aft`; nothing for a hole square to the datum line. */
export const leanText = ({ tiltDeg }: Pick<Hole, 'tiltDeg'>): string =>
  tiltDeg === 0
    ? ''
    : `, leaning ${trimmed(Math.abs(tiltDeg), 1)}° ${tiltDeg > 0 ? 'aft' : 'forward'}`;

/** `8 mm bit at station 33.5 mm, 14.2 mm deep (16.6 to the tip), lead`, or the ready-made weight. */
export const holeText = (hole: Hole): string =>
  `${trimmed(hole.diameterMm, 2)} mm bit at station ${trimmed(hole.stationMm, 1)} mm${leanText(hole)}, ${depthText(hole)}, ${hole.weight ?? hole.metal}`;

export function wishText(wish: WishFile): string {
  const { buoyancy, freeboardMm, dryRatio, speedCmS, noseDownDeg, leastGmMm } = wish;
  const nose =
    noseDownDeg === undefined
      ? []
      : [
          noseDownDeg === 0
            ? 'level'
            : `${trimmed(Math.abs(noseDownDeg), 1)}° nose ${noseDownDeg > 0 ? 'down' : 'up'}`,
        ];
  return [
    speedCmS === undefined ? buoyancy : `${buoyancy} ${trimmed(speedCmS, 1)} cm/s`,
    ...(freeboardMm === undefined ? [] : [`freeboard ${trimmed(freeboardMm, 1)} mm`]),
    ...(dryRatio === undefined ? [] : [`${trimmed(100 * dryRatio, 1)} % dry`]),
    ...nose,
    `GM at least ${trimmed(leastGmMm, 2)} mm`,
  ].join(', ');
}

const LIGHTEST_KG_M3 = DENSITY_RANGE.leastKgM3;
const DENSEST_KG_M3 = 19300; // tungsten

/** Which limit stands in the way, and what would meet it. */
export function unmetText(unmet: Unmet): string {
  const g = (value: number) => `${trimmed(value, 1)} g`;
  const high = (height: Height) =>
    height === null
      ? 'it would then sink'
      : `the lure then floats with ${trimmed(100 * height.dryRatio, 1)} % dry, its highest point ${trimmed(height.freeboardMm, 1)} mm out`;
  switch (unmet.limit) {
    case 'freeboard-too-high':
      return `The lure is only ${trimmed(unmet.mostMm, 1)} mm high at rest: wish for less freeboard than that.`;
    case 'too-heavy':
      return [
        `Even without ballast the lure is ${g(unmet.byG)} too heavy for the wish.`,
        unmet.timberKgM3 === null || unmet.timberKgM3 < LIGHTEST_KG_M3
          ? 'No timber is light enough for it; lighter lip and hooks or thinner coats help.'
          : `It takes timber under ${trimmed(unmet.timberKgM3, 0)} kg/m³, and lighter still for ballast to hold it upright; or lighter lip and hooks, or thinner coats.`,
        `Or a lower wish: without ballast ${high(unmet.height)}.`,
      ].join(' ');
    case 'no-room':
      return [
        `${g(unmet.missingG)} of ballast are needed, and the wood has room for ${g(unmet.mostG)} at most`,
        unmet.holes.length > 0 ? `(${unmet.holes.map(holeText).join('; ')}).` : '(no hole fits).',
        unmet.metalKgM3 === null
          ? 'Other bits, or other stations for hangers and slot, would make room.'
          : unmet.metalKgM3 > DENSEST_KG_M3
            ? 'No metal is dense enough to do in those holes; a deeper body, heavier timber or more holes would.'
            : `A metal of ${trimmed(unmet.metalKgM3, 0)} kg/m³ or more would do in those holes.`,
        ...(unmet.height ? [`Or wish for less weight: with them ${high(unmet.height)}.`] : []),
      ].join(' ');
    case 'too-little':
      return `Only ${g(unmet.missingG)} of ballast are missing: so small a plug is sanded away with the belly. Wish for a little less height, or take a narrower bit.`;
    case 'nothing-at-hand':
      return `Nothing at hand can be used: ${refusalText(unmet)}.`;
    case 'wood':
      return `The wood allows none of the holes: ${refusalText(unmet)}. Other stations for hangers and slot, or other bits, would make room.`;
    case 'trim': {
      const near = [unmet.belowDeg, unmet.aboveDeg].filter((deg) => deg !== null);
      return `No hole gives this trim; the nearest found: ${near.map(degrees).join(' and ')}. Two holes, or other bits, may reach it.`;
    }
    case 'gm':
      return `The best holes give a GM of ${trimmed(unmet.bestMm, 2)} mm; ${trimmed(unmet.leastMm, 2)} mm are wished. Metal lower in the body (two shallow holes, denser metal), a broader body or a lighter back would raise it.`;
    case 'rolls-over':
      return `Every set of holes lets the lure roll over (${NUMBERS['rolls-over'](unmet.facts)}). Metal lower in the body or a broader body would hold it upright.`;
    case 'misses-wish':
      return `What can be set out with rule and stop comes no nearer than this: ${NUMBERS['misses-wish'](unmet.facts)}. Two holes, a narrower bit (finer in weight) or a looser wish would help; poured metal can be set more finely than ready-made weights.`;
  }
}

const degrees = (noseDown: number): string =>
  noseDown === 0
    ? 'level'
    : `${trimmed(Math.abs(noseDown), 0)}° nose ${noseDown > 0 ? 'down' : 'up'}`;

/** How far a lure is from a wish: `+0.2° of trim, −1.1 mm of freeboard`; empty where the wish says nothing. */
export function missedText(missed: Missed): string {
  return (Object.keys(MISSED) as (keyof Missed)[])
    .flatMap((key) => {
      const value = missed[key];
      return value === null ? [] : [`${signed(MISSED[key][1] * value, 2)}${MISSED[key][0]}`];
    })
    .join(', ');
}
