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
