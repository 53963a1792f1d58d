/** Rows of words in columns as wide as they need, for the terminal. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((h, i) => Math.max(h.length, ...rows.map((r) => r[i].length)));
  const line = (cells: readonly string[]) =>
    `  ${cells.map((c, i) => c.padEnd(widths[i])).join('  ')}`.trimEnd();
  return [head, ...rows].map(line).join('\n');
}
