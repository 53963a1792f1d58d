/**
 * Every problem this program can tell of, in words. Stages give facts; the catalog alone makes
 * sentences, so that they read alike and other languages can follow.
 */
import { cuttingProblems } from './catalog/cutting.js';
import { designProblems } from './catalog/design.js';
import type { Entry } from './catalog/entry.js';
import { formProblems } from './catalog/form.js';
import { jigsProblems } from './catalog/jigs.js';
import { offsetsProblems } from './catalog/offsets.js';
import { paperProblems } from './catalog/paper.js';
import { readingProblems } from './catalog/reading.js';
import { runProblems } from './catalog/run.js';
import { sheetProblems } from './catalog/sheet.js';
import { shopProblems } from './catalog/shop.js';
import { writingProblems } from './catalog/writing.js';

const entries = {
  ...readingProblems,
  ...formProblems,
  ...offsetsProblems,
  ...designProblems,
  ...runProblems,
  ...cuttingProblems,
  ...jigsProblems,
  ...shopProblems,
  ...sheetProblems,
  ...paperProblems,
  ...writingProblems,
};

export type ProblemCode = keyof typeof entries;

export const CATALOG: Readonly<Record<ProblemCode, Entry>> = entries;

export const PROBLEM_CODES = Object.keys(entries) as readonly ProblemCode[];

/** An error keeps everything from being made; a warning stands beside what is made. */
export const isError = ({ code }: { readonly code: ProblemCode }): boolean =>
  CATALOG[code].severity === 'error';

/** One problem in words. */
export type Told = {
  readonly severity: Entry['severity'];
  readonly what: string;
  readonly limit: string;
  readonly from: string;
  readonly fix: string;
};

export function tell(code: ProblemCode, facts: Readonly<Record<string, string | number>>): Told {
  const { severity, what, limit, from, fix } = CATALOG[code];
  const fill = (text: string): string =>
    text.replace(/\{(\w+)\}/g, (_, name: string) => spoken(facts[name]));
  return { severity, what: fill(what), limit: fill(limit), from: fill(from), fix: fill(fix) };
}

/** Numbers to three decimals at most, without trailing zeros. */
function spoken(fact: string | number | undefined): string {
  if (typeof fact !== 'number') return fact ?? '?';
  return Number.isFinite(fact) ? String(Math.round(fact * 1000) / 1000 + 0) : String(fact);
}
