/** Measures the saw slot and the seat of a lip-slot guide on sections of its mesh. */
import type { Region } from '../../geometry/ring.js';
import { ring } from '../../geometry/ring.js';
import { cosSinDeg, type Point2, type Point3 } from '../../geometry/vec.js';
import { dot3 } from '../../geometry/vec3.js';
import { movedBy } from '../../solid/csg.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsAt } from '../../solid/measure.js';
import { inverse, placement, pointBy } from '../../solid/placement.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import type { JigBlank, JigSlot } from '../jig.js';
import type { LipSlotGuide } from './jig.js';
import { holdOf, LEAST_RISE } from './seat.js';
import type { LipSlotGuideSetup } from './setup.js';

const PLACE = 0.01; // mm
const ANGLE = 0.01; // degrees

/**
 * The slot's middle plane must be the lip's (place, angle, squareness to the sides) wherever it is
 * measured; its width and depth as told; and the saddle must hold the blank at the angle.
 */
export function checkSawSlot(
  kernel: SolidKernel,
  jig: LipSlotGuide,
  blank: JigBlank,
  setup: LipSlotGuideSetup,
): JigCheck {
  const { slot } = blank;
  const gaps = slot ? gapsOf(kernel, jig, slot, setup) : null;
  if (!slot || !gaps) return { flaws: flawsOf([[true, 'slot-missing', 0, 1]]), measured: {} };
  const plane = planeErrors(gaps, jig, slot);
  const widths = gaps.map((g) => g.to - g.from);
  const wanted = setup.sawKerfMm;
  const narrow = Math.min(...widths);
  const wide = Math.max(...widths);
  const widest = Math.max(slot.widthMm, setup.sawKerfMm + setup.runningClearanceMm);
  const end = pointBy(inverse(jig.jigToBlank), [slot.end[0], 0, slot.end[1]]);
  const depth = Math.abs(end[2] - setup.stopHeightMm);
  const { riseMm } = holdOf(saddleOf(kernel, jig, blank, setup));
  return {
    flaws: flawsOf([
      [plane.offMm > PLACE, 'slot-off-place', plane.offMm, PLACE],
      [plane.angleDeg > ANGLE, 'slot-off-angle', plane.angleDeg, ANGLE],
      [plane.squareDeg > ANGLE, 'slot-out-of-square', plane.squareDeg, ANGLE],
      [narrow < wanted, 'slot-width', narrow, wanted],
      [wide > widest + PLACE, 'slot-width', wide, widest],
      [Math.abs(wide - jig.guideSlotMm) > PLACE, 'slot-width', wide, jig.guideSlotMm],
      [!(depth < PLACE), 'slot-depth', depth, PLACE],
      [!(riseMm > LEAST_RISE), 'angle-not-held', riseMm, LEAST_RISE],
    ]),
    measured: {
      slotOffMm: plane.offMm,
      slotAngleErrorDeg: plane.angleDeg,
      slotSquareErrorDeg: plane.squareDeg,
      riseAtOneDegreeMm: riseMm,
    },
  };
}

/** The open way of the saw on a line across the guide: X from and to, at Y and Z. */
type Gap = { readonly from: number; readonly to: number; readonly y: number; readonly z: number };

/** Near the stop face and near the slot's end, in the middle of each cheek; null if one is not there. */
function gapsOf(
  kernel: SolidKernel,
  jig: LipSlotGuide,
  slot: JigSlot,
  setup: LipSlotGuideSetup,
): readonly Gap[] | null {
  const solid = { kind: 'mesh', mesh: jig.mesh } as const;
  const mouth = pointBy(inverse(jig.jigToBlank), [slot.mouth[0], 0, slot.mouth[1]]);
  const heights = [1, setup.stopHeightMm - 1];
  // Inside of where letters are sunk.
  const inCheek = (setup.cheekMm + setup.letters.depthMm) / 2;
  const found = sectionsAt(kernel, solid, heights).flatMap((section, i) =>
    [inCheek, jig.sizeMm[1] - inCheek].map((y) => gapOn(section, y, mouth[0], heights[i])),
  );
  return found.every((g) => g !== null) ? (found as readonly Gap[]) : null;
}

function gapOn(section: readonly Region[], y: number, nearX: number, z: number): Gap | null {
  const loops = section.flatMap(({ outer, holes }) => [outer, ...holes]);
  const crossings = loops
    .flatMap((loop) =>
      loop.flatMap((p, i) => {
        const q = loop[(i + 1) % loop.length];
        if (p[1] <= y === q[1] <= y) return [];
        return [p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1])];
      }),
    )
    .sort((a, b) => a - b);
  const left = crossings.filter((x) => x < nearX);
  const right = crossings.filter((x) => x >= nearX);
  // Even on both sides: the point between them is in the open, with material beyond.
  if (left.length === 0 || right.length === 0 || left.length % 2 === 1) return null;
  return { from: left[left.length - 1], to: right[0], y, z };
}

/** How far the middles of the gaps are from the lip's plane, and how they lie to it. */
function planeErrors(gaps: readonly Gap[], jig: LipSlotGuide, slot: JigSlot) {
  const [cos, sin] = cosSinDeg(slot.angleDeg);
  const across: Point3 = [sin, 0, -cos];
  const middles = gaps.map(({ from, to, y, z }) =>
    pointBy(jig.jigToBlank, [(from + to) / 2, y, z]),
  );
  const offs = middles.map(([x, y, z]) => dot3([x - slot.mouth[0], y, z - slot.mouth[1]], across));
  const [lowA, lowB, highA, highB] = offs;
  const deg = (rise: number, run: number) =>
    (Math.abs(Math.atan2(rise, Math.abs(run))) * 180) / Math.PI;
  const [tall, broad] = [gaps[2].z - gaps[0].z, gaps[1].y - gaps[0].y];
  return {
    offMm: Math.max(...offs.map(Math.abs)),
    angleDeg: Math.max(deg(highA - lowA, tall), deg(highB - lowB, tall)),
    squareDeg: Math.max(deg(lowB - lowA, broad), deg(highB - highA, broad)),
  };
}

/** The section through the middle of the guide, with the blank's profile as it sits there. */
function saddleOf(
  kernel: SolidKernel,
  jig: LipSlotGuide,
  blank: JigBlank,
  setup: LipSlotGuideSetup,
) {
  const [length, width] = jig.sizeMm;
  const lying = placement([1, 0, 0], [0, 0, -1], [0, 1, 0], [0, 0, 0]);
  const solid = movedBy(lying, { kind: 'mesh', mesh: jig.mesh });
  const [section] = sectionsAt(kernel, solid, [-width / 2]);
  const toJig = inverse(jig.jigToBlank);
  const profile = ring(
    blank.profileRing.map(([x, z]): Point2 => {
      const [px, , pz] = pointBy(toJig, [x, 0, z]);
      return [px, pz];
    }),
  );
  const press: Point2 = [length / 2, setup.stopHeightMm];
  return { section, profile, press };
}
