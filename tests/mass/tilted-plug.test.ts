import { describe, expect, test } from 'vitest';
import type { BallastHole } from '../../src/blank/blank.js';
import { makeBlank } from '../../src/blank/make.js';
import { bodyShape, makeBody } from '../../src/body/body.js';
import { flatten, movedPath } from '../../src/geometry/arcpath.js';
import { asRegion } from '../../src/geometry/clip.js';
import { add, type Point2, sub, turned } from '../../src/geometry/vec.js';
import { bellyOverHole } from '../../src/mass/belly.js';
import { type Moments, massOf, movedTo, turnedBy } from '../../src/mass/moments.js';
import { sawnHole } from '../../src/mass/outline.js';
import { drilledForMm, plugOf } from '../../src/mass/plug.js';
import { slab } from '../../src/solid/csg.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { bitIn, sumsOf } from './bit.js';
import { bar, ellipsoid, MATERIALS, patternOf, rel } from './lures.js';

const kernel = await loadKernel();

const hole = (change: Partial<BallastHole> = {}): BallastHole => ({
  stationMm: 50,
  tiltDeg: 0,
  diameterMm: 8,
  depthMm: 12,
  pointAngleDeg: 180,
  metal: 'lead',
  pour: 'topped-up',
  fillMm: null,
  weight: null,
  bellyMm: -6,
  ...change,
});

const rad = (deg: number) => (deg * Math.PI) / 180;

describe('closed forms: a flat belly', () => {
  // Exponent 400 is flat to 1e-9 of its depth over the inner half of the breadth.
  const shape = bar({ b: 20, back: 12, belly: 6, n: 400 });
  const plugAt = (tiltDeg: number, change: Partial<BallastHole> = {}) => {
    const drilled = hole({ tiltDeg, ...change });
    return plugOf(bellyOverHole(shape, drilled), drilled, MATERIALS);
  };

  // An oblique-cut cylinder: r 4, H 12; volume πr²H, center r²tanθ/(4H) aside, H/2 + r²tan²θ/(8H) from its square end (standard).
  test.each([-60, -35, 12, 45, 60])('tilt %d°: volume of the square hole, center by hand', (t) => {
    const { bored, metal, plugMm } = plugAt(t);
    expect(rel(bored.amount, Math.PI * 16 * 12)).toBeLessThan(1e-9);
    expect(rel(metal.amount, Math.PI * 16 * 12 * 11.34e-3)).toBeLessThan(1e-9);
    const tan = Math.tan(rad(t));
    const [aside, up] = [(-16 * tan) / 48, 6 - (16 * tan ** 2) / 96];
    const [c, s] = [Math.cos(rad(t)), Math.sin(rad(t))];
    const { cgMm } = massOf(metal);
    expect(cgMm[0]).toBeCloseTo(50 + up * s + aside * c, 8);
    expect(cgMm[2]).toBeCloseTo(-6 + up * c - aside * s, 8);
    expect(plugMm).toBeCloseTo(12, 9);
  });

  test('a weight lies along the axis: center and inertia of a leaning cylinder', () => {
    // lead-3g: its own length and diameter from the table.
    const { massG, diameterMm, lengthMm } = MATERIALS.weights['lead-3g'];
    const drilled = { weight: 'lead-3g', depthMm: 16 } as const;
    const { metal, plugMm } = plugAt(30, drilled);
    const { cgMm, inertiaGMm2: i } = massOf(metal);
    expect(plugMm).toBe(lengthMm);
    const up = 16 - lengthMm / 2;
    expect(cgMm[0]).toBeCloseTo(50 + up / 2, 9);
    expect(cgMm[2]).toBeCloseTo(-6 + (up * Math.sqrt(3)) / 2, 9);
    // Principal: mr²/2 along, m(3r² + h²)/12 across; turned by 30°.
    const along = (massG * diameterMm ** 2) / 8;
    const across = massG * (diameterMm ** 2 / 16 + lengthMm ** 2 / 12);
    expect(rel(i.zz, (3 * along + across) / 4)).toBeLessThan(1e-9);
    expect(rel(i.xx, (along + 3 * across) / 4)).toBeLessThan(1e-9);
    expect(rel(i.yy, across)).toBeLessThan(1e-9);
  });

  test('filled to a height along the axis: metal πr² times it, the cover by the rim', () => {
    const { metalMm3, plugMm, coverMm, glue } = plugAt(20, { fillMm: 5 });
    expect(rel(metalMm3, Math.PI * 16 * 5)).toBeLessThan(1e-9);
    expect(rel(glue.amount, Math.PI * 16 * 7)).toBeLessThan(1e-9);
    expect(plugMm).toBe(5);
    expect(coverMm).toBeCloseTo(7 - 4 * Math.tan(rad(20)), 5); // the rim's best place is found to 1e-6
  });
});

test('the depth for a volume along a leaning axis gives that volume back', () => {
  const shape = bodyShape(patternOf('diver'));
  const drilled = hole({ stationMm: 34, tiltDeg: -25, bellyMm: -14.8, pointAngleDeg: 118 });
  const belly = bellyOverHole(shape, drilled);
  const { metalMm3 } = plugOf(belly, drilled, MATERIALS);
  expect(drilledForMm(belly, drilled, metalMm3)).toBeCloseTo(12, 9);
});

describe('invariance', () => {
  test.each([-50, 17, 60])('a sphere drilled off its center and turned by %d°', (tiltDeg) => {
    const shape = ellipsoid(30, 30, 30);
    const center: Point2 = [30, 0];
    const square = hole({ stationMm: 34, bellyMm: -31, pointAngleDeg: 118, fillMm: 6 });
    const mouth = add(center, turned(sub([34, -31], center), -tiltDeg));
    const tilted = { ...square, tiltDeg, stationMm: mouth[0], bellyMm: mouth[1] };
    const [one, other] = [square, tilted].map((h) => plugOf(bellyOverHole(shape, h), h, MATERIALS));
    const aboutCenter = (m: Moments) => movedTo([-30, 0], m);
    for (const part of ['bored', 'metal', 'glue'] as const) {
      const want = turnedBy(-tiltDeg, aboutCenter(one[part]));
      const got = aboutCenter(other[part]);
      for (const key of ['amount', 'x', 'z', 'xx', 'yy', 'zz', 'xz'] as const)
        expect(Math.abs(got[key] - want[key])).toBeLessThan(1e-8 * want.amount * 900);
    }
    expect(other.coverMm).toBeCloseTo(one.coverMm, 6);
  });

  test('the sawn blank turned under an upright bit', () => {
    const { blank } = makeBlank(patternOf('diver'), bodyShape(patternOf('diver')));
    if (!blank) throw new Error('no blank');
    const tilted = { ...blank.holes[0], tiltDeg: 35 };
    const [stationMm, bellyMm] = turned([tilted.stationMm, tilted.bellyMm], 35);
    const profile = movedPath({ turnDeg: 35, move: [0, 0] }, blank.profile.path);
    const upright = { ...tilted, tiltDeg: 0, stationMm, bellyMm };
    const want = sawnHole({ kind: 'nominal', path: profile }, upright);
    const got = sawnHole(blank.profile, tilted);
    const [x, z] = turned([want.x, want.z], -35);
    // Where lines meet arcs is known to about 1e-8 mm.
    expect(rel(got.amount, want.amount)).toBeLessThan(1e-8);
    expect(rel(got.x, x)).toBeLessThan(1e-8);
    expect(rel(got.z, z)).toBeLessThan(1e-8);
  });
});

describe('the mesh kernel cuts the same out of body and blank', () => {
  const cases = [
    ['diver', 34, 20, 8, 14, 118],
    ['diver', 60, -55, 6, 18, 135],
    ['diver', 26, 45, 6, 15, 180],
    ['slim', 52, -30, 8, 9, 118],
    ['plain', 33, 60, 8, 22, 135],
  ] as const;

  test.each(cases)('%s at %d, %d°', (name, stationMm, tiltDeg, diameterMm, depthMm, point) => {
    const drilling = { stationMm, tiltDeg, diameterMm, depthMm, pointAngleDeg: point };
    const filled = { metal: 'lead', pour: 'topped-up', fillMm: 3 } as const;
    const pattern = patternOf(name, { ballast: [{ ...drilling, ...filled }], hangers: [] });
    const shape = bodyShape(pattern);
    const { blank, problems } = makeBlank(pattern, shape);
    expect(problems).toEqual([]);
    if (!blank) return;
    const [drilled] = blank.holes;
    const plug = plugOf(bellyOverHole(shape, drilled), drilled, MATERIALS);
    const shared = (
      solid: Parameters<typeof evaluate>[1],
      pointed: boolean,
      shallowerMm: number,
    ) => {
      const bit = bitIn({ ...drilled, depthMm: depthMm - shallowerMm }, 60, pointed);
      return sumsOf(
        evaluate(kernel, { kind: 'intersect', parts: [solid, { kind: 'mesh', mesh: bit }] }),
      );
    };
    const body = { kind: 'mesh', mesh: makeBody(shape).mesh } as const;
    for (const [got, want] of [
      [plug.bored, shared(body, true, 0)],
      [plug.glue, shared(body, false, 3)],
    ]) {
      // The body's mesh stands a few µm over the surface, a few ten thousandths of these depths.
      expect(rel(got.amount, want.amount)).toBeLessThan(3e-4);
      const [a, b] = [massOf(got), massOf(want)];
      expect(Math.hypot(a.cgMm[0] - b.cgMm[0], a.cgMm[2] - b.cgMm[2])).toBeLessThan(2e-3);
      for (const key of ['xx', 'yy', 'zz', 'xz'] as const)
        expect(Math.abs(a.inertiaGMm2[key] - b.inertiaGMm2[key])).toBeLessThan(
          1e-3 * b.inertiaGMm2.yy,
        );
    }
    const half = blank.thicknessMm / 2;
    const sawn = shared(slab([asRegion(flatten(blank.profile.path, 5e-4))], -half, half), true, 0);
    const got = sawnHole(blank.profile, drilled);
    expect(rel(got.amount, sawn.amount)).toBeLessThan(2e-4); // chords of 0.5 µm, arcs that follow to 5 µm
    expect(
      Math.hypot(
        got.x / got.amount - sawn.x / sawn.amount,
        got.z / got.amount - sawn.z / sawn.amount,
      ),
    ).toBeLessThan(2e-3);
  });
});
