/** A run's file nested alone, timber by timber. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Workshop } from '../../src/job.js';
import { load } from '../../src/load.js';
import type { BestSoFar } from '../../src/nest/search.js';
import { type Effort, type NestedJob, nestJob } from '../../src/nested.js';
import { SEARCH } from './outlines.js';

const ROOT = join(import.meta.dirname, '../..');
const { job } = load(join(ROOT, 'templates/first-ice.yaml'));
if (!job) throw new Error('the shipped run cannot be read');
const QUICK: Effort = { tries: 2, seed: 1, layouts: 6 };
const ORDERED = 22 + 8 + 16 + 10;

describe('a run nested alone', () => {
  const told: BestSoFar[] = [];
  let nested: NestedJob;
  beforeAll(() => {
    const search = { ...SEARCH, tell: (best: BestSoFar) => told.push(best) };
    nested = nestJob(job, job.workshop as Workshop, search, QUICK);
  });

  it('makes the order, and tells the limit of each pattern', () => {
    const { nest, blanks, findings } = nested;
    expect(findings).toEqual([]);
    expect(nest?.missing).toEqual({});
    expect(Object.keys(nest?.limitRatios ?? {}).sort()).toEqual(blanks.map((b) => b.name).sort());
  });

  it('tells all timbers as one: blanks and timber only grow from one to the next', () => {
    expect(told.length).toBeGreaterThan(1);
    expect(new Set(told.map((b) => b.blanks)).size).toBe(2);
    expect(told.at(-1)).toEqual({
      timberUsedMm3: nested.nest?.timberUsedMm3,
      blanks: ORDERED,
    });
  });

  it('still makes the order when the time is up at once', () => {
    const { nest } = nestJob(job, job.workshop as Workshop, SEARCH, {
      ...QUICK,
      isTimeUp: () => true,
    });
    expect(nest?.missing).toEqual({});
    expect(nest).toMatchObject({ limitReached: true, interrupted: false });
  });

  it('needs no solid kernel', () => {
    const reached = new Set<string>();
    const visit = (file: string): void => {
      if (reached.has(file)) return;
      reached.add(file);
      const text = readFileSync(join(ROOT, 'src', file), 'utf8').replace(/import type [^;]*;/g, '');
      for (const [, to] of text.matchAll(/from '(\.[^']+)\.js'/g))
        visit(join(dirname(file), `${to}.ts`));
    };
    visit('commands/nest.ts');
    expect(reached.has('nest/plan.ts')).toBe(true);
    expect([...reached].filter((f) => f.startsWith('solid/'))).toEqual([]);
  });
});
