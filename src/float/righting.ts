/** What rights a lure that is heeled away from rest. */
import type { Point3 } from '../geometry/vec.js';
import { along3, cross3, dot3, sub3 } from '../geometry/vec3.js';
import { Fault } from '../problem.js';
import type { Attitude } from './attitude.js';
import { heave } from './heave.js';
import type { Immersible } from './immersible.js';
import { displacedMm3, heelAxis, isUnder, type Load } from './rest.js';

export type RightingPoint = {
  /** Turn from rest about the long axis laid into the surface; positive port down. −180 and 180 are the same. */
  readonly heelDeg: number;
  /**
   * Horizontal distance between the lines of weight and buoyancy, positive when it turns the lure
   * toward port up: so it rights a positive heel when positive and a negative one when negative.
   */
  readonly leverMm: number;
};

const NONE: Point3 = [0, 0, 0];

/** Curves are drawn through points this far apart. */
const STEP_DEG = 5;

/**
 * The righting lever over the full turn, from −180° to 180°: the lure turns about a fixed axis,
 * `heelAxis` at rest, its trim is held, and it finds its depth at every angle. The lever is the slope
 * of the energy over the angle, so its integral over the turn is zero.
 *
 * @throws Fault unless the step divides the turn
 */
export function rightingCurve(
  solid: Immersible,
  load: Load,
  { upInBody }: Pick<Attitude, 'upInBody'>,
  stepDeg = STEP_DEG,
): RightingPoint[] {
  const steps = 360 / stepDeg;
  if (!(Number.isInteger(steps) && steps > 0)) throw new Fault(`righting curve by ${stepDeg}°`);
  const across = cross3(heelAxis(upInBody), upInBody);
  const under = isUnder(solid, load);
  const volumeMm3 = displacedMm3(load);
  return Array.from({ length: steps + 1 }, (_, i) => {
    const heelDeg = i * stepDeg - 180;
    const [c, s] = [Math.cos((heelDeg * Math.PI) / 180), Math.sin((heelDeg * Math.PI) / 180)];
    const way = (k: number, l: number): Point3 => along3(along3(NONE, k, upInBody), l, across);
    const cb = under ? solid.centroidMm : heave(solid, way(c, s), volumeMm3).immersion.cbMm;
    return { heelDeg, leverMm: dot3(way(-s, c), sub3(load.cgMm, cb)) };
  });
}
