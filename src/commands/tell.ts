/** Problems as a maker reads them, and as a program does. */

import { styleText } from 'node:util';
import { isError, tell } from '../messages.js';
import { keyText } from '../pattern/form.js';
import type { Problem } from '../problem.js';
import type { Terminal } from '../terminal.js';
import { soMany } from './so-many.js';

const MOST_SHOWN = 20;

/** Writes problems to standard error, the first twenty in full and a count of the rest. */
export function tellProblems(problems: readonly Problem[], { err, colored }: Terminal): void {
  for (const p of problems.slice(0, MOST_SHOWN)) err(`${inWords(p, colored)}\n`);
  const more = problems.length - MOST_SHOWN;
  if (more > 0) err(`… and ${more} more.\n`);
}

function inWords(p: Problem, colored: boolean): string {
  const { severity, what, limit, from, fix } = tell(p.code, p.facts);
  const place = p.at
    ? `${p.at.file}:${p.at.line}:${p.at.column}: `
    : p.option
      ? `${p.option}: `
      : '';
  const color = severity === 'error' ? 'red' : 'yellow';
  const word = colored ? styleText(color, severity, { validateStream: false }) : severity;
  const head = `${place}${word} ${p.code}`;
  return [head, `  ${what}`, `  Limit: ${limit} (From: ${from}.)`, `  To do: ${fix}`].join('\n');
}

/** `3 errors, 1 warning`. */
export function counted(problems: readonly Problem[]): string {
  const errors = problems.filter(isError).length;
  const warnings = problems.length - errors;
  const some = (n: number, word: string) => (n === 0 ? [] : [soMany(n, word)]);
  return [...some(errors, 'error'), ...some(warnings, 'warning')].join(', ');
}

/** Problems as plain data for `--json`. */
export const asData = (problems: readonly Problem[]): unknown[] =>
  problems.map(({ code, path, facts, at, option }) => ({
    code,
    file: at?.file ?? null,
    line: at?.line ?? null,
    column: at?.column ?? null,
    option: option ?? null,
    key: keyText(path),
    ...tell(code, facts),
    facts,
  }));
