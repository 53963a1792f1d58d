/** The choices of ballast as short tables for the terminal. Nothing is computed here. */

import type { Floating } from '../afloat/floating.js';
import type { Choice } from '../ballast/choice.js';
import type { BallastResult } from '../ballast/search.js';
import type { Sensitivity } from '../ballast/sensitivity.js';
import { SUSPEND_BAND } from '../float/verdict.js';
import { trimmed } from '../formats/number.js';
import type { Pattern } from '../pattern/pattern.js';
import type { WishFile } from '../pattern/wish-schema.js';
import { holeText, missedText, refusalText, unmetText, wishText } from './ballast-words.js';
import { lying } from './float-table.js';
import type { Written } from './new-version.js';
import { signed } from './signed.js';
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
  /** Searched for in a run, whose own figures hold. */
  readonly ofRun: boolean;
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
    ...suspendText(told),
    ...(result.unmet ? [`No holes meet the wish. ${unmetText(result.unmet)}`] : []),
    ...(result.refused.length > 0 ? [refusedText(result)] : []),
    ...(picture === undefined ? [] : [`Drawn side by side into ${picture}.`]),
    ...(written && 'path' in written
      ? [nextText(told, written)]
      : made.length > 0
        ? [`To write one as the next version: blankwright ballast ${file} --choice 1 --write`]
        : []),
    ...(made.length === 0 ? [] : [made.some(usesLead) ? LEAD : OTHER]),
    '',
  ].join('\n\n');
}

function choiceText({ choice, floating }: MadeChoice, number: number): string {
  const under = choice.attitude.dryRatio === 0;
  const change = ({ massG, freeboardMm }: Sensitivity): string =>
    under ? `${slip(massG)} g` : `${slip(freeboardMm)} mm`;
  const holes = choice.holes.map((hole, i) => {
    const { perDepthMm, perStationMm } = choice.perHole[i];
    return [
      holeText(hole),
      hole.weight === null
        ? `${trimmed(hole.plugMm, 1)} mm, ${trimmed(hole.plugMassG, 1)} g left`
        : `${trimmed(hole.plugMassG, 1)} g`,
      `${slip(perDepthMm.trimDeg)}°, ${change(perDepthMm)}`,
      `${slip(perStationMm.trimDeg)}°`,
    ];
  });
  const off = missedText(choice.missed);
  const { per10KgM3 } = choice.perTimber;
  const others = floating.attitudes.filter((a) => a.stable).length - 1;
  return [
    `${number}. ${trimmed(choice.massG, 1)} ± ${trimmed(floating.lure.spreadG, 1)} g; ${lying(choice.attitude)}${speedText(choice.speed)}${off === '' ? '' : `; off the wish by ${off}`}.`,
    table(
      [
        'hole',
        'metal',
        `1 mm deeper: nose up, ${under ? 'weight' : 'height'}`,
        '1 mm aft: nose up',
      ],
      holes,
    ),
    `  Timber 10 kg/m³ heavier: ${slip(per10KgM3.trimDeg)}°, ${change(per10KgM3)}. ${trimmed(choice.woodMm, 1)} mm of wood left to the back.${others > 0 ? ` It can also rest in ${others} other way${others > 1 ? 's' : ''}.` : ''}`,
  ].join('\n');
}

function nextText({ ofRun }: Told, { version, path }: Extract<Written, { path: string }>): string {
  const next = ofRun
    ? `It is for the timber, water and materials of this run: order it there by this file.`
    : `Next: blankwright make ${path}`;
  return `Version ${version} written: ${path}. ${next}`;
}

/** A lure that suspends does so within a band narrower than what timber differs by. */
function suspendText({ result, made }: Told): string[] {
  if (result.wanted.goal.kind !== 'suspends' || made.length === 0) return [];
  const [{ floating, choice }] = made;
  const band = SUSPEND_BAND * choice.massG;
  const under =
    'Trims here are those of the lure held under; at the surface it lies a little otherwise.';
  return floating.lure.spreadG > band
    ? [
        under,
        `It suspends within ${trimmed(band, 2)} g of the water it displaces, and lures like it differ by ${trimmed(floating.lure.spreadG, 1)} g: weigh each sawn blank, and drill as \`blankwright float FILE --blank-mass GRAMS\` tells.`,
      ]
    : [under];
}

const usesLead = ({ choice }: MadeChoice): boolean =>
  choice.holes.some(({ metal }) => metal === 'lead');

const LEAD =
  'Molten lead on damp wood spits, and its fume and dust are poisonous: README, "Cautions". Local rules come first.';
const OTHER = 'Hot metal burns, dust and glue harm: README, "Cautions". Local rules come first.';

const speedText = (speed: MadeChoice['choice']['speed']): string =>
  speed === null
    ? ''
    : `, ${speed.kind} ${trimmed(speed.cmS, 1)} cm/s (${trimmed(speed.lowCmS, 1)} to ${trimmed(speed.highCmS, 1)})`;

const slip = (value: number | null): string => (value === null ? '–' : signed(value, 2));

const refusedText = ({ refused }: BallastResult): string =>
  [
    'Refused:',
    table(
      ['sets', 'why, with the one nearest to being allowed'],
      refused.map((r) => [String(r.tried), refusalText(r)]),
    ),
  ].join('\n');
