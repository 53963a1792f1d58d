/** How a lure moves that is let go under water: at which attitude, and so how fast. */
import type { Point3 } from '../geometry/vec.js';
import { anglesOf, isOnEnd } from './rest.js';
import { type DragForm, dragByTrim, freeSpeed, type Speed } from './speed.js';
import { waterG } from './water.js';

/** The lure's outside and the water it is in. */
export type Outside = {
  readonly drag: DragForm;
  /** All that keeps water out. */
  readonly solid: { readonly volumeMm3: number };
  readonly waterDensityKgM3: number;
};

/** A lure held under water, before it moves. */
export type Hanging = {
  readonly massG: number;
  /** Unit vector to the sky as it hangs, from its center of gravity to that of buoyancy. */
  readonly upInBody: Point3;
  /** Between the two centers; 0 for a lure that hangs at any attitude. */
  readonly cbAboveCgMm: number;
};

export type LetGo = Speed & {
  /** Of the long axis under way; positive nose up. */
  readonly trimDeg: number;
};

/** The moments are known to about this factor: it is asked whether one outweighs the other all the same. Our own figure, no source. */
const OUTWEIGHS = 3;
/** Between level and the attitude at which it hangs: 1° at most, in which no moment turns and turns back. */
const STEPS = 90;
const HALVINGS = 50; // to the last bit of an angle

/**
 * Final speed of a lure let go under water, and its attitude meanwhile.
 *
 * Weight turns it back to how it hangs, by W·BG·sin(θ_h − θ) for a long axis inclined by θ from level
 * that hangs at θ_h. The stream turns it level, broadside to its way up or down, by Munk's moment
 * ½ρU²V(k₂ − k₁)·sin 2θ (M. M. Munk, NACA report 184, 1924, from memory; k₁, k₂ those of the
 * prolate spheroid of like length and volume, see `addedMass`). It moves where the two are in balance
 * at the speed that its drag there allows; ρ and g cancel. Where several attitudes are stable, at most
 * for a lure with a lip that hangs nearly on end, it takes the one nearest to broadside.
 *
 * The range holds the spread of the drag coefficients and of the attitude: besides the balance,
 * broadside counts unless weight outweighs the stream threefold, and hanging unless the stream
 * outweighs weight threefold, both halfway between, where the greater one tells to which end the
 * balance is nearer.
 *
 * Taken for granted: still water, a steady way, heel as it hangs, and drag that acts at the center of
 * buoyancy. A lip stands ahead of it: in truth it lifts the nose of a lure that sinks and lowers that of
 * one that rises, by 15 to 20° on lures of 10 cm with a lip of 5 cm². Bodies that swing from side to
 * side as they go, and Reynolds numbers below 1000, are outside of it (see `freeSpeed`).
 */
export function letGo(
  { drag, solid: { volumeMm3 }, waterDensityKgM3 }: Outside,
  { massG, upInBody, cbAboveCgMm }: Hanging,
): LetGo {
  const netG = massG - waterG(volumeMm3, waterDensityKgM3);
  const area = dragByTrim(drag, isOnEnd(upInBody) ? [0, 0, 1] : upInBody);
  const hangs = (anglesOf(upInBody).trimDeg * Math.PI) / 180;
  const { along, across } = addedMass(slendernessOf(drag.lengthMm, volumeMm3));
  /** Both in g·mm, toward hanging and toward level, at a share of the way from level to hanging. */
  const weight = (share: number) => massG * cbAboveCgMm * Math.sin(Math.abs(hangs) * (1 - share));
  const stream = (share: number) =>
    ((Math.abs(netG) * volumeMm3) / area(share * hangs).middleMm2) *
    (across - along) *
    Math.sin(2 * Math.abs(hangs) * share);
  const balances = stableShares((share) => weight(share) - stream(share));
  const [byWeight, byStream] = [weight(0.5), stream(0.5)];
  const bounds = [
    ...balances,
    ...(byWeight < OUTWEIGHS * byStream ? [0] : []),
    ...(byStream < OUTWEIGHS * byWeight ? [1] : []),
  ].map((share) => freeSpeed(netG, waterDensityKgM3, area(share * hangs)));
  const trim = balances[0] * hangs;
  return {
    ...bounds[0],
    lowCmS: Math.min(...bounds.map((s) => s.lowCmS)),
    highCmS: Math.max(...bounds.map((s) => s.highCmS)),
    trimDeg: (trim * 180) / Math.PI,
  };
}

/**
 * Where a moment toward hanging turns into one toward level, from level on; at least one. It is never
 * toward level at 0 nor toward hanging at 1.
 */
function stableShares(towardHanging: (share: number) => number): number[] {
  if (towardHanging(0) <= 0) return [0];
  const shares: number[] = [];
  for (let step = 1; step <= STEPS; step++) {
    let [from, to] = [(step - 1) / STEPS, step / STEPS];
    if (towardHanging(from) <= 0 || (step < STEPS && towardHanging(to) > 0)) continue;
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (from + to) / 2;
      if (towardHanging(middle) > 0) from = middle;
      else to = middle;
    }
    shares.push(to);
  }
  return shares;
}

/** Length over diameter of the spheroid of that length and volume; at least 1. */
function slendernessOf(lengthMm: number, volumeMm3: number): number {
  const diameterMm = Math.sqrt((6 * volumeMm3) / (Math.PI * lengthMm));
  return Math.max(1, lengthMm / diameterMm);
}

const NEARLY_ROUND = 1e-4; // the closed form loses its digits nearer to the sphere, which is this near to it

/**
 * Water that a prolate spheroid takes along, in shares of what it displaces: along its axis k₁, across
 * it k₂ (H. Lamb, Hydrodynamics, §§ 114–115, from memory). ½ and ½ for a sphere, 0 and 1 for a needle.
 *
 * @param slenderness length over diameter, at least 1
 */
export function addedMass(slenderness: number): {
  readonly along: number;
  readonly across: number;
} {
  if (slenderness < 1 + NEARLY_ROUND) return { along: 0.5, across: 0.5 };
  const e = Math.sqrt(1 - slenderness ** -2);
  const alpha = (2 * (1 - e * e) * (Math.atanh(e) - e)) / e ** 3;
  const beta = 1 - alpha / 2; // α + 2β = 2 for every spheroid
  return { along: alpha / (2 - alpha), across: beta / (2 - beta) };
}
