/**
 * What can be wrong, as facts. The sentence is made in `catalog/` and `messages.ts`; only the command line knows
 * exit codes.
 */
import type { ProblemCode } from './messages.js';

/** A path of keys and list indices into a parameter file, e.g. `['body', 'offsets', 2, 'backMm']`. */
export type KeyPath = readonly (string | number)[];

/** The facts of one problem: code and numbers, no prose. Numbers carry their unit in the fact's name. */
export type Problem = {
  readonly code: ProblemCode;
  readonly path: KeyPath;
  readonly facts: Readonly<Record<string, string | number>>;
  /** Where in which file; absent when a problem does not come from a file's text. */
  readonly at?: Place;
  /** The command line's option that said it, in place of a place in a file. */
  readonly option?: string;
};

/** A place in a text file; line and column count from 1. */
export type Place = { readonly file: string; readonly line: number; readonly column: number };

const START: Place = { file: '', line: 0, column: 0 };

/** In order of file, line and column; for sorting. */
export function byPlace(a: Problem, b: Problem): number {
  const [p, q] = [a.at ?? START, b.at ?? START];
  if (p.file !== q.file) return p.file < q.file ? -1 : 1;
  return p.line - q.line || p.column - q.column || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0);
}

export const problem = (
  code: ProblemCode,
  path: KeyPath = [],
  facts: Readonly<Record<string, string | number>> = {},
): Problem => ({ code, path, facts });

/**
 * An invariant of ours that failed: never the maker's fault. The command line turns it into exit
 * code 70 and says what to send.
 */
export class Fault extends Error {
  override readonly name = 'Fault';
}

/** What a check of ours finds is our fault, never the maker's. @throws Fault unless there are no complaints */
export function assertNone(complaints: readonly string[]): void {
  if (complaints.length > 0)
    throw new Fault(`checks failed:\n${complaints.map((c) => `  ${c}`).join('\n')}`);
}
