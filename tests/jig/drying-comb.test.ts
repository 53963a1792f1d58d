import { describe, expect, test } from 'vitest';
import type { Point3 } from '../../src/geometry/vec.js';
import { checkJig } from '../../src/jig/check.js';
import { checkComb } from '../../src/jig/drying-comb/check.js';
import { type DryingComb, dryingComb } from '../../src/jig/drying-comb/make.js';
import type { DryingCombSetup } from '../../src/jig/drying-comb/setup.js';
import { swingRadius } from '../../src/jig/drying-comb/swing.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { box } from '../solid/shapes.js';
import { drawnWorks, setups, shippedWork } from './works.js';

const kernel = await loadKernel();
const { printer } = setups;
const setup = setups.byKind['drying-comb'] as DryingCombSetup;
const skerry = shippedWork('skerry');
const made = (work = skerry, changed: Partial<DryingCombSetup> = {}): DryingComb =>
  dryingComb(kernel, work, { setup: { ...setup, ...changed }, printer }).jigs[0];
const flaws = (jig: DryingComb, asked = setup) => [
  ...checkJig(kernel, jig, skerry).flaws,
  ...checkComb(kernel, jig, asked).flaws,
];

describe('the room a hanging lure takes', () => {
  const stick = evaluate(kernel, box(100, 6, 8, [0, -3, -4]));

  test('a stick hung by its end: half the diagonal of its section', () => {
    expect(swingRadius(stick, [], [0, 0, 0], [50, 0, 0])).toBeCloseTo(5, 6);
  });

  test('what stands out counts', () => {
    const tip: Point3 = [10, 2, -20];
    expect(swingRadius(stick, [tip], [0, 0, 0], [50, 0, 0])).toBeCloseTo(Math.hypot(2, 20), 6);
  });

  test('hung askew, its far end swings wider', () => {
    // The line from the eye to the center of gravity leans by atan(5/50).
    const lean = Math.atan(5 / 50);
    const far = 100 * Math.sin(lean) + 4 * Math.cos(lean);
    expect(swingRadius(stick, [], [0, 0, 0], [50, 0, 5])).toBeCloseTo(Math.hypot(far, 3), 6);
  });
});

test('drawn patterns: the comb passes every check, or there is no eye to hang by', () => {
  const works = drawnWorks(7, 12);
  expect(works.length).toBe(12);
  for (const work of works) {
    const jig = made(work);
    if (jig) expect(flaws(jig), work.blank.name).toEqual([]);
    else expect(work.pattern.towEye ?? work.pattern.tailEye).toBeNull();
  }
});

test('as many lures as the bed allows, no nearer than they swing', () => {
  const jig = made();
  expect(jig.pitchMm).toBeGreaterThanOrEqual(2 * jig.swingRadiusMm + setup.gapMm);
  expect(jig.places).toBe(Math.floor(220 / jig.pitchMm));
  expect(jig.sizeMm[0]).toBeCloseTo(jig.places * jig.pitchMm, 4);
  const short = made(skerry, { bed: { xMm: 100, yMm: 110, zMm: 100 } });
  expect(short.places).toBe(Math.floor(110 / jig.pitchMm));
});

test('hung by the other eye where the one asked for is not there; not at all without either', () => {
  const { tailEye: _, ...rest } = skerry.pattern;
  const noTail = { ...skerry, pattern: { ...rest, tailEye: null } };
  expect(made(noTail).hungBy).toBe('tow');
  expect(made({ ...noTail, pattern: { ...noTail.pattern, towEye: null } })).toBeUndefined();
});

test('a slot missing, or lures too near, are seen', () => {
  const jig = made();
  expect(flaws({ ...jig, places: jig.places + 1 }).map((f) => f.code)).toEqual(['comb-slots']);
  expect(flaws({ ...jig, swingRadiusMm: jig.swingRadiusMm + 1 }).map((f) => f.code)).toEqual([
    'comb-too-near',
  ]);
});
