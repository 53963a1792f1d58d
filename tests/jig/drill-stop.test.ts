import { describe, expect, test } from 'vitest';
import { checkJig, joined } from '../../src/jig/check.js';
import { ballastBorings } from '../../src/jig/drill-stop/boring.js';
import { checkDrillGuides } from '../../src/jig/drill-stop/check.js';
import type { DrillStopJig } from '../../src/jig/drill-stop/jig.js';
import { drillStopJig } from '../../src/jig/drill-stop/make.js';
import type { DrillStopSetup } from '../../src/jig/drill-stop/setup.js';
import type { JigBlank } from '../../src/jig/jig.js';
import { printed } from '../../src/jig/print.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { pointBy } from '../../src/solid/placement.js';
import { BODIES, lureBlank } from './lure-blanks.js';
import { drillStopSetup, printer } from './set-ups.js';

const kernel = await loadKernel();
/** For ballast holes alone, held in a vise. */
const { pilots: _pilots, ears: _ears, ...setup } = drillStopSetup;

function made(blank: JigBlank, changed: Partial<DrillStopSetup> = {}): DrillStopJig {
  const outcome = drillStopJig(kernel, blank, {
    setup: { ...setup, ...changed },
    printer,
  });
  if (outcome.problems.length > 0) throw new Error(JSON.stringify(outcome.problems));
  return outcome.jigs[0];
}
const problemsOf = (blank: JigBlank, changed: Partial<DrillStopSetup> = {}) =>
  drillStopJig(kernel, blank, { setup: { ...setup, ...changed }, printer }).problems;

const blanks = BODIES.map((body) => lureBlank({ ...body, lipAngleDeg: 45 }));
const [small, middle, long] = blanks;

describe('for lures from 60 to 180 mm', () => {
  test('every jig passes every check', () => {
    expect(blanks.length).toBe(5);
    for (const blank of blanks) {
      const jig = made(blank);
      const { flaws, measured } = joined([
        checkJig(kernel, jig, { blank }),
        checkDrillGuides(kernel, jig, ballastBorings(blank.holes), setup),
      ]);
      expect(flaws, blank.name).toEqual([]);
      expect(measured.openings).toBe(blank.holes.length);
      expect(jig.lettersLeftOut, blank.name).toEqual([]);
    }
  });

  test('the deepest hole has a whole collar setting; every setting ends at its depth', () => {
    for (const blank of blanks) {
      const { guides, stopFaceMm } = made(blank);
      expect(guides.length).toBe(blank.holes.length);
      const deepest = guides.reduce((a, b) => (b.depthMm > a.depthMm ? b : a));
      expect(deepest.collarSettingMm).toBeCloseTo(Math.round(deepest.collarSettingMm), 9);
      for (const [i, guide] of guides.entries()) {
        const { bellyMm, depthMm } = blank.holes[i];
        // The bit's shoulder stands `depth` above the belly when the collar meets the face.
        expect(stopFaceMm + guide.collarSettingMm).toBeCloseTo(bellyMm + depthMm, 9);
        expect(guide.guideLengthMm).toBeGreaterThanOrEqual(setup.guideLengthMm);
      }
      // One millimeter less would leave a guide or a wall too short.
      const spare = Math.min(...guides.map((g) => g.guideLengthMm)) - setup.guideLengthMm;
      expect(spare).toBeLessThan(1 + setup.wallMm);
    }
  });

  test('axes are square to the datum line and start on the stop face', () => {
    for (const blank of blanks) {
      const jig = made(blank);
      expect(jig.axis.direction).toEqual([0, 0, 1]);
      expect(jig.axis.originMm).toEqual([blank.holes[0].stationMm, 0, jig.stopFaceMm]);
      const [, y, z] = pointBy(jig.jigToBlank, [0, jig.sizeMm[1], 0]);
      expect(z).toBeCloseTo(jig.stopFaceMm, 5);
      expect(y).toBeLessThan(-blank.thicknessMm / 2);
    }
  });
});

describe('shape', () => {
  test('the tail stands out of a long lure’s jig; a short one is closed and can be pushed out', () => {
    expect(made(long).openAtTail).toBe(true);
    const closed = made({ ...small, holes: [{ ...small.holes[0], stationMm: 38 }] });
    expect(closed.openAtTail).toBe(false);
    expect(closed.openings).toBe(2);
  });

  test('the blank stands proud of the walls, but the belly wall carries the collar', () => {
    const thick = lureBlank({ ...BODIES[3], lipAngleDeg: 45 });
    const jig = made(thick);
    const top = pointBy(jig.jigToBlank, [0, 0, jig.sizeMm[2]])[1];
    expect(top).toBeCloseTo(thick.thicknessMm / 2 - setup.proudMm, 5);
    const raised = made(small);
    const bossTop = pointBy(raised.jigToBlank, [0, 0, raised.sizeMm[2]])[1];
    // All but a millimeter of the collar's rim.
    expect(bossTop).toBeCloseTo(setup.collarDiameterMm / 2 - 1, 5);
  });

  test('a sleeve sits on a shoulder that only lets the bit through', () => {
    const [guide] = made(middle, { bushingOuterDiameterMm: 12 }).guides;
    expect(guide.bitDiameterMm).toBe(8);
    expect(guide.holeDiameterMm).toBeCloseTo(8 + setup.holeClearanceMm, 12);
    expect(guide.sleeve?.seatDiameterMm).toBeCloseTo(12 + setup.bushingFitMm, 12);
    const shoulder = guide.guideLengthMm - (guide.sleeve?.lengthMm ?? 0);
    expect(shoulder).toBeCloseTo(setup.bushingShoulderMm, 9);
    // One of a given length is not cut short: the guide grows with it.
    const [long] = made(middle, { bushingOuterDiameterMm: 12, bushingLengthMm: 25 }).guides;
    expect(long.sleeve?.lengthMm).toBe(25);
    expect(long.guideLengthMm).toBeGreaterThanOrEqual(25 + setup.bushingShoulderMm);
    // Pressed in: the seat is narrower than the sleeve.
    const [pressed] = made(middle, { bushingOuterDiameterMm: 12, bushingFitMm: -0.1 }).guides;
    expect(pressed.sleeve?.seatDiameterMm).toBeCloseTo(11.9, 12);
  });

  test('letters tell bit and setting beside each hole, and who it is for', () => {
    const jig = made(long);
    const texts = jig.letters.map((l) => l.text);
    expect(texts).toContain(`D8 L${jig.guides[0].collarSettingMm.toFixed(1)}`);
    expect(texts).toContain(`D6 L${jig.guides[1].collarSettingMm.toFixed(1)}`);
    expect(texts).toContain('LURE-120 V1.2');
    expect(texts).toContain('NEVER POUR METAL HERE');
    expect(jig.letters.filter((l) => l.raised).map((l) => l.text)).toEqual([
      'NEVER POUR METAL HERE',
    ]);
    expect(jig.letters.every((l) => l.heightMm >= setup.letters.leastHeightMm)).toBe(true);
  });

  test('letters that fit nowhere are left out and told, not shrunk past reading', () => {
    const jig = made({ ...small, name: 'a-name-far-too-long-for-any-face-of-so-small-a-jig' });
    expect(jig.lettersLeftOut.length).toBe(1);
    expect(jig.lettersLeftOut[0]).toMatch(/^A-NAME/);
  });
});

describe('what stands in the way', () => {
  test('no ballast, no jig', () => {
    expect(drillStopJig(kernel, { ...middle, holes: [] }, { setup, printer })).toEqual({
      jigs: [],
      problems: [],
    });
  });

  test('a bed too small, with the size that is needed', () => {
    const jig = made(long);
    const on = (xMm: number, yMm: number) =>
      printed(kernel, jig, { ...setup, bed: { xMm, yMm, zMm: 100 } }, printer);
    // Too broad for pieces, too.
    const [problem] = on(40, 40).problems;
    expect(problem.code).toBe('jig-bed-too-small');
    expect(problem.facts.needXMm).toBeCloseTo(jig.sizeMm[0], 6);
    // It may lie either way round.
    const [x, y] = jig.sizeMm;
    expect(on(y, x).problems).toEqual([]);
  });

  test('guides that run into each other', () => {
    const [a, b] = long.holes;
    const near = { ...long, holes: [a, { ...b, stationMm: a.stationMm + 8 }] };
    const [problem] = problemsOf(near);
    expect(problem.code).toBe('jig-guides-too-close');
    // 8 mm apart, radii 4.1 and 3.1.
    expect(problem.facts.betweenMm).toBeCloseTo(0.8, 9);
  });

  test('a guide that is wider than the blank is there', () => {
    const tip = { ...middle, holes: [{ ...middle.holes[0], stationMm: 88 }] };
    expect(problemsOf(tip).map((p) => p.code)).toEqual(['jig-hole-outside-blank']);
  });
});
