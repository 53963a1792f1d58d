/** `blankwright explain WORD`: a parameter or a problem code, from the schemas' own descriptions. */
import { FILE_FORMATS } from '../file-formats.js';
import { CATALOG, PROBLEM_CODES, type ProblemCode } from '../messages.js';
import { type Parameter, parametersOf } from '../pattern/manual.js';
import { nearest } from '../pattern/nearest.js';
import { EXIT, jsonDocument, refuse, type Terminal } from '../terminal.js';

type Known = Parameter & { readonly file: string };

export async function explain(word: string, terminal: Terminal): Promise<number> {
  const parameters = FILE_FORMATS.flatMap(({ title, sections }) =>
    parametersOf(sections).map((p): Known => ({ ...p, file: title })),
  );
  const found = parameters.filter((p) => matches(p.key, word));
  const code = PROBLEM_CODES.find((c) => c === word) ?? null;
  if (found.length === 0 && code === null) return unknown(word, parameters, terminal);
  if (terminal.json) {
    const problem = code && { code, ...CATALOG[code] };
    terminal.out(jsonDocument({ command: 'explain', ok: true, word, parameters: found, problem }));
  } else {
    terminal.out([...found.map(parameterText), ...(code ? [codeText(code)] : [])].join('\n'));
  }
  return EXIT.done;
}

/** The whole key, its end, or its last word; list marks may be left out or hold an index. */
function matches(key: string, word: string): boolean {
  const plain = (text: string) => text.replace(/\[\d*\]/g, '');
  const [k, w] = [plain(key), plain(word)];
  return k === w || k.endsWith(`.${w}`);
}

function parameterText({ file, key, about, kind, required, preset }: Known): string {
  const need = required
    ? 'must be there'
    : preset === null
      ? 'may be left out'
      : `left out: ${preset}`;
  return `${key}  (${file})\n  ${about}\n  ${kind}; ${need}.\n`;
}

function codeText(code: ProblemCode): string {
  const { severity, about, limit, from, fix } = CATALOG[code];
  const open = (text: string) => text.replace(/\{(\w+)\}/g, '‹$1›');
  return [
    `${code}  (${severity})`,
    `  ${about}`,
    `  Limit: ${open(limit)} (From: ${open(from)}.)`,
    `  To do: ${open(fix)}`,
    '',
  ].join('\n');
}

function unknown(word: string, parameters: readonly Known[], terminal: Terminal): number {
  const words = [...new Set(parameters.flatMap((p) => [p.key, p.key.split('.').pop() as string]))];
  const holds = [...words, ...PROBLEM_CODES].filter(
    (w) => !w.includes('.') && w.toLowerCase().includes(word.toLowerCase().replace(/ /g, '-')),
  );
  const guess =
    holds.length > 0 ? holds.slice(0, 8).join(', ') : nearest(word, [...words, ...PROBLEM_CODES]);
  const hint = guess
    ? `Did you mean ${guess}?`
    : 'docs/parameters.md lists all parameters, docs/problems.md all codes.';
  const message = `There is no parameter and no problem code ${word}. ${hint}`;
  return refuse('explain', message, terminal);
}
