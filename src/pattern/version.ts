/** A pattern file → the text of its next version: only what changes is touched, comments and spacing stay. */
import type { Source } from './source.js';

/** A key of the top level and the YAML of its new value, one line an entry where it has several. */
export type Change = { readonly key: string; readonly lines: readonly string[] };

/** The version after one: the last number goes up by one, a letter behind it falls away. */
export function nextVersion(version: string): string {
  const parts = version.replace(/[a-z]$/, '').split('.');
  return [...parts.slice(0, -1), String(Number(parts[parts.length - 1]) + 1)].join('.');
}

/**
 * The text with the values of some top-level keys exchanged; a key that is not there is added at the
 * end. `remark` becomes a comment at the head, below a line for the editor.
 */
export function rewritten(
  text: string,
  source: Source,
  changes: readonly Change[],
  remark: string,
): string {
  const spans = changes.map((change) => ({ change, span: source.behindKey(change.key) }));
  const missing = spans.filter((s) => s.span === null).map((s) => s.change);
  const there = spans
    .flatMap(({ change, span }) => (span ? [{ change, span }] : []))
    .sort((a, b) => b.span.from - a.span.from);
  let out = text;
  for (const { change, span } of there) {
    const old = out.slice(span.from, span.to).trimEnd();
    out = `${out.slice(0, span.from)}:${valueText(change)}${out.slice(span.from + old.length)}`;
  }
  const added = missing.map((change) => `${change.key}:${valueText(change)}\n`).join('');
  const end = out.endsWith('\n') || out === '' ? out : `${out}\n`;
  return headed(end + added, remark);
}

const valueText = ({ lines }: Change): string =>
  lines.length === 1 && !lines[0].startsWith('- ') && !/^\w+: /.test(lines[0])
    ? ` ${lines[0]}`
    : lines.map((l) => `\n  ${l}`).join('');

function headed(text: string, remark: string): string {
  const first = text.startsWith('#') ? text.indexOf('\n') + 1 : 0;
  return `${text.slice(0, first)}# ${remark}\n${text.slice(first)}`;
}
