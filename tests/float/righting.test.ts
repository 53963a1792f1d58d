import { expect, test } from 'vitest';
import { immersible } from '../../src/float/immersible.js';
import { type Load, restAttitudes } from '../../src/float/rest.js';
import { rightingCurve } from '../../src/float/righting.js';
import type { Point3 } from '../../src/geometry/vec.js';
import { Fault } from '../../src/problem.js';
import { box, dice, lureLike } from './solids.js';

const barge = immersible([box(200, 20, 12, [0, 0, 6])]);
const bargeLoad = (kg: number): Load => ({
  massG: 20,
  cgMm: [0, 0, kg],
  waterDensityKgM3: 1000,
  lengthMm: 200,
});
const UPRIGHT = { upInBody: [0, 0, 1] as Point3 };

// Box B 20, T 5, depth 12, KG 8 (GM 1.1666667): sinφ (GM + ½ BM tan²φ) while the sides are vertical
// at the waterline, and the same by numerical clipping; printed to 1e-6.
test.each([
  [5, 0.103905],
  [10, 0.220586],
  [15, 0.363897],
  [20, 0.550053],
  [25, 0.799372],
])('wall-sided box at %d°: GZ %d', (angle, gz) => {
  const curve = rightingCurve(barge, bargeLoad(8), UPRIGHT);
  const lever = (heel: number) => curve.find((p) => p.heelDeg === heel)?.leverMm;
  expect(lever(angle)).toBeCloseTo(gz, 6);
  expect(lever(-angle)).toBeCloseTo(-gz, 6);
});

test('the lever of a box that lolls is none at its angle of loll, atan ½', () => {
  const rest = restAttitudes(barge, bargeLoad(10)).find((a) => a.stable && a.heelDeg < 90);
  if (!rest) throw new Error('no loll');
  expect(rest.heelDeg).toBeCloseTo(26.5650512, 6);
  const curve = rightingCurve(barge, bargeLoad(10), rest);
  expect(curve[36]).toEqual({ heelDeg: 0, leverMm: expect.closeTo(0, 9) });
  // Counted from rest: upright is at −26.565°, where the lever is none again.
  const [before, after] = [curve[30].leverMm, curve[31].leverMm];
  expect(before > 0 && after < 0).toBe(true);
});

test('near rest it is GM sin φ, positive to port; over the full turn its integral is none', () => {
  const roll = dice(9);
  let checked = 0;
  for (let i = 0; i < 4; i++) {
    const { mesh, lengthMm } = lureLike(roll, 14);
    const solid = immersible([mesh]);
    const [x, , z] = solid.centroidMm;
    const load: Load = {
      massG: (0.6 + 0.3 * roll()) * solid.volumeMm3 * 1e-3,
      cgMm: [x + 3, 0.3 * i, z - 2],
      waterDensityKgM3: 1000,
      lengthMm,
    };
    const rest = restAttitudes(solid, load)[0];
    const curve = rightingCurve(solid, load, rest);
    expect(curve).toHaveLength(73);
    expect(curve[72].leverMm).toBeCloseTo(curve[0].leverMm, 9);
    // The trapezoid rule over a whole turn of a smooth curve; facets roughen it by 1e-3 of the lever.
    const sum = curve.slice(1).reduce((total, p) => total + p.leverMm, 0);
    expect(Math.abs(sum) * (Math.PI / 36)).toBeLessThan(
      2e-3 * Math.max(...curve.map((p) => p.leverMm)),
    );
    const fine = rightingCurve(solid, load, rest, 0.25);
    const slope = (fine[721].leverMm - fine[719].leverMm) / (2 * Math.sin((0.25 * Math.PI) / 180));
    expect(slope / rest.gmAcrossMm).toBeCloseTo(1, 3); // φ² of a quarter degree
    checked++;
  }
  expect(checked).toBe(4);
});

test('wholly under: BG sin φ', () => {
  const load: Load = { massG: 60, cgMm: [0, 0, 4], waterDensityKgM3: 1000, lengthMm: 200 };
  const rest = restAttitudes(barge, load)[0];
  for (const { heelDeg, leverMm } of rightingCurve(barge, load, rest, 15)) {
    expect(leverMm).toBeCloseTo(2 * Math.sin((heelDeg * Math.PI) / 180), 9);
  }
});

test.each([0, -5, 7, Number.NaN])('a step of %d° does not divide the turn', (step) => {
  expect(() => rightingCurve(barge, bargeLoad(8), UPRIGHT, step)).toThrow(Fault);
});
