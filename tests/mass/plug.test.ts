import { describe, expect, test } from 'vitest';
import type { BallastHole } from '../../src/blank/blank.js';
import { pointBeyondMm } from '../../src/blank/blank.js';
import type { BodyShape } from '../../src/body/shape.js';
import { monotoneCurve } from '../../src/geometry/monotone.js';
import { bellyHeight, bellyOver, upTo } from '../../src/mass/belly.js';
import { massOf } from '../../src/mass/moments.js';
import {
  bellyTakenMm,
  drilledForMassMm,
  drilledForMm,
  floorOf,
  plugOf,
  pointCone,
} from '../../src/mass/plug.js';
import { bar, designOf, ellipsoid, MATERIALS, patternOf, rel, seeded } from './lures.js';

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
  bellyMm: -12,
  ...change,
});

/** What is between belly and datum plane over a hole of this shape. */
const toDatum = (shape: BodyShape, stationMm: number, r: number) =>
  upTo(bellyOver(shape, stationMm, 2 * r), 0);

describe('closed forms', () => {
  // Values worked out by closed form and by quadrature, to the digits shown: V = ∫ 2√(r²−x²)·√(R²−x²) dx.
  test.each([
    // 8R³/3, half the solid of two crossing cylinders; the belly meets the rim in a point: 2e-5.
    [10, 10, 2666.6666667, 2e-5],
    [10, 4, 492.389844, 1e-9], // digits shown
    [12, 3, 336.6201632, 1e-9],
  ])('crossing cylinder: R %d, hole r %d', (R, r, volume, accuracy) => {
    const got = toDatum(bar({ b: R, back: R, belly: R }), 50, r).amount;
    expect(rel(got, volume)).toBeLessThan(accuracy);
  });

  test('sphere R 10, hole r 4: half of what a hole right through takes, 2π(R³ − (R²−r²)^1.5)/3', () => {
    const got = toDatum(ellipsoid(10, 10, 10), 10, 4);
    expect(rel(got.amount, 963.9549099 / 2)).toBeLessThan(1e-9); // digits shown
    expect(rel(got.amount, (2 * Math.PI * (1000 - 84 ** 1.5)) / 3)).toBeLessThan(1e-12);
    expect(massOf(got).cgMm[0]).toBeCloseTo(10, 9);
    // ∫∫ z dz dA = −∫ (R²−ρ²)/2 dA = −(π/2)(R²r² − r⁴/2)
    expect(rel(got.z, (-Math.PI / 2) * (100 * 16 - 128))).toBeLessThan(1e-12);
  });

  test('plane: a flat belly leaves a plain cylinder', () => {
    // Exponent 400 is flat to 1e-9 of its depth over the inner half of the breadth.
    const plug = plugOf(
      bellyOver(bar({ b: 20, back: 12, belly: 6, n: 400 }), 50, 8),
      hole(),
      MATERIALS,
    );
    const want = Math.PI * 16 * 6; // floor at 0, belly at −6
    expect(rel(plug.metalMm3, want)).toBeLessThan(1e-9);
    const { massG, cgMm, inertiaGMm2 } = massOf(plug.metal);
    expect(rel(massG, want * 11.34e-3)).toBeLessThan(1e-9);
    expect(cgMm[0]).toBeCloseTo(50, 9);
    expect(cgMm[2]).toBeCloseTo(-3, 9);
    expect(rel(inertiaGMm2.zz, (massG * 16) / 2)).toBeLessThan(1e-9);
    expect(rel(inertiaGMm2.yy, massG * (16 / 4 + 36 / 12))).toBeLessThan(1e-9);
    expect(rel(inertiaGMm2.xx, massG * (16 / 4 + 36 / 12))).toBeLessThan(1e-9);
    expect(plug.plugMm).toBeCloseTo(6, 9);
  });

  /** A wide, flat belly that falls from a station on with a slope, tan of its angle. */
  const slope = (at: number, height: number, tan: number): BodyShape => {
    const offset = (x: number) => height + tan * (x - at);
    const squared = {
      knots: [0, 100],
      value: (x: number) => offset(x) ** 2,
      slope: (x: number) => 2 * tan * offset(x),
    };
    return { ...bar({ b: 40, back: 30, belly: 30, n: 400 }), bellySquared: squared };
  };

  test('oblique-cut cylinder: r 4, H 10, 30°: volume πr²H, center r²tanθ/(4H) off, H/2 + r²tan²θ/(8H) up', () => {
    const belly = bellyOver(slope(50, 10, Math.tan(Math.PI / 6)), 50, 8);
    const got = upTo(belly, 0);
    expect(rel(got.amount, 502.6548246)).toBeLessThan(1e-9); // digits shown
    const { cgMm } = massOf(got);
    expect(cgMm[0] - 50).toBeCloseTo(0.2309401, 7); // digits shown
    expect(-cgMm[2]).toBeCloseTo(5.0666667, 7);
  });

  test('ungula: a belly that cuts the floor across the middle leaves ⅔r²h', () => {
    // r 4, h 6 over the radius: 64 mm³. Where the floor is under the belly there is nothing.
    const belly = bellyOver(slope(50, 10, 6 / 4), 50, 8);
    const got = upTo(belly, -10).amount;
    expect(rel(got, 64)).toBeLessThan(5e-4); // the edge runs between points of integration
    const wide = bellyOver(slope(50, 10, 6 / 4), 50, 8);
    expect(rel(upTo(wide, -4 + 1e-9).amount, Math.PI * 16 * 6)).toBeLessThan(1e-8); // last whole top
  });

  // Point lengths and volumes worked out from L = (D/2)/tan(A/2), πD²L/12, to the digits shown.
  test.each([
    [6, 118, 1.80258, 16.9889],
    [8, 118, 2.40344, 40.2701],
    [10, 118, 3.0043, 78.6525],
    [10, 135, 2.07107, 54.2204],
    [12, 135, 2.48528, 93.6929],
  ])('point of a %d mm bit, %d°', (diameterMm, pointAngleDeg, lengthMm, volume) => {
    const bit = { stationMm: 30, diameterMm, pointAngleDeg };
    expect(pointBeyondMm(bit)).toBeCloseTo(lengthMm, 5);
    const cone = pointCone(bit, 5);
    expect(cone.amount).toBeCloseTo(volume, 4);
    const { cgMm, inertiaGMm2, massG } = massOf(cone);
    expect(cgMm[2] - 5).toBeCloseTo(lengthMm / 4, 5); // centroid of a cone
    // Cone about its axis 3mr²/10, across it through the center 3m(4r² + h²)/80.
    const [r, h] = [diameterMm / 2, pointBeyondMm(bit)];
    expect(rel(inertiaGMm2.zz, (3 * massG * r * r) / 10)).toBeLessThan(1e-9);
    expect(rel(inertiaGMm2.xx, (3 * massG * (4 * r * r + h * h)) / 80)).toBeLessThan(1e-9);
  });

  test('a flat floor has no point', () => {
    expect(pointBeyondMm({ diameterMm: 8, pointAngleDeg: 180 })).toBe(0);
  });
});

describe('a hole in a real belly', () => {
  const diver = designOf(patternOf('diver'));
  const shape = diver.body.shape;
  const belly = bellyOver(shape, 35, 8);

  test('volume against a sample of points, seed 7', () => {
    const drilled = diver.blank.holes[0];
    const floor = floorOf(drilled);
    const random = seeded(7);
    const n = 200_000;
    let inside = 0;
    const [low, high] = [-14, floor];
    for (let k = 0; k < n; k++) {
      const [x, y, z] = [8 * random() - 4, 8 * random() - 4, low + (high - low) * random()];
      if (x * x + y * y < 16 && z > bellyHeight(shape, 35 + x, y)) inside++;
    }
    const sampled = (inside / n) * 64 * (high - low);
    expect(rel(upTo(belly, floor).amount, sampled)).toBeLessThan(6e-3); // three standard errors of 200 000 points
  });

  test('common practice, no source: about 14 mm drilled leaves about 8 mm where 6 mm of belly comes off', () => {
    const deep = hole({ stationMm: 35, depthMm: 14, bellyMm: belly.axisMm - 6 });
    expect(bellyTakenMm(belly, deep)).toBeCloseTo(6, 9);
    expect(plugOf(belly, deep, MATERIALS).plugMm).toBeCloseTo(8, 9);
  });

  test('volume is straight in the depth while the floor is over the belly', () => {
    const at = (z: number) => upTo(belly, z).amount;
    expect(at(-2) - at(-4)).toBeCloseTo(2 * Math.PI * 16, 9);
    expect(at(-4) - at(-5)).toBeCloseTo(Math.PI * 16, 9);
  });

  test('the sums done once agree with the clipped ones point by point', () => {
    const edge = belly.highestMm;
    const [over, under] = [upTo(belly, edge + 1e-9), upTo(belly, edge - 1e-9)];
    for (const key of ['amount', 'x', 'z', 'xx', 'yy', 'zz', 'xz'] as const)
      expect(rel(under[key], over[key])).toBeLessThan(1e-6); // 2e-9 mm apart, over 1 mm of metal
  });

  test('highest place of the belly over the disk, against a fine sweep of it', () => {
    let most = -Infinity;
    for (let i = 0; i <= 2000; i++) {
      const a = (Math.PI * i) / 2000;
      most = Math.max(most, bellyHeight(shape, 35 + 4 * Math.cos(a), 4 * Math.sin(a)));
    }
    expect(belly.highestMm).toBeGreaterThanOrEqual(most - 1e-9);
    expect(belly.highestMm).toBeLessThan(most + 1e-5); // a sweep in steps of 0.006 mm
  });

  test('backwards: the depth for a wanted plug gives that plug', () => {
    for (const wanted of [60, 120, 400, 700]) {
      for (const pointAngleDeg of [118, 180]) {
        const drill = hole({ stationMm: 35, pointAngleDeg, bellyMm: belly.axisMm - 1.5 });
        const depthMm = drilledForMm(belly, drill, wanted);
        expect(depthMm).not.toBeNull();
        const plug = plugOf(belly, { ...drill, depthMm: depthMm ?? 0 }, MATERIALS);
        // Where the floor dips under the belly at the rim the halving stops at 1e-9 mm.
        expect(rel(plug.metalMm3, wanted)).toBeLessThan(1e-8);
      }
    }
    const lead = MATERIALS.metals.lead;
    const drill = hole({ stationMm: 35, bellyMm: belly.axisMm - 1.5, pour: 'single' });
    const depthMm = drilledForMassMm(belly, drill, { massG: 4, metal: lead }) ?? 0;
    expect(plugOf(belly, { ...drill, depthMm }, MATERIALS).metal.amount).toBeCloseTo(4, 9);
  });

  test('backwards: more than the body holds there, or less than the point alone, is not to be had', () => {
    expect(drilledForMm(belly, hole({ stationMm: 35 }), 5000)).toBeNull();
    expect(drilledForMm(belly, hole({ stationMm: 35, pointAngleDeg: 118 }), 20)).toBeNull();
  });
});

describe('what is in the hole', () => {
  const belly = bellyOver(bar({ b: 10, back: 10, belly: 10 }), 50, 8);
  const drilled = hole({ bellyMm: -12, depthMm: 12 }); // floor on the datum plane

  test('poured once ends at the liquid’s weight: 10.66 against 11.34', () => {
    const once = plugOf(belly, { ...drilled, pour: 'single' }, MATERIALS).metal.amount;
    const topped = plugOf(belly, drilled, MATERIALS).metal.amount;
    expect(once / topped).toBeCloseTo(10.66 / 11.34, 12);
    // A 10 × 20 mm plug (1.571 cm³) differs by 1.07 g (closed form, to the digits shown).
    expect(1.5708 * (11.34 - 10.66)).toBeCloseTo(1.07, 2);
  });

  test('bismuth grows as it sets: what stands out is filed off', () => {
    const bismuth = { ...drilled, metal: 'bismuth', pour: 'single' } as const;
    const plug = plugOf(belly, bismuth, MATERIALS);
    expect(plug.metal.amount / plug.metalMm3).toBeCloseTo(9.75e-3, 12);
  });

  test('filled to a height: metal and glue share the hole', () => {
    const plug = plugOf(belly, { ...drilled, fillMm: 5, pointAngleDeg: 118 }, MATERIALS);
    expect(plug.metalMm3 + plug.glue.amount).toBeCloseTo(plug.bored.amount, 9);
    const cone = pointCone({ ...drilled, pointAngleDeg: 118 }, 0).amount;
    expect(plug.metalMm3).toBeCloseTo(Math.PI * 16 * 5 + cone, 9);
    expect(plug.plugMm).toBe(5);
    // The belly is highest at the sides of the hole: −√(100 − 16) there.
    expect(plug.coverMm).toBeCloseTo(Math.sqrt(84) - 5, 9);
  });

  test('metal that reaches beyond the belly is sanded off, and the cover says so', () => {
    const plug = plugOf(belly, { ...drilled, fillMm: 9.5 }, MATERIALS);
    expect(plug.coverMm).toBeCloseTo(Math.sqrt(84) - 9.5, 9);
    expect(plug.coverMm).toBeLessThan(0);
    const whole = plugOf(belly, drilled, MATERIALS);
    expect(plug.metalMm3).toBeLessThan(whole.metalMm3);
    const full = plugOf(belly, { ...drilled, fillMm: 11 }, MATERIALS);
    expect(full.metalMm3).toBeCloseTo(whole.metalMm3, 9);
    expect(full.plugMm).toBeCloseTo(10, 9);
  });

  test('a ready-made weight keeps its mass; glue fills the rest', () => {
    const plug = plugOf(belly, { ...drilled, weight: 'lead-3g', pointAngleDeg: 118 }, MATERIALS);
    expect(plug.metal.amount).toBeCloseTo(3, 12);
    expect(massOf(plug.metal).cgMm[2]).toBeCloseTo(-9.4 / 2, 12);
    expect(plug.metalMm3 + plug.glue.amount).toBeCloseTo(plug.bored.amount, 9);
    expect(plug.coverMm).toBeCloseTo(Math.sqrt(100 - 9) - 9.4, 9); // over the weight’s own 6 mm
  });
});

test('a belly whose fullness changes along the hole still meets a sample of points, seed 11', () => {
  const shape = {
    ...ellipsoid(50, 12, 14),
    lowerExponent: monotoneCurve([20, 60], [2, 3.5]),
  };
  const random = seeded(11);
  const n = 200_000;
  let inside = 0;
  for (let k = 0; k < n; k++) {
    const [x, y, z] = [12 * random() - 6, 12 * random() - 6, -14 * random()];
    if (x * x + y * y < 36 && z > bellyHeight(shape, 38 + x, y)) inside++;
  }
  const got = upTo(bellyOver(shape, 38, 12), 0).amount;
  expect(rel(got, (inside / n) * 144 * 14)).toBeLessThan(6e-3); // three standard errors
});
