/**
 * What is in a ballast hole once the belly is shaped: metal, glue, and the wood that is gone.
 *
 * Heights run along the axis, in the side view turned by the hole's tilt, where it stands upright
 * (`uprightMouth`): without a tilt they are heights over the datum line. Moments are those of the lure.
 */
import { type BallastHole, pointBeyondMm } from '../blank/blank.js';
import { uprightMouth } from '../blank/hole.js';
import type { Ballast } from '../pattern/pattern.js';
import type { Materials, Metal } from '../tables/materials.js';
import { type BellyOver, clipped, fineColumns, highestBellyMm, isWhole, upTo } from './belly.js';
import {
  gPerMm3,
  type Moments,
  movedTo,
  NOTHING,
  summed,
  turnedBy,
  uprightCylinder,
} from './moments.js';
import { rowOf } from './row.js';

export type Plug = {
  /** Wood of the finished body that the hole takes away, per mm³. */
  readonly bored: Moments;
  /** The metal, in g. */
  readonly metal: Moments;
  /** Volume of the metal. */
  readonly metalMm3: number;
  /** The glue over and beside it, per mm³; nothing in a hole that is filled with metal. */
  readonly glue: Moments;
  /** Height of the metal on the axis, from the full-diameter floor toward the belly. */
  readonly plugMm: number;
  /** Wood between the lowest metal and the finished belly at the worst place; negative: it sticks out. 0 when filled to the belly. */
  readonly coverMm: number;
  /** Grams the metal changes with a mm of drilled depth. */
  readonly gPerMm: number;
};

/** The cone a bit's point leaves over the full-diameter floor of an upright hole, per mm³. */
export function pointCone(
  hole: Pick<Ballast, 'stationMm' | 'diameterMm' | 'pointAngleDeg'>,
  floorMm: number,
): Moments {
  const [r, height] = [hole.diameterMm / 2, pointBeyondMm(hole)];
  const base = Math.PI * r * r;
  const across = (base * r * r * height) / 20;
  const own = {
    ...NOTHING,
    amount: (base * height) / 3,
    z: (base * height ** 2) / 12,
    xx: across,
    yy: across,
    zz: (base * height ** 3) / 30,
  };
  return movedTo([hole.stationMm, floorMm], own);
}

/** Height of the hole's full-diameter floor along its axis. */
export const floorOf = (
  hole: Pick<BallastHole, 'stationMm' | 'tiltDeg' | 'bellyMm' | 'depthMm'>,
): number => uprightMouth(hole)[1] + hole.depthMm;

/** Belly that shaping takes off on the axis of the hole. */
export const bellyTakenMm = (
  belly: BellyOver,
  hole: Pick<BallastHole, 'stationMm' | 'tiltDeg' | 'bellyMm'>,
): number => belly.axisMm - uprightMouth(hole)[1];

/**
 * Density of the metal in the finished plug. A hole filled once holds the weight that went in liquid;
 * a metal that grows as it sets stands out of the hole, and what stands out is filed off. Ready-made
 * pieces, and holes topped up, are solid.
 */
export function setDensityKgM3(metal: Metal, pour: Ballast['pour']): number {
  const { densityKgM3, liquidKgM3 } = metal;
  return pour === 'single' && liquidKgM3 !== null ? Math.min(liquidKgM3, densityKgM3) : densityKgM3;
}

/**
 * The hole's contents on the real belly. Metal that reaches beyond the finished belly is sanded off;
 * `coverMm` tells. A ready-made weight stands on the full-diameter floor and is whole, come what may.
 */
export function plugOf(belly: BellyOver, hole: BallastHole, materials: Materials): Plug {
  const plug = uprightPlug(belly, hole, materials);
  const asDrilled = (m: Moments) => turnedBy(-hole.tiltDeg, m);
  return {
    ...plug,
    bored: asDrilled(plug.bored),
    metal: asDrilled(plug.metal),
    glue: asDrilled(plug.glue),
  };
}

function uprightPlug(belly: BellyOver, hole: BallastHole, materials: Materials): Plug {
  const floorMm = floorOf(hole);
  const cone = pointCone({ ...hole, stationMm: belly.placeMm }, floorMm);
  const open = upTo(belly, floorMm);
  const bored = summed([
    [1, open],
    [1, cone],
  ]);
  if (hole.weight !== null) return withWeight(belly, hole, { bored, floorMm, materials });
  const metal = rowOf(materials.metals, hole.metal);
  const density = gPerMm3(setDensityKgM3(metal, hole.pour));
  const onAxisMm = Math.max(0, floorMm - belly.axisMm);
  const gPerMm = density * belly.disk.one;
  if (hole.fillMm === null) {
    return {
      bored,
      metal: summed([[density, bored]]),
      metalMm3: bored.amount,
      glue: NOTHING,
      plugMm: onAxisMm,
      coverMm: 0,
      gPerMm,
    };
  }
  const glue = upTo(belly, floorMm - hole.fillMm);
  const filled = summed([
    [1, bored],
    [-1, glue],
  ]);
  return {
    bored,
    metal: summed([[density, filled]]),
    metalMm3: filled.amount,
    glue,
    plugMm: Math.min(hole.fillMm, onAxisMm),
    coverMm: floorMm - hole.fillMm - belly.highestMm,
    gPerMm,
  };
}

function withWeight(
  belly: BellyOver,
  hole: BallastHole,
  {
    bored,
    floorMm,
    materials,
  }: { readonly bored: Moments; readonly floorMm: number; readonly materials: Materials },
): Plug {
  const { massG, diameterMm, lengthMm } = rowOf(materials.weights, hole.weight ?? '');
  const lowMm = floorMm - lengthMm;
  const slug = uprightCylinder(diameterMm, {
    stationMm: belly.placeMm,
    lowMm,
    highMm: floorMm,
  });
  return {
    bored,
    metal: summed([[massG / slug.amount, slug]]),
    metalMm3: slug.amount,
    glue: summed([
      [1, bored],
      [-1, slug],
    ]),
    plugMm: lengthMm,
    coverMm: lowMm - highestBellyMm(belly.shape, belly.placeMm, diameterMm, hole.tiltDeg),
    gPerMm: 0,
  };
}

/**
 * Depth to drill in the sawn blank, full diameter, so that metal filled to the belly keeps a wanted
 * volume once the belly is shaped; null when the body is not deep enough for it there. Exact where
 * the floor lies clear over the belly, else by halving to 1e-9 mm.
 */
export function drilledForMm(
  belly: BellyOver,
  hole: Pick<BallastHole, 'stationMm' | 'tiltDeg' | 'diameterMm' | 'pointAngleDeg' | 'bellyMm'>,
  wantedMm3: number,
): number | null {
  const [, mouth] = uprightMouth(hole);
  const open = wantedMm3 - pointCone(hole, 0).amount;
  const straight = (open + belly.height.one) / belly.disk.one;
  if (isWhole(belly, straight)) return straight - mouth;
  if (straight > belly.shoulderMm || open < 0) return null;
  const columns = fineColumns(belly);
  let [low, high] = [Math.min(belly.axisMm, mouth), belly.highestMm];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (clipped(columns, middle).amount < open) low = middle;
    else high = middle;
  }
  return high - mouth;
}

/** As `drilledForMm`, for a wanted mass of a metal. */
export const drilledForMassMm = (
  belly: BellyOver,
  hole: Parameters<typeof drilledForMm>[1] & Pick<BallastHole, 'pour'>,
  { massG, metal }: { readonly massG: number; readonly metal: Metal },
): number | null => drilledForMm(belly, hole, massG / gPerMm3(setDensityKgM3(metal, hole.pour)));
