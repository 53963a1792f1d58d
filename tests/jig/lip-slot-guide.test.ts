import { describe, expect, test } from 'vitest';
import { cosSinDeg } from '../../src/geometry/vec.js';
import { checkJig, joined } from '../../src/jig/check.js';
import type { JigBlank } from '../../src/jig/jig.js';
import { checkSawSlot } from '../../src/jig/lip-slot-guide/check.js';
import type { LipSlotGuide } from '../../src/jig/lip-slot-guide/jig.js';
import { lipSlotGuide } from '../../src/jig/lip-slot-guide/make.js';
import type { LipSlotGuideSetup } from '../../src/jig/lip-slot-guide/setup.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { inverse, pointBy } from '../../src/solid/placement.js';
import { BODIES, LIP_ANGLES, lureBlank } from './lure-blanks.js';
import { lipSlotSetup as setup } from './set-ups.js';

const kernel = await loadKernel();

function made(blank: JigBlank, changed: Partial<LipSlotGuideSetup> = {}): LipSlotGuide {
  const outcome = lipSlotGuide(kernel, blank, { ...setup, ...changed });
  if (outcome.problems.length > 0) throw new Error(JSON.stringify(outcome.problems));
  return outcome.jigs[0];
}
const problemsOf = (blank: JigBlank, changed: Partial<LipSlotGuideSetup> = {}) =>
  lipSlotGuide(kernel, blank, { ...setup, ...changed }).problems;

const middle = lureBlank({ ...BODIES[1], lipAngleDeg: 45 });
const slot = middle.slot!;

describe('for lures from 60 to 180 mm and lips from straight ahead to square', () => {
  const cases = BODIES.flatMap((body) =>
    LIP_ANGLES.map((lipAngleDeg) => lureBlank({ ...body, lipAngleDeg })),
  );

  test('every guide passes every check', () => {
    expect(cases.length).toBe(35);
    for (const blank of cases) {
      const jig = made(blank);
      const { flaws } = joined([
        checkJig(kernel, jig, { blank }),
        checkSawSlot(kernel, jig, blank, setup),
      ]);
      expect(flaws, `${blank.name} at ${jig.angleDeg}°`).toEqual([]);
      expect(jig.lettersLeftOut, `${blank.name} at ${jig.angleDeg}°`).toEqual([]);
    }
  });
});

describe('saw and stop', () => {
  test('the slot’s end is the stop height above the stop face, its mouth under it along the lip', () => {
    const jig = made(middle);
    const toJig = inverse(jig.jigToBlank);
    const [endX, endY, endZ] = pointBy(toJig, [slot.end[0], 0, slot.end[1]]);
    const [mouthX, , mouthZ] = pointBy(toJig, [slot.mouth[0], 0, slot.mouth[1]]);
    expect(endZ).toBeCloseTo(setup.stopHeightMm, 9);
    expect(mouthX).toBeCloseTo(endX, 9);
    expect(endZ - mouthZ).toBeCloseTo(slot.depthMm, 9);
    expect(endY).toBeCloseTo(jig.sizeMm[1] / 2, 5);
  });

  test('axis and free direction point along the slot into the wood', () => {
    const [cos, sin] = cosSinDeg(45);
    const { axis, freeDirection } = made(middle);
    expect(axis.direction).toEqual([cos, 0, sin]);
    expect(freeDirection).toEqual([cos, 0, sin]);
    expect(axis.originMm).toEqual([slot.mouth[0], 0, slot.mouth[1]]);
  });

  test('a narrow saw hugs both walls of a guide as wide as the slot', () => {
    const { guideSlotMm, passes } = made(middle, { sawKerfMm: 0.8 });
    expect({ guideSlotMm, passes }).toEqual({ guideSlotMm: 2, passes: 'both walls' });
  });

  test('a saw that fills the slot runs in its own kerf', () => {
    const { guideSlotMm, passes } = made(middle, { sawKerfMm: 1.9 });
    expect(passes).toBe('one');
    expect(guideSlotMm).toBeCloseTo(1.9 + setup.runningClearanceMm, 12);
  });

  test('lean: twice the gap over the height of the cheeks', () => {
    const jig = made(middle);
    const heldMm = jig.sizeMm[2] - setup.wallMm;
    const degrees = (Math.atan((2 * setup.sideClearanceMm) / heldMm) * 180) / Math.PI;
    expect(jig.leanDeg).toBeCloseTo(degrees, 6);
    expect(jig.leanDeg).toBeLessThan(0.5);
  });
});

describe('hold', () => {
  test('where the belly slopes away under a square lip, only a push to the nose wall too holds', () => {
    const { hold } = made(lureBlank({ ...BODIES[4], lipAngleDeg: 90 }));
    expect(hold.riseMm).toBeGreaterThan(0.1);
    expect(hold.pushDeg).toBeGreaterThan(20);
  });
});

describe('letters', () => {
  test('name and version, angle, depth, stop height', () => {
    const texts = made(middle).letters.map((l) => l.text);
    expect(texts).toEqual(['LURE-90 V1.2', 'A45 DEPTH 10.8', 'STOP 35']);
  });
});

describe('what stands in the way', () => {
  test('no lip, no guide', () => {
    expect(lipSlotGuide(kernel, { ...middle, slot: null }, setup).jigs).toEqual([]);
  });

  test('a kerf wider than the slot', () => {
    expect(problemsOf(middle, { sawKerfMm: 2.1 })).toEqual([
      { code: 'jig-kerf-wider-than-slot', facts: { kerfMm: 2.1, slotMm: 2 } },
    ]);
    expect(problemsOf(middle, { sawKerfMm: 2 })).toEqual([]);
  });

  test('a stop height too small, with the least that works', () => {
    const [problem] = problemsOf(middle, { stopHeightMm: 12 });
    expect(problem.code).toBe('jig-stop-height-too-small');
    const neededMm = Number(problem.facts.neededMm);
    expect(problemsOf(middle, { stopHeightMm: neededMm - 0.01 }).length).toBe(1);
    expect(problemsOf(middle, { stopHeightMm: neededMm + 0.01 })).toEqual([]);
  });

  test('a slot that ends in the air is refused: patterns rule it out before', () => {
    const end = [slot.end[0], slot.end[1] + 60] as const;
    expect(() => problemsOf({ ...middle, slot: { ...slot, end } })).toThrow(/outside its blank/);
  });

  test('a saddle so short or loose that the blank can turn in it', () => {
    const [problem] = problemsOf(middle, { reliefMm: 3, reachMm: 5 });
    expect(problem).toMatchObject({ code: 'jig-angle-not-held', facts: { reachMm: 5 } });
  });
});
