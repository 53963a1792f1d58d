import { describe, expect, test } from 'vitest';
import { makeBlank } from '../../src/blank/make.js';
import { profilePath } from '../../src/blank/profile.js';
import { sawnMass } from '../../src/blank/sawn-mass.js';
import { slotCorners } from '../../src/blank/slot.js';
import { timberDensity } from '../../src/blank/timber-density.js';
import { bodyShape } from '../../src/body/body.js';
import { flatten, pathArea, pathPoints, segmentsOf } from '../../src/geometry/arcpath.js';
import { asRegion, offset } from '../../src/geometry/clip.js';
import { insideRing, regionArea, ringArea } from '../../src/geometry/ring.js';
import { distance } from '../../src/geometry/vec.js';
import { resolvePattern } from '../../src/pattern/pattern.js';
import type { PatternFile } from '../../src/pattern/schema.js';
import { patternSchema } from '../../src/pattern/schema.js';

/** An ellipse 100 × 24 seen from the side, 16 wide: area and offsets are known in closed form. */
const file = (change: Partial<PatternFile> = {}): PatternFile => {
  const at = (s: number) => ({
    stationRatio: s,
    backMm: 12 * Math.sqrt(1 - (2 * s - 1) ** 2),
    bellyMm: 12 * Math.sqrt(1 - (2 * s - 1) ** 2),
    halfBreadthMm: 8 * Math.sqrt(1 - (2 * s - 1) ** 2),
  });
  return patternSchema.parse({
    schema: 1,
    kind: 'pattern',
    name: 'tarn',
    version: '1.0',
    body: {
      lengthMm: 100,
      noseRadiusMm: 144 / 50,
      tailRadiusMm: 144 / 50,
      offsets: [0.1, 0.3, 0.5, 0.7, 0.9].map(at),
    },
    lip: {
      widthMm: 20,
      lengthMm: 30,
      thicknessMm: 1.5,
      angleDeg: 45,
      slot: { stationMm: 10, depthMm: 9 },
    },
    ballast: [{ stationMm: 35, diameterMm: 8, depthMm: 14, metal: 'lead' }],
    timber: 'western-redcedar',
    sandingAllowanceMm: 1.5,
    blockThicknessMm: 20,
    ...change,
  });
};

const built = (f: PatternFile, scaleRatio?: number) => {
  const pattern = resolvePattern(f, { scaleRatio });
  const shape = bodyShape(pattern);
  return { pattern, shape, ...makeBlank(pattern, shape) };
};
const blankOf = (f: PatternFile) => {
  const { blank, problems } = built(f);
  if (!blank) throw new Error(JSON.stringify(problems));
  return blank;
};

describe('profile', () => {
  test('an ellipse by its table is an ellipse to the arc tolerance', () => {
    const path = profilePath(built(file()).shape);
    // Area within tolerance × perimeter (0.005 × 209 mm).
    expect(Math.abs(pathArea(path) - Math.PI * 50 * 12)).toBeLessThan(1.05);
    const points = pathPoints(path, 0.001);
    expect(points.length).toBeGreaterThan(100);
    for (const [x, y] of points) {
      const [u, w] = [(x - 50) / 50, y / 12];
      const gradient = Math.hypot((2 * u) / 50, (2 * w) / 12);
      expect(Math.abs(u * u + w * w - 1) / gradient).toBeLessThan(0.0051); // the arcs' own tolerance
    }
  });

  test('arcs join without a corner', () => {
    const segments = segmentsOf(profilePath(built(file()).shape));
    expect(segments.length).toBeLessThan(140);
    const heading = (s: (typeof segments)[number], end: 0 | 1) => {
      const chord = Math.atan2(s.to[1] - s.from[1], s.to[0] - s.from[0]);
      return chord + (end ? 2 : -2) * Math.atan(s.bulge);
    };
    segments.forEach((s, i) => {
      const turn = heading(segments[(i + 1) % segments.length], 0) - heading(s, 1);
      expect(Math.abs(Math.sin(turn))).toBeLessThan(1e-5);
    });
  });

  test('two rows at one station, written as a share and in mm, are one place', () => {
    const f = file();
    // 0.58 · 100 is 57.99999999999999.
    const at58 = { stationMm: 58, backMm: 11.8, bellyMm: 11.8, halfBreadthMm: 7.8 };
    const offsets = [...f.body.offsets.slice(0, 3), at58, ...f.body.offsets.slice(3)];
    const fullness = [{ stationRatio: 0.58, upperExponent: 2, lowerExponent: 2 }];
    const { shape } = built({ ...f, body: { ...f.body, offsets, fullness } });
    expect(segmentsOf(profilePath(shape)).length).toBeLessThan(160);
  });

  test('a flat belly gives a straight line and a square corner at the nose', () => {
    const f = file();
    const flat = {
      ...f,
      lip: undefined,
      ballast: [],
      body: { ...f.body, offsets: f.body.offsets.map((o) => ({ ...o, bellyMm: 0 })) },
    };
    const path = profilePath(built(flat).shape);
    expect(Math.abs(pathArea(path) - (Math.PI * 50 * 12) / 2)).toBeLessThan(1);
    expect(Math.min(...pathPoints(path, 0.01).map((p) => p[1])) + 0).toBe(0);
  });
});

describe('blank', () => {
  test('sanding allowance: Steiner for the convex side view, and clipper as a second opinion', () => {
    const blank = blankOf(file({ lip: undefined }));
    const shape = built(file()).shape;
    const ring = flatten(profilePath(shape), 1e-4);
    const [grown] = offset([asRegion(ring)], 1.5, 1e-4);
    expect(pathArea(blank.profile.path)).toBeCloseTo(regionArea(grown), 1);
    const perimeter = ring.reduce((s, p, i) => s + distance(p, ring[(i + 1) % ring.length]), 0);
    expect(pathArea(blank.profile.path)).toBeCloseTo(
      ringArea(ring) + perimeter * 1.5 + Math.PI * 1.5 ** 2,
      1,
    );
  });

  test('the slot: at its angle, as wide and as deep as said, across the sanding allowance', () => {
    const blank = blankOf(file());
    const slot = blank.slot;
    if (!slot) throw new Error('no slot');
    const [right, left] = slotCorners(slot);
    expect(distance(right, left)).toBeCloseTo(1.6, 9);
    const angle = (Math.atan2(-slot.outward[1], -slot.outward[0]) * 180) / Math.PI;
    expect(angle).toBeCloseTo(45, 9);
    // Mouth on the finished belly at station 10: 12·√(1 − 0.8²) = 7.2 under the datum line.
    expect(slot.mouth[0]).toBe(10);
    expect(slot.mouth[1]).toBeCloseTo(-7.2, 9);
    expect(distance(slot.mouth, slot.end)).toBeCloseTo(9, 9);
    for (const corner of [right, left]) {
      expect(Math.min(...blank.outlineRing.map((p) => distance(p, corner)))).toBeLessThan(1e-9);
    }
    const removed = ringArea(blank.profileRing) - ringArea(blank.outlineRing);
    expect(removed).toBeGreaterThan(1.6 * 9);
    expect(removed).toBeLessThan(1.6 * 12.5);
    expect(insideRing([slot.mouth[0], slot.mouth[1]], blank.outlineRing)).toBe(false);
  });

  test.each([0, 10, 30, 60, 90])('a slot at %d° is cut cleanly', (angleDeg) => {
    const f = file();
    if (!f.lip) throw new Error();
    const stationMm = angleDeg === 0 ? 1 : 14;
    const blank = blankOf({
      ...f,
      lip: { ...f.lip, angleDeg, slot: { stationMm, depthMm: 8, fitMm: 0.1 } },
    });
    const removed = ringArea(blank.profileRing) - ringArea(blank.outlineRing);
    expect(removed).toBeGreaterThan(1.6 * 7);
    expect(removed).toBeLessThan(1.6 * 17);
  });

  test('depth is measured from the sawn belly, on the axis', () => {
    const [hole] = blankOf(file()).holes;
    const finished = -12 * Math.sqrt(1 - 0.3 ** 2);
    const normal = Math.hypot(1, (12 / 50) * (0.3 / Math.sqrt(1 - 0.3 ** 2)));
    // The parallel curve at a distance d lies d·√(1 + slope²) below, to first order.
    expect(hole.bellyMm).toBeCloseTo(finished - 1.5 * normal, 2);
  });

  test('one number scales the design and leaves the hardware', () => {
    const [one, big] = [resolvePattern(file()), resolvePattern(file(), { scaleRatio: 2 })];
    expect(big.lengthMm).toBe(2 * one.lengthMm);
    expect(big.ballast[0]).toEqual({ ...one.ballast[0], stationMm: 70, depthMm: 28 });
    expect(big.lip?.slotWidthMm).toBe(one.lip?.slotWidthMm);
    expect(big.lip?.widthMm).toBe(40);
    expect(big.sandingAllowanceMm).toBe(one.sandingAllowanceMm);
    expect(big.blockThicknessMm).toBe(40);
    expect(big.name).toBe('tarn-200');
    const hard = resolvePattern(file({ scaleHardware: true }), { scaleRatio: 2 });
    expect(hard.lip?.thicknessMm).toBe(3);
    expect(hard.ballast[0].diameterMm).toBe(16);
  });

  test('a scaled blank is the blank scaled, but for the allowance', () => {
    const f = file({ sandingAllowanceMm: 0, lip: undefined });
    const [one, big] = [built(f).blank, built(f, 1.7).blank];
    if (!one || !big) throw new Error();
    expect(pathArea(big.profile.path) / pathArea(one.profile.path)).toBeCloseTo(1.7 ** 2, 3);
  });

  test('nothing to sand, nothing to grow', () => {
    const blank = blankOf(file({ sandingAllowanceMm: 0, lip: undefined }));
    expect(blank.profile.path).toEqual(profilePath(built(file()).shape));
  });
});

describe('what a sawn blank weighs', () => {
  const blank = blankOf(file());
  const cedar = { densityKgM3: 358, spreadKgM3: 36, latin: '', source: 'x' };
  const unweighed = [{ count: 3, densityKgM3: null }];

  test('by the table, with its spread', () => {
    const m = sawnMass(blank, timberDensity(cedar, null, unweighed), { slotIsCut: false });
    expect(m.massG).toBeCloseTo((pathArea(blank.profile.path) * 20 * 358) / 1e6, 9);
    expect((m.spreadG ?? 0) / m.massG).toBeCloseTo(36 / 358, 9);
    expect(m.from).toBe('table');
  });

  test('a saw that cuts the slot leaves less', () => {
    const density = timberDensity(cedar, null, []);
    const [whole, cut] = [false, true].map((slotIsCut) => sawnMass(blank, density, { slotIsCut }));
    expect(whole.volumeMm3 - cut.volumeMm3).toBeGreaterThan(1.6 * 9 * 20);
    expect(cut.volumeMm3).toBeCloseTo(pathArea(blank.outline.path) * 20, 9);
  });

  test('a weighed block beats what the pattern says, and that the table', () => {
    const piles = [
      { count: 1, densityKgM3: 400 },
      { count: 3, densityKgM3: 440 },
      { count: 9, densityKgM3: null },
    ];
    const m = sawnMass(blank, timberDensity(cedar, 500, piles), { slotIsCut: false });
    expect(m).toMatchObject({ densityKgM3: 430, spreadG: null, from: 'weighed blocks' });
    expect(timberDensity(cedar, 500, unweighed)).toMatchObject({
      densityKgM3: 500,
      from: 'pattern',
    });
  });
});
