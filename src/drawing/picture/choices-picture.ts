/** Ballast choices side by side: how each lies in the water, what to drill, what it does. */
import type { Box } from '../../geometry/vec.js';
import { ROWS_MM, type Row, tableRows } from './choice-rows.js';
import type { Choice, ChoicesInput } from './input.js';
import { fittedPose } from './lure-view.js';
import { type Picture, SHEET, type Shape } from './picture.js';
import { type SeenLure, seenLure } from './seen-lure.js';
import { headed, LEFT, MARGIN_MM, RIGHT, rule, sheet } from './sheet.js';
import { smallView } from './side-panel.js';
import { scaleBar } from './signs.js';
import { sideView } from './view.js';
import { fitted, SIZES, shortened, words, wrapped } from './words.js';

/** More do not fit side by side. */
export const MOST_CHOICES = 5;

/** Column of headings, and the widest a column of figures gets, mm. */
const HEADINGS_MM = 42;
const WIDEST_MM = 116;
const GAP_MM = 4;
const VIEW_TOP_Y = 172;
/** Least and greatest height of the views, mm. */
const VIEW_MM = [26, 50] as const;

export function choicesPicture(input: ChoicesInput): Picture {
  const choices = input.choices.slice(0, MOST_CHOICES);
  const { name, version, wish, unmet } = input;
  return {
    title: `${name} ${version}: ballast choices`,
    description:
      `${choices.length} ballast choices for ${name} ${version}. Wish: ${wish}.` +
      (choices.length === 0 && unmet !== null ? ` ${unmet}` : ''),
    ...SHEET,
    shapes: [
      ...sheet(),
      ...headed({
        word: 'Ballast',
        from: LEFT + 60,
        about: wish,
        name,
        small: shortened(`version ${version}`, SIZES.note, 110),
      }),
      ...(choices.length > 0 ? body(choices) : none(unmet)),
    ],
  };
}

/** From line to line of a reason, mm; and where its first line stands. */
const REASON_MM = 7.5;
const REASON_Y = VIEW_TOP_Y - 12;

/** That there is no choice, and why: as much of it as the sheet holds. */
function none(unmet: string | null): Shape[] {
  const lines = wrapped(unmet ?? '', SIZES.value, RIGHT - LEFT);
  const most = Math.floor((REASON_Y - MARGIN_MM) / REASON_MM) + 1;
  const shown = lines.slice(0, most);
  return [
    words('No choice meets it.', LEFT, VIEW_TOP_Y, { size: 'name', bold: true }),
    ...shown.flatMap((line, i) => {
      const isCut = i === most - 1 && lines.length > most;
      const y = REASON_Y - REASON_MM * i;
      return fitted(isCut ? `${line} ${lines[most]}` : line, LEFT, y, RIGHT - LEFT, {
        size: 'value',
      });
    }),
  ];
}

function body(choices: readonly Choice[]): Shape[] {
  const width = Math.min(WIDEST_MM, (RIGHT - LEFT - HEADINGS_MM) / choices.length);
  const lefts = choices.map((_, i) => LEFT + HEADINGS_MM + i * width);
  const views = choices.map(({ lure, attitude }) => seenLure(lure, sideView(attitude.upInBody)));
  const { scale, footY } = commonScale(views, width - GAP_MM);
  return [
    ...scaleBar([LEFT, footY + 2], scale < 0.4 ? 50 : 20, scale),
    ...choices.flatMap(({ attitude, verdict }, i): Shape[] => {
      const window: Box = [lefts[i], footY, lefts[i] + width - GAP_MM, VIEW_TOP_Y];
      return [
        words(`${i + 1}`, lefts[i], VIEW_TOP_Y + 3, { size: 'name', bold: true }),
        words(verdict, lefts[i] + 8, VIEW_TOP_Y + 3, { size: 'title' }),
        ...smallView(views[i], attitude, window, scale),
      ];
    }),
    ...table(tableRows(choices, MOST_ROWS, width - GAP_MM), lefts, width - GAP_MM, footY - 8),
  ];
}

/** One scale for all views, the smallest that one of them needs, and the foot of the tallest at it. */
function commonScale(views: readonly SeenLure[], widthMm: number) {
  const room: Box = [0, 0, widthMm - 4, VIEW_MM[1] - 4];
  const scale = Math.min(...views.map((lure) => fittedPose(lure, room).scale));
  const heights = views.map(({ box }) => scale * (box[3] - box[1]) + 8);
  return { scale, footY: VIEW_TOP_Y - Math.min(VIEW_MM[1], Math.max(VIEW_MM[0], ...heights)) };
}

function table(
  rows: readonly Row[],
  lefts: readonly number[],
  widthMm: number,
  topY: number,
): Shape[] {
  const step = Math.min(ROWS_MM[1], (topY - MARGIN_MM) / rows.length);
  return rows.flatMap((row, i): Shape[] => {
    const y = topY - step * (i + 0.6) - 1;
    return [
      ...(row.ruled ? rule(topY - step * i) : []),
      ...fitted(row.heading, LEFT, y, HEADINGS_MM - 3, { role: 'faint' }),
      ...row.values.flatMap((value, k) =>
        fitted(value, lefts[k], y, widthMm, { bold: row.bold ?? false }),
      ),
    ];
  });
}

/** As many rows as fit under the tallest views. */
const MOST_ROWS = Math.floor((VIEW_TOP_Y - VIEW_MM[1] - 8 - MARGIN_MM) / ROWS_MM[0]);
