import { describe, expect, test } from 'vitest';
import type { BallastHole } from '../../src/blank/blank.js';
import { nominal } from '../../src/blank/nominal.js';
import { type ArcPath, pathArea, polyline } from '../../src/geometry/arcpath.js';
import { makeLure } from '../../src/mass/budget.js';
import { roundedOff, sawnHole, sawnUpTo, slab } from '../../src/mass/outline.js';
import { ballastProblems } from '../../src/mass/problems.js';
import { roundOver } from '../../src/mass/round-over.js';
import { type Stage, stagesOf } from '../../src/mass/stages.js';
import type { Pattern } from '../../src/pattern/pattern.js';
import { designOf, MATERIALS, patternOf, rel, TIMBER } from './lures.js';

const wood = TIMBER.densityKgM3 * 1e-6;

const NO_BITS = { ...MATERIALS, bits: { drillMm: [], roundOverMm: [] } };

function staged(pattern: Pattern, materials = MATERIALS) {
  const design = designOf(pattern);
  const lure = makeLure(design, materials, TIMBER);
  const radius = roundOver(design.body.shape, design.blank, materials).bitMm;
  const stages = stagesOf({ ...design, materials, timber: TIMBER, lure, roundOverMm: radius });
  const stage = (name: string): Stage => {
    const found = stages.find((s) => s.name === name);
    if (!found) throw new Error(`${name} of ${stages.map((s) => s.name).join(', ')}`);
    return found;
  };
  return { design, lure, stages, stage, radius };
}

describe('the sawn blank in closed form', () => {
  const rect = polyline(
    [
      [0, 0],
      [40, 0],
      [40, 20],
      [0, 20],
    ],
    true,
  );
  /** Two half circles of bulge 1 and two lines: a stadium, 40 long between centers, radius 10. */
  const stadium: ArcPath = {
    closed: true,
    vertices: [
      { x: 0, y: -10, bulge: 0 },
      { x: 40, y: -10, bulge: 1 },
      { x: 40, y: 10, bulge: 0 },
      { x: 0, y: 10, bulge: 1 },
    ],
  };

  test('a rectangle and a stadium: area, center', () => {
    expect(slab(rect, 5)).toEqual({
      amount: expect.closeTo(4000, 9),
      x: expect.closeTo(80000, 8),
      z: expect.closeTo(40000, 8),
    });
    const s = slab(stadium, 1);
    expect(rel(s.amount, pathArea(stadium))).toBeLessThan(1e-12);
    expect(s.x / s.amount).toBeCloseTo(20, 9);
    expect(s.z).toBeCloseTo(0, 9);
  });

  test('round-over of a disk’s edges: what revolving the quarter round takes (Pappus)', () => {
    const disk: ArcPath = {
      closed: true,
      vertices: [
        { x: 50, y: -30, bulge: 1 },
        { x: 50, y: 30, bulge: 1 },
      ],
    };
    const R = 4;
    const got = roundedOff(disk, R);
    // (1 − π/4)R² = 0.2146018366 R², its centroid 0.2233679389 R from each face (to the digits shown).
    const want = 2 * 0.2146018366 * 16 * 2 * Math.PI * (30 - 0.2233679389 * R);
    expect(rel(got.amount, want)).toBeLessThan(1e-9);
    expect(got.x / got.amount).toBeCloseTo(50, 9);
    expect(roundedOff(stadium, 0).amount).toBe(0);
  });

  test('a hole in a flat belly is a cylinder and a cone', () => {
    const hole: BallastHole = {
      stationMm: 20,
      tiltDeg: 0,
      diameterMm: 8,
      depthMm: 12,
      pointAngleDeg: 118,
      metal: 'lead',
      pour: 'topped-up',
      fillMm: null,
      weight: null,
      bellyMm: 0,
    };
    const got = sawnHole(nominal(rect), hole);
    expect(got.amount).toBeCloseTo(Math.PI * 16 * 12 + 40.2701, 3); // cone to the digits shown
    expect(got.x / got.amount).toBeCloseTo(20, 9);
    expect(sawnUpTo(nominal(rect), hole, 5).z).toBeCloseTo((Math.PI * 16 * 25) / 2, 9);
  });
});

describe.each(['diver', 'slim', 'plain'])('stages of the %s lure', (name) => {
  const { design, lure, stages, stage, radius } = staged(patternOf(name));
  const { blank, pattern, body } = design;

  test('in order, each with its name once', () => {
    const coats = pattern.coats[1].count;
    expect(stages.map((s) => s.name)).toEqual([
      'sawn blank',
      'drilled',
      'poured',
      'rounded over',
      'shaped',
      'sealed',
      ...Array.from({ length: coats }, (_, k) => `epoxy ${k + 1}`),
      'rigged',
    ]);
  });

  test('what is taken off or put on is the difference', () => {
    const diff = (from: string, to: string) => stage(to).massG - stage(from).massG;
    expect(stage('sawn blank').massG).toBeCloseTo(
      pathArea(blank.profile.path) * blank.thicknessMm * wood,
      9,
    );
    const bored = blank.holes.reduce((sum, h) => sum + sawnHole(blank.profile, h).amount, 0);
    const slot = (pathArea(blank.profile.path) - pathArea(blank.outline.path)) * blank.thicknessMm;
    const bore = pattern.throughWire ? -diff('sawn blank', 'drilled') / wood - bored - slot : 0;
    expect(diff('sawn blank', 'drilled')).toBeCloseTo(-(bored + slot + bore) * wood, 9);
    if (pattern.throughWire) {
      const { boreMm } = pattern.throughWire;
      const around = bore / ((Math.PI / 4) * boreMm ** 2);
      expect(around).toBeGreaterThan(pattern.lengthMm);
      expect(around).toBeLessThan(pattern.lengthMm + 40); // the legs of one hanger
    }
    const metal = MATERIALS.metals[blank.holes[0].metal].densityKgM3 * 1e-6;
    expect(diff('drilled', 'poured')).toBeCloseTo(bored * metal, 9);
    expect(diff('poured', 'rounded over')).toBeCloseTo(
      -roundedOff(blank.profile.path, radius).amount * wood,
      9,
    );
    const item = (n: string) => lure.items.find((i) => i.name === n)?.massG ?? 0;
    const plugs = lure.items.filter((i) => i.name.startsWith('plug'));
    expect(plugs).toHaveLength(blank.holes.length);
    expect(stage('shaped').massG).toBeCloseTo(
      item('timber') + plugs.reduce((sum, p) => sum + p.massG, 0),
      9,
    );
    expect(diff('shaped', 'sealed')).toBeCloseTo(item('sealer'), 9);
    const coats = pattern.coats[1].count;
    expect(diff('sealed', `epoxy ${coats}`)).toBeCloseTo(item('epoxy'), 9);
    expect(diff('sealed', 'epoxy 1')).toBeCloseTo(item('epoxy') / coats, 9);
    const rig = lure.items.filter(
      (i) => !['timber', 'sealer', 'epoxy'].includes(i.name) && !i.name.startsWith('plug'),
    );
    expect(diff(`epoxy ${coats}`, 'rigged')).toBeCloseTo(
      rig.reduce((sum, i) => sum + i.massG, 0),
      9,
    );
    for (const k of [0, 1, 2]) expect(stage('rigged').cgMm[k]).toBe(lure.cgMm[k]);
    expect(rel(stage('rigged').massG, lure.massG)).toBeLessThan(1e-12);
  });

  test('volumes are of what is there: less holes and slot, filled, shaped, coated', () => {
    const wood = (name: string) => stage(name).volumeMm3;
    expect(stage('sawn blank').massG - stage('drilled').massG).toBeCloseTo(
      (wood('sawn blank') - wood('drilled')) * TIMBER.densityKgM3 * 1e-6,
      9,
    );
    expect(wood('poured')).toBeGreaterThan(wood('drilled'));
    expect(wood('poured')).toBeLessThanOrEqual(wood('sawn blank'));
    expect(wood('rounded over')).toBeLessThan(wood('poured'));
    expect(wood('shaped')).toBeLessThanOrEqual(body.properties.volumeMm3);
    const films = pattern.coats.reduce(
      (sum, c) => sum + c.count * c.thicknessMm * body.properties.areaMm2,
      0,
    );
    const last = stages[stages.length - 2];
    expect(last.volumeMm3).toBeCloseTo(wood('shaped') + films, 6);
  });

  test('the scale shows tenths; the spread is mostly the timber’s until there are coats', () => {
    for (const s of stages) {
      expect(Math.abs(s.scaleG - s.massG)).toBeLessThanOrEqual(0.05 + 1e-9);
      expect(s.spreadG).toBeGreaterThan(0);
      expect(s.cgMm[1]).toBe(0);
    }
    expect(rel(stage('sawn blank').spreadG, (stage('sawn blank').massG * 36) / 358)).toBeLessThan(
      1e-9,
    );
    expect(stage('rigged').spreadG).toBe(lure.spreadG);
  });

  test('the routed blank still holds the body: more of everything, everywhere', () => {
    expect(stage('rounded over').massG).toBeGreaterThan(stage('shaped').massG);
  });
});

test('a hole filled to a height keeps its metal through the shaping; its glue goes with the belly', () => {
  const ballast = [
    {
      stationMm: 35,
      tiltDeg: 0,
      diameterMm: 8,
      depthMm: 14,
      pointAngleDeg: 118,
      metal: 'lead',
      pour: 'topped-up',
      fillMm: 5,
    },
  ] as const;
  const { lure, stage } = staged(patternOf('diver', { ballast: [...ballast] }), NO_BITS);
  const plug = lure.items.find((i) => i.name === 'plug 1')?.massG ?? 0;
  expect(plug).toBeCloseTo((Math.PI * 16 * 5 + 40.2701) * 11.34e-3, 3);
  expect(stage('poured').massG - stage('drilled').massG).toBeGreaterThan(plug);
  expect(stage('rounded over').massG).toBe(stage('poured').massG);
});

test('a ready-made weight is the same at every stage', () => {
  const ballast = [
    {
      stationMm: 35,
      tiltDeg: 0,
      diameterMm: 8,
      depthMm: 14,
      pointAngleDeg: 118,
      metal: 'lead',
      pour: 'topped-up',
      weight: 'lead-3g',
    },
  ] as const;
  const { lure, stage, design } = staged(patternOf('diver', { ballast: [...ballast] }));
  const weight = lure.items.find((i) => i.name === 'weight 1');
  expect(weight?.massG).toBeCloseTo(3, 12);
  expect(weight?.spreadG).toBeCloseTo(0.15, 12);
  const { amount } = sawnHole(design.blank.profile, design.blank.holes[0]);
  const slug = (Math.PI / 4) * 36 * 9.4;
  expect(stage('poured').massG - stage('drilled').massG).toBeCloseTo(
    3 + (amount - slug) * 1.15e-3,
    9,
  );
});

describe('names of the coats’ stages', () => {
  const names = (...coats: (readonly [name: string, count: number])[]) =>
    staged(
      patternOf('plain', {
        coats: coats.map(([name, count]) => ({ name, count, thicknessMm: 0.1 })),
      }),
    )
      .stages.slice(5)
      .map((s) => s.name);
  test('sealed is once all coats of the first sealer are on', () => {
    expect(names(['sanding sealer', 2], ['paint', 1])).toEqual(['sealed', 'paint 1', 'rigged']);
    expect(names(['epoxy', 1], ['primer', 1], ['epoxy', 2])).toEqual([
      'epoxy 1',
      'sealed',
      'epoxy 2',
      'epoxy 3',
      'rigged',
    ]);
  });
  test('no sealer, no such stage; no coats, none at all', () => {
    expect(names(['epoxy', 1])).toEqual(['epoxy 1', 'rigged']);
    expect(names()).toEqual(['rigged']);
  });
});

describe('metal that would be sanded into', () => {
  const design = designOf(patternOf('diver'));
  const { shape } = design.body;
  const hole = design.blank.holes[0];
  const tell = (change: Partial<BallastHole>) =>
    ballastProblems([{ ...hole, ...change }], shape, MATERIALS);

  test('poured to the belly, or well under it, is no problem', () => {
    expect(tell({})).toEqual([]);
    expect(tell({ fillMm: 6 })).toEqual([]);
    expect(tell({ weight: 'lead-3g', fillMm: null })).toEqual([]);
  });

  test('filled too high: by how much, and what would do', () => {
    const [found] = tell({ fillMm: 13 });
    expect(found.code).toBe('metal-sanded-into');
    expect(found.path).toEqual(['ballast', 0]);
    const { coverMm, limitMm } = found.facts as { coverMm: number; limitMm: number };
    expect(coverMm).toBeLessThan(0);
    expect(limitMm).toBeLessThanOrEqual(13 + coverMm);
    expect(tell({ fillMm: limitMm })).toEqual([]);
    expect(tell({ fillMm: limitMm + 0.11 })).toHaveLength(1);
  });

  test('a weight too long for the hole', () => {
    const [found] = tell({ weight: 'lead-7g', depthMm: 12 });
    expect(found.facts.what).toBe('weight lead-7g');
  });
});
