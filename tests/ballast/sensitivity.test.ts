import { describe, expect, test } from 'vitest';
import { loadOf } from '../../src/ballast/choice.js';
import { holeSensitivity, timberSensitivity } from '../../src/ballast/sensitivities.js';
import { type Sensitivity, sensitivity } from '../../src/ballast/sensitivity.js';
import { type Hole, withHoles } from '../../src/ballast/workpiece.js';
import type { Attitude } from '../../src/float/attitude.js';
import { type Load, restAttitudes } from '../../src/float/rest.js';
import type { Mass } from '../../src/mass/item.js';
import { hole, patternOf, pieceOf } from './pieces.js';

const pattern = patternOf();
const piece = pieceOf(pattern);
const { solid } = piece.afloat;
const holes = [hole({ stationMm: 31, depthMm: 9 }), hole({ stationMm: 42, depthMm: 11 })];

const restOf = (load: Load): Attitude => restAttitudes(solid, load)[0];
const load = loadOf(piece, withHoles(piece, holes));
const at = { attitude: restOf(load), load };

/** Rates by letting the lure come to rest twice. */
function found(before: Load, after: Load, step: number): Sensitivity {
  const [a, b] = [restOf(before), restOf(after)];
  const rate = (key: keyof Attitude & keyof Sensitivity) =>
    (((b[key] ?? 0) as number) - ((a[key] ?? 0) as number)) / step;
  return {
    massG: (after.massG - before.massG) / step,
    trimDeg: rate('trimDeg'),
    freeboardNoseMm: rate('freeboardNoseMm'),
    freeboardTailMm: rate('freeboardTailMm'),
    freeboardMm: rate('freeboardMm'),
  };
}

/** Two rests 0.04 of a unit apart: their curvature leaves about 1e-3 of the rate, the mesh's facets as much. */
function near(got: Sensitivity, want: Sensitivity): void {
  for (const key of Object.keys(want) as (keyof Sensitivity)[]) {
    const [g, w] = [got[key] ?? Number.NaN, want[key] ?? Number.NaN];
    expect(Math.abs(g - w), `${key}: ${g} for ${w}`).toBeLessThan(0.004 * Math.abs(w) + 0.002);
  }
}

const moved = (i: number, key: 'stationMm' | 'depthMm', byMm: number): Load =>
  loadOf(
    piece,
    withHoles(
      piece,
      holes.map((h, k): Hole => (k === i ? { ...h, [key]: h[key] + byMm } : h)),
    ),
  );

describe.each([0, 1])('hole %d', (i) => {
  const rates = holeSensitivity(piece, holes, i, at);

  test('per mm of station', () => {
    near(
      rates.perStationMm,
      found(moved(i, 'stationMm', -0.02), moved(i, 'stationMm', 0.02), 0.04),
    );
    expect(rates.perStationMm.trimDeg).toBeGreaterThan(0); // metal further aft lifts the nose
  });

  test('per mm of depth', () => {
    near(rates.perDepthMm, found(moved(i, 'depthMm', -0.02), moved(i, 'depthMm', 0.02), 0.04));
    expect(rates.perDepthMm.massG).toBeGreaterThan(0);
    expect(rates.perDepthMm.freeboardMm).toBeLessThan(0);
  });
});

test('per 10 kg/m³ of timber', () => {
  const board = (kgM3: number): Mass => withHoles(pieceOf(pattern, kgM3), holes);
  const [before, after] = [board(357), board(359)].map((mass) => loadOf(piece, mass));
  const { per10KgM3 } = timberSensitivity(piece, holes, at);
  near(per10KgM3, found(before, after, 0.2));
  expect(per10KgM3.freeboardMm).toBeLessThan(0);
});

test('of the water itself', () => {
  const inWater = (waterDensityKgM3: number) => ({ ...load, waterDensityKgM3 });
  const [before, after] = [inWater(998), inWater(1000.2)];
  const got = sensitivity({ solid, ...at }, { before, after, step: 2.2 });
  near(got, found(before, after, 2.2));
  expect(got.massG).toBe(0);
  expect(got.freeboardMm).toBeGreaterThan(0);
});

test('a lure that hangs under water turns, and keeps its depth', () => {
  const deep = [hole({ diameterMm: 10, depthMm: 19 })];
  const sunk = loadOf(piece, withHoles(piece, deep));
  const hanging = { attitude: restOf(sunk), load: sunk };
  expect(hanging.attitude.dryRatio).toBe(0);
  const { perStationMm } = holeSensitivity(piece, deep, 0, hanging);
  const step = (byMm: number) =>
    loadOf(piece, withHoles(piece, [{ ...deep[0], stationMm: deep[0].stationMm + byMm }]));
  near(perStationMm, found(step(-0.02), step(0.02), 0.04));
  expect(perStationMm.trimDeg).toBeGreaterThan(1);
});
