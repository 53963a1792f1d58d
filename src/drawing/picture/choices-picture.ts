/** Ballast choices side by side: how each lies in the water, what to drill, what it does. */
import type { Box } from '../../geometry/vec.js';
import { MARGIN_MM, rule, sheet } from './float-picture.js';
import type { Choice, ChoicesInput, DrawnSensitivity } from './input.js';
import { fittedPose, type SeenLure, seenLure } from './lure-view.js';
import { type Picture, SHEET, type Shape, textWidthMm } from './picture.js';
import { smallView } from './side-panel.js';
import { scaleBar } from './signs.js';
import { sideView } from './view.js';
import { fitted, SIZES, shortened, spelled, words } from './words.js';

/** More do not fit side by side. */
export const MOST_CHOICES = 5;

const LEFT = MARGIN_MM;
const RIGHT = SHEET.widthMm - MARGIN_MM;
/** Column of headings, and the widest a column of figures gets, mm. */
const HEADINGS_MM = 42;
const WIDEST_MM = 116;
const GAP_MM = 4;
const HEAD_Y = 184;
const VIEW_TOP_Y = 172;
/** Least and greatest height of the views, and of a row of the table, mm. */
const VIEW_MM = [26, 50] as const;
const ROWS_MM = [4.6, 7.4] as const;

export function choicesPicture(input: ChoicesInput): Picture {
  const choices = input.choices.slice(0, MOST_CHOICES);
  const { name, version, wish } = input;
  return {
    title: `${name} ${version}: ballast choices`,
    description: `${choices.length} ballast choices for ${name} ${version}. Wish: ${wish}.`,
    ...SHEET,
    shapes: [
      ...sheet(),
      ...head(input),
      ...(choices.length > 0 ? body(choices) : [words('No choice meets it.', LEFT, VIEW_TOP_Y)]),
    ],
  };
}

function head({ name, version, wish }: ChoicesInput): Shape[] {
  const nameMm = Math.min(110, textWidthMm(name, SIZES.name, true));
  const versionText = shortened(`version ${version}`, SIZES.note, 110);
  return [
    words('Ballast', LEFT, HEAD_Y + 5, { size: 'verdict', bold: true }),
    ...fitted(name, RIGHT, HEAD_Y + 10.5, 110, { size: 'name', bold: true, anchor: 'end' }),
    words(versionText, RIGHT, HEAD_Y + 4.5, { anchor: 'end', role: 'faint' }),
    ...fitted(
      wish,
      LEFT + 56,
      HEAD_Y + 5,
      RIGHT - LEFT - 62 - Math.max(nameMm, textWidthMm(versionText, SIZES.note)),
      {
        size: 'value',
      },
    ),
    ...rule(HEAD_Y),
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
        ...smallView(views[i], attitude, verdict, window, scale),
      ];
    }),
    ...table(tableRows(choices), lefts, width - GAP_MM, footY - 8),
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

type Row = {
  readonly heading: string;
  readonly values: readonly string[];
  /** A line above it. */
  readonly ruled?: boolean;
  readonly bold?: boolean;
};

/** As many rows as fit under the tallest views. */
const MOST_ROWS = Math.floor((VIEW_TOP_Y - VIEW_MM[1] - 8 - MARGIN_MM) / ROWS_MM[0]);

function tableRows(choices: readonly Choice[]): readonly Row[] {
  const row = (
    heading: string,
    value: (choice: Choice) => string,
    more: Partial<Row> = {},
  ): Row => ({
    heading,
    values: choices.map(value),
    ...more,
  });
  const results = [
    row('mass, g', ({ massG }) => spelled(massG, 2), { ruled: true }),
    row('trim, + nose up', ({ attitude }) => `${spelled(attitude.trimDeg, 1)}°`),
    row('freeboard nose, mm', ({ attitude }) => spelled(attitude.freeboardNoseMm, 1)),
    row('freeboard tail, mm', ({ attitude }) => spelled(attitude.freeboardTailMm, 1)),
    row('above water, %', ({ attitude }) => spelled(100 * attitude.dryRatio, 1)),
    row('GM across, mm', ({ attitude }) => spelled(attitude.gmAcrossMm, 2)),
  ];
  return [...holeRows(choices, row), ...results, ...sensitivityRows(choices)].slice(0, MOST_ROWS);
}

function holeRows(
  choices: readonly Choice[],
  row: (heading: string, value: (choice: Choice) => string, more?: Partial<Row>) => Row,
): Row[] {
  const most = Math.max(...choices.map(({ drilling }) => drilling.length));
  return Array.from({ length: most }, (_, i): Row[] => {
    const of = (spell: (hole: Choice['drilling'][number]) => string) => (choice: Choice) =>
      choice.drilling[i] ? spell(choice.drilling[i]) : '–';
    return [
      row(
        `hole ${i + 1}, bit mm`,
        of((h) => spelled(h.diameterMm, 2)),
        { ruled: true, bold: true },
      ),
      row(
        'station, mm',
        of((h) => spelled(h.stationMm, 1)),
        { bold: true },
      ),
      row(
        'drill deep, mm',
        of((h) => spelled(h.depthMm, 1)),
        { bold: true },
      ),
      row(
        'metal',
        of((h) => h.metal),
      ),
    ];
  }).flat();
}

/** One row a change any choice tells of: degrees of trim, mm of freeboard at nose and tail. */
function sensitivityRows(choices: readonly Choice[]): Row[] {
  const changes = [...new Set(choices.flatMap((c) => c.sensitivity.map(({ per }) => per)))];
  if (changes.length === 0) return [];
  return [
    { heading: 'what changes it', values: choices.map(() => 'trim, nose, tail'), ruled: true },
    ...changes.map((per) => ({
      heading: per,
      values: choices.map((choice) => effect(choice.sensitivity.find((s) => s.per === per))),
    })),
  ];
}

const effect = (s: DrawnSensitivity | undefined): string =>
  s
    ? [
        s.trimDeg === null ? '–' : `${signed(s.trimDeg, 2)}°`,
        signed(s.freeboardNoseMm, 2),
        signed(s.freeboardTailMm, 2),
      ].join(', ')
    : '–';

const signed = (value: number, decimals: number): string =>
  value > 0 && Number(value.toFixed(decimals)) !== 0
    ? `+${spelled(value, decimals)}`
    : spelled(value, decimals);
