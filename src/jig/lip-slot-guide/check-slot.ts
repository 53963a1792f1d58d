/** The saw's way on the mesh: how wide it is, and how its middle lies to the plane of the lip. */
import { cosSinDeg, type Point3 } from '../../geometry/vec.js';
import { dot3 } from '../../geometry/vec3.js';
import { pointBy } from '../../solid/placement.js';
import type { JigSlot } from '../jig.js';
import { along, type Levels, type Section } from './check-levels.js';
import type { LipSlotGuide } from './jig.js';
import type { LipSlotGuideSetup } from './setup.js';

/** The open way of the saw on a line across the guide: X from and to, at Y and Z. */
export type Gap = {
  readonly from: number;
  readonly to: number;
  readonly y: number;
  readonly z: number;
};

/** Near the stop face and near the slot's end, in the middle of each cheek; null if one is not there. */
export function gapsOf(levels: Levels, setup: LipSlotGuideSetup): readonly Gap[] | null {
  // Inside of where letters are sunk.
  const inCheek = (setup.cheekMm + setup.letters.depthMm) / 2;
  const ys = [levels.outerY[0] + inCheek, levels.outerY[1] - inCheek];
  const found = levels.slot.flatMap(([z, section]) =>
    ys.map((y) => gapOn(section, y, levels.slotX, z)),
  );
  return found.every((g) => g !== null) ? (found as readonly Gap[]) : null;
}

export function gapOn(section: Section, y: number, nearX: number, z: number): Gap | null {
  const met = along(section, y);
  const left = met.filter((x) => x < nearX);
  const right = met.filter((x) => x >= nearX);
  // Even on both sides: the point between them is in the open, with material beyond.
  if (left.length === 0 || right.length === 0 || left.length % 2 === 1) return null;
  return { from: left[left.length - 1], to: right[0], y, z };
}

/** How far the middles of the gaps are from the lip's plane, and how they lie to it. */
export function planeErrors(gaps: readonly Gap[], jig: LipSlotGuide, slot: JigSlot) {
  const [cos, sin] = cosSinDeg(slot.angleDeg);
  const normal: Point3 = [sin, 0, -cos];
  const middles = gaps.map(({ from, to, y, z }) =>
    pointBy(jig.jigToBlank, [(from + to) / 2, y, z]),
  );
  const offs = middles.map(([x, y, z]) => dot3([x - slot.mouth[0], y, z - slot.mouth[1]], normal));
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
