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
 * The text with the values of some top-level keys exchanged; a key that is not there is added behind
 * the last. `remark` becomes a comment at the head, below a line for the editor. In a file written in
 * braces (JSON is such YAML) values are written so too.
 */
export function rewritten(
  text: string,
  source: Source,
  changes: readonly Change[],
  remark: string,
): string {
  const { braces, end } = source.root;
  const value = braces ? braceText : blockText;
  const spans = changes.map((change) => ({ change, span: source.behindKey(change.key) }));
  const edits = spans.flatMap(({ change, span }) => {
    if (!span) return [];
    const old = text.slice(span.from, span.to).trimEnd();
    return [{ from: span.from, to: span.from + old.length, text: `:${value(change)}` }];
  });
  const added = spans
    .filter(({ span }) => span === null)
    .map(({ change }) =>
      braces
        ? `, ${JSON.stringify(change.key)}:${value(change)}`
        : `\n${change.key}:${value(change)}`,
    );
  const last = text.slice(0, end).trimEnd().length;
  if (added.length > 0) edits.push({ from: last, to: last, text: added.join('') });
  let out = text;
  // From the end, and what is put behind an entry before the entry itself, so that no place moves.
  for (const edit of edits.sort((a, b) => b.from - a.from || b.to - a.to))
    out = out.slice(0, edit.from) + edit.text + out.slice(edit.to);
  const made = headed(out, remark);
  return text.includes('\r\n') ? made.replace(/\r?\n/g, '\r\n') : made;
}

const isList = ({ lines }: Change): boolean => lines[0]?.startsWith('- ') ?? false;
const isMapping = ({ lines }: Change): boolean => /^\w+: /.test(lines[0] ?? '');

function blockText(change: Change): string {
  if (!isList(change) && !isMapping(change)) return ` ${change.lines.join(' ')}`;
  return change.lines.map((l) => `\n  ${l}`).join('');
}

function braceText(change: Change): string {
  if (isList(change)) return ` [${change.lines.map((l) => l.slice(2)).join(', ')}]`;
  return isMapping(change) ? ` { ${change.lines.join(', ')} }` : ` ${change.lines.join(' ')}`;
}

function headed(text: string, remark: string): string {
  // Below the line for the editor; a document mark must stay where it is, first.
  const first = /^(#[^\n]*\n|---[^\n]*\n)*/.exec(text)?.[0].length ?? 0;
  return `${text.slice(0, first)}# ${remark}\n${text.slice(first)}`;
}
