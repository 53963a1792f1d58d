/** A lip-slot guide as a solid: prisms of its plan and of its side view. */
import { asRegion } from '../../geometry/clip.js';
import { rectRing } from '../../geometry/ring.js';
import { type Csg, extruded, OVERSHOOT, slab } from '../../solid/csg.js';
import { grooves, type Sunk } from '../letters.js';
import { reachBetween } from '../outline.js';
import { LINE_MM, lineTop, MARK_MM } from './letters.js';
import type { LipSlotPlan } from './plan.js';
import { sawWay } from './saddle.js';
import type { LipSlotGuideSetup } from './setup.js';
import { storeys } from './wing.js';

export function guideCsg(plan: LipSlotPlan, sunk: readonly Sunk[], setup: LipSlotGuideSetup): Csg {
  const { fromY, toY } = plan;
  const rooms = plan.layers.map(({ regions, halfMm }) =>
    slab(regions, (fromY + toY) / 2 - halfMm, (fromY + toY) / 2 + halfMm),
  );
  return {
    kind: 'subtract',
    from: oneOf(
      storeys(plan, plan.wing, plan).map(({ regions, toZ }) => extruded(regions, 0, toZ)),
    ),
    parts: [
      ...rooms,
      sawCut(plan),
      oneOf([...slotLines(plan, sunk, setup), ...centerMarks(plan, setup)]),
      ...grooves(sunk, setup.letters),
    ],
  };
}

/** Through both cheeks to the slot's end, and between them all the way up: no roof is left over the blade. */
function sawCut(plan: LipSlotPlan): Csg {
  const { fromY, toY, heightMm, innerMm } = plan;
  const middle = (fromY + toY) / 2;
  const through = asRegion(sawWay(plan));
  const open = asRegion(sawWay({ ...plan, slotTopZ: heightMm + OVERSHOOT }));
  return oneOf([
    slab([through], fromY - OVERSHOOT, toY + OVERSHOOT),
    slab([open], middle - innerMm, middle + innerMm),
  ]);
}

const oneOf = (parts: readonly Csg[]): Csg =>
  parts.length === 1 ? parts[0] : { kind: 'union', parts };

/** The slot's line carried on over its end, sunk into both cheeks, as far as no letters are in the way. */
function slotLines(
  plan: LipSlotPlan,
  sunk: readonly Sunk[],
  { letters }: LipSlotGuideSetup,
): Csg[] {
  const { slotX, slotTopZ, guideSlotMm, heightMm, fromY, toY } = plan;
  // Narrower than the slot that it begins in, so that no faces lie in each other.
  const half = Math.min(letters.strokeMm, 0.8 * guideSlotMm) / 2;
  return (['starboard', 'port'] as const).map((side) => {
    const top = Math.min(lineTop(plan, side, sunk), heightMm + OVERSHOOT);
    const line = asRegion(rectRing(slotX - half, slotTopZ - LINE_MM, slotX + half, top));
    const depth = letters.depthMm;
    return side === 'starboard'
      ? slab([line], fromY - OVERSHOOT, fromY + depth)
      : slab([line], toY - depth, toY + OVERSHOOT);
  });
}

/** Where the workpiece's center line comes out over the saddle, at the nose end and at the far end. */
function centerMarks(plan: LipSlotPlan, { letters, wallMm }: LipSlotGuideSetup): Csg[] {
  const { lengthMm, heightMm, fromY, toY, cavity } = plan;
  // Where the seat rises steeply, the mark is cut as high as the higher of its two ends.
  const farTop = Math.max(
    ...[lengthMm - letters.depthMm, lengthMm].map(
      (x) => reachBetween(cavity, x, x)?.low ?? heightMm,
    ),
  );
  const ends = [
    { fromX: -OVERSHOOT, toX: letters.depthMm, top: heightMm },
    {
      fromX: lengthMm - letters.depthMm,
      toX: lengthMm + OVERSHOOT,
      top: Math.min(farTop, heightMm),
    },
  ];
  const middle = (fromY + toY) / 2;
  const half = letters.strokeMm / 2;
  return ends.flatMap(({ fromX, toX, top }) => {
    const foot = Math.max(top - MARK_MM, wallMm);
    if (top - foot < LINE_MM) return [];
    const mark = asRegion(rectRing(fromX, foot, toX, top + OVERSHOOT));
    return [slab([mark], middle - half, middle + half)];
  });
}
