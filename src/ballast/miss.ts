/** How far a lure with a set of holes lies from the wish. */
import type { Attitude } from '../float/attitude.js';
import { type LetGo, letGo } from '../float/let-go.js';
import { waterG } from '../float/water.js';
import type { WishFile } from '../pattern/wish-schema.js';
import { type Afloat, type Goal, goalOf } from './wish.js';

export type Wanted = {
  readonly goal: Goal;
  /** Nose down negative; null when the wish leaves it open. */
  readonly trimDeg: number | null;
  readonly leastGmMm: number;
};

/** @throws Fault for a wish without its speed, which `wishProblems` tells of */
export const wantedOf = (wish: WishFile): Wanted => ({
  goal: goalOf(wish),
  trimDeg: wish.noseDownDeg === undefined ? null : 0 - wish.noseDownDeg,
  leastGmMm: wish.leastGmMm,
});

/** How far off a choice may be and still be called one. The ranking prefers nearer ones anyway. */
const NEAR = {
  trimDeg: 1.5,
  freeboardMm: 1,
  dryRatio: 0.02,
  /** Share of the speed wished. */
  speedRatio: 0.5,
  /** For suspends, share of the lure's mass. */
  netRatio: 0.005,
};

/** What is less what was wished; null where the wish says nothing. */
export type Missed = {
  readonly trimDeg: number | null;
  readonly freeboardMm: number | null;
  readonly dryRatio: number | null;
  readonly cmS: number | null;
  /** For suspends: the lure's mass less that of the water it displaces. */
  readonly netG: number | null;
};

export function missOf(
  afloat: Afloat,
  { goal, trimDeg }: Wanted,
  massG: number,
  attitude: Attitude,
): { missed: Missed; speed: LetGo | null } {
  const netG = massG - waterG(afloat.solid.volumeMm3, afloat.waterDensityKgM3);
  const nothing = { freeboardMm: null, dryRatio: null, cmS: null, netG: null };
  const base = { ...nothing, trimDeg: trimDeg === null ? null : attitude.trimDeg - trimDeg };
  switch (goal.kind) {
    case 'freeboard': {
      const freeboardMm = attitude.freeboardMm - goal.freeboardMm;
      return { missed: { ...base, freeboardMm }, speed: null };
    }
    case 'dry':
      return { missed: { ...base, dryRatio: attitude.dryRatio - goal.dryRatio }, speed: null };
    case 'suspends':
      return { missed: { ...base, netG }, speed: null };
    case 'drifts': {
      const { upInBody, cgAboveCbMm } = attitude;
      const speed = letGo(afloat, { massG, upInBody, cbAboveCgMm: 0 - cgAboveCbMm });
      const way = speed.kind === goal.speed.kind ? 1 : -1;
      return { missed: { ...base, cmS: way * speed.cmS - goal.speed.cmS }, speed };
    }
  }
}

/** The miss that is the largest share of what is allowed. */
export function farthest({ goal }: Wanted, missed: Missed, massG: number) {
  const cmS = goal.kind === 'drifts' ? goal.speed.cmS : 1;
  const most = {
    trimDeg: NEAR.trimDeg,
    freeboardMm: NEAR.freeboardMm,
    dryRatio: NEAR.dryRatio,
    cmS: NEAR.speedRatio * cmS,
    netG: NEAR.netRatio * massG,
  };
  return (Object.keys(most) as (keyof Missed)[])
    .map((key) => ({
      ratio: Math.abs(missed[key] ?? 0) / most[key],
      facts: { what: key, missed: missed[key] ?? 0, most: most[key] },
    }))
    .sort((a, b) => b.ratio - a.ratio)[0];
}
