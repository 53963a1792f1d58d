/** How the width of a table is shared out among its columns, alike in every format. */
import type { Inlines, Table } from '../sheet/document.js';

/** Least share of a column of lengths that stand with their inches: `(16 17/32 in)` on one line. */
const INCHES_SHARE: number = 0.115;

/** Shares of the width, together 1. Columns with inches take what they need from the others. */
export function columnShares({ columns, rows }: Table, inches: boolean): readonly number[] {
  const sum = columns.reduce((all, c) => all + c.share, 0);
  const shares = columns.map((c) => c.share / sum);
  if (!inches) return shares;
  const needs = shares.map((share, i) =>
    share < INCHES_SHARE && rows.some((row) => hasInches(row[i])) ? INCHES_SHARE : 0,
  );
  const needed = needs.reduce((all, need) => all + need, 0);
  const others = shares.reduce((all, share, i) => (needs[i] > 0 ? all : all + share), 0);
  return shares.map((share, i) => (needs[i] > 0 ? needs[i] : (share / others) * (1 - needed)));
}

const hasInches = (cell: Inlines): boolean =>
  cell.some((inline) => inline.kind === 'quantity' && inline.inches !== null);
