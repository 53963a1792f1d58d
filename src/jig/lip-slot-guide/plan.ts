/**
 * The measures of a lip-slot guide, before any solid is made, in the side view. Turned coordinates:
 * Z along the slot into the body, X across it (aft, down). Jig coordinates: the same, counted from
 * the guide's corner at the nose end of its stop face.
 */
import { asRegion, intersect, offset, subtract } from '../../geometry/clip.js';
import { insideRing, movedRing, type Ring, rectRing, ringBox } from '../../geometry/ring.js';
import { thinned } from '../../geometry/thin.js';
import { type Motion, moved, type Point2 } from '../../geometry/vec.js';
import { Fault } from '../../problem.js';
import type { JigProblem, JigSlot } from '../jig.js';
import { reachBetween, SEAT_CHORD, swept, wholeMicrons } from '../outline.js';
import type { LipSlotGuide } from './jig.js';
import { type Hold, holdOf, LEAST_RISE } from './seat.js';
import type { LipSlotGuideSetup } from './setup.js';

/** Jig coordinates, except `corner`. */
export type LipSlotPlan = {
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
  /** What the blank's side view needs free between the cheeks, up to beyond their top. */
  readonly cavity: Ring;
  readonly hold: Hold;
};

type Planned =
  | { readonly plan: LipSlotPlan; readonly problems: readonly [] }
  | { readonly plan: null; readonly problems: readonly JigProblem[] };

export function planLipSlot(profile: Ring, slot: JigSlot, setup: LipSlotGuideSetup): Planned {
  if (!insideRing(slot.end, profile)) throw new Fault('lip slot ends outside its blank');
  const sawn = slotWidth(slot, setup);
  if (!sawn) {
    const facts = { kerfMm: setup.sawKerfMm, slotMm: slot.widthMm };
    return failed('jig-kerf-wider-than-slot', facts);
  }
  const turn: Motion = { turnDeg: 90 - slot.angleDeg, move: [0, 0] };
  const [turned, end] = [movedRing(turn, profile), moved(turn, slot.end)];
  const topZ = end[1] + setup.cheekAboveMm;
  const cavity = cavityOf(turned, topZ, setup);
  const [fromX, toX] = endsOf(cavity, end, topZ, setup);
  const neededMm = end[1] - lowest(cavity, fromX, toX) + setup.wallMm;
  if (neededMm > setup.stopHeightMm) {
    return failed('jig-stop-height-too-small', { stopHeightMm: setup.stopHeightMm, neededMm });
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
  const free = movedRing(toJig, cavity);
  const hold = holdOf({
    section: subtract([block], [asRegion(free), asRegion(sawWay(measures))]),
    profile: movedRing(toJig, turned),
    press: [measures.lengthMm / 2, setup.stopHeightMm],
  });
  if (!(hold.riseMm > LEAST_RISE)) {
    const { angleDeg } = slot;
    const facts = { riseMm: hold.riseMm, leastRiseMm: LEAST_RISE, reachMm: setup.reachMm };
    return failed('jig-angle-not-held', { angleDeg, ...facts });
  }
  return { plan: { ...measures, cavity: free, hold }, problems: [] };
}

const OVERSHOOT = 1; // mm the saw's way goes on in free air under the stop face, so that no skin stays

/** Side view of the saw's way: open at the stop face, ending in the cheeks just beyond the slot. */
export function sawWay({
  slotX,
  guideSlotMm,
  slotTopZ,
}: Pick<LipSlotPlan, 'slotX' | 'guideSlotMm' | 'slotTopZ'>): Ring {
  return rectRing(slotX - guideSlotMm / 2, -OVERSHOOT, slotX + guideSlotMm / 2, slotTopZ);
}

const failed = (code: JigProblem['code'], facts: JigProblem['facts']): Planned => ({
  plan: null,
  problems: [{ code, facts }],
});

/** A kerf that fills the slot runs in its own width; a narrower saw hugs one wall, then the other. */
function slotWidth({ widthMm }: JigSlot, { sawKerfMm, runningClearanceMm }: LipSlotGuideSetup) {
  if (sawKerfMm > widthMm) return null;
  return sawKerfMm >= widthMm - runningClearanceMm
    ? { guideSlotMm: sawKerfMm + runningClearanceMm, passes: 'one' as const }
    : { guideSlotMm: widthMm, passes: 'both walls' as const };
}

/**
 * The seat keeps its small gap wherever the blank's edge faces down or toward the nose; on the far
 * side, where the edge stands steeper than this rise over run, the relief opens it, because a saddle
 * that is tight on two near-parallel sides would not take the next blank.
 */
export const RELIEF_SLOPE = 2;

function cavityOf(profile: Ring, topZ: number, setup: LipSlotGuideSetup): Ring {
  const grown = offset([asRegion(profile)], setup.seatClearanceMm);
  if (grown.length !== 1) throw new Fault(`grown profile fell into ${grown.length} pieces`);
  const seat = thinned(grown[0].outer, SEAT_CHORD * setup.seatClearanceMm);
  const relieved = setup.reliefMm
    ? swept(seat, [setup.reliefMm, RELIEF_SLOPE * setup.reliefMm])
    : seat;
  const [, lowZ] = ringBox(seat);
  return swept(relieved, [0, Math.max(topZ - lowZ, 0) + 1]);
}

/** A wall beyond the blank toward the nose; on the far side open where the blank goes on. */
function endsOf(
  cavity: Ring,
  end: Point2,
  topZ: number,
  { wallMm, reachMm }: LipSlotGuideSetup,
): readonly [number, number] {
  const [x0, z0, x1] = ringBox(cavity);
  const under = asRegion(rectRing(x0 - 1, z0 - 1, x1 + 1, topZ));
  const part = intersect([asRegion(cavity)], [under]).find((r) => insideRing(end, r.outer));
  if (!part) throw new Fault('slot end beside the saddle');
  const [from, , to] = ringBox(part.outer);
  const reached = end[0] + reachMm;
  return [from - wallMm, reached < to - wallMm ? reached : to + wallMm];
}

function lowest(cavity: Ring, fromX: number, toX: number): number {
  const reach = reachBetween(cavity, fromX, toX);
  if (!reach) throw new Fault('saddle beside the blank');
  return reach.low;
}
