/** What a small change does to a lure at rest: a shop question answered by the exact response of the attitude. */
import type { Attitude } from '../float/attitude.js';
import { crownTop } from '../float/immerse.js';
import type { Immersible } from '../float/immersible.js';
import { responseTo } from '../float/response.js';
import type { Load } from '../float/rest.js';
import type { Point3 } from '../geometry/vec.js';
import { dot3, sub3 } from '../geometry/vec3.js';

/** Rates per unit of whatever is changed. */
export type Sensitivity = {
  readonly massG: number;
  /** Null for a lure on end, where trim has no rate. */
  readonly trimDeg: number | null;
  readonly freeboardNoseMm: number;
  readonly freeboardTailMm: number;
  /** Of the highest point of the lure. */
  readonly freeboardMm: number;
};

/** Mass, center of gravity and water: what of a lure the water feels. */
export type Weighed = Pick<Load, 'massG' | 'cgMm'> & { readonly waterDensityKgM3?: number };

/**
 * Rates of a rest attitude per unit of a change, from the load a small step before and after it by
 * central difference; `step` is the whole way between the two, in that unit. Mass and moments are
 * linear or quadratic in stations, depths and densities: with steps of a tenth of a mm or a few kg/m³
 * the rates of the load are right to about 1e-4 of themselves. The answer of the attitude is exact.
 *
 * A lure that is meant under water is asked with a load of at least its full displacement.
 */
export function sensitivity(
  {
    solid,
    load,
    attitude,
  }: { readonly solid: Immersible; readonly load: Load; readonly attitude: Attitude },
  {
    before,
    after,
    step,
  }: { readonly before: Weighed; readonly after: Weighed; readonly step: number },
): Sensitivity {
  const density = (w: Weighed) => w.waterDensityKgM3 ?? load.waterDensityKgM3;
  const massG = (after.massG - before.massG) / step;
  const [x, y, z] = sub3(after.cgMm, before.cgMm);
  const cgMm: Point3 = [x / step, y / step, z / step];
  const rates = responseTo(solid, load, attitude, {
    massG,
    cgMm,
    waterDensityKgM3: (density(after) - density(before)) / step,
  });
  const highest = crownTop(solid, attitude.upInBody).at;
  return {
    massG,
    trimDeg: rates.trimDeg,
    freeboardNoseMm: rates.freeboardNoseMm,
    freeboardTailMm: rates.freeboardTailMm,
    freeboardMm: dot3(highest, rates.up) - rates.planeOffsetMm,
  };
}
