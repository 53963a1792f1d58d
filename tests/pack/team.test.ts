/** Teams of threads. They start the built program's threads, so the built files are tested here. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, test } from 'vitest';
import { problemOf, readInstance } from '../../src/bench/nest-instance.js';
import type { StripLayout } from '../../src/pack/strip.js';
import type { TeamOptions } from '../../src/pack/team.js';
import { BLAZ1_TEXT } from './stars.js';

const built = pathToFileURL(join(import.meta.dirname, '../../dist/pack/team.js')).href;
const { packStrip }: typeof import('../../src/pack/team.js') = await import(built);

const problem = problemOf(readInstance('blaz1', BLAZ1_TEXT));
/** One round of 400 000 places a thread, the least there is. */
const options: TeamOptions = {
  threads: 2,
  seed: 1,
  budget: { kind: 'looks', looksPerThread: 400_000 },
};

describe('two threads with a budget in places looked at', () => {
  test('give the same layout twice, and tell of it', async () => {
    const told: StripLayout[] = [];
    const one = await packStrip(problem, { ...options, onBest: (l) => told.push(l) });
    const other = await packStrip(problem, options);
    expect(one).not.toBeNull();
    expect(other).toEqual(one);
    expect(told[told.length - 1]).toEqual(one);
    for (let n = 1; n < told.length; n++) expect(told[n].length).toBeLessThan(told[n - 1].length);
  });

  test('give the better of both: never longer than the first alone', async () => {
    const [both, first, second] = await Promise.all([
      packStrip(problem, options),
      packStrip(problem, { ...options, threads: 1 }),
      packStrip(problem, { ...options, threads: 1, seed: 2 }),
    ]);
    if (!both || !first || !second) throw new Error('no layout');
    expect(both.length).toBe(Math.min(first.length, second.length));
  });
});

test('told to stop, a team ends with its best', async () => {
  let asked = 0;
  const endless = { kind: 'looks', looksPerThread: 1e12 } as const;
  const layout = await packStrip(problem, {
    ...options,
    threads: 1,
    budget: endless,
    shouldStop: () => ++asked > 1,
  });
  expect(asked).toBe(2);
  expect(layout).not.toBeNull();
});

test('a budget in seconds is over when the clock says so', async () => {
  let clock = 100;
  const now = (): number => {
    clock += 4;
    return clock;
  };
  const budget = { kind: 'seconds', seconds: 10, start: 100, now } as const;
  expect(await packStrip(problem, { ...options, threads: 1, budget })).not.toBeNull();
  // Of 10 s, 4 and 8 are within; 12 are not.
  expect(clock).toBe(112);
});

test('where nothing can be shorter a team ends at once', async () => {
  const bar = {
    strip_height: 2,
    items: [
      {
        demand: 1,
        shape: {
          data: [
            [0, 0],
            [5, 0],
            [5, 1],
          ],
        },
      },
    ],
  };
  const endless = { kind: 'looks', looksPerThread: 1e12 } as const;
  const alone = problemOf(readInstance('bar', JSON.stringify(bar)));
  const layout = await packStrip(alone, { ...options, budget: endless });
  expect(layout?.length).toBeCloseTo(5, 9);
});

test('what fails in a thread fails the search', async () => {
  const low = { ...problem, height: 1, start: null };
  await expect(packStrip(low, options)).rejects.toThrow('higher than the strip');
});
