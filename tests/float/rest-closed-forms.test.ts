/** Rests known in closed form. The mass is given as a density ratio s of a homogeneous body in water of 1000 kg/m³. */
import { describe, expect, test } from 'vitest';
import type { Attitude } from '../../src/float/attitude.js';
import { immersible } from '../../src/float/immersible.js';
import { restAttitudes } from '../../src/float/rest.js';
import type { Mesh } from '../../src/geometry/mesh.js';
import type { Point3 } from '../../src/geometry/vec.js';
import { box, ellipse, prism, spindle, trueEllipsoid } from './solids.js';

function rests(mesh: Mesh, s: number, cgMm?: Point3): Attitude[] {
  const solid = immersible([mesh]);
  return restAttitudes(solid, {
    massG: s * solid.volumeMm3 * 1e-3,
    cgMm: cgMm ?? solid.centroidMm,
    waterDensityKgM3: 1000,
    lengthMm: 100,
  });
}

const at = (attitudes: readonly Attitude[], up: Point3): Attitude | undefined =>
  attitudes.find((a) => Math.hypot(...up.map((v, k) => v - a.upInBody[k])) < 1e-7);
const UP: Point3 = [0, 0, 1];
const squareLog = box(400, 20, 20);

// Floating of a Long Square Bar, Am. J. Phys. 31 (1963) 565: the angle from "sides level" at
// densities between those of level sides and those of 45°; s and 1 − s alike. Figures by closed form.
test.each([
  [0.2115, 1.9947],
  [0.22, 13.674945],
  [0.23, 19.485619],
  [0.24, 23.485487],
  [0.25, 26.565051],
  [0.26, 29.630476],
  [0.27, 33.690068],
  [0.28, 41.185925],
  [0.2812, 44.236102],
  [0.72, 41.185925],
  [0.77, 19.485619],
])('square log of density %d rests at %d°', (s, angle) => {
  const stable = rests(squareLog, s).filter((a) => a.stable);
  expect(stable).toHaveLength(8);
  const heels = stable.map((a) => a.heelDeg).sort((a, b) => a - b);
  const wanted = [-180, -90, 0, 90].flatMap((q) => [q + angle, q + 90 - angle]);
  for (const [i, heel] of heels.entries()) expect(heel).toBeCloseTo(wanted[i], 4); // printed to 1e-6
});

test.each([
  [0.211, true],
  [0.2116, false],
  [0.7884, false],
  [0.789, true],
])(
  'square log of density %d with level sides is stable: %s (bounds 0.2113249, 0.7886751)',
  (s, stable) => {
    expect(at(rests(squareLog, s), UP)).toMatchObject({ stable });
  },
);

test.each([
  [0.281, false],
  [0.2815, true],
  [0.7185, true],
  [0.719, false],
])('square log of density %d at 45° is stable: %s (bounds 9/32, 23/32)', (s, stable) => {
  const diagonal: Point3 = [0, -Math.SQRT1_2, Math.SQRT1_2];
  expect(at(rests(squareLog, s), diagonal)).toMatchObject({ stable });
});

// Breadth over depth above √(6 s (1 − s)).
test.each([
  [0.2, 0.9797959],
  [0.35, 1.1683321],
  [0.5, 1.2247449],
])('rectangular log of density %d is stable upright from breadth %d of its depth', (s, ratio) => {
  for (const [k, stable] of [
    [0.995, false],
    [1.005, true],
  ] as const) {
    expect(at(rests(box(400, 20 * ratio * k, 20), s), UP)).toMatchObject({ stable });
  }
});

// (R/H)² > 2 s (1 − s). 96 sides of true area have a second moment 1e-6 too great.
test.each([
  [0.2, 0.5656854],
  [0.35, 0.6745369],
  [0.5, Math.SQRT1_2],
])('cylinder of density %d stands from radius %d of its height', (s, ratio) => {
  for (const [k, stable] of [
    [0.995, false],
    [1.005, true],
  ] as const) {
    const r = 30 * ratio * k;
    const all = rests(prism(ellipse(r, r, 96), 0, 30), s);
    expect(at(all, [1, 0, 0])).toMatchObject({ stable, trimDeg: -90, heelDeg: 0 });
    expect(at(all, [-1, 0, 0])).toMatchObject({ stable, trimDeg: 90 });
  }
});

// Apex down, half angle α: s > cos⁴α, and KM = 2T/(3 cos²α), T the draft √s H.
test.each([
  [30, 0.5625],
  [45, 0.25],
  [60, 0.0625],
])('triangular prism of half angle %d° is stable apex down from density %d', (alpha, bound) => {
  const H = 20;
  const half = H * Math.tan((alpha * Math.PI) / 180);
  const wedge = prism(
    [
      [0, 0],
      [half, H],
      [-half, H],
    ],
    0,
    1000,
  );
  for (const k of [0.97, 1.03]) {
    const s = bound * k;
    const upright = at(rests(wedge, s), UP);
    expect(upright).toMatchObject({ stable: k > 1 });
    const km = (2 * Math.sqrt(s) * H) / (3 * Math.cos((alpha * Math.PI) / 180) ** 2);
    expect(upright?.gmAcrossMm).toBeCloseTo(km - (2 / 3) * H, 8); // exact but for rounding
  }
});

// Apex down: s > cos⁶α. 96 sides of true area: second moment 1e-6 too great.
test.each([
  [30, 0.421875],
  [45, 0.125],
])('cone of half angle %d° is stable apex down from density %d', (alpha, bound) => {
  const cone = spindle([[30 * Math.tan((alpha * Math.PI) / 180), 30]], 96);
  for (const k of [0.98, 1.02]) {
    expect(at(rests(cone, bound * k), UP)).toMatchObject({ stable: k > 1 });
  }
});

// Archimedes, On Floating Bodies II: r² = 2qz, apex down, upright stable if H < 1.5q/(1 − √s);
// KB 2T/3, BM q, T = H√s. Chords of 80 rings leave out 1e-4 of the volume.
describe('Archimedes’ paraboloid', () => {
  const q = 10;
  const paraboloid = (H: number) =>
    spindle(
      Array.from({ length: 80 }, (_, i) => {
        const r = (Math.sqrt(2 * q * H) * (i + 1)) / 80;
        return [r, (r * r) / (2 * q)] as const;
      }),
      64,
    );
  test.each([
    [0.25, 3],
    [0.5, 5.1213203],
    [0.64, 7.5],
  ])('density %d: upright up to a height of %d q', (s, ratio) => {
    for (const k of [0.985, 1.015]) {
      const H = ratio * q * k;
      const upright = at(rests(paraboloid(H), s), UP);
      expect(upright).toMatchObject({ stable: k < 1 });
      const gm = (2 / 3) * H * Math.sqrt(s) + q - (2 / 3) * H;
      expect(upright?.gmAcrossMm).toBeCloseTo(gm, 1);
      expect(upright?.cbMm[2]).toBeCloseTo((2 / 3) * H * Math.sqrt(s), 1);
    }
  });
});

// Ellipsoid a 50, b 12, c 8, weight at the middle, at depth 0.8: M above the center by d(b²−c²)/c
// and d(a²−c²)/c, d = 0.4909090909. 100 facets from pole to pole leave 1e-4.
test('ellipsoid: six rests, two of them stable, with GM in closed form', () => {
  const all = rests(trueEllipsoid(50, 12, 8, 100), 0.352, [0, 0, 0]);
  expect(all.map((a) => a.stable)).toEqual([true, true, false, false, false, false]);
  for (const [i, heel] of [0, 180].entries()) {
    expect(all[i].heelDeg).toBeCloseTo(heel, 6);
    expect(all[i].gmAcrossMm).toBeCloseTo(4.9090909, 2);
    expect(all[i].gmAlongMm / 149.4818182).toBeCloseTo(1, 3);
    expect(all[i].cgAboveCbMm).toBeCloseTo(3.9272727, 3);
    expect(all[i].freeboardMm).toBeCloseTo(1.2 * 8, 2);
    expect(all[i].freeboardNoseMm).toBeCloseTo(0.2 * 8, 2); // the point (0, 0, 0) is its middle
    expect(all[i].dryRatio).toBeCloseTo(0.648, 9);
  }
  // On edge, and on end: the same rule with the axes changed.
  expect(Math.abs(all[2].heelDeg)).toBeCloseTo(90, 6);
  expect(all[2].gmAcrossMm).toBeCloseTo((0.4909090909 * (8 ** 2 - 12 ** 2)) / 12, 2);
  expect(Math.abs(all[4].trimDeg)).toBeCloseTo(90, 6);
  // On end "along" is the y axis.
  expect(all[4].gmAlongMm).toBeCloseTo((0.4909090909 * (12 ** 2 - 50 ** 2)) / 50, 2);
  expect(all[4].gmAcrossMm).toBeCloseTo((0.4909090909 * (8 ** 2 - 50 ** 2)) / 50, 2);
});

// Wall-sided: GM < 0 leads to an angle of loll tan²φ = −2GM/BM; B 20, T 5, depth 12, KG 10: atan ½.
test('box with its weight high lolls to atan ½', () => {
  const all = rests(box(100, 20, 12, [0, 0, 6]), 5 / 12, [0, 0, 10]);
  expect(at(all, UP)?.gmAcrossMm).toBeCloseTo(-0.8333333333, 8);
  const [first, second] = all.filter((a) => a.stable && Math.abs(a.heelDeg) < 60);
  expect(first.heelDeg).toBeCloseTo(26.5650512, 6);
  expect(second.heelDeg).toBeCloseTo(-26.5650512, 6);
});

describe('neutral tilts', () => {
  test('a round log weighted in its middle: one rest stands for the whole turn', () => {
    const all = rests(prism(ellipse(10, 10, 64), 0, 100), 0.4);
    expect(all).toHaveLength(3);
    expect(all.every((a) => !a.stable)).toBe(true);
    expect(all[0].heelDeg).toBeCloseTo(0, 3);
    expect(all[0].gmAcrossMm).toBeCloseTo(0, 1);
  });

  test('a homogeneous sphere: one rest for all', () => {
    const all = rests(trueEllipsoid(20, 20, 20, 60), 0.6);
    expect(all).toHaveLength(1);
    expect(all[0].stable).toBe(false);
  });

  test('a sphere weighted below its middle has two rests, and GM is the distance', () => {
    const all = rests(trueEllipsoid(20, 20, 20, 60), 0.6, [0, 0, -2]);
    expect(all.map((a) => [a.stable, Math.round(a.heelDeg)])).toEqual([
      [true, 0],
      [false, 180],
    ]);
    expect(all[0].gmAcrossMm).toBeCloseTo(2, 1); // the facets feign 1e-3 of the radius
  });
});
