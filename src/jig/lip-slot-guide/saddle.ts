/**
 * The saddle of a lip-slot guide in the side view, before any solid is made: how long and high the
 * guide is, where the saw runs, what the workpiece needs free, and how well it finds its angle.
 * Turned coordinates: Z along the slot into the body, X across it (aft, down). Jig coordinates: the
 * same, counted from the guide's corner at the nose end of its stop face.
 */

import { asRegion, intersect, subtract } from '../../geometry/clip.js';
import { insideRing, movedRing, type Ring, rectRing, ringBox } from '../../geometry/ring.js';
import { type Motion, moved, type Point2 } from '../../geometry/vec.js';
import { Fault } from '../../problem.js';
import { OVERSHOOT } from '../../solid/csg.js';
import type { JigProblem, JigSlot } from '../jig.js';
import { reachBetween, seatOutline, swept, wholeMicrons } from '../outline.js';
import type { Held } from './held.js';
import type { LipSlotGuide } from './jig.js';
import { type Hold, holdOf } from './seat.js';
import type { LipSlotGuideSetup } from './setup.js';

/** Jig coordinates, except `corner`. */
export type SaddlePlan = {
  /** The jig's origin in turned coordinates. */
  readonly corner: Point2;
  readonly lengthMm: number;
  readonly heightMm: number;
  /** Middle of the slot. */
  readonly slotX: number;
  /** Where the saw's way ends in the cheeks. */
  readonly slotTopZ: number;
  readonly guideSlotMm: number;
  readonly passes: LipSlotGuide['passes'];
  /** What the side view needs free between the cheeks, up to beyond their top. */
  readonly cavity: Ring;
  /** Side view of what is held, seated. */
  readonly profile: Ring;
  readonly hold: Hold;
};

type Planned =
  | { readonly plan: SaddlePlan; readonly problem: null }
  | { readonly plan: null; readonly problem: JigProblem };

export function planSaddle(held: Held, slot: JigSlot, setup: LipSlotGuideSetup): Planned {
  if (!insideRing(slot.end, held.outline)) throw new Fault('lip slot ends outside its workpiece');
  const sawn = slotWidth(slot, setup);
  if (!sawn) {
    const facts = { kerfMm: setup.sawKerfMm, slotMm: slot.widthMm };
    return { plan: null, problem: { code: 'jig-kerf-wider-than-slot', facts } };
  }
  const turn = turnOf(slot);
  const [turned, end] = [movedRing(turn, held.outline), moved(turn, slot.end)];
  const topZ = end[1] + setup.cheekAboveMm;
  const cavity = cavityOf(turned, topZ, held.strayMm, setup);
  const [fromX, toX] = endsOf(cavity, { end, topZ, ...sawn }, setup);
  const neededMm = end[1] - lowest(cavity, fromX, toX) + setup.wallMm;
  if (neededMm > setup.stopHeightMm) {
    const facts = { stopHeightMm: setup.stopHeightMm, neededMm };
    return { plan: null, problem: { code: 'jig-stop-height-too-small', facts } };
  }
  const corner: Point2 = [fromX, end[1] - setup.stopHeightMm];
  const measures = {
    corner,
    lengthMm: wholeMicrons(toX - fromX),
    heightMm: wholeMicrons(setup.stopHeightMm + setup.cheekAboveMm),
    slotX: end[0] - fromX,
    slotTopZ: setup.stopHeightMm + setup.chipRoomMm,
    ...sawn,
  };
  const toJig: Motion = { turnDeg: 0, move: [-corner[0], -corner[1]] };
  const block = asRegion(rectRing(0, 0, measures.lengthMm, measures.heightMm));
  const [free, profile] = [cavity, turned].map((r) => movedRing(toJig, r));
  const hold = holdOf({
    section: subtract([block], [asRegion(free), asRegion(sawWay(measures))]),
    profile,
    press: [measures.lengthMm / 2, setup.stopHeightMm],
  });
  return { plan: { ...measures, cavity: free, profile, hold }, problem: null };
}

/** From the lure's side view to turned coordinates. */
export const turnOf = ({ angleDeg }: JigSlot): Motion => ({ turnDeg: 90 - angleDeg, move: [0, 0] });

/** Side view of the saw's way: open at the stop face, ending in the cheeks just beyond the slot. */
export function sawWay({
  slotX,
  guideSlotMm,
  slotTopZ,
}: Pick<SaddlePlan, 'slotX' | 'guideSlotMm' | 'slotTopZ'>): Ring {
  return rectRing(slotX - guideSlotMm / 2, -OVERSHOOT, slotX + guideSlotMm / 2, slotTopZ);
}

/** A kerf that fills the slot runs in its own width; a narrower saw hugs one wall, then the other. */
function slotWidth({ widthMm }: JigSlot, { sawKerfMm, runningClearanceMm }: LipSlotGuideSetup) {
  if (sawKerfMm > widthMm) return null;
  return sawKerfMm >= widthMm - runningClearanceMm
    ? { guideSlotMm: sawKerfMm + runningClearanceMm, passes: 'one' as const }
    : { guideSlotMm: widthMm, passes: 'both walls' as const };
}

/**
 * The seat keeps its small gap wherever the edge faces down or toward the nose; on the far side,
 * where the edge stands steeper than this rise over run, the relief opens it, because a saddle that
 * is tight on two near-parallel sides would not take the next piece.
 */
export const RELIEF_SLOPE = 2;

/** The room a side view needs to come straight down to its place, from beyond `topZ`. */
export function cavityOf(
  profile: Ring,
  topZ: number,
  strayMm: number,
  { seatClearanceMm, reliefMm }: LipSlotGuideSetup,
): Ring {
  const seat = seatOutline(profile, seatClearanceMm + strayMm, seatClearanceMm);
  const relieved = reliefMm ? swept(seat, [reliefMm, RELIEF_SLOPE * reliefMm]) : seat;
  const [, lowZ] = ringBox(seat);
  return swept(relieved, [0, Math.max(topZ - lowZ, 0) + 1]);
}

/** A wall beyond the workpiece toward the nose; on the far side open where it goes on, a wall beyond the slot at least. */
function endsOf(
  cavity: Ring,
  { end, topZ, guideSlotMm }: { end: Point2; topZ: number; guideSlotMm: number },
  { wallMm, reachMm }: LipSlotGuideSetup,
): readonly [number, number] {
  const [x0, z0, x1] = ringBox(cavity);
  const under = asRegion(rectRing(x0 - 1, z0 - 1, x1 + 1, topZ));
  const part = intersect([asRegion(cavity)], [under]).find((r) => insideRing(end, r.outer));
  if (!part) throw new Fault('slot end beside the saddle');
  const [from, , to] = ringBox(part.outer);
  const reached = end[0] + Math.max(reachMm, guideSlotMm / 2 + wallMm);
  return [from - wallMm, reached < to - wallMm ? reached : to + wallMm];
}

function lowest(cavity: Ring, fromX: number, toX: number): number {
  const reach = reachBetween(cavity, fromX, toX);
  if (!reach) throw new Fault('saddle beside the blank');
  return reach.low;
}
