/**
 * Which of two sets of holes is the better one, in points of trouble: one point is what a maker
 * would notice in the tub or at the bench. The weights are our own judgment, no source.
 */
import type { Attitude } from '../float/attitude.js';
import { dot3, sub3 } from '../geometry/vec3.js';
import { HOLE_DEPTH_SPREAD_MM } from '../mass/spread.js';
import type { Draft } from './draft.js';
import type { Missed, Wanted } from './miss.js';
import type { HoleSensitivity } from './sensitivities.js';
import type { Sensitivity } from './sensitivity.js';

export type Scored = {
  /** Less is better. */
  readonly points: number;
  readonly pointsOf: {
    /** 2° of trim, 1 mm of freeboard, 0.02 of dry share, a quarter of the speed, 0.5 % of the mass: one point each. */
    readonly miss: number;
    /** Where no trim was wished: one point for 10° off level. */
    readonly level: number;
    /** One point at a metacentric height of 1 mm, half at 2 mm, and so on; at most three. */
    readonly stability: number;
    /** What usual slips of depth and station do, in the units of `miss`. */
    readonly sensitivity: number;
    /** One point where only 2 mm of wood are left under the back, none from 5 mm on. */
    readonly wood: number;
    /** Half a point for a second hole. */
    readonly holes: number;
  };
};

/** What is one point. */
const POINT = { trimDeg: 2, freeboardMm: 1, dryRatio: 0.02, speedRatio: 0.25, netRatio: 0.005 };
const LEVEL_DEG = 10;
const [WOOD_FROM_MM, WOOD_RANGE_MM] = [5, 3];
const [GM_POINT_MM, GM_MOST] = [1, 3];
const SECOND_HOLE = 0.5;
const STATION_SLIP_MM = 0.5; // one standard deviation of a marked and drilled station: common practice, no source

/** The points that need no attitude. */
function plainPoints(gmMm: number, woodMm: number, holes: number) {
  return {
    stability: gmMm > 0 ? Math.min(GM_MOST, GM_POINT_MM / gmMm) : GM_MOST,
    wood: Math.max(0, (WOOD_FROM_MM - woodMm) / WOOD_RANGE_MM),
    holes: SECOND_HOLE * (holes - 1),
  };
}

/**
 * About what `scored` will say of a draft, from the wished state alone: decides what is looked at
 * first. A slip of depth adds metal at the hole, a slip of station moves all of it.
 */
export function quickPoints({ target, holes, mass, woodMm, addedG, gPerMm }: Draft): number {
  const over = dot3(target.up, sub3(mass.cgMm, target.cbMm));
  const {
    stability,
    wood,
    holes: more,
  } = plainPoints(target.bmAcrossMm - over, woodMm, holes.length);
  const degPerGMm = (180 / Math.PI / target.massG / (target.bmAlongMm - over)) * target.up[2];
  const slips = holes.flatMap(({ stationMm }, i) => [
    (degPerGMm * addedG[i] * STATION_SLIP_MM) / POINT.trimDeg,
    (degPerGMm * gPerMm[i] * (stationMm - target.flotationMm) * HOLE_DEPTH_SPREAD_MM) /
      POINT.trimDeg,
    // 1 g/cm³ is near enough to any water.
    ((gPerMm[i] * 1000) / target.areaMm2) * (HOLE_DEPTH_SPREAD_MM / POINT.freeboardMm),
  ]);
  return stability + wood + more + Math.hypot(...slips);
}

export const levelPoints = (trimDeg: number): number => Math.abs(trimDeg) / LEVEL_DEG;

export function scored({
  attitude,
  missed,
  perHole,
  woodMm,
  wanted,
  massG,
}: {
  readonly attitude: Attitude;
  readonly missed: Missed;
  readonly perHole: readonly HoleSensitivity[];
  readonly woodMm: number;
  readonly wanted: Wanted;
  readonly massG: number;
}): Scored {
  const { goal } = wanted;
  const part = (value: number | null, point: number) => Math.abs(value ?? 0) / point;
  const speed = goal.kind === 'drifts' ? goal.speed.cmS : 1;
  const pointsOf = {
    miss:
      part(missed.trimDeg, POINT.trimDeg) +
      part(missed.freeboardMm, POINT.freeboardMm) +
      part(missed.dryRatio, POINT.dryRatio) +
      part(missed.cmS, POINT.speedRatio * speed) +
      part(missed.netG, POINT.netRatio * massG),
    level: wanted.trimDeg === null ? levelPoints(attitude.trimDeg) : 0,
    sensitivity: Math.hypot(...perHole.flatMap(slips)),
    ...plainPoints(attitude.gmAcrossMm, woodMm, perHole.length),
  };
  const points = Object.values(pointsOf).reduce((sum, p) => sum + p, 0);
  return { points, pointsOf };
}

/** Trim and freeboard in points, for the slips of one hole. */
function slips({ perStationMm, perDepthMm }: HoleSensitivity): number[] {
  const of = ({ trimDeg, freeboardMm }: Sensitivity, slipMm: number) => [
    ((trimDeg ?? 0) * slipMm) / POINT.trimDeg,
    (freeboardMm * slipMm) / POINT.freeboardMm,
  ];
  return [...of(perStationMm, STATION_SLIP_MM), ...of(perDepthMm, HOLE_DEPTH_SPREAD_MM)];
}
