/** The choices of ballast as short tables for the terminal. Nothing is computed here. */

import type { Floating } from '../afloat/floating.js';
import type { Choice } from '../ballast/choice.js';
import type { Missed } from '../ballast/miss.js';
import type { BallastResult } from '../ballast/search.js';
import { trimmed } from '../formats/number.js';
import type { Pattern } from '../pattern/pattern.js';
import type { WishFile } from '../pattern/wish-schema.js';
import { holeText, unmetText, WHY_TEXT, wishText } from './ballast-words.js';
import { lying } from './float-table.js';
import type { Written } from './new-version.js';
import { table } from './table.js';

/** A choice with the lure it makes. */
export type MadeChoice = { readonly choice: Choice; readonly floating: Floating };

type Told = {
  readonly file: string;
  readonly wish: WishFile;
  readonly result: BallastResult;
  readonly made: readonly MadeChoice[];
  readonly written: Written | null;
  readonly picture: string | undefined;
  readonly pattern: Pattern;
};

export function choicesText(told: Told): string {
  const { file, wish, result, made, written, picture, pattern } = told;
  const { goal } = result.wanted;
  const assumed =
    goal.kind === 'dry' && goal.assumed
      ? [
          `The wish does not say how high it floats: ${trimmed(100 * goal.dryRatio, 0)} % dry is taken.`,
        ]
      : [];
  return [
    `${pattern.name} ${pattern.version}, wish: ${wishText(wish)}.`,
    ...assumed,
    ...made.map((m, i) => choiceText(m, i + 1)),
    ...(result.unmet ? [`No holes meet the wish. ${unmetText(result.unmet)}`] : []),
    ...(result.refused.length > 0 ? [refusedText(result)] : []),
    ...(picture === undefined ? [] : [`Drawn side by side into ${picture}.`]),
    ...(written && 'path' in written
      ? [
          `Version ${written.version} written: ${written.path}. Next: blankwright make ${written.path}`,
        ]
      : made.length > 0
        ? [`To write one as the next version: blankwright ballast ${file} --choice 1 --write`]
        : []),
    'Molten lead on damp wood spits, and its fume is poisonous: README, "Cautions". Local rules come first.',
    '',
  ].join('\n\n');
}

function choiceText({ choice, floating }: MadeChoice, number: number): string {
  const holes = choice.holes.map((hole, i) => {
    const { perDepthMm, perStationMm } = choice.perHole[i];
    return [
      holeText(hole),
      `${trimmed(hole.plugMm, 1)} mm, ${trimmed(hole.plugMassG, 1)} g left`,
      `${slip(perDepthMm.trimDeg)}° and ${slip(perDepthMm.freeboardMm)} mm per mm deeper`,
      `${slip(perStationMm.trimDeg)}° per mm aft`,
    ];
  });
  const { trimDeg, freeboardMm } = choice.perTimber.per10KgM3;
  const others = floating.attitudes.filter((a) => a.stable).length - 1;
  return [
    `${number}. ${trimmed(choice.massG, 1)} g; ${lying(choice.attitude)}${speedText(choice.speed)}${missedText(choice.missed)}.`,
    table(['hole', 'metal', 'trim and height', 'trim'], holes),
    `  Timber 10 kg/m³ heavier: ${slip(trimDeg)}°, ${slip(freeboardMm)} mm. ${trimmed(choice.woodMm, 1)} mm of wood left to the back.${others > 0 ? ` It can also rest in ${others} other way${others > 1 ? 's' : ''}.` : ''}`,
  ].join('\n');
}

const speedText = (speed: MadeChoice['choice']['speed']): string =>
  speed === null
    ? ''
    : `, ${speed.kind} ${trimmed(speed.cmS, 1)} cm/s (${trimmed(speed.lowCmS, 1)} to ${trimmed(speed.highCmS, 1)})`;

const UNITS: Readonly<Record<keyof Missed, readonly [unit: string, factor: number]>> = {
  trimDeg: ['°', 1],
  freeboardMm: [' mm of freeboard', 1],
  dryRatio: [' % dry', 100],
  cmS: [' cm/s', 1],
  netG: [' g', 1],
};

/** How far from the wish what can be set out ends. */
function missedText(missed: Missed): string {
  const parts = (Object.keys(UNITS) as (keyof Missed)[]).flatMap((key) => {
    const value = missed[key];
    return value === null ? [] : [`${slip(UNITS[key][1] * value)}${UNITS[key][0]}`];
  });
  return parts.length > 0 ? `; off the wish by ${parts.join(', ')}` : '';
}

function slip(value: number | null): string {
  if (value === null) return '–';
  const spelled = trimmed(value, 2);
  return spelled === '0' || spelled.startsWith('-') ? spelled : `+${spelled}`;
}

const refusedText = ({ refused }: BallastResult): string =>
  [
    'Refused:',
    table(
      ['sets', 'why', 'nearest to being allowed'],
      refused.map((r) => [String(r.tried), WHY_TEXT[r.why], r.holes.map(holeText).join('; ')]),
    ),
  ].join('\n');
