import { describe, expect, test } from 'vitest';
import type { Attitude } from '../../src/float/attitude.js';
import { ellipsoidDepth } from '../../src/float/heave.js';
import { type Immersible, immersible } from '../../src/float/immersible.js';
import { anglesOf, heelAxis, type Load, restAttitudes } from '../../src/float/rest.js';
import { findRests, isComplete } from '../../src/float/search.js';
import { angleBetween, spiral } from '../../src/float/tilt.js';
import type { Mesh } from '../../src/geometry/mesh.js';
import type { Point3 } from '../../src/geometry/vec.js';
import { cross3, dot3, unit3 } from '../../src/geometry/vec3.js';
import { Fault } from '../../src/problem.js';
import { naiveDescent, naiveEnergy, naiveImmersion } from './naive.js';
import { box, dice, lureLike, mapped, mirrored } from './solids.js';

type Case = { readonly mesh: Mesh; readonly solid: Immersible; readonly load: Load };

/** Lures of many shapes, weights low and high, some of them off the middle plane. */
function cases(seed: number, count: number, fine: number): Case[] {
  const roll = dice(seed);
  return Array.from({ length: count }, (_, i) => {
    const { mesh, lengthMm } = lureLike(roll, fine);
    const solid = immersible([mesh]);
    const [x, , z] = solid.centroidMm;
    const share = i % 4 === 0 ? 0.03 + 0.96 * roll() : 0.5 + 0.49 * roll();
    const cgMm: Point3 = [
      x + 20 * (roll() - 0.5),
      i % 3 === 0 ? 3 * (roll() - 0.5) : 0,
      z + 8 * (roll() - 0.7),
    ];
    const waterDensityKgM3 = 998 + 28 * roll();
    const massG = share * solid.volumeMm3 * waterDensityKgM3 * 1e-6;
    return { mesh, solid, load: { massG, cgMm, waterDensityKgM3, lengthMm } };
  });
}

describe('random lures', () => {
  const all = cases(42, 40, 16);

  test('displace their mass, CB on the vertical through CG, by another way of clipping', () => {
    let checked = 0;
    for (const { mesh, solid, load } of all) {
      for (const a of restAttitudes(solid, load)) {
        expect(a.displacedG / load.massG).toBeCloseTo(1, 11);
        expect(Math.hypot(...a.upInBody)).toBeCloseTo(1, 12);
        const { volume, cb } = naiveImmersion(mesh, a.upInBody, a.planeOffsetMm);
        expect((volume * load.waterDensityKgM3 * 1e-6) / load.massG).toBeCloseTo(1, 9);
        const lever = load.cgMm.map((g, k) => g - cb[k]) as unknown as Point3;
        const aside = Math.hypot(...cross3(a.upInBody, lever));
        expect(aside).toBeLessThan(1e-6); // mm
        expect(dot3(a.upInBody, lever)).toBeCloseTo(a.cgAboveCbMm, 6);
        expect(a.dryRatio).toBeCloseTo(1 - volume / solid.volumeMm3, 9);
        expect(a.freeboardNoseMm).toBe(-a.planeOffsetMm);
        checked++;
      }
    }
    expect(checked).toBeGreaterThan(100);
  });

  test('hollows − saddles + summits = 2', () => {
    for (const { solid, load } of all) {
      const rests = restAttitudes(solid, load);
      expect(rests.length % 2).toBe(0);
      expect(rests[0].stable).toBe(true);
      expect(rests.some((a) => !a.stable)).toBe(true);
      const saddles = rests.filter((a) => a.gmAcrossMm * a.gmAlongMm < 0).length;
      // On all of these the two heights of an unstable rest tell its kind.
      expect(rests.length - 2 * saddles).toBe(2);
    }
  });

  test('sorted: stable ones first, then by energy', () => {
    for (const { solid, load } of all) {
      const rests = restAttitudes(solid, load);
      for (let i = 1; i < rests.length; i++) {
        const [a, b] = [rests[i - 1], rests[i]];
        if (a.stable === b.stable) expect(a.cgAboveCbMm).toBeLessThan(b.cgAboveCbMm + 1e-6);
        else expect(a.stable).toBe(true);
      }
    }
  });
});

test('the count complains when a rest is missing', () => {
  const { solid, load } = cases(3, 1, 16)[0];
  const volumeMm3 = load.massG / (load.waterDensityKgM3 * 1e-6);
  const rests = findRests({
    solid,
    volumeMm3,
    cgMm: load.cgMm,
    depth: ellipsoidDepth(volumeMm3 / solid.volumeMm3),
    sizeMm: Math.cbrt(volumeMm3),
  });
  expect(isComplete(rests)).toBe(true);
  for (let i = 0; i < rests.length; i++) {
    expect(isComplete(rests.filter((_, k) => k !== i))).toBe(false);
  }
});

test('every stable attitude, and no other, is a hollow for a naive search', () => {
  let hollows = 0;
  for (const { mesh, solid, load } of cases(8, 4, 6)) {
    const volume = load.massG / (load.waterDensityKgM3 * 1e-6);
    const energy = (up: Point3) => naiveEnergy(mesh, up, volume, load.cgMm);
    const grid = spiral(90).map((up) => ({ up, e: energy(up) }));
    const low = grid.filter(({ up, e }) =>
      grid.every((g) => g.e >= e || angleBetween(g.up, up) > 0.45),
    );
    const found: Point3[] = [];
    for (const { up } of low) {
      const end = naiveDescent(energy, up, 0.1, 2e-4).up;
      if (!found.some((f) => angleBetween(f, end) < 0.02)) found.push(end);
    }
    const stable = restAttitudes(solid, load).filter((a) => a.stable);
    expect(found.length).toBe(stable.length);
    // Steps end at 2e-4 rad, and a flat hollow is left a few of them early.
    for (const f of found) {
      expect(stable.some((a) => angleBetween(a.upInBody, f) < 0.01)).toBe(true);
    }
    hollows += found.length;
  }
  expect(hollows).toBeGreaterThan(3);
});

/** The same set of attitudes, each up and offset taken through `map`. */
function expectSame(
  a: readonly Attitude[],
  b: readonly Attitude[],
  up: (p: Point3) => Point3,
  k = 1,
) {
  expect(b.length).toBe(a.length);
  for (const one of a) {
    const twin = b.find((other) => angleBetween(other.upInBody, up(one.upInBody)) < 1e-6);
    if (!twin) throw new Error(`no twin of ${one.upInBody.join(', ')}`);
    expect(twin.stable).toBe(one.stable);
    expect(twin.cgAboveCbMm / k).toBeCloseTo(one.cgAboveCbMm, 7);
    expect(twin.planeOffsetMm / k).toBeCloseTo(one.planeOffsetMm, 6);
    expect(twin.dryRatio).toBeCloseTo(one.dryRatio, 9);
  }
}

describe('invariance', () => {
  const all = cases(17, 12, 14);

  test('mirrored lure, mirrored answer', () => {
    for (const { mesh, solid, load } of all) {
      const flip = ([x, y, z]: Point3): Point3 => [x, -y, z];
      const twin = restAttitudes(immersible([mirrored(mesh)]), { ...load, cgMm: flip(load.cgMm) });
      expectSame(restAttitudes(solid, load), twin, flip);
    }
  });

  test('lure of twice the size', () => {
    for (const { mesh, solid, load } of all) {
      const twice = (p: Point3): Point3 => [2 * p[0], 2 * p[1], 2 * p[2]];
      const big = restAttitudes(immersible([mapped(mesh, twice)]), {
        ...load,
        massG: 8 * load.massG,
        cgMm: twice(load.cgMm),
      });
      expectSame(restAttitudes(solid, load), big, (up) => up, 2);
    }
  });

  test('turned mesh', () => {
    const roll = dice(4);
    for (const { mesh, solid, load } of all) {
      // A random direction and another, squared up, are a random turn.
      const ways = spiral(40);
      const p = ways[Math.floor(20 * roll())];
      const e2 = unit3(cross3(p, ways[20 + Math.floor(20 * roll())]));
      const e3 = cross3(p, e2);
      const turn = (a: Point3): Point3 => [dot3(p, a), dot3(e2, a), dot3(e3, a)];
      const turned = restAttitudes(immersible([mapped(mesh, turn)]), {
        ...load,
        cgMm: turn(load.cgMm),
      });
      expectSame(restAttitudes(solid, load), turned, turn);
    }
  });

  test('a symmetric lure that heels does so to both sides, port down first', () => {
    const mesh = box(100, 20, 20);
    const solid = immersible([mesh]);
    const rests = restAttitudes(solid, {
      massG: 0.25 * solid.volumeMm3 * 1e-3,
      cgMm: [0, 0, 0],
      waterDensityKgM3: 1000,
      lengthMm: 100,
    });
    expect(rests.filter((a) => a.stable).map((a) => Math.round(a.heelDeg))).toEqual([
      27, -27, 63, -63, 117, -117, 153, -153,
    ]);
  });
});

test('angles: nose up and port down are positive; belly up is beyond 90', () => {
  const s = Math.SQRT1_2;
  expect(anglesOf([-s, 0, s])).toEqual({ trimDeg: expect.closeTo(45, 9), heelDeg: 0 });
  expect(anglesOf([0, -s, s])).toEqual({ trimDeg: 0, heelDeg: expect.closeTo(45, 9) });
  expect(anglesOf([0, 0, -1])).toEqual({ trimDeg: 0, heelDeg: 180 });
  expect(anglesOf([1, 0, 0])).toEqual({ trimDeg: -90, heelDeg: 0 });
  expect(heelAxis([0, 0, 1])).toEqual([1, 0, 0]);
  expect(heelAxis([1, 0, 0])).toEqual([0, 1, 0]);
});

describe('wholly under', () => {
  const solid = immersible([box(100, 20, 10, [50, 0, 0])]);
  const load = { massG: 21, cgMm: [53, 0, -4] as const, waterDensityKgM3: 1000, lengthMm: 100 };

  test('hangs with its weight below, or stands unstable with it above', () => {
    const [hangs, stands, ...more] = restAttitudes(solid, load);
    expect(more).toEqual([]);
    expect(hangs).toMatchObject({ stable: true, dryRatio: 0, freeboardMm: 0 });
    expect(hangs.displacedMm3).toBeCloseTo(20000, 9);
    expect(hangs.displacedG).toBeCloseTo(20, 9);
    expect(hangs.upInBody[0]).toBeCloseTo(-0.6, 12);
    expect(hangs.upInBody[2]).toBeCloseTo(0.8, 12);
    expect(hangs.trimDeg).toBeCloseTo(36.8698976, 6); // asin 0.6: the weight is aft, the nose up
    expect(hangs.gmAcrossMm).toBeCloseTo(5, 9);
    expect(hangs.gmAlongMm).toBeCloseTo(5, 9);
    expect(hangs.cgAboveCbMm).toBeCloseTo(-5, 9);
    expect(hangs.planeOffsetMm).toBeCloseTo(0.8 * 5, 9); // the nose's upper edge
    expect(hangs.freeboardTailMm).toBeCloseTo(-60 - 4, 9);
    expect(stands).toMatchObject({ stable: false, freeboardMm: 0 });
    expect(stands.gmAcrossMm).toBeCloseTo(-5, 9);
  });

  test('of its own density exactly it is under already', () => {
    expect(restAttitudes(solid, { ...load, massG: 20 })[0].dryRatio).toBe(0);
    const floats = restAttitudes(solid, { ...load, massG: 20 * (1 - 1e-6) });
    expect(floats[0].dryRatio).toBeCloseTo(1e-6, 9);
    expect(angleBetween(floats[0].upInBody, [-0.6, 0, 0.8])).toBeLessThan(1e-3);
  });

  test('weight in the center of buoyancy: one attitude, upright, not stable', () => {
    const all = restAttitudes(solid, { ...load, cgMm: [50, 0, 0] });
    expect(all).toHaveLength(1);
    expect(all[0]).toMatchObject({
      stable: false,
      upInBody: [0, 0, 1],
      gmAcrossMm: 0,
      cgAboveCbMm: 0,
    });
  });
});

test.each([
  { massG: 0 },
  { massG: -1 },
  { massG: Number.NaN },
  { massG: Number.POSITIVE_INFINITY },
  { waterDensityKgM3: 0 },
  { cgMm: [0, Number.NaN, 0] as Point3 },
])('no rest for %o', (wrong) => {
  const solid = immersible([box(10, 10, 10)]);
  const load: Load = { massG: 0.5, cgMm: [0, 0, 0], waterDensityKgM3: 1000, lengthMm: 10 };
  expect(() => restAttitudes(solid, { ...load, ...wrong })).toThrow(Fault);
});

test('very light and nearly sunk lures find their rests too', () => {
  const { solid, load } = cases(6, 1, 16)[0];
  for (const share of [1e-4, 0.01, 0.999, 0.999999]) {
    const massG = share * solid.volumeMm3 * load.waterDensityKgM3 * 1e-6;
    const rests = restAttitudes(solid, { ...load, massG });
    expect(rests[0].stable).toBe(true);
    for (const a of rests) expect(a.displacedG / massG).toBeCloseTo(1, 11);
  }
});
