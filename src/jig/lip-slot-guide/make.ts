/**
 * The lip-slot guide: a saddle that is pressed over the nose of the sawn blank, with a cheek on each
 * flat side. A saw slot through saddle and cheeks leads the blade in the plane of the lip; the saw's
 * spine, or a strip clamped to the blade, comes to rest on the stop face when the slot is deep
 * enough. The saddle's seat is the blank's own edge, so the blank finds its angle by being pressed
 * in, and comes out along the slot. Printed standing on the stop face: the seat faces up, cheeks and
 * saw slot stand upright, nothing needs support.
 *
 * Jig coordinates: X across the slot (aft, down), Y to port, Z along the slot into the body.
 */
import { asRegion } from '../../geometry/clip.js';
import { meshBox, meshVolume } from '../../geometry/mesh.js';
import { rectRing } from '../../geometry/ring.js';
import { cosSinDeg, type Point3 } from '../../geometry/vec.js';
import { along3 } from '../../geometry/vec3.js';
import { type Csg, extruded, movedBy } from '../../solid/csg.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { placement } from '../../solid/placement.js';
import type { Fit } from '../fit.js';
import type { JigBlank, JigOutcome, JigSlot } from '../jig.js';
import { grooves, type Sunk } from '../letters.js';
import type { LipSlotGuide } from './jig.js';
import { lipSlotLetters } from './letters.js';
import { type LipSlotPlan, planLipSlot, RELIEF_SLOPE, sawWay } from './plan.js';
import type { LipSlotGuideSetup } from './setup.js';

const OVERSHOOT = 1; // mm a cutter goes on in free air, so that no skin stays

/** The guide for the blank's lip slot; none when there is no slot. */
export function lipSlotGuide(
  kernel: SolidKernel,
  blank: JigBlank,
  setup: LipSlotGuideSetup,
): JigOutcome<LipSlotGuide> {
  const { slot } = blank;
  if (!slot) return { jigs: [], problems: [] };
  const { plan, problems } = planLipSlot(blank.profileRing, slot, setup);
  if (!plan) return { jigs: [], problems };
  const widths = widthsOf(blank, setup);
  const { sunk, leftOut } = lipSlotLetters({ blank, slot, setup, plan, widthMm: widths.outer });
  const csg = guideCsg(plan, widths, sunk, setup);
  const mesh = evaluate(kernel, csg);
  const sizeMm = meshBox(mesh)[1];
  const [cos, sin] = cosSinDeg(slot.angleDeg);
  const [across, along]: [Point3, Point3] = [
    [sin, 0, -cos],
    [cos, 0, sin],
  ];
  const corner = (i: 0 | 2) => plan.corner[0] * across[i] + plan.corner[1] * along[i];
  const jig: LipSlotGuide = {
    kind: 'lip-slot-guide',
    pattern: blank.name,
    part: '',
    csg,
    mesh,
    jigToBlank: placement(across, [0, 1, 0], along, [corner(0), -widths.outer / 2, corner(2)]),
    axis: { originMm: [slot.mouth[0], 0, slot.mouth[1]], direction: along },
    workpiece: 'sawn',
    seatMm: setup.seatClearanceMm,
    fit: fitOf(plan, setup, { slot, across, along }),
    freeDirection: along,
    leastWallMm: Math.min(setup.wallMm, setup.cheekMm),
    sizeMm,
    volumeMm3: meshVolume(mesh),
    openings: 1,
    letters: sunk,
    lettersLeftOut: leftOut,
    angleDeg: slot.angleDeg,
    depthMm: slot.depthMm,
    guideSlotMm: plan.guideSlotMm,
    passes: plan.passes,
    stopHeightMm: setup.stopHeightMm,
    leanDeg: leanDeg(plan, setup),
    hold: plan.hold,
  };
  return { jigs: [jig], problems: [] };
}

type SawFrame = { readonly slot: JigSlot; readonly across: Point3; readonly along: Point3 };

/**
 * Pressed in, and toward the nose wall as far as that holds it best, the blank has play between the
 * cheeks and into the relief. Straight in it is pressed at both ends of the guide.
 */
function fitOf(plan: LipSlotPlan, setup: LipSlotGuideSetup, { slot, across, along }: SawFrame) {
  const { seatClearanceMm, sideClearanceMm, reliefMm } = setup;
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
  return {
    gapMm: [Math.min(seatClearanceMm, sideClearanceMm), seatClearanceMm],
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
  } satisfies Fit;
}

type Widths = { readonly inner: number; readonly outer: number };

function widthsOf({ thicknessMm }: JigBlank, setup: LipSlotGuideSetup): Widths {
  const inner = thicknessMm + 2 * setup.sideClearanceMm;
  return { inner, outer: inner + 2 * setup.cheekMm };
}

/** The cheeks hold the blank's sides from the seat to their top: the gap over that height. */
function leanDeg({ heightMm }: LipSlotPlan, setup: LipSlotGuideSetup): number {
  const heldMm = heightMm - setup.wallMm;
  return (Math.atan2(2 * setup.sideClearanceMm, heldMm) * 180) / Math.PI;
}

function guideCsg(
  plan: LipSlotPlan,
  { inner, outer }: Widths,
  sunk: readonly Sunk[],
  setup: LipSlotGuideSetup,
): Csg {
  const block = asRegion(rectRing(0, 0, plan.lengthMm, plan.heightMm));
  const cheekMm = (outer - inner) / 2;
  return {
    kind: 'subtract',
    from: standing([block], { fromY: 0, toY: outer }),
    parts: [
      standing([asRegion(plan.cavity)], { fromY: cheekMm, toY: outer - cheekMm }),
      standing([asRegion(sawWay(plan))], { fromY: -OVERSHOOT, toY: outer + OVERSHOOT }),
      ...grooves(sunk, setup.letters),
    ],
  };
}

/** A prism of a side view (X to the right, Z up) between two Y. */
const standing = (
  view: Parameters<typeof extruded>[0],
  { fromY, toY }: { fromY: number; toY: number },
): Csg =>
  movedBy(placement([1, 0, 0], [0, 0, 1], [0, -1, 0], [0, 0, 0]), extruded(view, -toY, -fromY));
