/**
 * What stands under the drawing on every page: title and file, sentences in columns, two bars to lay a
 * rule on, which page this is, and a map of the pages of the drawing.
 */
import type { PageItem } from '../formats/pdf.js';
import { polyline } from '../geometry/arcpath.js';
import { rectRing } from '../geometry/ring.js';
import type { Box, Point2 } from '../geometry/vec.js';
import type { Frame } from './frame.js';
import type { Bar, Leaflet } from './paper-file.js';
import { INK, lineItem, PAPER, PENS } from './pens.js';
import { fitted, LINE_MM, linesOf, TEXT_MM, TITLE_MM, textItem } from './words.js';

/** A page among those of its drawing. */
export type Place = {
  readonly number: number;
  readonly of: number;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
};

export type Footer = { readonly items: readonly PageItem[]; readonly bars: readonly Bar[] };

/** Lengths of the bars, mm: 4 in is 101.6 mm exactly (international yard and pound, 1959). */
const BARS = [
  { lengthMm: 101.6, name: '4 in', stepMm: 12.7 },
  { lengthMm: 100, name: '100 mm', stepMm: 10 },
] as const;
/** Height of a bar's axis over the footer's lower edge; the bars with their names are so wide. */
const BAR_Y_MM = [2.5, 8.5] as const;
export const BARS_WIDE_MM = 121;
const BARS_HIGH_MM = 14;
/** Room for the words that say which page it is, and for the map beside them. */
const [PLACE_WIDE_MM, MAP_WIDE_MM, MAP_HIGH_MM] = [34, 24, 12];
const COLUMN_MM = 88; // least width of a column of sentences
const GUTTER_MM = 5;
const TITLE_ROW_MM = 6.5;

type Measures = {
  readonly columns: readonly (readonly string[])[];
  readonly columnMm: number;
  /** The words of the place stand beside the bars, not over them. */
  readonly isBeside: boolean;
  readonly heightMm: number;
};

function measured({ clear: [left, , right] }: Frame, notes: readonly string[]): Measures {
  const wide = right - left;
  const count = Math.max(1, Math.floor((wide + GUTTER_MM) / (COLUMN_MM + GUTTER_MM)));
  const columnMm = (wide + GUTTER_MM) / count - GUTTER_MM;
  const sentences = notes.map((note) => linesOf(note, columnMm));
  const columns = inColumns(sentences, count);
  const rows = Math.max(...columns.map((c) => c.length));
  const isBeside = wide >= BARS_WIDE_MM + PLACE_WIDE_MM + MAP_WIDE_MM;
  const low = BARS_HIGH_MM + (isBeside ? 0 : MAP_HIGH_MM + 1);
  return { columns, columnMm, isBeside, heightMm: low + rows * LINE_MM + TITLE_ROW_MM };
}

/** Sentences whole in so many columns, the highest column as low as it can be. */
function inColumns(sentences: readonly (readonly string[])[], count: number): string[][] {
  const all = sentences.reduce((sum, s) => sum + s.length, 0);
  for (let most = Math.ceil(all / count); ; most++) {
    const columns: string[][] = [[]];
    for (const lines of sentences) {
      const last = columns[columns.length - 1];
      if (last.length > 0 && last.length + lines.length > most) columns.push([...lines]);
      else last.push(...lines);
    }
    if (columns.length <= count) return columns;
  }
}

/** What stands on every page, whatever the drawing. */
export const footerHeight = (frame: Frame, { notes }: Leaflet): number =>
  measured(frame, notes).heightMm;

export function footer(frame: Frame, leaflet: Leaflet, place: Place): Footer {
  const { columns, columnMm, isBeside, heightMm } = measured(frame, leaflet.notes);
  const [left, bottom, right] = frame.clear;
  const top = bottom + heightMm;
  const placeAt: Point2 = isBeside
    ? [left + BARS_WIDE_MM, bottom + 1.5]
    : [left, bottom + BARS_HIGH_MM + 2];
  const file = fitted(leaflet.file, TEXT_MM, (right - left) / 2);
  const bars = barsAt([left + 1, bottom]);
  return {
    bars,
    items: [
      lineItem([left, top], [right, top], PENS.mark),
      textItem(fitted(leaflet.title, TITLE_MM, (right - left) / 2, true), [left, top - 5], {
        sizeMm: TITLE_MM,
        bold: true,
      }),
      textItem(file, [right, top - 5], { anchor: 'end' }),
      ...columns.flatMap((lines, i) =>
        lines.map((line, k) =>
          textItem(line, [
            left + i * (columnMm + GUTTER_MM),
            top - TITLE_ROW_MM - LINE_MM * (k + 1) + 1,
          ]),
        ),
      ),
      ...bars.flatMap((bar, i) => barItems(bar, BARS[i])),
      ...placeItems(place, placeAt),
      ...mapItems(place, [
        right - MAP_WIDE_MM,
        placeAt[1] - 1,
        right,
        placeAt[1] - 1 + MAP_HIGH_MM,
      ]),
    ],
  };
}

const barsAt = ([x, y]: Point2): Bar[] =>
  BARS.map(({ lengthMm }, i) => ({
    lengthMm,
    fromMm: [x, y + BAR_Y_MM[i]],
    toMm: [x + lengthMm, y + BAR_Y_MM[i]],
  }));

const [END_MM, STEP_MM] = [1.8, 1]; // half a tick at an end, a tick between

/** A fine line with upright ends to lay a rule on, ticks between, its length beside it. */
function barItems({ fromMm: [x0, y], toMm }: Bar, { name, stepMm, lengthMm }: BarName) {
  const steps = Math.round(lengthMm / stepMm) - 1;
  return [
    lineItem([x0, y], toMm, PENS.mark),
    ...[x0, toMm[0]].map((x) => lineItem([x, y - END_MM], [x, y + END_MM], PENS.mark)),
    ...Array.from({ length: steps }, (_, i) => {
      const x = x0 + (i + 1) * stepMm;
      return lineItem([x, y], [x, y + STEP_MM], PENS.mark);
    }),
    textItem(name, [x0 + 104, y - 1]),
  ];
}

type BarName = (typeof BARS)[number];

function placeItems({ number, of, row, column, rows, columns }: Place, [x, y]: Point2): PageItem[] {
  const page = `Page ${number} of ${of}`;
  return [
    textItem('Print at 100 %', [x, y + 7.5], { bold: true }),
    textItem(page, [x, y + 3.4], { bold: true }),
    ...(rows * columns > 1 ? [textItem(`row ${row}, column ${column}`, [x, y - 0.5])] : []),
  ];
}

/** The pages of one drawing as they lie beside each other, this one black; none for a single page. */
function mapItems(place: Place, [left, bottom, right, top]: Box): PageItem[] {
  const { row, column, rows, columns } = place;
  if (rows * columns === 1) return [];
  const side = Math.min(8, (right - left) / columns, (top - bottom) / rows);
  return Array.from({ length: rows * columns }, (_, i): PageItem[] => {
    const [r, c] = [Math.floor(i / columns) + 1, (i % columns) + 1];
    const [x, y] = [right - (columns - c + 1) * side, top - r * side];
    const isThis = r === row && c === column;
    const number = i + 1 + place.number - ((row - 1) * columns + column);
    const sizeMm = Math.min(TEXT_MM, 0.6 * side);
    const cell: PageItem = {
      kind: 'path',
      path: polyline(rectRing(x, y, x + side, y + side), true),
      pen: PENS.mark,
      fill: isThis ? INK : null,
    };
    const at: Point2 = [x + side / 2, y + side / 2 - 0.36 * sizeMm];
    const words = textItem(String(number), at, { sizeMm, anchor: 'middle' });
    const isLegible = sizeMm >= 1.8;
    return [cell, ...(isLegible ? [{ ...words, tone: isThis ? PAPER : INK }] : [])];
  }).flat();
}
