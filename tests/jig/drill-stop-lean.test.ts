/** Holes that lean: each guide has a flat stop face of its own, square to its axis. */
import { describe, expect, test } from 'vitest';
import { checkJig, joined } from '../../src/jig/check.js';
import { ballastBorings } from '../../src/jig/drill-stop/boring.js';
import { checkDrillGuides } from '../../src/jig/drill-stop/check.js';
import { drillStopJig } from '../../src/jig/drill-stop/make.js';
import type { DrillStopSetup } from '../../src/jig/drill-stop/setup.js';
import type { JigBlank } from '../../src/jig/jig.js';
import { columnAt } from '../../src/jig/outline.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { BODIES, lureBlank } from './lure-blanks.js';
import { drillStopSetup, printer } from './set-ups.js';

const kernel = await loadKernel();

/** The blank with its holes at these stations and tilts. */
function leaning(body: number, holes: readonly (readonly [number, number])[]): JigBlank {
  const blank = lureBlank({ ...BODIES[body], lipAngleDeg: 45 });
  return {
    ...blank,
    holes: holes.map(([stationMm, tiltDeg]) => ({
      ...blank.holes[0],
      stationMm,
      tiltDeg,
      depthMm: 11,
      bellyMm: columnAt(blank.profileRing, stationMm)?.low ?? Number.NaN,
    })),
  };
}
const made = (blank: JigBlank, changed: Partial<DrillStopSetup> = {}) =>
  drillStopJig(kernel, blank, { setup: { ...drillStopSetup, ...changed }, printer });

describe.each([-30, -8, 5, 15, 40])('a hole that leans %d°', (tiltDeg) => {
  const blank = leaning(3, [[55, tiltDeg]]);
  const [jig] = made(blank).jigs;

  test('passes every check', () => {
    const { flaws, measured } = joined([
      checkJig(kernel, jig, { blank }),
      checkDrillGuides(kernel, jig, ballastBorings(blank.holes), drillStopSetup),
    ]);
    expect(flaws).toEqual([]);
    expect(measured.stopFaceTiltDeg).toBeLessThan(0.01);
  });

  test('its axis leans as asked, and the collar ends at the depth along it', () => {
    const [guide] = jig.guides;
    const radians = (tiltDeg * Math.PI) / 180;
    const [dx, , dz] = guide.axis.direction;
    expect(dx).toBeCloseTo(Math.sin(radians), 12);
    expect(dz).toBeCloseTo(Math.cos(radians), 12);
    const [fx, , fz] = guide.axis.originMm;
    const along = guide.collarSettingMm;
    const { stationMm, bellyMm, depthMm } = blank.holes[0];
    expect(fx + along * dx).toBeCloseTo(stationMm + depthMm * dx, 9);
    expect(fz + along * dz).toBeCloseTo(bellyMm + depthMm * dz, 9);
    expect(guide.tiltDeg).toBeCloseTo(tiltDeg, 9);
    expect(along).toBeCloseTo(Math.round(along), 9);
    expect(jig.words.join(' ')).toContain(`a wedge of ${Math.abs(tiltDeg)}°`);
    expect(jig.words.join(' ')).toContain(
      tiltDeg > 0 ? 'under the nose end' : 'under the tail end',
    );
  });
});

test('the face of a leaning guide stands out of the common face all round its collar', () => {
  const [jig] = made(leaning(3, [[55, 20]])).jigs;
  const [, , fz] = jig.guides[0].axis.originMm;
  const rise = (drillStopSetup.collarDiameterMm / 2) * Math.sin((20 * Math.PI) / 180);
  expect(fz + rise).toBeLessThan(jig.stopFaceMm);
});

test('a collar that would strike a leaning neighbor is told, with one that would not', () => {
  const blank = leaning(4, [
    [60, 0],
    [84, 25],
  ]);
  const { jigs, problems } = made(blank, { collarDiameterMm: 24 });
  expect(jigs).toEqual([]);
  const [{ code, facts }] = problems;
  expect(code).toBe('jig-collar-hits-guide');
  const fitsMm = Number(facts.fitsMm);
  expect(fitsMm).toBeGreaterThan(8);
  expect(made(blank, { collarDiameterMm: fitsMm }).problems).toEqual([]);
});
