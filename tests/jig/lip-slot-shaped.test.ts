/** Guides for the shaped body: it fits, it comes out, and how far it can lean is told. */
import { describe, expect, test } from 'vitest';
import { checkJig, joined } from '../../src/jig/check.js';
import { checkSawSlot } from '../../src/jig/lip-slot-guide/check.js';
import { levelsAt } from '../../src/jig/lip-slot-guide/held.js';
import type { LipSlotGuide } from '../../src/jig/lip-slot-guide/jig.js';
import { lipSlotGuide } from '../../src/jig/lip-slot-guide/make.js';
import type { LipSlotGuideSetup } from '../../src/jig/lip-slot-guide/setup.js';
import { halfBreadthAt } from '../../src/mass/strip.js';
import type { PatternFile } from '../../src/pattern/schema.js';
import { movedBy } from '../../src/solid/csg.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { sharedVolume } from '../../src/solid/measure.js';
import { translation } from '../../src/solid/placement.js';
import { bar, dataOf, designOf, ellipsoid, patternOf } from '../mass/lures.js';
import { lipSlotSetup, printer } from './set-ups.js';

const kernel = await loadKernel();
const setup: LipSlotGuideSetup = { ...lipSlotSetup, blank: 'shaped' };
const file = dataOf('tests/mass/patterns/diver.yaml') as PatternFile;

const divers = [0, 20, 45, 70, 90].map((angleDeg) => {
  const lip = {
    ...file.lip!,
    cornerRadiusMm: 0,
    angleDeg,
    slot: { ...file.lip!.slot, stationMm: 12, depthMm: 7 },
  };
  return designOf({ ...patternOf('diver', { lip, ballast: [] }) });
});
const guideOf = (work: (typeof divers)[number], changed: Partial<LipSlotGuideSetup> = {}) =>
  lipSlotGuide(kernel, work, { setup: { ...setup, ...changed }, printer });

describe('a shaped diver, its lip from straight ahead to square', () => {
  test.each(divers)('$pattern.lip.angleDeg°: sound, clear of the body all the way out', (work) => {
    const [jig] = guideOf(work).jigs;
    expect(jig.part).toBe('shaped');
    expect(jig.workpiece).toBe('shaped');
    const { flaws } = joined([checkJig(kernel, jig, work), checkSawSlot(kernel, jig, work, setup)]);
    expect(flaws).toEqual([]);
    for (const mm of [0.5, 3, 10, 30]) {
      const [x, y, z] = jig.freeDirection!.map((d) => d * mm);
      const out = movedBy(translation(x, y, z), { kind: 'mesh', mesh: work.body.mesh });
      const inPlace = movedBy(jig.jigToBlank, { kind: 'mesh', mesh: jig.mesh });
      expect(sharedVolume(kernel, inPlace, out), `${mm} mm out`).toBeLessThan(1e-6);
    }
  });

  test('and held: a body shifted sideways or down by its clearance and a little more meets the guide', () => {
    const work = divers[2];
    const [jig] = guideOf(work).jigs;
    const inPlace = movedBy(jig.jigToBlank, { kind: 'mesh', mesh: jig.mesh });
    const shared = (x: number, y: number, z: number) =>
      sharedVolume(
        kernel,
        inPlace,
        movedBy(translation(x, y, z), { kind: 'mesh', mesh: work.body.mesh }),
      );
    expect(shared(0, 0.9 * setup.sideClearanceMm, 0)).toBeLessThan(1e-6);
    expect(shared(0, 1.2 * setup.sideClearanceMm, 0)).toBeGreaterThan(0.01);
    const [dx, , dz] = jig.freeDirection!;
    expect(shared(-0.2 * dx, 0, -0.2 * dz)).toBeGreaterThan(0.1);
  });

  test('leans more than the square blank, and says so', () => {
    const sawn = lipSlotGuide(kernel, divers[2], { setup: lipSlotSetup, printer }).jigs[0];
    const [shaped] = guideOf(divers[2]).jigs;
    expect(shaped.leanDeg).toBeGreaterThan(sawn.leanDeg ?? 90);
    expect(shaped.words.join(' ')).toContain('center line');
    expect(sawn.words.join(' ')).toContain('flat side');
  });

  test('both: one guide for the blank and one for the body', () => {
    const { jigs } = guideOf(divers[2], { blank: 'both' });
    expect(jigs.map((j: LipSlotGuide) => [j.part, j.workpiece])).toEqual([
      ['', 'sawn'],
      ['shaped', 'shaped'],
    ]);
  });
});

test('a round body rolls in any seat: the guide is made, with a warning and no lean', () => {
  const round = patternOf('diver', {
    lip: {
      ...file.lip!,
      cornerRadiusMm: 0,
      angleDeg: 0,
      slot: { ...file.lip!.slot, stationMm: 12, depthMm: 7 },
    },
    ballast: [],
    body: {
      ...file.body,
      offsets: file.body.offsets.map((row) => ({
        ...row,
        backMm: row.halfBreadthMm,
        bellyMm: row.halfBreadthMm,
      })),
      fullness: [{ stationRatio: 0.5, upperExponent: 2, lowerExponent: 2 }],
    },
  });
  const { jigs, problems } = guideOf(designOf(round));
  expect(jigs[0].leanDeg).toBeNull();
  expect(jigs[0].spread.leanDeg).toBeNull();
  expect(problems.map((p) => p.code)).toEqual(['jig-lean-not-held']);
});

describe('level lines of a body', () => {
  test('of a bar: its section’s own height, closed form of the ellipse', () => {
    const shape = bar({ b: 8, back: 12, belly: 10, n: 2 });
    const [level] = levelsAt(shape, 4);
    const heights = level.map(([, z]) => z);
    expect(Math.max(...heights)).toBeCloseTo(12 * Math.sqrt(0.75), 9);
    expect(Math.min(...heights)).toBeCloseTo(-10 * Math.sqrt(0.75), 9);
    expect(levelsAt(shape, 8.1)).toEqual([]);
  });

  test('of an ellipsoid: every point lies on it, but the ends, which are squared off outward', () => {
    const [a, b, c] = [50, 9, 12];
    // Its offsets are a spline through nine points: near the ellipse to a hundredth.
    const shape = ellipsoid(a, b, c);
    const [level] = levelsAt(shape, 4.5);
    const off = level.map(([x, z]) => ((x - a) / a) ** 2 + (4.5 / b) ** 2 + (z / c) ** 2 - 1);
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.02);
    const inner = level.filter(([x]) => Math.abs(x - a) < 0.8 * a);
    expect(inner.length).toBeGreaterThan(50);
    for (const [x, z] of inner) expect(halfBreadthAt(shape, [x, z])).toBeCloseTo(4.5, 6);
  });
});
