/** Invented lures in invented attitudes, for pictures: plausible to the eye, computed from a few points. */
import { type BodyShape, offsetAt, offsetSquared } from '../../src/body/shape.js';
import type {
  Choice,
  ChoicesInput,
  DrawnLure,
  FloatInput,
} from '../../src/drawing/picture/input.js';
import { sectionPoints } from '../../src/drawing/picture/view.js';
import type { Attitude } from '../../src/float/attitude.js';
import type { Verdict } from '../../src/float/verdict.js';
import { monotoneCurve } from '../../src/geometry/monotone.js';
import { cosSinDeg, type Point3 } from '../../src/geometry/vec.js';

/** Park and Miller's generator, 0 to 1. */
export function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

export function sampleShape(lengthMm = 110, deep = 15, wide = 10): BodyShape {
  const at = [0.1, 0.35, 0.7, 0.92];
  const side = (offsets: readonly number[], r: number) =>
    offsetSquared(
      lengthMm,
      at.map((s, i) => ({ stationMm: s * lengthMm, offsetMm: offsets[i] })),
      { noseRadiusMm: r, tailRadiusMm: r / 2 },
    );
  const full = [0.6, 1, 0.62, 0.3];
  return {
    lengthMm,
    backSquared: side(
      full.map((f) => f * deep),
      deep / 3,
    ),
    bellySquared: side(
      full.map((f) => f * 1.1 * deep),
      deep / 3,
    ),
    halfBreadthSquared: side(
      full.map((f) => f * wide),
      wide / 3,
    ),
    upperExponent: monotoneCurve([0], [2.3]),
    lowerExponent: monotoneCurve([0], [2.5]),
  };
}

export function sampleLure(
  shape: BodyShape,
  { lip = true, holes = 1, weightMm = null as number | null } = {},
): DrawnLure {
  const L = shape.lengthMm;
  const belly = (x: number) => -offsetAt(shape.bellySquared, x);
  const stations = [0.32, 0.45].slice(0, holes).map((s) => s * L);
  return {
    shape,
    cgMm: [0.42 * L, 0, belly(0.4 * L) / 3],
    lip: lip
      ? {
          corners: [
            [0.12 * L, belly(0.05 * L) + 3],
            [0.13 * L, belly(0.05 * L) + 1.4],
            [-0.12 * L, belly(0.05 * L) - 0.14 * L],
            [-0.13 * L, belly(0.05 * L) - 0.14 * L + 1.6],
          ],
          widthMm: 0.2 * L,
          face: null,
        }
      : null,
    eyes: [
      { at: [-2, 0], radiusMm: 1.6, ring: false, treble: false },
      { at: [0.5 * L, belly(0.5 * L) - 2], radiusMm: 1.6, ring: true, treble: true },
      { at: [L + 2, 0], radiusMm: 1.6, ring: true, treble: true },
    ],
    holes: stations.map((stationMm) => ({
      tiltDeg: 0,
      placeMm: stationMm,
      diameterMm: 8,
      floorMm: belly(stationMm) + 8,
      bellyMm: belly(stationMm),
      metalDiameterMm: weightMm,
      pointAngleDeg: 118,
    })),
  };
}

/** The lure turned as told, as deep in the water as leaves the share of its points dry. */
export function sampleAttitude(
  { shape, cgMm }: DrawnLure,
  { trimDeg, heelDeg, dryRatio }: { trimDeg: number; heelDeg: number; dryRatio: number },
): Attitude {
  const [ct, st] = cosSinDeg(trimDeg);
  const [ch, sh] = cosSinDeg(heelDeg);
  const up: Point3 = [-st, -sh * ct, ch * ct];
  const high = (p: Point3) => up[0] * p[0] + up[1] * p[1] + up[2] * p[2];
  const points = Array.from({ length: 60 }, (_, i) =>
    sectionPoints(shape, (shape.lengthMm * (i + 0.5)) / 60),
  ).flat();
  const heights = points.map(high).sort((a, b) => a - b);
  const planeOffsetMm = heights[Math.floor((1 - dryRatio) * (heights.length - 1))] + 0.01;
  const away = -1.5;
  const cbMm: Point3 = [cgMm[0] - away * up[0], cgMm[1] - away * up[1], cgMm[2] - away * up[2]];
  return {
    stable: true,
    neutral: false,
    upInBody: up,
    planeOffsetMm,
    displacedG: 31.4,
    displacedMm3: 31400,
    cbMm,
    trimDeg,
    heelDeg,
    gmAcrossMm: 2.4,
    gmAlongMm: 48.2,
    freeboardNoseMm: -planeOffsetMm,
    freeboardTailMm: high([shape.lengthMm, 0, 0]) - planeOffsetMm,
    freeboardMm: heights[heights.length - 1] - planeOffsetMm,
    dryRatio,
    cgAboveCbMm: away,
  };
}

/** A lever of slope GM (per radian) at rest and a part that runs twice round. */
export const sampleRighting = (gmMm: number, twiceMm: number) =>
  Array.from({ length: 73 }, (_, i) => {
    const heelDeg = -180 + 5 * i;
    const [, once] = cosSinDeg(heelDeg);
    const [, twice] = cosSinDeg(2 * heelDeg);
    return { heelDeg, leverMm: (gmMm - 2 * twiceMm) * once + twiceMm * twice };
  });

export const ITEMS = [
  { name: 'timber', massG: 17.42 },
  { name: 'plug 1', massG: 6.31 },
  { name: 'belly treble', massG: 2.1 },
  { name: 'tail treble', massG: 2.1 },
  { name: 'lip', massG: 1.35 },
  { name: 'epoxy', massG: 1.18 },
  { name: 'screw eyes', massG: 0.52 },
  { name: 'split rings', massG: 0.28 },
  { name: 'sealer', massG: 0.14 },
];

export const STAGES = [
  { name: 'sawn blank', massG: 33.1, spreadG: 3.3 },
  { name: 'drilled', massG: 32.7, spreadG: 3.3 },
  { name: 'poured', massG: 41.2, spreadG: 3.4 },
  { name: 'rounded over', massG: 36.9, spreadG: 2.7 },
  { name: 'shaped', massG: 23.73, spreadG: 1.7 },
  { name: 'sealed', massG: 23.87, spreadG: 1.7 },
  { name: 'epoxy coat 1', massG: 24.46, spreadG: 1.75 },
  { name: 'epoxy coat 2', massG: 25.05, spreadG: 1.8 },
  { name: 'rigged', massG: 31.4, spreadG: 1.85 },
];

export function sampleFloat(
  lure: DrawnLure = sampleLure(sampleShape()),
  attitude: Attitude = sampleAttitude(lure, { trimDeg: -12.4, heelDeg: 0, dryRatio: 0.14 }),
  more: Partial<FloatInput> = {},
): FloatInput {
  return {
    name: 'alder',
    version: '1.2',
    verdict: 'floats',
    waterDensityKgM3: 999.1,
    lure,
    attitude,
    others: [],
    righting: sampleRighting(attitude.gmAcrossMm, 0.7),
    speed: { kind: 'rises', cmS: 14, lowCmS: 11, highCmS: 19, trimDeg: null },
    items: ITEMS,
    stages: STAGES,
    ...more,
  };
}

export function sampleChoice(
  lure: DrawnLure,
  trimDeg: number,
  verdict: Verdict = 'floats',
): Choice {
  return {
    lure,
    verdict,
    massG: 31.4,
    spreadG: 1.8,
    speed:
      verdict === 'floats'
        ? null
        : { kind: 'sinks', cmS: 12, lowCmS: 9, highCmS: 16, trimDeg: 2 * trimDeg },
    attitude: sampleAttitude(lure, {
      trimDeg,
      heelDeg: 0,
      dryRatio: verdict === 'floats' ? 0.15 : 0,
    }),
    drilling: lure.holes.map(({ placeMm, diameterMm }) => ({
      stationMm: placeMm,
      diameterMm,
      depthMm: 14.2,
      tipDepthMm: 16.6,
      metal: 'lead',
    })),
    sensitivity: [
      {
        per: '1 mm further aft',
        massG: 0.62,
        trimDeg: 0.84,
        freeboardNoseMm: 0.02,
        freeboardTailMm: -0.31,
      },
      {
        per: '1 mm deeper',
        massG: 0.62,
        trimDeg: -0.41,
        freeboardNoseMm: -0.33,
        freeboardTailMm: -0.31,
      },
      {
        per: '10 kg/m³ heavier',
        massG: 0.62,
        trimDeg: 0.12,
        freeboardNoseMm: -0.21,
        freeboardTailMm: -0.31,
      },
    ],
  };
}

export function sampleChoices(count: number): ChoicesInput {
  const shape = sampleShape();
  return {
    name: 'alder',
    version: '1.2',
    wish: 'floats, 15 % above water, nose down 10 to 14°',
    unmet: null,
    choices: Array.from({ length: count }, (_, i) =>
      sampleChoice(sampleLure(shape, { holes: 1 + (i % 2) }), -10 - i),
    ),
  };
}
