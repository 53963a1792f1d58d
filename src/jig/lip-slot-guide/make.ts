/**
 * The lip-slot guide: a saddle that is pressed over the nose of the sawn blank, with a cheek on each
 * flat side, or over the shaped body, with a stepped seat. A saw slot through saddle and cheeks leads
 * the blade in the plane of the lip; the saw's spine, or a strip clamped to the blade, comes to rest
 * on the stop face, on both sides of the slot and over both cheeks, when the slot is deep enough. The
 * saddle's seat is the edge of the side view, so the workpiece finds its angle by being pressed in,
 * and comes out along the slot. Printed standing on the stop face: the seat faces up, cheeks, saw
 * slot and wings stand upright, nothing needs support.
 *
 * Jig coordinates: X across the slot (aft, down), Y to port, Z along the slot into the body.
 */
import { meshBox, meshVolume } from '../../geometry/mesh.js';
import { cosSinDeg, type Point3 } from '../../geometry/vec.js';
import { along3 } from '../../geometry/vec3.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { placement } from '../../solid/placement.js';
import type { Fit } from '../fit.js';
import type { JigBlank, JigOutcome, JigSlot } from '../jig.js';
import type { JigSet } from '../kind.js';
import { type Held, heldBlank, heldBody } from './held.js';
import type { GuideWork, LipSlotGuide } from './jig.js';
import { lipSlotLetters } from './letters.js';
import { HELD_DEG, type LipSlotPlan, planLipSlot } from './plan.js';
import { RELIEF_SLOPE } from './saddle.js';
import type { LipSlotGuideSetup } from './setup.js';
import { guideCsg } from './solid.js';
import { guideWords } from './words.js';

type Set = JigSet<LipSlotGuideSetup>;

/** The guides the set-up asks for: for the sawn blank, the shaped body, or both; none without a slot. */
export function lipSlotGuide(
  kernel: SolidKernel,
  { blank, body }: GuideWork,
  set: Set,
): JigOutcome<LipSlotGuide> {
  const { slot } = blank;
  if (!slot) return { jigs: [], problems: [] };
  const wanted = set.setup.blank;
  const held = [
    ...(wanted === 'shaped' ? [] : [heldBlank(blank)]),
    ...(wanted === 'sawn' || !body ? [] : [heldBody(body.shape)]),
  ];
  const outcomes = held.map((h) => guideFor(kernel, h, { blank, slot }, set));
  return {
    jigs: outcomes.flatMap((o) => o.jigs),
    problems: outcomes.flatMap((o) => o.problems),
  };
}

function guideFor(
  kernel: SolidKernel,
  held: Held,
  { blank, slot }: { readonly blank: JigBlank; readonly slot: JigSlot },
  set: Set,
): JigOutcome<LipSlotGuide> {
  const { plan, problems } = planLipSlot(held, slot, set);
  if (!plan) return { jigs: [], problems };
  const { setup } = set;
  const { sunk, leftOut } = lipSlotLetters({ blank, slot, setup, plan });
  const csg = guideCsg(plan, sunk, setup);
  const mesh = evaluate(kernel, csg);
  const [across, along] = axesOf(slot);
  const jig: LipSlotGuide = {
    kind: 'lip-slot-guide',
    pattern: blank.name,
    part: held.kind === 'sawn' ? '' : 'shaped',
    csg,
    mesh,
    jigToBlank: placement(across, [0, 1, 0], along, originOf(plan, slot)),
    axis: { originMm: [slot.mouth[0], 0, slot.mouth[1]], direction: along },
    workpiece: held.kind,
    seatMm: setup.seatClearanceMm,
    fit: fitOf(held, plan, setup, slot),
    freeDirection: along,
    leastWallMm: Math.min(setup.wallMm, setup.cheekMm),
    keepWholeMm: [[0, plan.lengthMm]],
    sizeMm: meshBox(mesh)[1],
    volumeMm3: meshVolume(mesh),
    openings: 1,
    letters: sunk,
    lettersLeftOut: leftOut,
    angleDeg: slot.angleDeg,
    depthMm: slot.depthMm,
    guideSlotMm: plan.guideSlotMm,
    passes: plan.passes,
    stopHeightMm: setup.stopHeightMm,
    stopLandMm: landsOf(plan),
    wings: (['starboard', 'port'] as const).filter((side) => plan.wing?.[side]),
    leanDeg: plan.leanDeg,
    tipDeg: plan.tipDeg,
    hold: plan.hold,
    spread: plan.spread,
    words: guideWords(held, plan, setup),
  };
  const rolls: JigOutcome<LipSlotGuide>['problems'] =
    plan.leanDeg === null
      ? [{ code: 'jig-lean-not-held', facts: { angleDeg: slot.angleDeg, mostDeg: HELD_DEG } }]
      : [];
  return { jigs: [jig], problems: rolls };
}

/**
 * Pressed in, and toward the nose wall as far as that holds it best, the workpiece has play between
 * the cheeks and into the relief. Straight in it is pressed at both ends of the guide. Between the
 * steps of a shaped seat the gap is as wide as they are.
 */
function fitOf(held: Held, plan: LipSlotPlan, setup: LipSlotGuideSetup, slot: JigSlot): Fit {
  const { seatClearanceMm, sideClearanceMm, reliefMm } = setup;
  const [across, along] = axesOf(slot);
  const at = (x: number): Point3 => {
    const [a, b] = [plan.corner[0] + x, plan.corner[1] + setup.stopHeightMm];
    return along3([a * across[0], a * across[1], a * across[2]], b, along);
  };
  const [cos, sin] = cosSinDeg(plan.hold.pushDeg);
  const push = (forward: number, inward: number): Point3 =>
    along3([-forward * across[0], 0, -forward * across[2]], -inward, along);
  const side = Math.max(0, sideClearanceMm - seatClearanceMm);
  const eased = along3([0, 0, 0], reliefMm, across);
  const called = 'into the saddle';
  const least = Math.min(seatClearanceMm, sideClearanceMm);
  const most = Math.max(seatClearanceMm, held.kind === 'sawn' ? 0 : sideClearanceMm);
  return {
    gapMm: [least, most + held.strayMm + widestStep(plan)],
    playMm: [[0, side, 0], [0, -side, 0], along3(eased, RELIEF_SLOPE * reliefMm, along)],
    pressed: [
      { called, at: at(plan.lengthMm / 2), direction: push(sin, cos) },
      ...[0, plan.lengthMm].map((x) => ({ called, at: at(x), direction: push(0, 1) })),
    ],
    tools: [
      {
        kind: 'saw',
        called: 'the saw',
        axis: { originMm: [slot.mouth[0], 0, slot.mouth[1]], direction: along },
        stroke: [0, 1, 0],
        widthMm: plan.guideSlotMm,
      },
    ],
  };
}

/** From one step of a shaped seat to the next; 0 for the one layer of a sawn blank. */
const widestStep = ({ layers }: LipSlotPlan): number =>
  layers.slice(1).reduce((most, { halfMm }, i) => Math.max(most, halfMm - layers[i].halfMm), 0);

/** X and Z of the jig in the lure's frame. */
function axesOf({ angleDeg }: JigSlot): readonly [Point3, Point3] {
  const [cos, sin] = cosSinDeg(angleDeg);
  return [
    [sin, 0, -cos],
    [cos, 0, sin],
  ];
}

/** The jig's origin in the lure's frame. */
function originOf({ corner, fromY, toY }: LipSlotPlan, slot: JigSlot): Point3 {
  const [across, along] = axesOf(slot);
  const at = (i: 0 | 2) => corner[0] * across[i] + corner[1] * along[i];
  return [at(0), -(fromY + toY) / 2, at(2)];
}

const landsOf = ({ slotX, guideSlotMm, lengthMm }: LipSlotPlan): readonly [number, number] => [
  slotX - guideSlotMm / 2,
  lengthMm - slotX - guideSlotMm / 2,
];
