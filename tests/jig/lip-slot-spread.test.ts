import { describe, expect, test } from 'vitest';
import { type SpreadCauses, slotSpread } from '../../src/jig/lip-slot-guide/spread.js';
import { seeded } from '../mass/lures.js';

const DEG = 180 / Math.PI;
const NONE: SpreadCauses = {
  printErrorMm: 0,
  seatClearanceMm: 0,
  bladePlayMm: 0,
  riseMm: 0.3,
  slotLengthMm: 32,
  slotHeightMm: 35,
  leverMm: 3,
  bellyAngleDeg: 60,
  playDeg: 0,
};

describe('one cause alone, in closed form', () => {
  test('none: nothing', () => {
    for (const s of Object.values(slotSpread(NONE)))
      expect(s).toEqual({ deviation: 0, greatest: 0 });
  });

  test('the sides’ play is an even chance: a third of its square', () => {
    const { leanDeg } = slotSpread({ ...NONE, playDeg: 0.6 });
    expect(leanDeg?.deviation).toBeCloseTo(0.6 / Math.sqrt(3), 12);
    expect(leanDeg?.greatest).toBe(0.6);
  });

  test('the blade’s play turns it over the slot’s height and length, half to either side', () => {
    const { angleDeg, leanDeg, stationMm } = slotSpread({ ...NONE, bladePlayMm: 0.2 });
    expect(angleDeg.greatest).toBeCloseTo((0.1 / 35) * DEG, 12);
    expect(leanDeg?.greatest).toBeCloseTo((0.1 / 32) * DEG, 12);
    expect(stationMm.greatest).toBeCloseTo(0.1 / Math.sin(60 / DEG), 12);
  });

  test('the seat’s clearance: depth by itself, angle over half the bearing length', () => {
    const { depthMm, angleDeg } = slotSpread({ ...NONE, seatClearanceMm: 0.05 });
    expect(depthMm.greatest).toBeCloseTo(0.05, 12);
    expect(angleDeg.greatest).toBeCloseTo((0.05 / (0.3 / Math.tan(1 / DEG))) * DEG, 12);
  });

  test('a seat that stops no roll has no lean to tell', () => {
    expect(slotSpread({ ...NONE, playDeg: null }).leanDeg).toBeNull();
  });
});

describe('all causes, against draws through the geometry itself', () => {
  const causes: SpreadCauses = {
    printErrorMm: 0.1,
    seatClearanceMm: 0.05,
    bladePlayMm: 0.15,
    riseMm: 0.3,
    slotLengthMm: 32,
    slotHeightMm: 35,
    leverMm: 6,
    bellyAngleDeg: 55,
    playDeg: 0.5,
  };
  const random = seeded(11);
  const even = (most: number) => most * (2 * random() - 1);
  // G. Box and M. Muller, 1958.
  const normal = (sd: number) =>
    sd * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

  /** One guide printed, one blank pressed in, one blade led through: errors of the slot on that blank. */
  function drawn() {
    const { printErrorMm: e, seatClearanceMm: g, bladePlayMm: p } = causes;
    const { leverMm, bellyAngleDeg, slotHeightMm, slotLengthMm } = causes;
    const half = causes.riseMm / Math.tan(1 / DEG);
    // The blank on two bearing points, and rocked in its gap.
    const turn = Math.atan2(normal(e) - normal(e), 2 * half) + Math.atan2(even(g), half);
    const blade = Math.atan2(even(p / 2), slotHeightMm);
    // Blank's frame: seat's middle at the origin, the slot's line wanted along z through x = 0, the
    // mouth on it at the lever, the belly through the mouth.
    const bladeX = normal(e) + normal(e) + even(g) + even(p / 2);
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    // The blade's line, upright in the guide at bladeX, seen from the blank turned by `turn`.
    const [px, pz] = [c * bladeX + s * leverMm, c * leverMm - s * bladeX];
    const [dx, dz] = [Math.sin(turn), Math.cos(turn)];
    // The belly: from the mouth (0, lever) in direction (sin β, cos β); the lines cross at
    // p + u d = mouth + t b.
    const [bx, bz] = [Math.sin(bellyAngleDeg / DEG), Math.cos(bellyAngleDeg / DEG)];
    const det = dx * bz - dz * bx;
    const station = (dx * (pz - leverMm) - dz * px) / det;
    return {
      angleDeg: (turn + blade) * DEG,
      stationMm: station,
      depthMm: normal(e) + normal(e) + even(g),
      leanDeg:
        even(causes.playDeg ?? 0) +
        (Math.atan2(even(p / 2), slotLengthMm) + Math.atan2(normal(e) - normal(e), slotLengthMm)) *
          DEG,
    };
  }

  const DRAWS = 40_000;
  const draws = Array.from({ length: DRAWS }, drawn);
  const spread = slotSpread(causes);

  test.each(['angleDeg', 'stationMm', 'depthMm', 'leanDeg'] as const)('%s', (name) => {
    const errors = draws.map((d) => d[name]);
    const mean = errors.reduce((a, b) => a + b, 0) / DRAWS;
    const deviation = Math.sqrt(errors.reduce((a, b) => a + (b - mean) ** 2, 0) / DRAWS);
    // The deviation of N draws is right to 1/√(2N) = 0.35 %; four of that.
    const told = spread[name];
    expect(Math.abs((told?.deviation ?? 0) / deviation - 1)).toBeLessThan(0.015);
    const most = Math.max(...errors.map(Math.abs));
    expect(most).toBeLessThan(told?.greatest ?? 0);
    expect(most).toBeGreaterThan(0.4 * (told?.greatest ?? Infinity));
  });
});
