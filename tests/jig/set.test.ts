import { describe, expect, test } from 'vitest';
import { drawnPattern } from '../../src/bench/drawn-pattern.js';
import type { JigWork } from '../../src/jig/jig.js';
import { laidOut } from '../../src/jig/lay-out.js';
import { makeJigs } from '../../src/jig/set.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { setups, shippedWork, workOf } from './works.js';

const kernel = await loadKernel();
const skerry = shippedWork('skerry');
const { jigs, problems } = makeJigs(kernel, skerry, setups);

test('the whole set of a shipped pattern, each with its proof', () => {
  expect(problems).toEqual([]);
  expect([...new Set(jigs.map(({ jig }) => jig.kind))]).toEqual([
    'center-scribe',
    'lip-slot-guide',
    'drill-stop',
    'section-gauge',
    'profile-gauge',
    'sanding-cradle',
    'drying-comb',
  ]);
  for (const { jig, parts, proof } of jigs) {
    expect(jig.words.length, jig.kind).toBeGreaterThan(0);
    expect(jig.letters.length, jig.kind).toBeGreaterThan(0);
    expect(parts).toHaveLength(1);
    expect(proof.printing[0].supportAtMm, jig.kind).toBeNull();
    // Solid plastic of the printer file's density.
    const massG = jig.volumeMm3 * setups.printer.plasticDensityKgM3 * 1e-6;
    expect(parts[0].massG).toBeCloseTo(massG, 3);
  }
});

describe('what can not be made', () => {
  const thin = { ...skerry, blank: { ...skerry.blank, thicknessMm: 5 } };
  const scribe = { ...setups, byKind: { 'center-scribe': setups.byKind['center-scribe'] } };

  test('an aid nobody asked for is left out with a warning that says why', () => {
    const { jigs: made, problems: told } = makeJigs(kernel, thin, { ...scribe, asked: false });
    expect(made).toEqual([]);
    expect(told.map((p) => p.code)).toEqual(['jig-left-out']);
    expect(told[0].facts.reason).toContain('1.5 mm');
  });

  test('one that a run names is an error', () => {
    const { jigs: made, problems: told } = makeJigs(kernel, thin, { ...scribe, asked: true });
    expect(made).toEqual([]);
    expect(told.map((p) => p.code)).toEqual(['jig-rim-too-low']);
  });
});

test('a bed shorter than the jigs: pieces with pins, and they add up to the whole but for the bores', () => {
  const bed = { xMm: 120, yMm: 120, zMm: 200 };
  const small = { ...setups, printer: { ...setups.printer, bed } };
  const set = makeJigs(kernel, skerry, small);
  const split = set.jigs.filter(({ parts }) => parts.length > 1);
  expect(split.length).toBeGreaterThan(1);
  const { diameterMm, clearanceMm, lengthMm, endClearanceMm } = setups.printer.dowel;
  const boreMm3 = Math.PI * ((diameterMm + clearanceMm) / 2) ** 2 * (lengthMm + 2 * endClearanceMm);
  for (const { jig, parts, dowels } of split) {
    expect(dowels).toBeGreaterThanOrEqual(parts.length - 1);
    const volume = parts.reduce((sum, p) => sum + p.volumeMm3, 0);
    const missing = jig.volumeMm3 - volume;
    // A bore's prism contains its round hole.
    expect(missing).toBeGreaterThan(0.99 * dowels * boreMm3);
    expect(missing).toBeLessThan(1.1 * dowels * boreMm3);
  }
});

test('every part of a set lies on one bed of those laid out', () => {
  const parts = jigs.flatMap((j) => j.parts);
  const beds = laidOut(parts, setups.printer);
  expect(
    beds
      .flat()
      .map(({ part }) => part)
      .sort((a, b) => a - b),
  ).toEqual(parts.map((_, i) => i));
  const tight = laidOut(parts, { ...setups.printer, bed: { xMm: 200, yMm: 120, zMm: 100 } });
  expect(tight.length).toBeGreaterThan(beds.length);
});

test('a gauge whose cut runs so close along its plate that rounding makes the outline cross itself', () => {
  const work = workOf(drawnPattern(1, 10));
  expect(work).not.toBeNull();
  const { gauges } = setups.byKind;
  const made = makeJigs(kernel, work as JigWork, { ...setups, byKind: { gauges } });
  expect(made.jigs.length).toBeGreaterThan(6);
});
