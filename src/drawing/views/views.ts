/** All sheets of a pattern's views. */
import type { Picture } from '../picture/picture.js';
import { arrangementSheets } from './arrangement-sheets.js';
import { framed } from './frame.js';
import type { ViewsInput } from './input.js';
import { linesSheet } from './lines-sheet.js';
import { offsetTable } from './offset-table.js';
import { offsetRows } from './offsets.js';
import { printableInput } from './printable.js';
import { schedule } from './schedule.js';
import { tableSheets } from './table-sheets.js';

/** Lines, arrangement and, where a table has no room beside them, sheets of it. Notes stand under the arrangement, or beside the lines. */
export function viewSheets(given: ViewsInput): readonly Picture[] {
  const input = printableInput(given);
  const rows = offsetRows(input.pattern, input.shape);
  const offsets = offsetTable(rows, input.inches);
  const places = schedule(input);
  const arrangement = arrangementSheets(input, places);
  const lines = linesSheet(input, { rows, offsets, withNotes: !arrangement.hasNotes });
  const sheets = [
    lines,
    ...arrangement.sheets,
    ...(lines.hasTable ? [] : tableSheets(offsets, 'Table of offsets', input)),
  ];
  return sheets.map((sheet, i) => framed(input, sheet, { number: i + 1, of: sheets.length }));
}
