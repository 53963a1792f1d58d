/** Blanks with lure-like outlines for the jig tests: drawn here in closed form, not by the body stage. */
import { asRegion, offset } from '../../src/geometry/clip.js';
import { type Ring, ring } from '../../src/geometry/ring.js';
import { cosSinDeg, type Point2 } from '../../src/geometry/vec.js';
import type { JigBlank } from '../../src/jig/jig.js';
import { columnAt } from '../../src/jig/outline.js';

export type LureSpec = {
  readonly lengthMm: number;
  /** Greatest offsets of back and belly as a share of the length. */
  readonly backRatio: number;
  readonly bellyRatio: number;
  readonly thicknessMm: number;
  readonly lipAngleDeg: number;
  readonly holeStations: readonly number[];
  readonly allowanceMm?: number;
};

const POINTS = 70; // a side

/** ξ^½ (1−ξ)^¾, greatest value 1: a round nose and a fine tail. */
const fullness = (xi: number): number => {
  const top = 0.4; // where the derivative vanishes: ½(1−ξ) = ¾ξ
  return Math.sqrt(xi / top) * ((1 - xi) / (1 - top)) ** 0.75;
};

export function lureProfile(spec: LureSpec): Ring {
  const { lengthMm, backRatio, bellyRatio, allowanceMm = 1.5 } = spec;
  const at = (k: number) => (1 - Math.cos((Math.PI * k) / POINTS)) / 2;
  const side = (ratio: number): Point2[] =>
    Array.from({ length: POINTS - 1 }, (_, k): Point2 => {
      const xi = at(k + 1);
      return [xi * lengthMm, ratio * lengthMm * fullness(xi)];
    });
  const finished = ring([
    [0, 0],
    ...side(-bellyRatio),
    [lengthMm, 0],
    ...side(backRatio).reverse(),
  ]);
  return offset([asRegion(finished)], allowanceMm, 0.02)[0].outer;
}

export function lureBlank(spec: LureSpec): JigBlank {
  const profileRing = lureProfile(spec);
  const { lengthMm, bellyRatio, thicknessMm, lipAngleDeg } = spec;
  const station = 0.08 * lengthMm + 2;
  const mouth: Point2 = [station, -bellyRatio * lengthMm * fullness(station / lengthMm)];
  const [cos, sin] = cosSinDeg(lipAngleDeg);
  const depthMm = Math.min(12, 0.12 * lengthMm);
  const belly = (x: number) => columnAt(profileRing, x)?.low ?? Number.NaN;
  return {
    name: `lure-${lengthMm}`,
    version: '1.2',
    thicknessMm,
    profileRing,
    slot: {
      angleDeg: lipAngleDeg,
      mouth,
      end: [mouth[0] + cos * depthMm, mouth[1] + sin * depthMm],
      outward: [0 - cos, 0 - sin],
      widthMm: 2,
      depthMm,
    },
    holes: spec.holeStations.map((stationMm, i) => ({
      stationMm,
      tiltDeg: 0,
      diameterMm: i === 0 ? 8 : 6,
      depthMm: 14 - 2 * i,
      metal: 'lead',
      pointAngleDeg: 118,
      pour: 'topped-up',
      fillMm: null,
      weight: null,
      bellyMm: belly(stationMm),
    })),
  };
}

export const LIP_ANGLES = [0, 15, 30, 45, 60, 75, 90] as const;

/** Small to large, slender to deep, thin to thick, one hole and two; each lip angle with each body. */
export const BODIES: readonly Omit<LureSpec, 'lipAngleDeg'>[] = [
  { lengthMm: 60, backRatio: 0.12, bellyRatio: 0.12, thicknessMm: 15, holeStations: [24] },
  { lengthMm: 90, backRatio: 0.1, bellyRatio: 0.16, thicknessMm: 20, holeStations: [35] },
  { lengthMm: 120, backRatio: 0.08, bellyRatio: 0.1, thicknessMm: 20, holeStations: [35, 70] },
  { lengthMm: 130, backRatio: 0.18, bellyRatio: 0.12, thicknessMm: 30, holeStations: [35, 60] },
  { lengthMm: 180, backRatio: 0.09, bellyRatio: 0.13, thicknessMm: 25, holeStations: [50, 100] },
];
