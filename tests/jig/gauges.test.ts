import { describe, expect, test } from 'vitest';
import { checkJig } from '../../src/jig/check.js';
import { checkGauge } from '../../src/jig/gauges/check.js';
import type { GaugeJig, SectionGaugeJig } from '../../src/jig/gauges/jig.js';
import { gaugeJigs } from '../../src/jig/gauges/make.js';
import type { GaugesSetup } from '../../src/jig/gauges/setup.js';
import { makeJigs } from '../../src/jig/set.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { placement } from '../../src/solid/placement.js';
import { designOf, MATERIALS, patternOf } from '../mass/lures.js';
import { gaugesSetup, printer } from './set-ups.js';

const kernel = await loadKernel();
const workOf = (name: string) => ({
  ...designOf(patternOf(name)),
  materials: MATERIALS,
  shapedCgMm: [0, 0, 0] as const,
});
const diver = workOf('diver');
const outcome = (changed: Partial<GaugesSetup>) =>
  gaugeJigs(kernel, diver, { printer, setup: { ...gaugesSetup, ...changed } });

test.each(['diver', 'slim'])('%s: section and profile gauges pass every check', (name) => {
  const work = workOf(name);
  const { jigs, problems } = makeJigs(kernel, work, {
    asked: true,
    printer,
    byKind: { gauges: gaugesSetup },
  });
  expect(problems).toEqual([]);
  expect(jigs.map(({ jig }) => `${jig.kind}-${jig.part}`)).toEqual([
    ...[1, 2, 3, 4, 5].map((n) => `section-gauge-${n}`),
    'profile-gauge-back',
    'profile-gauge-belly',
  ]);
  for (const { measured, jig } of jigs) {
    expect(measured.edgeErrorMm).toBeLessThan(0.02);
    expect(jig.letters.every((l) => l.heightMm >= gaugesSetup.letters.leastHeightMm)).toBe(true);
  }
});

test('a section gauge says its number and station, a profile gauge each number', () => {
  const { jigs } = outcome({ stations: 2 });
  const texts = jigs.map((j) => j.letters.map((l) => l.text));
  const [first] = jigs as readonly SectionGaugeJig[];
  expect(texts[0]).toEqual([`1 S ${first.stationMm}`, 'DIVER V1.3']);
  expect(texts[2]).toEqual(['DIVER V1.3 BACK', '1', '2', 'NOSE', 'TAIL']);
});

test('on a small bed a profile gauge comes in lengths that fit, overlap and share its ticks', () => {
  const bed = { xMm: 70, yMm: 60, zMm: 60 };
  const { jigs } = outcome({ bed });
  const backs = jigs.filter((j) => j.kind === 'profile-gauge' && j.side === 'back');
  expect(backs.map((j) => j.part)).toEqual(['back-1', 'back-2', 'back-3']);
  const stretches = backs.map((j) => j as Extract<GaugeJig, { kind: 'profile-gauge' }>);
  for (const [i, { fromMm, toMm, sizeMm }] of stretches.entries()) {
    expect(sizeMm[0]).toBeLessThanOrEqual(70.001);
    if (i > 0) expect(stretches[i - 1].toMm - fromMm).toBeCloseTo(gaugesSetup.overlapMm, 9);
    expect(toMm - fromMm).toBeCloseTo(sizeMm[0], 3);
  }
  const ticked = new Set(stretches.flatMap((s) => s.stationsMm));
  expect(ticked.size).toBe(5);
});

describe('damage', () => {
  const { jigs } = outcome({ stations: 1 });
  const [section, back] = jigs;
  const judged = (jig: GaugeJig) =>
    checkGauge(kernel, jig, diver, gaugesSetup).flaws.map((f) => f.code);
  const shifted = (jig: GaugeJig, by: readonly [number, number, number]): GaugeJig => {
    const m = jig.jigToBlank;
    const [x, y, z] = [0, 4, 8].map((i) => [m[i], m[i + 1], m[i + 2]] as const);
    return {
      ...jig,
      jigToBlank: placement(x, y, z, [m[12] + by[0], m[13] + by[1], m[14] + by[2]]),
    };
  };

  test('none is found where there is none', () => {
    expect(jigs.flatMap(judged)).toEqual([]);
  });

  test('a plate that stands out from the center plane, is moved up or along', () => {
    expect(judged(shifted(section, [0, 0.05, 0]))).toContain('gauge-off-reference');
    expect(judged(shifted(section, [0, 0, 0.05]))).toEqual([
      'gauge-off-body',
      'gauge-off-reference',
    ]);
    expect(judged(shifted(section, [0.05, 0, 0]))).toEqual(['gauge-off-reference']);
  });

  test('a profile gauge that stands off the back', () => {
    expect(judged(shifted(back, [0, 0, 0.05]))).toEqual(['gauge-off-body', 'gauge-off-reference']);
    expect(judged(shifted(back, [0.2, 0, 0]))).toContain('gauge-off-body');
  });

  test('the gauge of another lure', () => {
    const other = workOf('slim');
    const codes = checkGauge(kernel, section, other, gaugesSetup).flaws.map((f) => f.code);
    expect(codes).toContain('gauge-off-body');
  });

  test('a plate pushed into the wood', () => {
    const deeper = shifted(section, [0, section.freeDirection?.[1] ?? 0, 0]);
    const codes = checkJig(kernel, deeper, diver).flaws.map((f) => f.code);
    expect(codes).toContain('blank-cannot-move');
  });
});

describe('what stands in the way', () => {
  test('a listed station beyond the tail', () => {
    expect(outcome({ stationsMm: [120] }).problems).toEqual([
      { code: 'gauge-station-outside', facts: { stationMm: 120, leastMm: 2, mostMm: 98 } },
    ]);
  });

  test('a plate thinner than letters and nozzle', () => {
    const [problem] = outcome({ thicknessMm: 0.9 }).problems;
    expect(problem.code).toBe('gauge-plate-thin');
    expect(problem.facts.leastMm).toBeCloseTo(1, 12);
    expect(outcome({ thicknessMm: 1, edgeMm: 0.4, stations: 1 }).problems).toEqual([]);
  });
});
