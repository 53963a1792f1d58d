/** A shipped lure in its water: its check complains of damage, its slips are what full runs give, its parts are the whole. */
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checkFloating } from '../../src/afloat/check.js';
import { type Floating, reballasted } from '../../src/afloat/floating.js';
import { immersedParts } from '../../src/afloat/parts.js';
import { wishSeen } from '../../src/afloat/wish.js';
import { load } from '../../src/load.js';
import { floatings } from '../../src/lures.js';

const TEMPLATES = join(import.meta.dirname, '../../templates');

function jobOf(name: string) {
  const { job } = load(join(TEMPLATES, `${name}.yaml`));
  if (!job) throw new Error(`${name} cannot be read`);
  return job;
}

const lureOf = (name: string): Floating => floatings(jobOf(name)).lures[0];
const skerry = lureOf('skerry');
const ghyll = lureOf('ghyll');

describe('the check', () => {
  test('finds nothing in what was made', () => {
    expect(checkFloating(skerry)).toEqual([]);
    expect(checkFloating(ghyll)).toEqual([]);
  });

  const damaged = (change: Partial<Floating['attitudes'][number]>): Floating => ({
    ...skerry,
    attitudes: skerry.attitudes.map((a, i) => (i === 0 ? { ...a, ...change } : a)),
  });
  const [{ displacedG, cbMm, upInBody }] = skerry.attitudes;

  test.each([
    ['displaced', { displacedG: 1.00001 * displacedG }],
    ['beside the vertical', { cbMm: [cbMm[0] + 0.1, cbMm[1], cbMm[2]] as const }],
    ['no unit vector', { upInBody: [upInBody[0], upInBody[1], 1.01 * upInBody[2]] as const }],
  ])('complains when it is %s', (told, change) => {
    expect(checkFloating(damaged(change)).join()).toContain(told);
  });

  test('complains of a lure whose items do not add up', () => {
    const lure = { ...skerry.lure, massG: skerry.lure.massG + 0.1 };
    expect(checkFloating({ ...skerry, lure }).join()).toContain('items weigh');
  });
});

describe('what a slip changes, against lures made anew with the slip', () => {
  const [hole] = skerry.pattern.ballast;
  const half = 0.25; // mm to either side
  test.each([
    ['stationMm', 'perStationMm'],
    ['depthMm', 'perDepthMm'],
  ] as const)('%s', (key, rate) => {
    const [less, more] = [-half, half].map(
      (by) => reballasted(skerry, [{ ...hole, [key]: hole[key] + by }]).attitudes[0],
    );
    const slip = skerry.slips?.perHole[0][rate];
    expect(slip?.trimDeg).toBeCloseTo((more.trimDeg - less.trimDeg) / (2 * half), 2);
    expect(slip?.freeboardNoseMm).toBeCloseTo(
      (more.freeboardNoseMm - less.freeboardNoseMm) / (2 * half),
      2,
    );
    expect(slip?.freeboardTailMm).toBeCloseTo(
      (more.freeboardTailMm - less.freeboardTailMm) / (2 * half),
      2,
    );
  });

  test('timber and water', () => {
    const job = jobOf('skerry');
    const { densityKgM3, spreadKgM3, from } = skerry.timber;
    const of = (by: number) =>
      floatings(job, { timber: { densityKgM3: densityKgM3 + by, spreadKgM3, from } }).lures[0];
    const [less, more] = [of(-5), of(5)];
    const { per10KgM3 } = skerry.slips?.perTimber ?? {};
    expect(per10KgM3?.massG).toBeCloseTo(more.lure.massG - less.lure.massG, 6);
    expect(per10KgM3?.trimDeg).toBeCloseTo(
      more.attitudes[0].trimDeg - less.attitudes[0].trimDeg,
      3,
    );
    const at = (salinityPsu: number) =>
      floatings(job, { water: { temperatureC: 9, salinityPsu } }).lures[0].attitudes[0];
    const [fresh, sea] = [at(0), at(35)];
    const salt = skerry.slips?.freshToSalt;
    expect(salt?.trimDeg).toBeCloseTo(sea.trimDeg - fresh.trimDeg, 9);
    expect(salt?.freeboardMm).toBeCloseTo(sea.freeboardMm - fresh.freeboardMm, 9);
  });
});

test('the parts under water are together what the lure displaces, pulling where it says', () => {
  const parts = immersedParts(ghyll);
  expect(ghyll.attitudes.length).toBeGreaterThan(2);
  for (const a of ghyll.attitudes) {
    const found = parts(a);
    const volume = found.reduce((sum, p) => sum + p.volumeMm3, 0);
    expect(volume / a.displacedMm3).toBeCloseTo(1, 9);
    for (const k of [0, 1, 2] as const) {
      const pull = found.reduce((sum, p) => sum + p.volumeMm3 * p.cbMm[k], 0) / volume;
      expect(pull).toBeCloseTo(a.cbMm[k], 6);
    }
  }
});

test('other ballast in the same lure is the lure made anew with it', () => {
  const ballast = [{ ...skerry.pattern.ballast[0], stationMm: 33, depthMm: 11 }];
  const quick = reballasted(skerry, ballast);
  const job = jobOf('skerry');
  const { lures } = floatings({
    ...job,
    orders: job.orders.map((o) => ({ ...o, pattern: { ...o.pattern, ballast } })),
  });
  expect(quick.lure.massG).toBeCloseTo(lures[0].lure.massG, 9);
  expect(quick.attitudes[0].trimDeg).toBeCloseTo(lures[0].attitudes[0].trimDeg, 6);
  expect(quick.holes).toEqual(lures[0].holes);
});

test('a wish is held against the lure: shipped ones are met, others told by how far', () => {
  for (const name of ['skerry', 'ghyll', 'holm']) expect(wishSeen(lureOf(name))?.met).toBe(true);
  const wish = { ...skerry.pattern.wish, buoyancy: 'floats', noseDownDeg: 12 } as const;
  const other = {
    ...skerry,
    pattern: { ...skerry.pattern, wish: { leastGmMm: 0.5, weights: false, mostHoles: 2, ...wish } },
  };
  expect(wishSeen(other)).toMatchObject({ met: false });
  expect(wishSeen(other)?.missed?.trimDeg).toBeCloseTo(skerry.attitudes[0].trimDeg + 12, 9);
  expect(wishSeen({ ...skerry, pattern: { ...skerry.pattern, wish: null } })).toBeNull();
});

describe('a lure whose hole leans 30° aft', () => {
  const [hole] = skerry.pattern.ballast;
  const leaning = reballasted(skerry, [{ ...hole, stationMm: 31, tiltDeg: 30 }]);

  test('passes the check, and tells the depth for the full diameter and for the tip', () => {
    expect(checkFloating(leaning)).toEqual([]);
    const [told] = leaning.holes;
    expect(told).toMatchObject({ stationMm: 31, tiltDeg: 30, drilledMm: 14 });
    // (D/2)/tan(A/2), plane geometry.
    expect(told.tipDepthMm).toBeCloseTo(14 + 4 / Math.tan((59 * Math.PI) / 180), 9);
  });

  test('has its metal along the axis', () => {
    const plug = leaning.lure.items.find(({ name }) => name === 'plug 1');
    const [{ bellyMm }] = leaning.blank.holes;
    if (!plug) throw new Error('no plug');
    const [x, z] = [plug.cgMm[0] - 31, plug.cgMm[2] - bellyMm];
    // A belly that is not square to the bit moves it aside by less than r² tan 40°/(4 · 12 mm).
    expect(Math.abs(x * Math.cos(Math.PI / 6) - z * Math.sin(Math.PI / 6))).toBeLessThan(0.28);
    const deepMm = x * Math.sin(Math.PI / 6) + z * Math.cos(Math.PI / 6);
    expect(deepMm).toBeGreaterThan(7);
    expect(deepMm).toBeLessThan(10);
  });

  test('is moved by a mm of depth along its axis as a lure drilled so is', () => {
    const deeper = reballasted(skerry, [{ ...hole, stationMm: 31, tiltDeg: 30, depthMm: 14.1 }]);
    const rate = leaning.slips?.perHole[0].perDepthMm;
    // A step of 0.1 mm on a curve: a percent.
    expect((deeper.attitudes[0].trimDeg - leaning.attitudes[0].trimDeg) / 0.1).toBeCloseTo(
      rate?.trimDeg ?? Number.NaN,
      2,
    );
    expect((deeper.lure.massG - leaning.lure.massG) / 0.1).toBeCloseTo(rate?.massG ?? 0, 6);
  });
});
