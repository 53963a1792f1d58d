/** Measures slot, stop, cheeks and wings of a lip-slot guide on sections of its mesh, and how its saddle holds. */
import type { SolidKernel } from '../../solid/kernel.js';
import { inverse, pointBy } from '../../solid/placement.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import { isMarked, stopsFound, wingOf } from './check-hand.js';
import { levelsOf } from './check-levels.js';
import { saddleOf } from './check-saddle.js';
import { gapsOf, planeErrors } from './check-slot.js';
import type { GuideWork, LipSlotGuide } from './jig.js';
import { holdOf, LEAST_RISE } from './seat.js';
import type { LipSlotGuideSetup } from './setup.js';

const PLACE = 0.01; // mm
const ANGLE = 0.01; // degrees

/**
 * The slot's middle plane must be the lip's (place, angle, squareness to the sides) wherever it is
 * measured, its width and depth as told; the stop face must be there on both sides of the slot in
 * both cheeks; cheeks as far apart as the blank and its clearance; wings clear of the blade; and the
 * saddle must hold the workpiece at the angle.
 */
export function checkSawSlot(
  kernel: SolidKernel,
  jig: LipSlotGuide,
  work: GuideWork,
  setup: LipSlotGuideSetup,
): JigCheck {
  const { slot } = work.blank;
  const levels = slot && levelsOf(kernel, jig, slot, setup);
  const gaps = levels && gapsOf(levels, setup);
  if (!slot || !levels || !gaps) {
    return { flaws: flawsOf([[true, 'slot-missing', 0, 1]]), measured: {} };
  }
  const plane = planeErrors(gaps, jig, slot);
  const widths = gaps.map((g) => g.to - g.from);
  const [narrow, wide] = [Math.min(...widths), Math.max(...widths)];
  const widest = Math.max(slot.widthMm, setup.sawKerfMm + setup.runningClearanceMm);
  const end = pointBy(inverse(jig.jigToBlank), [slot.end[0], 0, slot.end[1]]);
  const depth = Math.abs(end[2] - setup.stopHeightMm);
  const { riseMm } = holdOf(saddleOf(kernel, jig, work, setup));
  const stops = stopsFound(levels);
  const apart =
    jig.workpiece === 'sawn' ? work.blank.thicknessMm + 2 * setup.sideClearanceMm : levels.innerMm;
  const cheeks = Math.abs(levels.innerMm - apart);
  const wings = jig.wings.map((side) => wingOf(levels, side));
  const guard = Math.min(Infinity, ...wings.map((w) => w.guardMm));
  const out = Math.min(Infinity, ...wings.map((w) => w.outMm));
  const marks = isMarked(levels, setup);
  return {
    flaws: flawsOf([
      [plane.offMm > PLACE, 'slot-off-place', plane.offMm, PLACE],
      [plane.angleDeg > ANGLE, 'slot-off-angle', plane.angleDeg, ANGLE],
      [plane.squareDeg > ANGLE, 'slot-out-of-square', plane.squareDeg, ANGLE],
      [narrow < setup.sawKerfMm, 'slot-width', narrow, setup.sawKerfMm],
      [wide > widest + PLACE, 'slot-width', wide, widest],
      [Math.abs(wide - jig.guideSlotMm) > PLACE, 'slot-width', wide, jig.guideSlotMm],
      [!(depth < PLACE), 'slot-depth', depth, PLACE],
      [stops < 4, 'stop-missing', stops, 4],
      [cheeks > PLACE, 'cheeks-apart', levels.innerMm, apart],
      [guard < setup.guardMm - PLACE, 'wing-at-blade', guard, setup.guardMm],
      [wings.length > 0 && out < setup.wingMm - PLACE, 'wing-short', out, setup.wingMm],
      [!marks, 'slot-line-missing', 0, 1],
      [!(riseMm > LEAST_RISE), 'angle-not-held', riseMm, LEAST_RISE],
    ]),
    measured: {
      slotOffMm: plane.offMm,
      slotAngleErrorDeg: plane.angleDeg,
      slotSquareErrorDeg: plane.squareDeg,
      riseAtOneDegreeMm: riseMm,
      betweenCheeksMm: levels.innerMm,
      ...(wings.length > 0 ? { guardMm: guard } : {}),
    },
  };
}
