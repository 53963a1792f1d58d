import { expect, test } from 'vitest';
import { wishProblems } from '../../src/pattern/wish-rules.js';
import { type WishFile, wishSection } from '../../src/pattern/wish-schema.js';

const told = (given: Partial<WishFile>) =>
  wishProblems(wishSection.parse(given)).map(({ code, path, facts }) => ({ code, path, facts }));

test.each<Partial<WishFile>>([
  { buoyancy: 'floats' },
  { buoyancy: 'floats', freeboardMm: 4 },
  { buoyancy: 'floats', dryRatio: 0.1, noseDownDeg: 5 },
  { buoyancy: 'suspends', noseDownDeg: -5 },
  { buoyancy: 'rises', speedCmS: 5 },
  { buoyancy: 'sinks', speedCmS: 20 },
])('$buoyancy goes together', (given) => expect(told(given)).toEqual([]));

test.each<{ given: Partial<WishFile>; key: string; first: string; second: string }>([
  {
    given: { buoyancy: 'floats', freeboardMm: 4, dryRatio: 0.1 },
    key: 'dryRatio',
    first: 'freeboardMm 4',
    second: 'dryRatio 0.1',
  },
  {
    given: { buoyancy: 'floats', speedCmS: 5 },
    key: 'speedCmS',
    first: 'buoyancy floats',
    second: 'speedCmS 5',
  },
  {
    given: { buoyancy: 'suspends', speedCmS: 5 },
    key: 'speedCmS',
    first: 'buoyancy suspends',
    second: 'speedCmS 5',
  },
  {
    given: { buoyancy: 'suspends', freeboardMm: 3 },
    key: 'freeboardMm',
    first: 'buoyancy suspends',
    second: 'freeboardMm 3',
  },
  {
    given: { buoyancy: 'sinks', speedCmS: 9, dryRatio: 0.2 },
    key: 'dryRatio',
    first: 'buoyancy sinks',
    second: 'dryRatio 0.2',
  },
])('$first and $second', ({ given, key, first, second }) => {
  const problems = told(given);
  expect(problems).toMatchObject([
    { code: 'wish-contradicts', path: ['wish', key], facts: { first, second } },
  ]);
  expect(problems[0].facts.why).toMatch(/\w/);
});

test.each(['rises', 'sinks'] as const)('%s without a speed', (buoyancy) => {
  expect(told({ buoyancy })).toEqual([
    { code: 'wish-incomplete', path: ['wish'], facts: { buoyancy } },
  ]);
});

test('all problems are told', () => {
  const wish = { buoyancy: 'rises', freeboardMm: 3, dryRatio: 0.1 } as const;
  expect(told(wish).map(({ code }) => code)).toEqual([
    'wish-contradicts',
    'wish-contradicts',
    'wish-incomplete',
  ]);
});
