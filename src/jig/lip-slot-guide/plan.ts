/** The measures of a lip-slot guide, before any solid is made: saddle, wings, layers, play and spread. */
import { distance, type Point2 } from '../../geometry/vec.js';
import type { JigProblem, JigSlot } from '../jig.js';
import type { JigSet } from '../kind.js';
import { belowNozzle } from '../nozzle.js';
import { wholeMicrons } from '../outline.js';
import { contactsOf } from './contact.js';
import type { Held } from './held.js';
import { jigView, type Layer, layersOf } from './layers.js';
import { nearestHeld } from './nearest.js';
import { playOf } from './play.js';
import { planSaddle, type SaddlePlan } from './saddle.js';
import { LEAST_RISE } from './seat.js';
import type { LipSlotGuideSetup } from './setup.js';
import { type SlotSpread, slotSpread } from './spread.js';
import { cheekLength, type PlanView, planWing, type WingPlan } from './wing.js';

export type LipSlotPlan = SaddlePlan &
  PlanView & {
    readonly wing: WingPlan | null;
    readonly layers: readonly Layer[];
    /** From the center plane to the cheeks. */
    readonly innerMm: number;
    /** Greatest turns the cheeks allow, about the slot's direction and across it; null: the seat does not stop it. */
    readonly leanDeg: number | null;
    readonly tipDeg: number | null;
    readonly spread: SlotSpread;
  };

type Planned =
  | { readonly plan: LipSlotPlan; readonly problems: readonly [] }
  | { readonly plan: null; readonly problems: readonly JigProblem[] };

/** A greater turn is no small one, and no seat is said to hold it. */
export const HELD_DEG = 5;

export function planLipSlot(
  held: Held,
  slot: JigSlot,
  { setup, printer }: JigSet<LipSlotGuideSetup>,
): Planned {
  const { wallMm, cheekMm, letters } = setup;
  const thin = belowNozzle({ wallMm, cheekMm }, printer.nozzleMm, letters.depthMm);
  if (thin.length > 0) return { plan: null, problems: thin };
  const { plan: saddle, problem } = planSaddle(held, slot, setup);
  if (!saddle) return { plan: null, problems: [problem] };
  if (!(saddle.hold.riseMm > LEAST_RISE)) {
    const { riseMm } = saddle.hold;
    const works = nearestHeld(held, slot, setup);
    const facts = { angleDeg: slot.angleDeg, riseMm, leastRiseMm: LEAST_RISE, works };
    const told = { ...facts, reachMm: setup.reachMm };
    return { plan: null, problems: [{ code: 'jig-angle-not-held', facts: told }] };
  }
  const wing = planWing(saddle, setup);
  const cheekLengthMm = cheekLength(saddle.lengthMm, wing);
  const { halfMm, layers } = layersOf(held, slot, { ...saddle, cheekLengthMm }, setup);
  const fromY = wing?.starboard ? wing.outMm : 0;
  const innerMm = halfMm + setup.sideClearanceMm;
  const widthMm = wholeMicrons(2 * (innerMm + setup.cheekMm));
  const view = { cheekLengthMm, cheekMm: setup.cheekMm, fromY, toY: fromY + widthMm };
  const contacts = contactsOf(held, slot, { ...saddle, cheekLengthMm, halfMm }, setup);
  const play = playOf(contacts);
  const [leanDeg, tipDeg] = [play.aboutZDeg, play.aboutXDeg].map((d) => (d < HELD_DEG ? d : null));
  const spread = slotSpread({
    printErrorMm: printer.errorMm,
    seatClearanceMm: setup.seatClearanceMm,
    bladePlayMm: saddle.passes === 'one' ? setup.runningClearanceMm : 0,
    riseMm: saddle.hold.riseMm,
    slotLengthMm: widthMm,
    slotHeightMm: setup.stopHeightMm,
    ...mouthOf(saddle, slot),
    playDeg: leanDeg,
  });
  return {
    plan: { ...saddle, ...view, wing, layers, innerMm, leanDeg, tipDeg, spread },
    problems: [],
  };
}

/** From the middle of the seat to the mouth, and how the slot meets the edge of the workpiece there. */
function mouthOf(
  { profile, corner }: SaddlePlan,
  slot: JigSlot,
): { readonly leverMm: number; readonly bellyAngleDeg: number } {
  const mouth = jigView(slot, { corner })(slot.mouth);
  const lowest = Math.min(...profile.map(([, z]) => z));
  const [a, b] = nearestEdge(profile, mouth);
  const slopeDeg = (Math.abs(Math.atan2(b[0] - a[0], b[1] - a[1])) * 180) / Math.PI;
  const bellyAngleDeg = Math.max(LEAST_BELLY_DEG, Math.min(slopeDeg, 180 - slopeDeg));
  return { leverMm: Math.abs(mouth[1] - lowest), bellyAngleDeg };
}

const LEAST_BELLY_DEG = 1; // a slot along the belly has no station

function nearestEdge(profile: readonly Point2[], p: Point2): readonly [Point2, Point2] {
  const edges = profile.map((a, i) => [a, profile[(i + 1) % profile.length]] as const);
  const off = ([a, b]: readonly [Point2, Point2]) =>
    distance(a, p) + distance(b, p) - distance(a, b);
  return edges.reduce((best, e) => (off(e) < off(best) ? e : best));
}
