/** A lure of an ellipsoid with timber and metal in it: what is read of a changed one must lead back to the change. */
import { expect, test } from 'vitest';
import { makeBody } from '../../src/body/body.js';
import { offsetSquared } from '../../src/body/shape.js';
import { immersible } from '../../src/float/immersible.js';
import { type Load, restAttitudes } from '../../src/float/rest.js';
import { monotoneCurve } from '../../src/geometry/monotone.js';
import type { Item } from '../../src/mass/item.js';
import { explain } from '../../src/tub/explain.js';
import { tubLure } from '../../src/tub/lure.js';
import type { Reading } from '../../src/tub/reading.js';

const L = 100;
const curve = (h: number) =>
  offsetSquared(L, [{ stationMm: 50, offsetMm: h }], {
    noseRadiusMm: h ** 2 / 50,
    tailRadiusMm: h ** 2 / 50,
  });
const round = monotoneCurve([0], [2]);
const { mesh } = makeBody({
  lengthMm: L,
  backSquared: curve(12),
  bellySquared: curve(12),
  halfBreadthSquared: curve(9),
  upperExponent: round,
  lowerExponent: round,
});
const solid = immersible([mesh]);
const no = { xx: 0, yy: 0, zz: 0, xz: 0 };
const KINDS: Readonly<Record<string, Item['kind']>> = { timber: 'timber', 'plug 1': 'poured' };
const item = (name: string, massG: number, x: number, z: number): Item => ({
  kind: KINDS[name] ?? 'rig',
  name,
  massG,
  cgMm: [x, 0, z],
  inertiaGMm2: no,
  displacedMm3: 0,
  spreadG: 0,
});
const items = [item('timber', 8, 50, 0), item('plug 1', 7, 40, -6), item('hook', 3, 60, -10)];

const lureOf = (timberG: number, metalG: number) => {
  const all = [item('timber', timberG, 50, 0), item('plug 1', metalG, 40, -6), items[2]];
  const massG = all.reduce((s, i) => s + i.massG, 0);
  const at = (k: 0 | 2) => all.reduce((s, i) => s + i.massG * i.cgMm[k], 0) / massG;
  const load: Load = { massG, cgMm: [at(0), 0, at(2)], waterDensityKgM3: 1000, lengthMm: L };
  return { load, rest: restAttitudes(solid, load)[0] };
};

const planned = lureOf(8, 7);
const lure = tubLure({
  items,
  timber: { densityKgM3: 400, spreadKgM3: 40, from: 'table' },
  solid,
  load: planned.load,
  rest: planned.rest,
  bellyMm: () => -12,
  leadKgM3: 11340,
});

const read = (timberG: number, metalG: number): Reading => {
  const { load, rest } = lureOf(timberG, metalG);
  return {
    massG: load.massG,
    trimDeg: rest.trimDeg,
    freeboardNoseMm: rest.freeboardNoseMm,
    freeboardTailMm: rest.freeboardTailMm,
  };
};

test('a lure as planned explains itself', () => {
  const found = explain(lure, [read(8, 7)]);
  expect(found.timberKgM3).toBeCloseTo(400, 4);
  expect(found.metalShare).toBeCloseTo(1, 6);
  expect(found.misfit).toBeLessThan(1e-3);
  expect(found.well).toBe(true);
});

test.each([
  [8.8, 7, 440, 1],
  [8, 6.3, 400, 0.9],
  [9, 6.6, 450, 0.943],
])(
  'timber of %f g and metal of %f g are found from scale and waterline',
  (timberG, metalG, kgM3, share) => {
    const found = explain(lure, [read(timberG, metalG)]);
    // What the plan says counts as one reading more and draws a little toward it.
    expect(Math.abs(found.timberKgM3 - kgM3)).toBeLessThan(10);
    expect(Math.abs(found.metalShare - share)).toBeLessThan(0.03);
    expect(Math.abs(found.timberKgM3 - kgM3)).toBeLessThan(found.timberSpreadKgM3);
    expect(found.misfit).toBeLessThan(0.3);
    expect(found.timberSpreadKgM3).toBeLessThan(40);
  },
);

test('trim alone moves what it can tell of and leaves a wide spread', () => {
  const { trimDeg = 0 } = read(8, 6);
  const found = explain(lure, [{ trimDeg }]);
  expect(found.metalShare).toBeLessThan(1);
  expect(found.timberSpreadKgM3).toBeGreaterThan(35);
});

test('a trial weight is counted at its station, its own buoyancy taken off', () => {
  const hung = { hungG: 1, hungStationMm: 70 };
  const own = lureOf(8, 6.3).load;
  const netG = 1 - 1000 / 11340;
  const massG = own.massG + netG;
  const with_ = (k: 0 | 2, at: number) => (own.massG * own.cgMm[k] + netG * at) / massG;
  const load: Load = { ...own, massG, cgMm: [with_(0, 70), 0, with_(2, -12)] };
  const rest = restAttitudes(solid, load)[0];
  const seen = {
    ...hung,
    massG: own.massG,
    trimDeg: rest.trimDeg,
    freeboardNoseMm: rest.freeboardNoseMm,
  };
  const found = explain(lure, [read(8, 6.3), seen]);
  expect(found.readings).toHaveLength(7);
  expect(Math.abs(found.metalShare - 0.9)).toBeLessThan(0.03);
  expect(found.misfit).toBeLessThan(0.3);
});

test('what neither timber nor metal can explain is told by the misfit, a far-fetched timber by itself', () => {
  const odd = { ...read(8, 7), trimDeg: 25 };
  expect(explain(lure, [odd])).toMatchObject({ well: false });
  expect(explain(lure, [odd]).misfit).toBeGreaterThan(3);
  expect(explain(lure, [{ massG: 26 }]).well).toBe(false);
});

test('a scale reads in air: what weighs more than its water is explained all the same', () => {
  const fullG = solid.volumeMm3 * 1e-3;
  const heavy = explain(lure, [{ massG: fullG + 1 }]);
  expect(heavy.readings[0].explained).toBeCloseTo(fullG + 1, 0);
  expect(heavy.timberKgM3).toBeGreaterThan(450);
});

test('no timber lighter than balsa and no less than a little metal is ever the answer', () => {
  for (const odd of [{ trimDeg: 80 }, { freeboardNoseMm: 8, freeboardTailMm: 8 }, { massG: 0.5 }]) {
    const found = explain(lure, [odd]);
    expect(found.timberKgM3).toBeGreaterThanOrEqual(60);
    expect(found.metalShare).toBeGreaterThan(0);
    expect(found.well).toBe(false);
  }
});

test('a lure without metal has the timber alone to explain with', () => {
  const wood = tubLure({
    items: [items[0], items[2]],
    timber: { densityKgM3: 400, spreadKgM3: 40, from: 'table' },
    solid,
    load: { ...planned.load, massG: 11, cgMm: [52.7, 0, -2.7] },
    rest: planned.rest,
    bellyMm: () => -12,
    leadKgM3: 11340,
  });
  const found = explain(wood, [{ massG: 11.4 }]);
  expect(found.metalShare).toBe(1);
  expect(found.timberKgM3).toBeGreaterThan(410);
});
