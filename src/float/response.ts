/** What a small change of the load does to a lure at rest. */
import type { Point3 } from '../geometry/vec.js';
import { along3, dot3, sub3 } from '../geometry/vec3.js';
import { Fault } from '../problem.js';
import type { Attitude } from './attitude.js';
import { highestCorner, immerse } from './immerse.js';
import type { Immersible } from './immersible.js';
import { displacedMm3, isOnEnd, isUnder, type Load } from './rest.js';
import { spread3 } from './tilt.js';

/** A direction in which the load changes: so much of each per unit of whatever is turned. */
export type LoadChange = {
  readonly massG: number;
  readonly cgMm: Point3;
  readonly waterDensityKgM3: number;
};

/** Rates of a rest attitude per unit of the change. */
export type Response = {
  readonly up: Point3;
  readonly planeOffsetMm: number;
  /** Null for a lure on end (long axis within 0.1° of the vertical), where neither angle has a rate. */
  readonly trimDeg: number | null;
  readonly heelDeg: number | null;
  readonly freeboardNoseMm: number;
  readonly freeboardTailMm: number;
};

/**
 * Exact first-order response of a rest attitude (stable or not) to a change of the load.
 *
 * With F the center and A the area of the waterplane, I its second moments about F and V the
 * displaced volume: V = m/ρ gives δV; δV = A (δd − F · δup) and δ(VB) = F δV − I δup follow the
 * surface; and G − B = e up, kept to first order, gives K δup = (F − B) δV/V − δG along the surface,
 * with K = I/V − e 1. A lure that is wholly under has no waterplane: it only turns with its weight,
 * its surface staying on its highest corner.
 *
 * @throws Fault where the rest is quite neutral, so that no tilt answers; near neutral the rates are large
 */
export function responseTo(
  solid: Immersible,
  load: Load,
  { upInBody: up, planeOffsetMm, cgAboveCbMm }: Attitude,
  change: LoadChange,
): Response {
  const under = isUnder(solid, load);
  const volume = displacedMm3(load);
  const cut = immerse(solid, up, planeOffsetMm);
  const grown = under
    ? 0
    : volume * (change.massG / load.massG - change.waterDensityKgM3 / load.waterDensityKgM3);
  const pivot = under ? highestCorner(solid, up).at : cut.centroidMm;
  const pull = under
    ? change.cgMm
    : along3(change.cgMm, -grown / volume, sub3(cut.centroidMm, cut.cbMm));
  const [u, v] = cut.tangents;
  const i = under ? { uu: 0, uv: 0, vv: 0 } : cut.secondMm4;
  const k = { uu: i.uu / volume - cgAboveCbMm, uv: i.uv / volume, vv: i.vv / volume - cgAboveCbMm };
  const determinant = k.uu * k.vv - k.uv * k.uv;
  const [a, b] = [-dot3(u, pull), -dot3(v, pull)];
  const turn = spread3(cut.tangents, [
    (k.vv * a - k.uv * b) / determinant,
    (k.uu * b - k.uv * a) / determinant,
  ]);
  if (!turn.every(Number.isFinite)) throw new Fault(`neutral attitude, up ${up.join(', ')}`);
  const offset = dot3(pivot, turn) + (under ? 0 : grown / cut.areaMm2);
  return {
    up: turn,
    planeOffsetMm: offset,
    ...angleRates(up, turn),
    freeboardNoseMm: 0 - offset,
    freeboardTailMm: load.lengthMm * turn[0] - offset,
  };
}

const DEG = 180 / Math.PI;

/** Of sin(trim) = −x and tan(heel) = −y/z. */
function angleRates(up: Point3, turn: Point3): Pick<Response, 'trimDeg' | 'heelDeg'> {
  if (isOnEnd(up)) return { trimDeg: null, heelDeg: null };
  const square = up[1] * up[1] + up[2] * up[2];
  return {
    trimDeg: (-turn[0] / Math.sqrt(square)) * DEG + 0,
    heelDeg: ((up[1] * turn[2] - up[2] * turn[1]) / square) * DEG + 0,
  };
}
