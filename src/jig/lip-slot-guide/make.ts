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
import { type Csg, extruded, movedBy } from '../../solid/csg.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { placement } from '../../solid/placement.js';
import type { JigBlank, JigOutcome } from '../jig.js';
import { grooves, type Sunk } from '../letters.js';
import type { LipSlotGuide } from './jig.js';
import { lipSlotLetters } from './letters.js';
import { type LipSlotPlan, planLipSlot, sawWay } from './plan.js';
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
    freeDirection: along,
    leastWallMm: Math.min(setup.wallMm, setup.cheekMm),
    keepWholeMm: [[0, plan.lengthMm]],
    sizeMm,
    volumeMm3: meshVolume(mesh),
    openings: 1,
    letters: sunk,
    lettersLeftOut: leftOut,
    words: [
      'Press the blank into the saddle, toward the nose wall, before and while you saw.',
      'Saw until the spine, or the strip clamped to the blade, rests on the stop face.',
      'Keep fingers out of the line of the blade. Local rules come first.',
    ],
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
