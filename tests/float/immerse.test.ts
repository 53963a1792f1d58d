import { expect, test } from 'vitest';
import { heave } from '../../src/float/heave.js';
import { highestCorner, immerse } from '../../src/float/immerse.js';
import { immersible } from '../../src/float/immersible.js';
import { eigen2, form2, spiral, tangentsOf } from '../../src/float/tilt.js';
import { meshVolume } from '../../src/geometry/mesh.js';
import type { Point3 } from '../../src/geometry/vec.js';
import { dot3 } from '../../src/geometry/vec3.js';
import { Fault } from '../../src/problem.js';
import { naiveImmersion } from './naive.js';
import {
  box,
  dice,
  ellipse,
  ellipsoid,
  lureLike,
  mapped,
  prism,
  trueEllipsoid,
  wigleyHull,
} from './solids.js';

const UP: Point3 = [0, 0, 1];

test('half-sunk sphere: half the volume, CB 3R/8 under the surface, metacenter in the middle', () => {
  const ball = immersible([trueEllipsoid(10, 10, 10, 60)]);
  for (const up of spiral(7)) {
    const cut = immerse(ball, up, 0);
    // The facets are about (π/60)²/2 = 1.4e-3 of the radius off, of either sign: their effect is a tenth of it.
    expect(cut.volumeMm3 / ball.volumeMm3).toBeCloseTo(0.5, 4);
    expect(dot3(up, cut.cbMm)).toBeCloseTo(-3.75, 2);
    const { low, high } = eigen2(cut.secondMm4);
    expect(low / cut.volumeMm3).toBeCloseTo(3.75, 2);
    expect(high / cut.volumeMm3).toBeCloseTo(3.75, 2);
  }
});

// A plane cuts an ellipsoid as it cuts the sphere of which it is the affine image: share
// h²(3 − h)/4, CB at 3(2 − h)²/(4(3 − h)) of the way to the lowest point (C. Dupin's rule for
// surfaces of the second order); the table's row a 50, b 12, c 8, h 0.8.
test('ellipsoid at depth 0.8: M_T 4.9090909 and M_L 149.4818182 above the center, CB 3.9272727 below', () => {
  const body = immersible([trueEllipsoid(50, 12, 8, 120)]);
  const cut = immerse(body, UP, (0.8 - 1) * 8);
  // 120 facets from pole to pole: chords (π/120)²/8 = 9e-5 of the radius off the surface.
  expect(cut.volumeMm3 / body.volumeMm3).toBeCloseTo(0.352, 4);
  expect(cut.cbMm[2]).toBeCloseTo(-3.9272727, 3);
  const { low, high } = eigen2(cut.secondMm4);
  expect(low / cut.volumeMm3 + cut.cbMm[2]).toBeCloseTo(4.9090909, 2);
  expect((high / cut.volumeMm3 + cut.cbMm[2]) / 149.4818182).toBeCloseTo(1, 3);
});

test('ellipsoid at any depth and attitude: volume, CB, waterplane and both metacenters', () => {
  const [a, b, c] = [50, 12, 8];
  const body = immersible([trueEllipsoid(a, b, c, 120)]);
  let checked = 0;
  for (const [i, [x, y, z]] of spiral(20).entries()) {
    const h = Math.hypot(a * x, b * y, c * z);
    const t = 0.15 + 0.09 * i;
    const cut = immerse(body, [x, y, z], (t - 1) * h);
    const low: Point3 = [(-a * a * x) / h, (-b * b * y) / h, (-c * c * z) / h];
    const d = (3 * (2 - t) ** 2) / (4 * (3 - t));
    const volume = ((t * t * (3 - t)) / 4) * ((4 * Math.PI * a * b * c) / 3);
    const area = (Math.PI * t * (2 - t) * a * b * c) / h;
    expect(cut.volumeMm3 / volume).toBeCloseTo(1, 3);
    expect(cut.areaMm2 / area).toBeCloseTo(1, 3);
    for (let k = 0; k < 3; k++) {
      expect(cut.cbMm[k] / 50).toBeCloseTo((d * low[k]) / 50, 4);
      expect(cut.centroidMm[k] / 50).toBeCloseTo(((1 - t) * low[k]) / 50, 4);
    }
    // Second moments of the image of a disk: t(2 − t)/4 of its area times the image of the plane's unit.
    for (const way of [
      [1, 0],
      [0, 1],
      [0.6, 0.8],
    ] as const) {
      const [u, v] = cut.tangents;
      const p = [0, 1, 2].map((k) => way[0] * u[k] + way[1] * v[k]);
      const own = (a * p[0]) ** 2 + (b * p[1]) ** 2 + (c * p[2]) ** 2;
      const off = dot3(low, [p[0], p[1], p[2]]) ** 2;
      const second = ((area * t * (2 - t)) / 4) * (own - off);
      expect(form2(cut.secondMm4, way) / second).toBeCloseTo(1, 2);
    }
    checked++;
  }
  expect(checked).toBe(20);
});

// d(h) of the elliptic log from the table: CB at d·c below the center, BM = d·b²/c.
test.each([
  [0.5, 0.7050201619, 0.1955011],
  [0.8, 0.534367682, 0.37353],
  [1, 0.4244131816, 0.5],
  [1.3, 0.267720289, 0.6880812],
])('elliptic log at depth %d', (h, d, share) => {
  const [b, c] = [12, 8];
  const log = immersible([prism(ellipse(b, c, 720), 0, 100)]);
  const cut = immerse(log, UP, (h - 1) * c);
  // 720 sides of an ellipse made true in area: corners and flats are 1e-5 off.
  expect(cut.volumeMm3 / log.volumeMm3).toBeCloseTo(share, 4);
  expect(cut.cbMm[2]).toBeCloseTo(-d * c, 3);
  const across = form2(cut.secondMm4, [
    dot3(cut.tangents[0], [0, 1, 0]),
    dot3(cut.tangents[1], [0, 1, 0]),
  ]);
  expect(across / cut.volumeMm3).toBeCloseTo((d * b * b) / c, 2);
});

test('box barge: KB T/2, BM B²/12T, exact', () => {
  const barge = immersible([box(100, 20, 12, [3, 4, 6])]);
  const cut = immerse(barge, UP, 5);
  expect(cut.volumeMm3).toBeCloseTo(10000, 8); // rounding
  expect(cut.cbMm[2]).toBeCloseTo(2.5, 10);
  expect(cut.centroidMm.map((v) => Math.round(v * 1e9) / 1e9)).toEqual([3, 4, 5]);
  const { low, high } = eigen2(cut.secondMm4);
  expect(low / cut.volumeMm3).toBeCloseTo(20 ** 2 / 60, 9);
  expect(high / cut.volumeMm3).toBeCloseTo(100 ** 2 / 60, 9);
});

// Wigley's parabolic hull: 4/9 LBT, KB 5/8 T, I_T 4/105 LB³, I_L BL³/30, C_WP 2/3.
test('Wigley hull', () => {
  const [L, B, T] = [100, 10, 6.25];
  const hull = immersible([wigleyHull(L, B, T, 160, 60)]);
  const cut = immerse(hull, UP, 0);
  // Chords of a parabola in n pieces leave out 1/n² of its area: 4e-5 along, 1.4e-4 down.
  expect(cut.volumeMm3 / (L * B * T)).toBeCloseTo(4 / 9, 3);
  expect(cut.areaMm2 / (L * B)).toBeCloseTo(2 / 3, 4);
  expect((cut.cbMm[2] + T) / T).toBeCloseTo(5 / 8, 3);
  expect(cut.cbMm[0]).toBeCloseTo(0, 9);
  const { low, high } = eigen2(cut.secondMm4);
  expect(low / cut.volumeMm3 / ((0.0857142857 * B * B) / T)).toBeCloseTo(1, 3);
  expect(high / cut.volumeMm3 / ((0.075 * L * L) / T)).toBeCloseTo(1, 3);
});

test('the volume under a surface converges with the square of the spacing', () => {
  const exact = 0.352 * (4 / 3) * Math.PI * 50 * 12 * 8;
  const errors = [12, 24, 48, 96].map(
    (fine) => immerse(immersible([ellipsoid(50, 12, 8, fine)]), UP, -1.6).volumeMm3 / exact - 1,
  );
  for (let i = 1; i < errors.length; i++) {
    const order = Math.log2(errors[i - 1] / errors[i]);
    expect(order).toBeGreaterThan(1.9);
    expect(order).toBeLessThan(2.1);
  }
});

test('the same as every triangle clipped', () => {
  const roll = dice(11);
  let checked = 0;
  for (let i = 0; i < 6; i++) {
    const { mesh } = lureLike(roll, 9);
    const body = immersible([mesh]);
    for (const up of spiral(12)) {
      const offset = dot3(up, body.centroidMm) + (2 * roll() - 1) * 12;
      const cut = immerse(body, up, offset);
      const slow = naiveImmersion(mesh, up, offset);
      if (slow.volume < 1) continue;
      expect(cut.volumeMm3 / slow.volume).toBeCloseTo(1, 10); // rounding, the part may be a tenth of the whole
      for (let k = 0; k < 3; k++) expect(cut.cbMm[k]).toBeCloseTo(slow.cb[k], 8);
      checked++;
    }
  }
  expect(checked).toBeGreaterThan(60);
});

test('the waterplane is the rate of volume and of its moment with depth', () => {
  const roll = dice(5);
  const body = immersible([lureLike(roll, 20).mesh]);
  const step = 1e-4;
  for (const up of spiral(9)) {
    const offset = dot3(up, body.centroidMm) + 3 * (roll() - 0.5);
    const [less, here, more] = [-step, 0, step].map((s) => immerse(body, up, offset + s));
    const grown = more.volumeMm3 - less.volumeMm3;
    expect(grown / (2 * step) / here.areaMm2).toBeCloseTo(1, 6);
    for (let k = 0; k < 3; k++) {
      const moment = more.volumeMm3 * more.cbMm[k] - less.volumeMm3 * less.cbMm[k];
      expect(moment / grown).toBeCloseTo(here.centroidMm[k], 4); // differences of 1e4 to twelve digits
    }
  }
});

test('corners, edges and faces in the surface', () => {
  const cube = immersible([box(10, 10, 10)]);
  for (const [offset, volume, area] of [
    [5, 1000, 100],
    [-5, 0, 0],
    [0, 500, 100],
  ]) {
    const cut = immerse(cube, UP, offset);
    expect(cut.volumeMm3).toBeCloseTo(volume, 9);
    expect(cut.areaMm2).toBeCloseTo(area, 9);
  }
  // The diagonal plane runs through four edges' corners and two whole edges.
  const slanted = immerse(cube, [0, Math.SQRT1_2, Math.SQRT1_2], 0);
  expect(slanted.volumeMm3).toBeCloseTo(500, 9);
  expect(slanted.areaMm2).toBeCloseTo(100 * Math.SQRT2, 9);
  // Corner and point symmetry of a cut through the middle, corners on the surface included.
  const third = Math.sqrt(1 / 3);
  expect(immerse(cube, [third, third, third], 0).volumeMm3).toBeCloseTo(500, 9);
  // All of it, and nothing of it.
  expect(immerse(cube, UP, 6)).toMatchObject({ areaMm2: 0 });
  expect(immerse(cube, UP, 6).volumeMm3).toBeCloseTo(1000, 9);
  expect(immerse(cube, UP, -6)).toMatchObject({ volumeMm3: 0, areaMm2: 0, cbMm: cube.centroidMm });
});

test('faces that coincide cancel: two halves are the whole', () => {
  const whole = immersible([box(20, 10, 10)]);
  const halves = immersible([box(10, 10, 10, [-5, 0, 0]), box(10, 10, 10, [5, 0, 0])]);
  for (const up of [...spiral(15), [1, 0, 0] as const]) {
    const [a, b] = [immerse(whole, up, 0.7), immerse(halves, up, 0.7)];
    expect(b.volumeMm3).toBeCloseTo(a.volumeMm3, 9);
    expect(b.areaMm2).toBeCloseTo(a.areaMm2, 9);
    expect(b.secondMm4.uu).toBeCloseTo(a.secondMm4.uu, 7);
    expect(b.secondMm4.uv).toBeCloseTo(a.secondMm4.uv, 7);
    for (let k = 0; k < 3; k++) expect(b.cbMm[k]).toBeCloseTo(a.cbMm[k], 9);
  }
  // In the plane of the common face itself, either half's cap may be taken: the volume is exact.
  expect(immerse(halves, [1, 0, 0], 0).volumeMm3).toBeCloseTo(1000, 9);
});

test('far from the origin nothing is lost', () => {
  const near = lureLike(dice(2), 12).mesh;
  const far = mapped(near, ([x, y, z]) => [x + 1e4, y - 1e4, z + 1e4]);
  const [a, b] = [immersible([near]), immersible([far])];
  expect(b.volumeMm3 / a.volumeMm3).toBeCloseTo(1, 10);
  expect(a.volumeMm3 / meshVolume(near)).toBeCloseTo(1, 13);
  expect(b.centroidMm[1] - a.centroidMm[1]).toBeCloseTo(-1e4, 7);
});

test('heave puts exactly so much under, from any start', () => {
  const body = immersible([lureLike(dice(7), 24).mesh]);
  let checked = 0;
  for (const up of spiral(10)) {
    for (const share of [1e-4, 0.03, 0.4, 0.9, 0.9999]) {
      const volume = share * body.volumeMm3;
      const offsets = [undefined, -1e3, dot3(up, body.centroidMm)].map((start) => {
        const { planeOffsetMm, immersion } = heave(body, up, volume, start);
        expect(Math.abs(immersion.volumeMm3 / volume - 1)).toBeLessThan(1e-12);
        checked++;
        return planeOffsetMm;
      });
      // Near the ends the waterplane is small and the offset less sharp than the volume.
      expect(offsets[1]).toBeCloseTo(offsets[0], 6);
      expect(offsets[2]).toBeCloseTo(offsets[0], 6);
    }
  }
  expect(checked).toBe(150);
  for (const volume of [0, body.volumeMm3, Number.NaN]) {
    expect(() => heave(body, UP, volume)).toThrow(Fault);
  }
  expect(() => immersible([])).toThrow(Fault);
});

test('tangents are unit, square and right-handed; the highest corner is the highest', () => {
  const mesh = lureLike(dice(3), 10).mesh;
  const body = immersible([mesh]);
  for (const up of spiral(25)) {
    const [u, v] = tangentsOf(up);
    expect(dot3(u, up)).toBeCloseTo(0, 14);
    expect(dot3(u, v)).toBeCloseTo(0, 14);
    expect(dot3(u, u)).toBeCloseTo(1, 14);
    expect(u[0] * v[1] - u[1] * v[0]).toBeCloseTo(up[2], 14);
    const heights = Array.from({ length: mesh.positions.length / 3 }, (_, i) =>
      dot3(up, [mesh.positions[3 * i], mesh.positions[3 * i + 1], mesh.positions[3 * i + 2]]),
    );
    expect(highestCorner(body, up).height).toBeCloseTo(Math.max(...heights), 11);
  }
});
