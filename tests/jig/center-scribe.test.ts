import { describe, expect, test } from 'vitest';
import { circleRing, rectRing } from '../../src/geometry/ring.js';
import { checkScribe } from '../../src/jig/center-scribe/check.js';
import { type CenterScribe, centerScribe } from '../../src/jig/center-scribe/make.js';
import type { CenterScribeSetup } from '../../src/jig/center-scribe/setup.js';
import { leaves, ticksOf } from '../../src/jig/center-scribe/ticks.js';
import { checkJig } from '../../src/jig/check.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { pointBy } from '../../src/solid/placement.js';
import { drawnWorks, setups, shippedWork } from './works.js';

const kernel = await loadKernel();
const setup = setups.byKind['center-scribe'] as CenterScribeSetup;
const skerry = shippedWork('skerry');
const made = (work = skerry, changed: Partial<CenterScribeSetup> = {}): CenterScribe => {
  const { jigs, problems } = centerScribe(kernel, work, { ...setup, ...changed });
  if (jigs.length === 0) throw new Error(JSON.stringify(problems));
  return jigs[0];
};
const flaws = (jig: CenterScribe, work = skerry) => [
  ...checkJig(kernel, jig, work).flaws,
  ...checkScribe(kernel, jig, setup).flaws,
];

test('drawn patterns: the scribe passes every check', () => {
  const works = drawnWorks(5, 12);
  expect(works.length).toBe(12);
  for (const work of works) expect(flaws(made(work), work), work.blank.name).toEqual([]);
});

describe('the line', () => {
  test('rim and pencil together are at half the thickness, whichever way the blank lies', () => {
    const jig = made();
    const [, y] = pointBy(jig.jigToBlank, [0, 0, jig.sizeMm[2]]);
    expect(y + setup.pencilMm).toBeCloseTo(0, 5);
    expect(jig.rimMm - setup.seatClearanceMm + setup.pencilMm).toBeCloseTo(
      skerry.blank.thicknessMm / 2,
      9,
    );
  });

  test('a rim that is too high is seen', () => {
    const jig = made();
    const lifted = { ...jig, jigToBlank: jig.jigToBlank.map((v, i) => (i === 13 ? v + 0.02 : v)) };
    expect(flaws(lifted).map((f) => f.code)).toContain('rim-off-center');
  });
});

describe('ticks', () => {
  test('tow eye, lip, ballast, hanger and tail eye of a shipped pattern, at their stations', () => {
    const { pattern, blank } = skerry;
    const ticks = ticksOf(pattern, blank);
    expect(ticks.map((t) => t.letter)).toEqual(['T', 'L', 'B', 'H', 'E']);
    const [tow, , ballast, hanger] = ticks;
    expect(tow.at[1]).toBeCloseTo(1, 9);
    expect(ballast.at[0]).toBeCloseTo(35, 9);
    expect(ballast.at[1]).toBeCloseTo(blank.holes[0].bellyMm, 1);
    expect(hanger.at[0]).toBeCloseTo(46, 9);
  });

  test('where a line leaves a box and a circle', () => {
    const box = rectRing(0, -5, 100, 5);
    expect(leaves(box, [30, 0], [0, -1])).toEqual({ at: [30, -5], normal: [0, -1] });
    const circle = circleRing([0, 0], 10, { segments: 720 });
    const left = leaves(circle, [0, 0], [Math.SQRT1_2, Math.SQRT1_2]);
    expect(left?.at[0]).toBeCloseTo(10 * Math.SQRT1_2, 3);
    expect(left?.normal[1]).toBeCloseTo(Math.SQRT1_2, 2);
    expect(leaves(box, [200, 0], [1, 0])).toBeNull();
  });

  test('a notch that is not on its line, or goes too deep, is seen', () => {
    const jig = made();
    const aside = jig.ticks.map((t) => ({ ...t, at: [t.at[0] + 0.1, t.at[1]] as const }));
    expect(flaws({ ...jig, ticks: aside }).map((f) => f.code)).toContain('tick-missing');
    expect(flaws({ ...jig, tickMm: jig.tickMm / 2 }).map((f) => f.code)).toContain('tick-too-deep');
  });

  test('two marks so near that the rim between them would break off: one is told', () => {
    const near = shippedWork('skerry', { hangers: [{ ...skerryHanger(), stationMm: 42 }] });
    const { jigs, problems } = centerScribe(kernel, near, { ...setup, tickMm: 6 });
    expect(jigs[0].ticks.map((t) => t.letter)).not.toContain('H');
    expect(problems).toEqual([
      expect.objectContaining({
        code: 'jig-tick-left-out',
        facts: expect.objectContaining({ stationMm: 42 }),
      }),
    ]);
  });

  test('a thin blank gets shorter ticks, a blank thinner than the pencil none at all', () => {
    const thin = { ...skerry, blank: { ...skerry.blank, thicknessMm: 8 } };
    expect(made(thin).tickMm).toBeCloseTo(2, 9);
    expect(flaws(made(thin), thin)).toEqual([]);
    const { jigs, problems } = centerScribe(kernel, thin, { ...setup, pencilMm: 2.5 });
    expect(jigs).toEqual([]);
    expect(problems[0]).toMatchObject({
      code: 'jig-rim-too-low',
      facts: { rimMm: 1.5, mostPencilMm: 2 },
    });
  });
});

function skerryHanger() {
  return { kind: 'screw' as const };
}
