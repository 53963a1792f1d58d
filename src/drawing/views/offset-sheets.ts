/** The table of offsets on sheets of its own, in columns side by side. */
import { ROOM, type SheetOf } from './frame.js';
import type { ViewsInput } from './input.js';
import { offsetTable } from './offset-table.js';
import { offsetRows } from './offsets.js';
import { drawnTable, mostRows, tableWidthMm } from './table.js';

const GAP_MM = 8;

export function offsetSheets(input: ViewsInput): readonly SheetOf[] {
  const table = offsetTable(offsetRows(input.pattern, input.shape), input.inches);
  const [left, low, right, top] = ROOM;
  const each = mostRows(table, top - low);
  const wide = tableWidthMm(table) + GAP_MM;
  const columns = Math.floor((right - left + GAP_MM) / wide);
  const pieces = inPieces(table.rows, each);
  return inPieces(pieces, columns).map((onSheet) => ({
    title: 'Table of offsets',
    scale: null,
    key: [],
    description: `Table of offsets of ${input.name}, ${table.rows.length} stations.`,
    shapes: onSheet.flatMap((rows, i) => drawnTable({ ...table, rows }, [left + i * wide, top])),
  }));
}

const inPieces = <T>(all: readonly T[], most: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(all.length / most) }, (_, i) =>
    all.slice(i * most, (i + 1) * most),
  );
