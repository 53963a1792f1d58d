/** Sections of a lip-slot guide at the heights where it is measured. */
import { crossings, loopsOf, type Region, ringBox } from '../../geometry/ring.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsAt } from '../../solid/measure.js';
import { inverse, pointBy } from '../../solid/placement.js';
import type { JigSlot } from '../jig.js';
import type { LipSlotGuide } from './jig.js';
import type { LipSlotGuideSetup } from './setup.js';

export type Section = readonly Region[];

export type Levels = {
  /** Just inside of the stop face: a face that is further off is not there. */
  readonly stop: Section;
  /** Along the slot, near the stop face and near the slot's end; with their heights. */
  readonly slot: readonly (readonly [number, Section])[];
  /** Over the blade's way, where only cheeks and end walls are. */
  readonly over: Section;
  /** Where the slot's mouth and the center plane are. */
  readonly slotX: number;
  readonly middleY: number;
  /** Outer faces of the cheeks. */
  readonly outerY: readonly [number, number];
  /** Free between the cheeks, over the slot's end. */
  readonly innerMm: number;
};

const STOP = 0.01; // mm

/** Null where there are no two cheeks over the slot. */
export function levelsOf(
  kernel: SolidKernel,
  jig: LipSlotGuide,
  slot: JigSlot,
  { stopHeightMm, chipRoomMm }: LipSlotGuideSetup,
): Levels | null {
  const [slotX, middleY] = pointBy(inverse(jig.jigToBlank), [slot.mouth[0], 0, slot.mouth[1]]);
  const heights = [STOP, 1, stopHeightMm - 1, stopHeightMm + chipRoomMm + 1];
  const [stop, low, high, over] = sectionsAt(kernel, { kind: 'mesh', mesh: jig.mesh }, heights);
  const boxes = over.map(({ outer }) => ringBox(outer));
  // Over the slot only the cheeks are there: what a line across meets.
  const crossed = across(over, slotX);
  const inner = crossed.filter((_, i) => i > 0 && i < crossed.length - 1);
  if (inner.length !== 2) return null;
  return {
    stop,
    slot: [
      [heights[1], low],
      [heights[2], high],
    ],
    over,
    slotX,
    middleY,
    outerY: [Math.min(...boxes.map((b) => b[1])), Math.max(...boxes.map((b) => b[3]))],
    innerMm: inner[1] - inner[0],
  };
}

/** Where a line along X at Y goes in and out of a section. */
export const along = (section: Section, y: number): number[] => crossings(loopsOf(section), 1, y);

/** Where a line along Y at X goes in and out. */
export const across = (section: Section, x: number): number[] => crossings(loopsOf(section), 0, x);
