/** The spread of a drilled hole against the same geometry drawn by chance, and against closed forms. */
import { expect, test } from 'vitest';
import { seededDraws } from '../../src/geometry/random.js';
import { holeSpread, type SpreadSources } from '../../src/jig/drill-stop/spread.js';

const SOURCES: SpreadSources = {
  guideLengthMm: 14,
  playMm: 0.3,
  gapMm: 0.6,
  depthMm: 15,
  runOutMm: 0.2,
  collarErrorMm: 0.25,
  printerErrorMm: 0.08,
  seatMm: 0.05,
  pushedMm: 0.5,
};

const COUNT = 200_000;

/** Holes drilled one by one: a line through both ends of a guide, followed to mouth and floor. */
function drilled(s: SpreadSources, seed: number) {
  const draw = seededDraws(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());
  const inDisc = (diameter: number) => {
    const [r, a] = [(diameter / 2) * Math.sqrt(draw()), 2 * Math.PI * draw()];
    return r * Math.cos(a);
  };
  const walls = () => (s.printerErrorMm * (normal() + normal())) / 2;
  return Array.from({ length: COUNT }, () => {
    const [entry, exit] = [inDisc(s.playMm) + walls(), inDisc(s.playMm) + walls()];
    const angle = Math.atan2(exit - entry, s.guideLengthMm);
    const moved =
      (s.runOutMm / 2) * Math.cos(2 * Math.PI * draw()) +
      s.printerErrorMm * normal() +
      s.seatMm * draw();
    const at = (beyond: number) => exit + Math.tan(angle) * beyond + moved;
    return {
      place: at(s.gapMm),
      floor: at(s.gapMm + s.depthMm),
      angle: (angle * 180) / Math.PI,
      depth:
        s.collarErrorMm * normal() +
        s.printerErrorMm * (normal() + normal()) +
        s.seatMm * draw() +
        s.pushedMm * draw(),
    };
  });
}

const deviation = (values: readonly number[]): number => {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length);
};

test('standard deviations are those of holes drawn by chance', () => {
  const holes = drilled(SOURCES, 11);
  const told = holeSpread(SOURCES);
  // A deviation of 200 000 draws is known to 1/√(2·200 000) = 0.16 %; 1 % is six of those.
  const near = (sd: number, values: readonly number[]) =>
    expect(Math.abs(sd / deviation(values) - 1)).toBeLessThan(0.01);
  near(
    told.placeMm.sd,
    holes.map((h) => h.place),
  );
  near(
    told.floorMm.sd,
    holes.map((h) => h.floor),
  );
  near(
    told.angleDeg.sd,
    holes.map((h) => h.angle),
  );
  near(
    told.depthMm.sd,
    holes.map((h) => h.depth),
  );
});

test('greatest errors: what has a bound stays inside it, and reaches it', () => {
  const exact = { ...SOURCES, printerErrorMm: 0, collarErrorMm: 0, runOutMm: 0, seatMm: 0 };
  const told = holeSpread({ ...exact, pushedMm: 0.5 });
  const holes = drilled(exact, 12);
  for (const [greatest, values] of [
    [told.placeMm.greatest, holes.map((h) => h.place)],
    [told.floorMm.greatest, holes.map((h) => h.floor)],
    [told.angleDeg.greatest, holes.map((h) => h.angle)],
    [told.depthMm.greatest, holes.map((h) => h.depth)],
  ] as const) {
    const found = values.reduce((a, v) => Math.max(a, Math.abs(v)), 0);
    expect(found).toBeLessThanOrEqual(greatest + 1e-12);
    expect(found).toBeGreaterThan(0.9 * greatest);
  }
});

test('closed forms: play alone, at the very end of the guide and one length beyond', () => {
  const play = {
    ...SOURCES,
    printerErrorMm: 0,
    collarErrorMm: 0,
    runOutMm: 0,
    seatMm: 0,
    pushedMm: 0,
    gapMm: 0,
    depthMm: SOURCES.guideLengthMm,
  };
  const { placeMm, floorMm, angleDeg, depthMm } = holeSpread(play);
  // A disc of diameter c: one standard deviation along a line is c/4.
  expect(placeMm.sd).toBeCloseTo(0.3 / 4, 12);
  expect(placeMm.greatest).toBeCloseTo(0.15, 12);
  // One length beyond: 2 u₁ − u₀, so √5 as far; at most 3 half plays.
  expect(floorMm.sd).toBeCloseTo((Math.sqrt(5) * 0.3) / 4, 12);
  expect(floorMm.greatest).toBeCloseTo(0.45, 12);
  expect(angleDeg.greatest).toBeCloseTo((Math.atan(0.3 / 14) * 180) / Math.PI, 12);
  expect(depthMm).toEqual({ sd: 0, greatest: 0 });
});

test('a longer guide holds the angle better, and nothing is worse for it', () => {
  const [short, long] = [14, 30].map((guideLengthMm) => holeSpread({ ...SOURCES, guideLengthMm }));
  expect(long.angleDeg.sd).toBeCloseTo((short.angleDeg.sd * 14) / 30, 2);
  expect(long.floorMm.sd).toBeLessThan(short.floorMm.sd);
  expect(long.placeMm.sd).toBeLessThan(short.placeMm.sd);
});
