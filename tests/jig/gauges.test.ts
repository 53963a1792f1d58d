import { describe, expect, test } from 'vitest';
import type { GaugesSetup } from '../../src/jig/gauges/setup.js';
import { makeJigs } from '../../src/jig/set.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { designOf, MATERIALS, patternOf } from '../mass/lures.js';
import { gaugesSetup, printer } from './set-ups.js';

const kernel = await loadKernel();
const workOf = (name: string) => ({ ...designOf(patternOf(name)), materials: MATERIALS });
const set = (changed: Partial<GaugesSetup> = {}) => ({
  printer,
  setup: { ...gaugesSetup, ...changed },
});
const madeOf = (name: string, changed: Partial<GaugesSetup> = {}) => {
  const { setup } = set(changed);
  return makeJigs(kernel, workOf(name), { printer, byKind: { gauges: setup } });
};

describe.each(['diver', 'slim', 'plain'])('%s', (name) => {
  const { jigs, problems } = madeOf(name);

  test('five section gauges and two profile gauges pass every check', () => {
    expect(problems).toEqual([]);
    expect(jigs.map((j) => `${j.jig.kind}-${j.jig.part}`)).toEqual([
      ...[1, 2, 3, 4, 5].map((n) => `section-gauge-${n}`),
      'profile-gauge-back',
      'profile-gauge-belly',
    ]);
    for (const { measured } of jigs) expect(measured.edgeErrorMm).toBeLessThan(0.05);
  });
});
