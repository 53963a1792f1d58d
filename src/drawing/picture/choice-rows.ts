/** The table under ballast choices: what to drill, what comes of it, what a slip changes. */
import type { Choice, DrawnSensitivity, DrawnSpeed } from './input.js';
import { hangs } from './lure-view.js';
import { textWidthMm } from './picture.js';
import { speedFigures, underWayWords } from './speed-words.js';
import { LINE_MM, SIZES, spelled } from './words.js';

export type Row = {
  readonly heading: string;
  /** One a choice. */
  readonly values: readonly string[];
  /** A line above it. */
  readonly ruled?: boolean;
  readonly bold?: boolean;
};

/** Least and greatest height of a row, mm. */
export const ROWS_MM = [LINE_MM, 7.4] as const;

type MakeRow = (
  heading: string,
  value: (choice: Choice) => string,
  more?: Partial<Pick<Row, 'ruled' | 'bold'>>,
) => Row;

/** All rows; of more than `most` the last ones are left out, and the last row says how many. Figures are as fine as fits the width. */
export function tableRows(choices: readonly Choice[], most: number, widthMm: number): Row[] {
  const row: MakeRow = (heading, value, more = {}) => ({
    heading,
    values: choices.map(value),
    ...more,
  });
  const rows = [
    ...holeRows(choices, row),
    ...resultRows(choices, row),
    ...sensitivityRows(choices, row, widthMm),
  ];
  if (rows.length <= most) return rows;
  const kept = rows.slice(0, most - 1);
  return [...kept, { heading: `${rows.length - kept.length} more rows left out`, values: [] }];
}

function holeRows(choices: readonly Choice[], row: MakeRow): Row[] {
  const most = Math.max(...choices.map(({ drilling }) => drilling.length));
  return Array.from({ length: most }, (_, i): Row[] => {
    const of = (spell: (hole: Choice['drilling'][number]) => string) => (choice: Choice) =>
      choice.drilling[i] ? spell(choice.drilling[i]) : '–';
    const bit = of((h) => spelled(h.diameterMm, 2));
    const station = of((h) => spelled(h.stationMm, 1));
    const depth = of((h) => `${spelled(h.depthMm, 1)} (${spelled(h.tipDepthMm, 1)})`);
    return [
      row(`hole ${i + 1}, bit mm`, bit, { ruled: true, bold: true }),
      row('station, mm', station, { bold: true }),
      row('drill deep (tip), mm', depth, { bold: true }),
      row(
        'metal',
        of((h) => h.metal),
      ),
    ];
  }).flat();
}

function resultRows(choices: readonly Choice[], row: MakeRow): Row[] {
  const under = choices.map(({ attitude }) => hangs(attitude));
  const afloat = (value: (choice: Choice) => string) => (choice: Choice) =>
    hangs(choice.attitude) ? '–' : value(choice);
  const heights = [
    row(
      'freeboard nose, mm',
      afloat(({ attitude }) => spelled(attitude.freeboardNoseMm, 1)),
    ),
    row(
      'freeboard tail, mm',
      afloat(({ attitude }) => spelled(attitude.freeboardTailMm, 1)),
    ),
    row(
      'above water, %',
      afloat(({ attitude }) => spelled(100 * attitude.dryRatio, 1)),
    ),
  ];
  const stiffness = under.every(Boolean) ? 'B over G, mm' : 'GM across, mm';
  return [
    row('mass, g', ({ massG, spreadG }) => `${spelled(massG, 2)} ± ${spelled(spreadG, 1)}`, {
      ruled: true,
    }),
    row('trim, + nose up', ({ attitude }) => `${spelled(attitude.trimDeg, 1)}°`),
    ...(under.every(Boolean) ? [] : heights),
    row(stiffness, ({ attitude }) => spelled(attitude.gmAcrossMm, 2)),
    ...speedRows(choices, row),
  ];
}

function speedRows(choices: readonly Choice[], row: MakeRow): Row[] {
  const of = (spell: (speed: DrawnSpeed) => string | null) => (choice: Choice) =>
    (choice.speed && spell(choice.speed)) ?? '–';
  const speeds = choices.flatMap(({ speed }) => speed ?? []);
  return [
    ...(speeds.length > 0 ? [row('speed, cm/s', of(speedFigures))] : []),
    ...(speeds.some((speed) => underWayWords(speed) !== null)
      ? [row('under way', of(underWayWords))]
      : []),
  ];
}

/** One row a change any choice tells of: degrees of trim, and mm of freeboard at nose and tail, or grams under water. */
function sensitivityRows(choices: readonly Choice[], row: MakeRow, widthMm: number): Row[] {
  const changes = [...new Set(choices.flatMap((c) => c.sensitivity.map(({ per }) => per)))];
  if (changes.length === 0) return [];
  return [
    row(
      'what changes it',
      ({ attitude }) => (hangs(attitude) ? 'trim, mass' : 'trim, nose, tail'),
      { ruled: true },
    ),
    ...changes.map((per) =>
      row(per, ({ attitude, sensitivity }) => {
        const found = sensitivity.find((s) => s.per === per);
        return found ? effect(found, hangs(attitude), widthMm) : '–';
      }),
    ),
  ];
}

/** To two decimals, or to one where two do not fit. */
function effect(s: DrawnSensitivity, under: boolean, widthMm: number): string {
  const text = (decimals: number) =>
    [
      s.trimDeg === null ? '–' : `${signed(s.trimDeg, decimals)}°`,
      ...(under
        ? [`${signed(s.massG, decimals)} g`]
        : [signed(s.freeboardNoseMm, decimals), signed(s.freeboardTailMm, decimals)]),
    ].join(', ');
  return textWidthMm(text(2), SIZES.note) <= widthMm ? text(2) : text(1);
}

const signed = (value: number, decimals: number): string =>
  value > 0 && Number(value.toFixed(decimals)) !== 0
    ? `+${spelled(value, decimals)}`
    : spelled(value, decimals);
