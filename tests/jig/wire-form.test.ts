import { expect, test } from 'vitest';
import { checkJig } from '../../src/jig/check.js';
import { checkWireForm } from '../../src/jig/wire-form/check.js';
import { type WireForm, wireForm } from '../../src/jig/wire-form/make.js';
import type { WireFormSetup } from '../../src/jig/wire-form/setup.js';
import { bentFor } from '../../src/mass/wire-bent.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { pointBy } from '../../src/solid/placement.js';
import { drawnWorks, setups, shippedWork } from './works.js';

const kernel = await loadKernel();
const setup = setups.byKind['wire-form'] as WireFormSetup;
const ghyll = shippedWork('ghyll');
const made = (work = ghyll, changed: Partial<WireFormSetup> = {}) =>
  wireForm(kernel, work, { ...setup, ...changed });
const [form] = made().jigs;
const flaws = (jig: WireForm, work = ghyll, asked = setup) => [
  ...checkJig(kernel, jig, work).flaws,
  ...checkWireForm(kernel, jig, work, asked).flaws,
];

test('drawn patterns: the form passes every check, or two pins have no room, or there is no wire', () => {
  const works = drawnWorks(8, 14);
  expect(works.length).toBe(14);
  let forms = 0;
  for (const work of works) {
    const { jigs, problems } = made(work);
    forms += jigs.length;
    for (const jig of jigs) expect(flaws(jig, work), work.blank.name).toEqual([]);
    expect(problems.every((p) => p.code === 'jig-pins-too-close')).toBe(true);
    if (!work.pattern.throughWire) expect(jigs).toEqual([]);
  }
  expect(forms).toBeGreaterThan(1);
});

test('pins for the bends of a thin wire, as thick as it is round inside; the length to cut is that of the wire', () => {
  const wire = bentFor(ghyll.pattern, ghyll.body.shape, ghyll.materials)!.wire!;
  expect(form.pegs.every((p) => !p.isPrinted)).toBe(true);
  // Bends of 1.2 mm wire at one diameter inside, loops of 3 mm: sizes of shared/fittings.yaml.
  const sizes = new Set(form.pegs.map((p) => (2 * p.radiusMm).toFixed(1)));
  expect([...sizes].sort()).toEqual(['2.4', '3.0']);
  expect(form.lengthToCutMm).toBe(wire.lengthToCutMm);
  expect(form.words.join(' ')).toContain(`Cut ${Math.ceil(wire.lengthToCutMm)} mm`);
});

test('the wire’s middle lies in the lure’s center plane on the board', () => {
  const [, y] = pointBy(form.jigToBlank, [0, 0, setup.boardMm + 0.6]);
  expect(y).toBeCloseTo(0, 9);
});

test('thick pegs are printed instead', () => {
  const asked = { ...setup, leastPrintedPegMm: 0 };
  const [printed] = made(ghyll, asked).jigs;
  expect(printed.pegs.every((p) => p.isPrinted)).toBe(true);
  expect(printed.sizeMm[2]).toBeCloseTo(setup.boardMm + setup.pegHeightMm, 4);
  expect(printed.openings).toBe(0);
  expect(checkWireForm(kernel, printed, ghyll, asked).flaws).toEqual([]);
});

test('a form for another wire, or with bores too narrow, is seen', () => {
  const longer = shippedWork('ghyll', { scaleRatio: 1.05 });
  expect(flaws(form, longer).map((f) => f.code)).toContain('peg-missing');
  const [tight] = made(ghyll, { pinClearanceMm: 0 }).jigs;
  expect(flaws(tight).map((f) => f.code)).toContain('peg-missing');
});

test('the two pins that are nearest are told', () => {
  const { jigs, problems } = made(ghyll, { webMm: 1.25 });
  expect(jigs).toEqual([]);
  expect(problems).toHaveLength(1);
  expect(problems[0].facts.betweenMm).toBeLessThan(1.25);
});
