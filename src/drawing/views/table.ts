/** A table: a head over a rule, rows over thin rules, every entry cut to its column. */
import type { Point2 } from '../../geometry/vec.js';
import { type Anchor, type Shape, textWidthMm } from '../picture/picture.js';
import { fitted, SIZES } from '../picture/words.js';
import { ink } from './ink.js';

export type Column = {
  /** One or two lines. */
  readonly head: readonly string[];
  /** At least. */
  readonly widthMm: number;
  readonly anchor: Anchor;
};

/** One entry a column; the last of fewer runs on over the columns that are left. A row that begins with nothing goes on with the one before. */
export type Row = readonly string[];

const ROW_MM = SIZES.note * 1.4;
/** Between an entry and the side of its column. */
const INSET_MM = 1;
const TITLE_MM = 5.5;

export type Table = {
  readonly title: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** Under the last row. */
  readonly foot: readonly string[];
};

/** The columns, wider where their entries need it. */
export const widened = (columns: readonly Column[], rows: readonly Row[]): readonly Column[] =>
  columns.map((column, i) => {
    const entries = rows.flatMap((row) =>
      i < row.length - 1 || isFull(row, columns) ? [row[i]] : [],
    );
    const needs = [...column.head, ...entries].map((text) => textWidthMm(text, SIZES.note));
    return {
      ...column,
      widthMm: Math.max(column.widthMm, ...needs.map((mm) => mm + 2 * INSET_MM)),
    };
  });

const isFull = (row: Row, columns: readonly Column[]): boolean => row.length >= columns.length;

export const tableWidthMm = ({ columns }: Pick<Table, 'columns'>): number =>
  columns.reduce((sum, { widthMm }) => sum + widthMm, 0);

const headRows = (columns: readonly Column[]): number =>
  Math.max(...columns.map(({ head }) => head.length));

/** Height with so many rows, title and foot included. */
export const tableHeightMm = ({ columns, rows, foot }: Omit<Table, 'title'>): number =>
  TITLE_MM + (headRows(columns) + rows.length + foot.length) * ROW_MM + 1.5;

/** So many rows have room in a height. */
export const mostRows = (table: Table, heightMm: number): number =>
  Math.floor((heightMm - tableHeightMm({ ...table, rows: [] })) / ROW_MM);

/** `at` is the upper left corner. */
export function drawnTable({ title, columns, rows, foot }: Table, [left, top]: Point2): Shape[] {
  const width = tableWidthMm({ columns });
  const heads = headRows(columns);
  const baseline = (line: number) => top - TITLE_MM - (line + 0.72) * ROW_MM;
  const rule = (line: number, pen: 'hair' | 'fine') => {
    const y = top - TITLE_MM - line * ROW_MM;
    return ink(
      [
        [left, y],
        [left + width, y],
      ],
      pen,
    );
  };
  const lefts = columns.map((_, i) => left + tableWidthMm({ columns: columns.slice(0, i) }));
  const entry = (text: string, i: number, line: number, wide: boolean): Shape[] => {
    const to = wide ? left + width : lefts[i] + columns[i].widthMm;
    const anchor = wide ? 'start' : columns[i].anchor;
    const x =
      anchor === 'start'
        ? lefts[i] + INSET_MM
        : anchor === 'end'
          ? to - INSET_MM
          : (lefts[i] + to) / 2;
    return fitted(text, x, baseline(line), to - lefts[i] - 2 * INSET_MM, { anchor });
  };
  const all = heads + rows.length;
  return [
    ...fitted(title, left, top - 4, width, { size: 'title', bold: true }),
    ...columns.flatMap(({ head }, i) =>
      head.flatMap((text, k) => entry(text, i, heads - head.length + k, false)),
    ),
    rule(heads, 'fine'),
    ...rows.flatMap((row, k) => [
      ...row.flatMap((text, i) =>
        entry(text, i, heads + k, i === row.length - 1 && !isFull(row, columns)),
      ),
      ...(rows[k + 1]?.[0] === '' ? [] : [rule(heads + k + 1, rows[k + 1] ? 'hair' : 'fine')]),
    ]),
    ...foot.flatMap((text, k) => fitted(text, left, baseline(all + k) - 0.8, width)),
  ];
}
