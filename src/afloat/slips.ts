/** What a slip at the bench, another board or other water changes of a lure at rest. */
import {
  type HoleSensitivity,
  holeSensitivity,
  type TimberSensitivity,
  timberSensitivity,
} from '../ballast/sensitivities.js';
import { type Sensitivity, sensitivity } from '../ballast/sensitivity.js';
import type { Workpiece } from '../ballast/workpiece.js';
import type { Blank } from '../blank/blank.js';
import type { Attitude } from '../float/attitude.js';
import type { Immersible } from '../float/immersible.js';
import { type Load, restNear } from '../float/rest.js';
import { angleBetween } from '../float/tilt.js';
import { waterDensityKgM3 } from '../float/water.js';
import type { WaterFile } from '../pattern/water-schema.js';

export type Slips = {
  /** One entry a hole. */
  readonly perHole: readonly HoleSensitivity[];
  readonly perTimber: TimberSensitivity;
  /** Per °C warmer. */
  readonly perC: Sensitivity;
  /** The whole change from fresh to sea water of 35 at the temperature it is for, solved in both; null where it has no like attitude there. */
  readonly freshToSalt: Sensitivity | null;
};

/** A rest and what makes it. */
type At = { readonly attitude: Attitude; readonly load: Load };

const SEA_PSU = 35; // the open sea

export function slipsOf(
  piece: Workpiece,
  { holes }: Blank,
  at: At,
  { temperatureC: t, salinityPsu: s }: WaterFile,
): Slips {
  const { load } = at;
  const inWater = (kgM3: number) => ({
    massG: load.massG,
    cgMm: load.cgMm,
    waterDensityKgM3: kgM3,
  });
  const rate = (before: number, after: number, step: number) =>
    sensitivity(
      { solid: piece.afloat.solid, ...at },
      { before: inWater(before), after: inWater(after), step },
    );
  // The equation ends at 0 and 40 °C: a step of one degree that stays inside.
  const low = Math.min(39, Math.max(0, t - 0.5));
  return {
    perHole: holes.map((_, i) => holeSensitivity(piece, holes, i, at)),
    perTimber: timberSensitivity(piece, holes, at),
    perC: rate(waterDensityKgM3(low, s), waterDensityKgM3(low + 1, s), 1),
    freshToSalt: waterChange(piece.afloat.solid, at, [
      waterDensityKgM3(t, 0),
      waterDensityKgM3(t, SEA_PSU),
    ]),
  };
}

/** Farther than this an attitude in other water is another attitude, degrees. */
const SAME_DEG = 30;

function waterChange(
  solid: Immersible,
  { attitude, load }: At,
  densities: readonly [number, number],
): Sensitivity | null {
  const [a, b] = densities.map((waterDensityKgM3) => {
    const rest = restNear(solid, { ...load, waterDensityKgM3 }, attitude.upInBody);
    const far = rest && angleBetween(rest.upInBody, attitude.upInBody) * (180 / Math.PI);
    return far !== null && far < SAME_DEG ? rest : null;
  });
  // A height over the water has a change only where there is one in both.
  return a && b && a.dryRatio > 0 === b.dryRatio > 0
    ? {
        massG: 0,
        trimDeg: b.trimDeg - a.trimDeg,
        freeboardNoseMm: b.freeboardNoseMm - a.freeboardNoseMm,
        freeboardTailMm: b.freeboardTailMm - a.freeboardTailMm,
        freeboardMm: b.freeboardMm - a.freeboardMm,
      }
    : null;
}
