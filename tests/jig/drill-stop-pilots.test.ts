/** Pilots of every eye: where they are, how deep, and when they are left out. */
import { describe, expect, test } from 'vitest';
import { halves } from '../../src/body/properties.js';
import { checkJig, joined } from '../../src/jig/check.js';
import { isDrillStop } from '../../src/jig/drill-stop/jig.js';
import { drillStop } from '../../src/jig/drill-stop/kind.js';
import { type DrillStopSetup, drillStopForm } from '../../src/jig/drill-stop/setup.js';
import type { Jig, JigWork } from '../../src/jig/jig.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { MATERIALS } from '../mass/lures.js';
import { drawnLure, workOf } from './drawn-lures.js';
import { drillStopSetup, printer } from './set-ups.js';

const kernel = await loadKernel();

const BODY = {
  schema: 1,
  kind: 'pattern',
  name: 'scar',
  version: '1.0',
  body: {
    lengthMm: 95,
    noseRadiusMm: 4,
    tailRadiusMm: 1.8,
    offsets: [
      { stationMm: 5, backMm: 6, bellyMm: 6.4, halfBreadthMm: 4.8 },
      { stationMm: 20, backMm: 10.4, bellyMm: 11.8, halfBreadthMm: 8 },
      { stationMm: 38, backMm: 12, bellyMm: 13.4, halfBreadthMm: 9.4 },
      { stationMm: 58, backMm: 10.6, bellyMm: 11.6, halfBreadthMm: 8.4 },
      { stationMm: 78, backMm: 6.6, bellyMm: 7, halfBreadthMm: 5.6 },
      { stationMm: 89, backMm: 3.8, bellyMm: 3.9, halfBreadthMm: 3.2 },
    ],
  },
  timber: 'western-redcedar',
  sandingAllowanceMm: 1.5,
  blockThicknessMm: 20,
  coats: [],
} as const;
const BALLAST = [{ stationMm: 36, diameterMm: 8, depthMm: 14, metal: 'lead' }];
const SCREWS = {
  towEye: { kind: 'screw', heightMm: 1 },
  hangers: [{ stationMm: 52, kind: 'screw' }],
  tailEye: { kind: 'screw', screwEye: 'screw-eye-small' },
};
const WIRE = {
  towEye: { kind: 'wire', heightMm: 2 },
  hangers: [{ stationMm: 52, kind: 'wire' }],
  tailEye: { kind: 'wire' },
  throughWire: { diameterMm: 1.2, boreMm: 2 },
};

const work = (change: Record<string, unknown>): JigWork => {
  const made = workOf({ ...BODY, ballast: BALLAST, ...change } as never);
  if (!made.blank) throw new Error('not a pattern');
  return { ...made, blank: made.blank };
};
const outcome = (of: JigWork, changed: Partial<DrillStopSetup> = {}) =>
  drillStop.make(kernel, of, { setup: { ...drillStopSetup, ...changed } as never, printer });
const judged = (jig: Jig, of: JigWork) =>
  joined([
    checkJig(kernel, jig, of),
    drillStop.measure(kernel, jig, of, { setup: drillStopSetup, printer }),
  ]);
function guidesOf(of: JigWork) {
  const [jig] = outcome(of).jigs;
  if (!jig || !isDrillStop(jig)) throw new Error('no jig');
  return jig.guides;
}

describe('screw eyes', () => {
  const screwed = work(SCREWS);
  const guides = guidesOf(screwed);
  const of = (what: string) => guides.filter((g) => g.for === what)[0];

  test('a guide for each, on its axis, and all of them measured sound', () => {
    expect(guides.map((g) => g.for)).toEqual(['ballast', 'hanger', 'tow eye', 'tail eye']);
    expect(of('hanger').axis.direction).toEqual([0, 0, 1]);
    expect(of('hanger').stationMm).toBe(52);
    expect(of('tow eye').axis.direction).toEqual([1, 0, 0]);
    expect(of('tow eye').heightMm).toBeCloseTo(1, 9);
    expect(of('tail eye').axis.direction[0]).toBe(-1);
    const [jig] = outcome(screwed).jigs;
    const { flaws, measured } = judged(jig, screwed);
    expect(flaws).toEqual([]);
    // Four guides, two bolts, the hole to push the blank out.
    expect(measured.openings).toBe(7);
  });

  test('each ends one shank under the finished surface', () => {
    const usual = MATERIALS.fittings['screw-eye'];
    const small = MATERIALS.fittings['screw-eye-small'];
    if (usual.kind !== 'screw-eye' || small.kind !== 'screw-eye') throw new Error('table');
    const [, lower] = halves(screwed.body.shape, 52);
    expect(of('hanger').heightMm + of('hanger').depthMm).toBeCloseTo(usual.shankMm - lower.h, 6);
    expect(of('hanger').bitDiameterMm).toBe(usual.pilotMm);
    // At the tail end, at the height of the datum line, the sawn blank is the allowance longer.
    expect(of('tail eye').depthMm).toBeCloseTo(small.shankMm + BODY.sandingAllowanceMm, 2);
    expect(of('tail eye').bitDiameterMm).toBe(small.pilotMm);
    // The point: half the diameter over the tangent of half its angle.
    const beyond = 0.45 / Math.tan((59 * Math.PI) / 180);
    expect(of('tow eye').tipDepthMm - of('tow eye').depthMm).toBeCloseTo(beyond, 12);
  });

  test('settings of tow eye and tail eye are whole millimeters, told in letters and words', () => {
    const [jig] = outcome(screwed).jigs;
    for (const what of ['tow eye', 'tail eye']) {
      const { collarSettingMm, bitDiameterMm } = of(what);
      // To the micrometer that outer measures are rounded up to.
      expect(Math.abs(collarSettingMm - Math.round(collarSettingMm))).toBeLessThan(0.0011);
      const text = `D${bitDiameterMm} L${collarSettingMm.toFixed(1)}`;
      expect(jig.letters.map((l) => l.text)).toContain(text);
      if (isDrillStop(jig)) expect(jig.words.join('\n').toLowerCase()).toContain(what);
    }
  });

  test('a row without a pilot takes three quarters of its wire', () => {
    const { pilotMm: _, ...row } = MATERIALS.fittings['screw-eye'] as never as { pilotMm: number };
    const materials = { ...MATERIALS, fittings: { ...MATERIALS.fittings, 'screw-eye': row } };
    const guide = guidesOf({ ...screwed, materials: materials as never }).find(
      (g) => g.for === 'hanger',
    );
    expect(guide?.bitDiameterMm).toBeCloseTo(0.9, 12);
  });
});

test('eyes of wire: the bore from the belly ends in the wire’s line, those from the ends are begun', () => {
  const guides = guidesOf(work(WIRE));
  const [, hanger, tow, tail] = guides;
  expect(guides.every((g) => g.for === 'ballast' || g.bitDiameterMm === 2)).toBe(true);
  // Straight from the tow eye's height at the nose (all but at station 0) to 0 at the tail.
  expect(hanger.heightMm + hanger.depthMm).toBeCloseTo(2 * (1 - 52 / 95), 1);
  expect([tow.depthMm, tail.depthMm]).toEqual([20, 20]);
});

test('a lure without ballast has its pilots', () => {
  const of = work({ ...SCREWS, ballast: [] });
  expect(guidesOf(of).map((g) => g.for)).toEqual(['hanger', 'tow eye', 'tail eye']);
  expect(judged(outcome(of).jigs[0], of).flaws).toEqual([]);
});

test('an older set-up file stays valid, and its jig has neither pilots nor ears', () => {
  const {
    pilots: _p,
    ears: _e,
    spread: _s,
    bushingFitMm: _f,
    bushingLengthMm: _l,
    bushingShoulderMm: _h,
    ...older
  } = drillStopSetup;
  const setup = drillStopForm.schema.parse({ ...older, bed: printer.bed }) as DrillStopSetup;
  const [jig] = drillStop.make(kernel, work(SCREWS), { setup, printer }).jigs;
  if (!isDrillStop(jig)) throw new Error('no jig');
  expect(jig.guides.map((g) => g.for)).toEqual(['ballast']);
  expect(jig.openAtTail).toBe(true);
});

describe('left out and told', () => {
  test('a pilot that comes out of the back, with a depth that does not', () => {
    const hangers = [{ stationMm: 70, kind: 'screw', screwEye: 'screw-eye-large' }];
    const { jigs, problems } = outcome(work({ ...SCREWS, hangers }));
    const [{ code, facts }] = problems;
    expect(code).toBe('pilot-outside');
    expect(facts.woodMm).toBeLessThan(0.5);
    // What is left over the tip grows as the depth shrinks.
    const spare = Number(facts.woodMm) + Number(facts.depthMm) - Number(facts.fitsMm);
    expect(spare).toBeGreaterThanOrEqual(0.5 - 1e-9);
    expect(spare).toBeLessThan(0.7);
    expect(jigs.length).toBe(1);
  });

  test('a bit larger than the body', () => {
    const row = { ...MATERIALS.fittings['screw-eye'], pilotMm: 30 };
    const materials = { ...MATERIALS, fittings: { ...MATERIALS.fittings, 'screw-eye': row } };
    const { problems } = outcome({ ...work(SCREWS), materials: materials as never });
    expect(problems.map((p) => p.code)).toEqual(['pilot-outside', 'pilot-outside']);
    expect(problems.every((p) => p.facts.fitsMm === 0)).toBe(true);
  });

  test('a pilot that runs into the lip slot, or into a ballast hole', () => {
    const lip = {
      widthMm: 21,
      lengthMm: 32,
      thicknessMm: 1.5,
      angleDeg: 60,
      slot: { stationMm: 7, depthMm: 12 },
    };
    const [slot] = outcome(work({ ...SCREWS, lip })).problems;
    expect(slot).toMatchObject({ code: 'pilot-meets', facts: { what: 'lip slot', betweenMm: 0 } });
    const towEye = { kind: 'screw', screwEye: 'screw-eye-large' };
    const ballast = [{ stationMm: 23.6, diameterMm: 8, depthMm: 14, metal: 'lead' }];
    const [hole] = outcome(work({ ...SCREWS, towEye, ballast })).problems;
    // The tip: 19 mm and its point; the hole begins at 19.6 mm.
    const tip = 19 + 0.6 / Math.tan((59 * Math.PI) / 180);
    expect(hole).toMatchObject({ code: 'pilot-meets', facts: { what: 'ballast hole' } });
    expect(hole.facts.betweenMm).toBeCloseTo(19.6 - tip, 1);
  });
});

describe('in each other’s way', () => {
  test('a collar that hits the clamp, with a clamp and a collar that do not', () => {
    const near = work({ ...SCREWS, ballast: [{ ...BALLAST[0], stationMm: 22, depthMm: 10 }] });
    const ears = { lengthMm: 20, thicknessMm: 8, boltMm: 6.4, clampHeightMm: 60 };
    const changed = { collarDiameterMm: 80, ears };
    const { jigs, problems } = outcome(near, changed);
    expect(jigs).toEqual([]);
    const [{ code, facts }] = problems;
    expect(code).toBe('jig-collar-hits-clamp');
    expect(facts.end).toBe('nose');
    const lower = { ...ears, clampHeightMm: Number(facts.limitMm) };
    expect(outcome(near, { ...changed, ears: lower }).problems).toEqual([]);
    const smaller = { ...changed, collarDiameterMm: Number(facts.fitsMm) };
    expect(outcome(near, smaller).problems).toEqual([]);
  });

  test('a wall thinner than a line of the nozzle, by its key', () => {
    const { problems } = drillStop.make(kernel, work(SCREWS), {
      setup: { ...drillStopSetup, webMm: 0.3 } as never,
      printer,
    });
    expect(problems).toMatchObject([
      { code: 'jig-wall-below-nozzle', facts: { key: 'webMm', wallMm: 0.3, nozzleMm: 0.4 } },
    ]);
  });

  test('the base lies so deep that what turns at the nose clears the ear', () => {
    const { ears, pilots } = drillStopSetup;
    if (!ears || !pilots) throw new Error('set-up');
    const towEye = { kind: 'screw', heightMm: 4 };
    for (const collarDiameterMm of [12, 36]) {
      const [jig] = outcome(work({ ...SCREWS, towEye }), {
        pilots: { ...pilots, collarDiameterMm },
      }).jigs;
      const baseMm = jig.jigToBlank[14];
      const clear = baseMm - ears.thicknessMm - 4 - collarDiameterMm / 2;
      expect(clear).toBeGreaterThanOrEqual(1 - 1e-9);
    }
  });
});

test('lures drawn by chance from 40 to 250 mm: sound jigs, or problems that are told', () => {
  let [made, small, large] = [0, 0, 0];
  for (let seed = 101; seed <= 124; seed++) {
    const drawn = drawnLure(seed);
    if (!drawn.blank) continue;
    const of = { ...drawn, blank: drawn.blank };
    const { jigs, problems } = outcome(of);
    expect(jigs.length + problems.length, `seed ${seed}`).toBeGreaterThan(0);
    for (const jig of jigs) {
      expect(judged(jig, of).flaws, `seed ${seed}`).toEqual([]);
      expect(jig.lettersLeftOut, `seed ${seed}`).toEqual([]);
      made++;
      if (of.pattern.lengthMm < 70) small++;
      if (of.pattern.lengthMm > 150) large++;
    }
  }
  expect(made).toBeGreaterThan(15);
  expect(Math.min(small, large)).toBeGreaterThan(3);
}, 60_000);
