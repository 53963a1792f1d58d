/** A table on sheets of its own, in columns side by side. */
import { roomOf, type SheetOf } from './frame.js';
import type { ViewsInput } from './input.js';
import { drawnTable, mostRows, type Row, type Table, tableWidthMm } from './table.js';

const GAP_MM = 8;

export function tableSheets(
  table: Table,
  title: string,
  input: Pick<ViewsInput, 'name' | 'sheet'>,
): readonly SheetOf[] {
  const [left, low, right, top] = roomOf(input);
  const wide = tableWidthMm(table) + GAP_MM;
  const columns = Math.floor((right - left + GAP_MM) / wide);
  const pieces = rowPieces(table.rows, mostRows(table, top - low));
  return inPieces(pieces, columns).map((onSheet) => ({
    title,
    scale: null,
    key: [],
    description: `${title} of ${input.name}, ${table.rows.length} rows.`,
    shapes: onSheet.flatMap((rows, i) => drawnTable({ ...table, rows }, [left + i * wide, top])),
  }));
}

/** So many rows at most, none parted from the one it goes on from. */
function rowPieces(rows: readonly Row[], most: number): readonly (readonly Row[])[] {
  if (rows.length <= most) return [rows];
  const back = [...rows.slice(1, most + 1)].reverse().findIndex(([first]) => first !== '');
  const cut = back < 0 ? most : most - back;
  return [rows.slice(0, cut), ...rowPieces(rows.slice(cut), most)];
}

const inPieces = <T>(all: readonly T[], most: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(all.length / most) }, (_, i) =>
    all.slice(i * most, (i + 1) * most),
  );
