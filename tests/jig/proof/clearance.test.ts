/** The gap between jig and workpiece: nearest, farthest, and the play that was promised. */
import { describe, expect, test } from 'vitest';
import { asRegion } from '../../../src/geometry/clip.js';
import { facetTree } from '../../../src/geometry/facet-tree.js';
import { drillStopJig } from '../../../src/jig/drill-stop/make.js';
import type { Fit } from '../../../src/jig/fit.js';
import type { Jig } from '../../../src/jig/jig.js';
import { lipSlotGuide } from '../../../src/jig/lip-slot-guide/make.js';
import { clearance } from '../../../src/jig/proof/clearance.js';
import { seated } from '../../../src/jig/proof/seated.js';
import { type Csg, movedBy, slab } from '../../../src/solid/csg.js';
import { evaluate } from '../../../src/solid/evaluate.js';
import { loadKernel } from '../../../src/solid/kernel.js';
import { gapBetween } from '../../../src/solid/measure.js';
import { inverse } from '../../../src/solid/placement.js';
import { box } from '../../solid/shapes.js';
import { BODIES, lureBlank } from '../lure-blanks.js';
import { drillStopSetup, lipSlotSetup, printer } from '../set-ups.js';

const kernel = await loadKernel();
const blank = lureBlank({ ...BODIES[1], lipAngleDeg: 60 });
const [drill] = drillStopJig(kernel, blank, { setup: drillStopSetup, printer }).jigs;
const [guide] = lipSlotGuide(kernel, { blank }, { setup: lipSlotSetup, printer }).jigs;

function clearanceOf(jig: Jig, fit: Partial<Fit> = {}) {
  const told: Jig = { ...jig, fit: { ...(jig.fit as Fit), ...fit } };
  const seat = seated(kernel, told, facetTree(jig.mesh), { blank });
  if (!seat) throw new Error('nothing seated');
  return clearance(seat);
}
const codes = (jig: Jig, fit: Partial<Fit> = {}) => clearanceOf(jig, fit).flaws.map((f) => f.code);
const rebuilt = (jig: Jig, change: (csg: Csg) => Csg): Jig => ({
  ...jig,
  mesh: evaluate(kernel, change(jig.csg)),
});
const [length, width] = drill.sizeMm;
const floorMm = drillStopSetup.floorMm;
const cut = (part: Csg) => rebuilt(drill, (from) => ({ kind: 'subtract', from, parts: [part] }));
const added = (part: Csg) => rebuilt(drill, (csg) => ({ kind: 'union', parts: [csg, part] }));

test('sound jigs are within their bands, and the figures are those of the set-up', () => {
  const ofDrill = clearanceOf(drill);
  expect(ofDrill.flaws).toEqual([]);
  // Letters sunk into the floor are the deepest place that faces the blank.
  const { seatClearanceMm, clearanceMm, letters } = drillStopSetup;
  const deepest = Math.max(letters.depthMm, 2 * clearanceMm * Math.SQRT2) + seatClearanceMm;
  expect(ofDrill.measured.farthestMm).toBeLessThan(deepest + 0.03);
  expect(ofDrill.measured.farthestMm).toBeGreaterThan(2 * clearanceMm);
  const ofGuide = clearanceOf(guide);
  expect(ofGuide.flaws).toEqual([]);
  expect(ofGuide.measured.bearingMm2).toBeGreaterThan(200);
});

test('seated without play, the nearest place is as near as the kernel’s own search says', () => {
  const half = blank.thicknessMm / 2;
  const workpiece = movedBy(
    inverse(drill.jigToBlank),
    slab([asRegion(blank.profileRing)], -half, half),
  );
  const theirs = gapBetween(kernel, { kind: 'mesh', mesh: drill.mesh }, workpiece, 2);
  expect(clearanceOf(drill, { playMm: [] }).measured.nearestMm).toBeCloseTo(theirs, 4);
});

describe('it complains about', () => {
  test('a pimple that stands into the gap', () => {
    const { seatClearanceMm } = drillStopSetup;
    expect(
      codes(added(box(2, 2, 1, [length / 2, width / 2, floorMm - 1 + seatClearanceMm - 0.02]))),
    )
      // 0.02 mm are left of 0.05.
      .toContain('gap-narrow');
  });

  test('a floor that lies a millimeter too deep', () => {
    const deep = cut(box(length - 12, width - 22, 2, [6, 8, floorMm - 1]));
    expect(codes(deep)).toContain('gap-wide');
  });

  test('play that is told and not there', () => {
    expect(codes(drill, { playMm: [[1.2, 0, 0]] })).toContain('gap-narrow');
    expect(codes(guide, { playMm: [[0, 0.4, 0]] })).toContain('gap-narrow');
  });

  test('play that is there and not told', () => {
    expect(codes(drill, { playMm: [] })).toContain('gap-wide');
    expect(codes(guide, { playMm: [] })).toContain('gap-wide');
  });

  test('a seat where nothing rests', () => {
    expect(codes(drill, { gapMm: [0.001, 0.001] })).toContain('gap-wide');
  });
});
