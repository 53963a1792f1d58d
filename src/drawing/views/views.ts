/** All sheets of a pattern's views. */
import type { Picture } from '../picture/picture.js';
import { arrangementSheet } from './arrangement-sheet.js';
import { framed } from './frame.js';
import type { ViewsInput } from './input.js';
import { linesSheet } from './lines-sheet.js';
import { offsetSheets } from './offset-sheets.js';
import { printableInput } from './printable.js';

/** Lines, arrangement and, where the table of offsets has no room beside the lines, sheets of it. Notes stand under the arrangement, or beside the lines. */
export function viewSheets(given: ViewsInput): readonly Picture[] {
  const input = printableInput(given);
  const arrangement = arrangementSheet(input);
  const lines = linesSheet(input, { withNotes: !arrangement.hasNotes });
  const sheets = [lines, arrangement, ...(lines.hasTable ? [] : offsetSheets(input))];
  return sheets.map((sheet, i) => framed(input, sheet, { number: i + 1, of: sheets.length }));
}
