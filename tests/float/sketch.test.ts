/** Looking for rests on a coarse sketch first must end where looking on the solid itself does. */
import { expect, test } from 'vitest';
import { makeBody } from '../../src/body/body.js';
import { offsetSquared } from '../../src/body/shape.js';
import type { Attitude } from '../../src/float/attitude.js';
import { immersible } from '../../src/float/immersible.js';
import { type Load, restAttitudes, restNear } from '../../src/float/rest.js';
import { angleBetween } from '../../src/float/tilt.js';
import { monotoneCurve } from '../../src/geometry/monotone.js';
import { dice } from './solids.js';

const roll = dice(7);

function randomBody() {
  const L = 60 + 90 * roll();
  const curve = (greatest: number, at: number) =>
    offsetSquared(
      L,
      [
        { stationMm: at * L, offsetMm: greatest },
        { stationMm: (0.5 + at / 2) * L, offsetMm: greatest * (0.5 + 0.3 * roll()) },
      ],
      { noseRadiusMm: 0.3 * (greatest ** 2 / (at * L)), tailRadiusMm: 1 },
    );
  const at = 0.3 + 0.15 * roll();
  const fullness = () => monotoneCurve([0, L], [1.7 + 2 * roll(), 1.7 + 2 * roll()]);
  return makeBody({
    lengthMm: L,
    backSquared: curve(L * (0.08 + 0.06 * roll()), at),
    bellySquared: curve(L * (0.08 + 0.08 * roll()), at),
    halfBreadthSquared: curve(L * (0.06 + 0.05 * roll()), at),
    upperExponent: fullness(),
    lowerExponent: fullness(),
  });
}

const known = (a: Attitude, among: readonly Attitude[]) =>
  among.some((b) => b.stable === a.stable && angleBetween(a.upInBody, b.upInBody) < 1e-6);

test('the same rests with a sketch and without, to the last digit that counts', () => {
  let looked = 0;
  for (let i = 0; i < 12; i++) {
    const { mesh, sketch, properties, shape } = randomBody();
    const [plain, sketched] = [immersible([mesh]), immersible([mesh], [sketch])];
    expect(sketch.triangles.length).toBeLessThan(mesh.triangles.length / 8);
    for (let k = 0; k < 4; k++) {
      const [x, , z] = properties.centroidMm;
      const load: Load = {
        massG: (0.4 + 0.55 * roll()) * properties.volumeMm3 * 1e-3,
        cgMm: [x + 12 * (roll() - 0.5), 0, z - 4 * roll()],
        waterDensityKgM3: 1000,
        lengthMm: shape.lengthMm,
      };
      const [all, quick] = [restAttitudes(plain, load), restAttitudes(sketched, load)];
      expect(quick).toHaveLength(all.length);
      for (const a of quick) expect(known(a, all)).toBe(true);
      looked += all.length;
    }
  }
  expect(looked).toBeGreaterThan(150);
});

test('let go near a rest it turns to that rest, on end it may have none near', () => {
  const { mesh, properties, shape } = randomBody();
  const solid = immersible([mesh]);
  const [x, , z] = properties.centroidMm;
  const load: Load = {
    massG: 0.8 * properties.volumeMm3 * 1e-3,
    cgMm: [x - 2, 0, z - 2],
    waterDensityKgM3: 1000,
    lengthMm: shape.lengthMm,
  };
  const [rest] = restAttitudes(solid, load);
  const {
    upInBody: [a, b, c],
  } = rest;
  const size = Math.hypot(a + 0.1, b + 0.2, c);
  const near = restNear(solid, load, [(a + 0.1) / size, (b + 0.2) / size, c / size]);
  expect(near && angleBetween(near.upInBody, rest.upInBody)).toBeLessThan(1e-9);
  const sunk = { ...load, massG: 2 * load.massG };
  expect(restNear(solid, sunk, [0, 0, 1])?.dryRatio).toBe(0);
});
