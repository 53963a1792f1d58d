import { expect, test } from 'vitest';
import type { Attitude } from '../../src/float/attitude.js';
import { immersible } from '../../src/float/immersible.js';
import { type LoadChange, responseTo } from '../../src/float/response.js';
import { type Load, restAttitudes } from '../../src/float/rest.js';
import { angleBetween } from '../../src/float/tilt.js';
import { Fault } from '../../src/problem.js';
import { box, dice, lureLike } from './solids.js';

const NONE: LoadChange = { massG: 0, cgMm: [0, 0, 0], waterDensityKgM3: 0 };
const CHANGES: readonly LoadChange[] = [
  { ...NONE, massG: 1 },
  { ...NONE, cgMm: [1, 0, 0] },
  { ...NONE, cgMm: [0, 1, 0] },
  { ...NONE, cgMm: [0, 0, 1] },
  { ...NONE, waterDensityKgM3: 20 },
  { massG: 0.5, cgMm: [-0.4, 0.2, 0.3], waterDensityKgM3: -10 },
];

const moved = (load: Load, change: LoadChange, k: number): Load => ({
  massG: load.massG + k * change.massG,
  cgMm: [
    load.cgMm[0] + k * change.cgMm[0],
    load.cgMm[1] + k * change.cgMm[1],
    load.cgMm[2] + k * change.cgMm[2],
  ],
  waterDensityKgM3: load.waterDensityKgM3 + k * change.waterDensityKgM3,
  lengthMm: load.lengthMm,
});

test('rates are those of two full solves a little apart', () => {
  const roll = dice(23);
  const step = 2e-4;
  let checked = 0;
  for (const share of [0.55, 0.8, 0.93, 1.2]) {
    const { mesh, lengthMm } = lureLike(roll, 20);
    const solid = immersible([mesh]);
    const [x, , z] = solid.centroidMm;
    const load: Load = {
      massG: share * solid.volumeMm3 * 1e-3,
      cgMm: [x + 6 * roll() - 3, 0.4, z - 2.5],
      waterDensityKgM3: 1000,
      lengthMm,
    };
    for (const rest of restAttitudes(solid, load)) {
      for (const change of CHANGES) {
        const [less, more] = [-step, step].map((k) => {
          const near = restAttitudes(solid, moved(load, change, k)).filter(
            (a) => angleBetween(a.upInBody, rest.upInBody) < 0.01,
          );
          expect(near).toHaveLength(1);
          return near[0];
        });
        const rate = responseTo(solid, load, rest, change);
        const slope = (of: (a: Attitude) => number) => (of(more) - of(less)) / (2 * step);
        // Solves are good to 1e-10 of the size: 1e-6 of a rate. Facets bend the curve: 1e-3 of it.
        const close = (got: number | null, wanted: number) =>
          expect(Math.abs((got ?? Number.NaN) - wanted)).toBeLessThan(
            1e-4 + 1e-3 * Math.abs(wanted),
          );
        close(
          rate.planeOffsetMm,
          slope((a) => a.planeOffsetMm),
        );
        close(
          rate.trimDeg,
          slope((a) => a.trimDeg),
        );
        if (Math.abs(rest.heelDeg) < 170)
          close(
            rate.heelDeg,
            slope((a) => a.heelDeg),
          );
        close(
          rate.freeboardNoseMm,
          slope((a) => a.freeboardNoseMm),
        );
        close(
          rate.freeboardTailMm,
          slope((a) => a.freeboardTailMm),
        );
        for (let k = 0; k < 3; k++)
          close(
            rate.up[k],
            slope((a) => a.upInBody[k]),
          );
        checked++;
      }
    }
  }
  expect(checked).toBeGreaterThan(70);
});

// Box barge 100 × 20, T 5, KG 4: sinks by δm/(ρA); trims by atan(δx/GM_L), heels by atan(δy/GM_T).
test('box barge by hand', () => {
  const solid = immersible([box(100, 20, 12, [50, 0, 6])]);
  const load: Load = { massG: 10, cgMm: [50, 0, 4], waterDensityKgM3: 1000, lengthMm: 100 };
  const rest = restAttitudes(solid, load).find((a) => a.upInBody[2] > 0.999);
  if (!rest) throw new Error('not upright');
  const deeper = responseTo(solid, load, rest, { ...NONE, massG: 1 });
  expect(deeper.planeOffsetMm).toBeCloseTo(0.5, 9);
  expect(deeper.freeboardNoseMm).toBeCloseTo(-0.5, 9);
  expect(deeper.trimDeg).toBeCloseTo(0, 9);
  const gmL = 2.5 + 100 ** 2 / 60 - 4;
  const gmT = 2.5 + 20 ** 2 / 60 - 4;
  const aft = responseTo(solid, load, rest, { ...NONE, cgMm: [1, 0, 0] });
  expect(aft.trimDeg).toBeCloseTo(180 / Math.PI / gmL, 9); // weight aft, nose up
  expect(aft.freeboardNoseMm).toBeCloseTo(50 / gmL, 9);
  expect(aft.freeboardTailMm).toBeCloseTo(-50 / gmL, 9);
  const port = responseTo(solid, load, rest, { ...NONE, cgMm: [0, 1, 0] });
  expect(port.heelDeg).toBeCloseTo(180 / Math.PI / gmT, 9); // weight to port, port down
});

test('on end there is no rate of trim or heel', () => {
  const solid = immersible([box(100, 20, 20, [50, 0, 0])]);
  const load: Load = { massG: 20, cgMm: [90, 0, 0], waterDensityKgM3: 1000, lengthMm: 100 };
  const rest = restAttitudes(solid, load)[0];
  expect(rest.trimDeg).toBeCloseTo(90, 6);
  const rate = responseTo(solid, load, rest, { ...NONE, cgMm: [0, 0, 1] });
  expect(rate).toMatchObject({ trimDeg: null, heelDeg: null });
  expect(rate.up[2]).toBeLessThan(0);
});

test('where any attitude is as good as another there is no answer', () => {
  const solid = immersible([box(100, 20, 20, [50, 0, 0])]);
  const load: Load = { massG: 50, cgMm: [50, 0, 0], waterDensityKgM3: 1000, lengthMm: 100 };
  const [rest] = restAttitudes(solid, load);
  expect(() => responseTo(solid, load, rest, { ...NONE, cgMm: [1, 0, 0] })).toThrow(Fault);
});
