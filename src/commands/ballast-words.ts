/** Why holes are refused, and what stands in the way of a wish, in sentences. */
import type { Refusal, Why } from '../ballast/refuse.js';
import type { Height, Unmet } from '../ballast/unmet.js';
import type { Hole } from '../ballast/workpiece.js';
import { trimmed } from '../formats/number.js';
import type { WishFile } from '../pattern/wish-schema.js';

/** What the reason means, for a list of refusals. */
export const WHY_TEXT: Readonly<Record<Why, string>> = {
  'not-poured': 'the metal is not poured; glue in ready-made weights of it (--weights)',
  'metal-too-light': 'the metal is no heavier than the wood it takes the place of',
  'no-bit': 'no bit is wide enough for the weight',
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

/** One refusal with its numbers. */
export function refusalText({ why, facts }: Pick<Refusal, 'why' | 'facts'>): string {
  const numbers = factsText(facts);
  return `${WHY_TEXT[why]}${numbers === '' ? '' : ` (${numbers})`}`;
}

/** `8 mm bit at 33.5 mm, 14.2 mm deep, lead`, or the ready-made weight. */
export const holeText = (hole: Hole): string =>
  `${trimmed(hole.diameterMm, 2)} mm bit at station ${trimmed(hole.stationMm, 1)} mm, ${trimmed(hole.depthMm, 1)} mm deep, ${hole.weight ?? hole.metal}`;

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
        unmet.timberKgM3 === null
          ? 'No timber is light enough: make lip and hooks lighter, or the coats thinner.'
          : `Timber of ${trimmed(unmet.timberKgM3, 0)} kg/m³ or less would do,`,
        `or a lower wish: without ballast ${high(unmet.height)}.`,
      ].join(' ');
    case 'no-room':
      return [
        `${g(unmet.missingG)} of ballast are needed, and the wood has room for ${g(unmet.mostG)} at most`,
        unmet.holes.length > 0 ? `(${unmet.holes.map(holeText).join('; ')}).` : '(no hole fits).',
        unmet.metalKgM3 === null
          ? 'Wider or more bits, or other stations for hangers and slot, would make room,'
          : `A metal of ${trimmed(unmet.metalKgM3, 0)} kg/m³ would do in those holes,`,
        `or a higher wish: with them ${high(unmet.height)}.`,
      ].join(' ');
    case 'too-little':
      return `Only ${g(unmet.missingG)} of ballast are missing: so small a plug is sanded away with the belly. Wish for a little less height, or take a narrower bit.`;
    case 'nothing-at-hand':
      return `Nothing at hand can be used: ${refusalText(unmet)}.`;
    case 'wood':
      return `The wood allows none of the holes: ${refusalText(unmet)}. Other stations for hangers and slot, or other bits, would make room.`;
    case 'trim': {
      const [least, most] = unmet.noseDownDeg;
      return `No hole gives this trim; the wood allows from ${degrees(least)} to ${degrees(most)}.`;
    }
    case 'gm':
      return `The best holes give a GM of ${trimmed(unmet.bestMm, 2)} mm; ${trimmed(unmet.leastMm, 2)} mm are wished. Metal lower in the body (two shallow holes, denser metal), a broader body or a lighter back would raise it.`;
    case 'rolls-over':
      return `Every set of holes lets the lure roll over (${factsText(unmet.facts)}). Metal lower in the body or a broader body would hold it upright.`;
    case 'misses-wish':
      return `What can be set out with rule and stop comes no nearer than this: ${factsText(unmet.facts)}.`;
  }
}

const degrees = (noseDown: number): string =>
  noseDown === 0
    ? 'level'
    : `${trimmed(Math.abs(noseDown), 0)}° nose ${noseDown > 0 ? 'down' : 'up'}`;

const factsText = (facts: Refusal['facts']): string =>
  Object.entries(facts)
    .map(([name, value]) => `${name} ${typeof value === 'number' ? trimmed(value, 2) : value}`)
    .join(', ');
