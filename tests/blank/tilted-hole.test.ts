import { describe, expect, test } from 'vitest';
import { axisOf, mouthOf, onAxis, tipDepthMm } from '../../src/blank/hole.js';
import { LEAST_WOOD_MM } from '../../src/blank/hole-neighbors.js';
import { makeBlank } from '../../src/blank/make.js';
import { bellyAt } from '../../src/blank/sawn-belly.js';
import { bodyShape } from '../../src/body/body.js';
import { resolvePattern } from '../../src/pattern/pattern.js';
import { type PatternFile, patternSchema } from '../../src/pattern/schema.js';

const rad = (deg: number) => (deg * Math.PI) / 180;

/** An ellipsoid 100 long, 24 high and 20 wide with holes in it. */
const file = (ballast: readonly object[], change: object = {}): PatternFile => {
  const at = (s: number) => {
    const share = Math.sqrt(1 - (2 * s - 1) ** 2);
    return {
      stationRatio: s,
      backMm: 12 * share,
      bellyMm: 12 * share,
      halfBreadthMm: 10 * share,
    };
  };
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
    ballast: ballast.map((hole) => ({ diameterMm: 6, depthMm: 10, metal: 'lead', ...hole })),
    timber: 'western-redcedar',
    sandingAllowanceMm: 1.5,
    blockThicknessMm: 24,
    ...change,
  });
};

const made = (ballast: readonly object[], change: object = {}, scaleRatio?: number) => {
  const pattern = resolvePattern(file(ballast, change), { scaleRatio });
  return makeBlank(pattern, bodyShape(pattern));
};
const holesOf = (...given: Parameters<typeof made>) => {
  const { blank, problems } = made(...given);
  if (!blank) throw new Error(JSON.stringify(problems));
  return blank.holes;
};
const told = (...given: Parameters<typeof made>) =>
  made(...given).problems.map(({ code, facts }) => ({ code, ...facts }) as Record<string, unknown>);

describe('the axis', () => {
  test('mouth, direction and ends of a hole that leans 30° aft', () => {
    const [hole] = holesOf([{ stationMm: 40, tiltDeg: 30 }]);
    const [square] = holesOf([{ stationMm: 40 }]);
    expect(square.tiltDeg).toBe(0);
    expect(mouthOf(hole)).toEqual([40, square.bellyMm]);
    expect(axisOf(hole)[0]).toBeCloseTo(0.5, 12);
    expect(axisOf(hole)[1]).toBeCloseTo(Math.sqrt(3) / 2, 12);
    const [x, z] = onAxis(hole, 10);
    expect(x).toBeCloseTo(45, 9);
    expect(z).toBeCloseTo(square.bellyMm + 5 * Math.sqrt(3), 9);
    expect(tipDepthMm(hole)).toBeCloseTo(10 + 3 / Math.tan(rad(59)), 9);
  });

  test('a larger lure has the same tilt and a deeper hole', () => {
    const [hole] = holesOf([{ stationMm: 40, tiltDeg: -20 }], {}, 1.5);
    expect(hole).toMatchObject({ stationMm: 60, tiltDeg: -20, depthMm: 15, diameterMm: 6 });
  });

  test.each([-60.5, 61, Number.NaN])('a tilt of %d° is no tilt', (tiltDeg) => {
    expect(() => file([{ stationMm: 40, tiltDeg }])).toThrow();
  });
});

describe('wood round a tilted hole', () => {
  test('hole-outside: its tip, its floor and its rim stay over the length', () => {
    const far = { stationMm: 12, tiltDeg: -60, depthMm: 14 };
    const [s, c] = [Math.sin(rad(60)), 0.5];
    const fore = Math.max(3 / c, 14 * s + 3 * c, (14 + 3 / Math.tan(rad(59))) * s);
    expect(told([far])).toMatchObject([{ code: 'hole-outside', end: 'nose', mostMm: 100 - 6 }]);
    expect(told([far])[0].leastMm).toBeCloseTo(fore, 9);
  });

  test('hole-too-wide: where the body is narrowest along the hole', () => {
    const hole = { stationMm: 70, tiltDeg: 50, depthMm: 20, diameterMm: 11, pointAngleDeg: 180 };
    const at = 70 + 20 * Math.sin(rad(50));
    const breadth = 20 * Math.sqrt(1 - (at / 50 - 1) ** 2);
    const [problem] = told([hole]).filter(({ code }) => code === 'hole-too-wide');
    expect(problem.stationMm).toBeCloseTo(at, 9);
    expect(problem.breadthMm).toBeCloseTo(breadth, 9);
  });

  test.each([
    [50, 25, 118],
    [60, -40, 135],
    [60, 55, 118],
    [45, -60, 180],
  ])(
    'hole-through-back at %d mm, %d°: the depth it allows leaves the wood, a little more does not',
    (stationMm, tiltDeg, pointAngleDeg) => {
      const drilled = (depthMm: number) =>
        told([{ stationMm, tiltDeg, pointAngleDeg, diameterMm: 4, depthMm }]).filter(
          ({ code }) => code === 'hole-through-back',
        );
      const [{ limitMm }] = drilled(40);
      expect(limitMm).toBeGreaterThan(10);
      expect(drilled(Number(limitMm))).toEqual([]);
      expect(drilled(Number(limitMm) + 0.2)).toHaveLength(1);
    },
  );

  test('wood on ahead of a tip on a leaning axis, by the quadratic of the ellipse', () => {
    const [stationMm, tiltDeg, depthMm] = [50, 30, 27];
    const [hole] = holesOf([{ stationMm, tiltDeg, depthMm: 5 }]);
    const problem = told([{ stationMm, tiltDeg, depthMm }])[0];
    // The point's tip is higher than its rim here. Straight up from it there is less than on ahead.
    const [x, z] = onAxis(hole, depthMm + 3 / Math.tan(rad(59)));
    const straightUp = 12 * Math.sqrt(1 - (x / 50 - 1) ** 2) - z;
    expect(problem.woodMm).toBeLessThanOrEqual(straightUp + 1e-9);
    expect(problem.code).toBe('hole-through-back');
    // Another look at the same: no point of the bit's end is nearer to the back than it says, straight up.
    const [s, c] = axisOf(hole);
    const rim = Array.from({ length: 720 }, (_, i) => {
      const [p, q] = [3 * Math.cos((i * Math.PI) / 360), 3 * Math.sin((i * Math.PI) / 360)];
      const [fx, fz] = onAxis(hole, depthMm);
      const [rx, rz] = [fx + p * c, fz - p * s];
      const half = 10 * Math.sqrt(1 - (rx / 50 - 1) ** 2);
      return 12 * Math.sqrt(1 - (rx / 50 - 1) ** 2) * Math.sqrt(1 - (q / half) ** 2) - rz;
    });
    expect(Number(problem.woodMm)).toBeLessThanOrEqual(Math.min(straightUp, ...rim) + 1e-3);
  });

  test('a hole that leans back out of the belly is told so', () => {
    const problems = told([{ stationMm: 88, tiltDeg: 60, diameterMm: 3, depthMm: 11 }]);
    expect(problems).toContainEqual(
      expect.objectContaining({ code: 'hole-through-back', side: 'belly' }),
    );
  });

  test('hole-floor-outside: just deeper than it asks for will do', () => {
    const drilled = (depthMm: number) => told([{ stationMm: 45, tiltDeg: 50, depthMm }]);
    const [{ code, limitMm }] = drilled(2);
    expect(code).toBe('hole-floor-outside');
    // A flat belly would take the rim's r tan 50° and 1.5 mm of sanding along the axis.
    expect(limitMm).toBeCloseTo(3 * Math.tan(rad(50)) + 1.5 / Math.cos(rad(50)), 0);
    expect(drilled(Number(limitMm) + 0.01)).toEqual([]);
    expect(drilled(Number(limitMm) - 0.01)).toHaveLength(1);
  });

  test('hole-mouth-hidden: a bit from far aft meets the belly before the blunt nose', () => {
    const [{ code, otherMm }] = told([{ stationMm: 1, tiltDeg: -60, diameterMm: 3 }]);
    expect(code).toBe('hole-mouth-hidden');
    const { blank } = made([]);
    if (!blank) throw new Error('no blank');
    const [first, mouth] = [Number(otherMm), 1].map((x) => [x, bellyAt(blank.profile.path, x)]);
    expect(first[0]).toBeGreaterThan(2);
    // Both lie on a line that leans 60° forward.
    expect((mouth[1] - first[1]) / (mouth[0] - first[0])).toBeCloseTo(-1 / Math.tan(rad(60)), 6);
  });
});

describe('beside other openings', () => {
  test('two parallel holes by their axes', () => {
    const pair = [
      { stationMm: 45, tiltDeg: 40 },
      { stationMm: 55, tiltDeg: 40 },
    ];
    expect(told(pair)).toMatchObject([{ code: 'holes-meet', firstMm: 45, secondMm: 55 }]);
    // An ellipse is as deep at 45 as at 55.
    expect(told(pair)[0].betweenMm).toBeCloseTo(10 * Math.cos(rad(40)) - 6, 6);
  });

  test('two holes that lean together, mirror images about the middle', () => {
    const pair = [
      { stationMm: 41, tiltDeg: 20, depthMm: 16 },
      { stationMm: 59, tiltDeg: -20, depthMm: 16 },
    ];
    const reach = Math.max(
      3 * Math.cos(rad(20)) + 16 * Math.sin(rad(20)),
      (16 + 3 / Math.tan(rad(59))) * Math.sin(rad(20)),
    );
    const [problem] = told(pair);
    expect(problem.code).toBe('holes-meet');
    expect(problem.betweenMm).toBeCloseTo(2 * (9 - reach), 6);
  });

  test('a hole along the lip slot: the way between two parallel walls', () => {
    const lip = {
      widthMm: 20,
      lengthMm: 30,
      thicknessMm: 1.5,
      angleDeg: 45,
      slot: { stationMm: 20, depthMm: 9 },
    };
    const hole = { stationMm: 24, tiltDeg: 45, diameterMm: 4 };
    const [problem] = told([hole], { lip });
    const [{ bellyMm }] = holesOf([hole]);
    const slotMm = -12 * Math.sqrt(1 - 0.6 ** 2);
    // Distance of the mouths across 45°, less half the bit and half the slot.
    const across = Math.abs((24 - 20) * Math.SQRT1_2 - (bellyMm - slotMm) * Math.SQRT1_2);
    expect(problem.code).toBe('hole-meets-slot');
    expect(problem.betweenMm).toBeCloseTo(across - 2 - 0.8, 6);
  });

  test('a hanger over whose station the hole leans', () => {
    const hole = { stationMm: 40, tiltDeg: 45, depthMm: 14 };
    const aft = (14 + 3) * Math.SQRT1_2; // floor's lower corner; the tip lies nearer
    const beside = (hangerMm: number) =>
      told([hole], { hangers: [{ stationMm: hangerMm, kind: 'screw' }] });
    expect(beside(40 + aft + LEAST_WOOD_MM + 0.01)).toEqual([]);
    const [{ code, betweenMm }] = beside(40 + aft + 1);
    expect(code).toBe('hanger-meets');
    expect(betweenMm).toBeCloseTo(1, 9);
  });
});

test('no jump: a hair of tilt is told as none', () => {
  for (const hole of [
    { stationMm: 50, depthMm: 25 },
    { stationMm: 97.5, depthMm: 3 },
    { stationMm: 88, depthMm: 6 },
  ]) {
    const [square, tilted] = [0, 1e-9].map((tiltDeg) => told([{ ...hole, tiltDeg }]));
    expect(tilted.map(({ code }) => code)).toEqual(square.map(({ code }) => code));
    square.forEach((facts, i) => {
      for (const [key, value] of Object.entries(facts))
        if (typeof value === 'number') expect(tilted[i][key]).toBeCloseTo(value, 5);
    });
  }
});
