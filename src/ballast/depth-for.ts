/** Another board is heavier or lighter: how deep to drill in it so that the lure weighs what was planned. */
import { DEPTH_STEP_MM, roundedTo } from './drill.js';
import { type Refusal, woodRefusal } from './refuse.js';
import { type Hole, type Workpiece, withHoles } from './workpiece.js';

export type DepthFor =
  | {
      readonly kind: 'depths';
      /** The same for every hole that is poured full; positive deeper. */
      readonly changeMm: number;
      /** The holes with their new depths, rounded to what can be set. */
      readonly holes: readonly Hole[];
      /** What the lure then weighs. */
      readonly massG: number;
    }
  /** The wood does not allow it: a board too light (through the back) or too heavy (no metal left). */
  | { readonly kind: 'refused'; readonly changeMm: number; readonly refusal: Refusal }
  /** No hole is poured full, or its metal is no heavier than the wood: no depth changes the weight. */
  | { readonly kind: 'nothing-to-change' };

const MOST_STEPS = 20; // one is enough where all floors lie clear of the belly
const TOLERANCE_G = 1e-9;
const CLOSE_G = 0.05; // less than a scale shows
const LARGEST_CHANGE_MM = 1000; // no body is so deep

/**
 * Weight only: CG moves a little with the board and the depths; `restAttitudes` tells what that does.
 *
 * @param piece the lure of this very board
 * @param holes as planned for another
 * @param massG what the rigged lure was planned to weigh
 */
export function depthFor(piece: Workpiece, holes: readonly Hole[], massG: number): DepthFor {
  const poured = holes.map(({ weight, fillMm }) => weight === null && fillMm === null);
  if (!poured.includes(true)) return { kind: 'nothing-to-change' };
  const changed = (byMm: number, step?: number) =>
    holes.map((hole, i) => {
      if (!poured[i]) return hole;
      const depthMm = hole.depthMm + byMm;
      return { ...hole, depthMm: step === undefined ? depthMm : roundedTo(step, depthMm) };
    });
  const missing = (byMm: number) => massG - withHoles(piece, changed(byMm)).massG;
  const changeMm = rootOf(missing);
  const set = changed(changeMm, DEPTH_STEP_MM);
  const refusal = woodRefusal(piece, set);
  if (refusal) return { kind: 'refused', changeMm, refusal };
  if (Math.abs(missing(changeMm)) > CLOSE_G) return { kind: 'nothing-to-change' };
  return { kind: 'depths', changeMm, holes: set, massG: withHoles(piece, set).massG };
}

/** Secant method; a hole that is sanded away, or through the back, no longer answers, and the last step stands. */
function rootOf(missing: (byMm: number) => number): number {
  let [before, at] = [0, 1];
  let [missingBefore, missingAt] = [missing(before), missing(at)];
  for (let i = 0; i < MOST_STEPS && Math.abs(missingAt) > TOLERANCE_G; i++) {
    const rate = (missingAt - missingBefore) / (at - before);
    const next = at - missingAt / rate;
    if (!(Math.abs(next) < LARGEST_CHANGE_MM)) break;
    [before, missingBefore] = [at, missingAt];
    [at, missingAt] = [next, missing(next)];
  }
  return at;
}
