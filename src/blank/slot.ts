/** The lip slot as seen from the side. */
import type { BodyShape } from '../body/shape.js';
import { offsetAt } from '../body/shape.js';
import { add, cosSinDeg, type Point2, quarterLeft, sub, times } from '../geometry/vec.js';
import type { Lip } from '../pattern/pattern.js';

/** A straight slot across the whole thickness, the middle of its mouth on the finished belly. */
export type LipSlot = {
  /** Between the lip and the datum line: 0 straight ahead, 90 square to the body. */
  readonly angleDeg: number;
  /** Where the slot's center line leaves the finished belly, (station, height). */
  readonly mouth: Point2;
  /** Middle of the slot's square inner end. */
  readonly end: Point2;
  /** Unit vector from the inner end to the mouth: the way the lip points. */
  readonly outward: Point2;
  readonly widthMm: number;
  /** From mouth to end, along the slot. */
  readonly depthMm: number;
};

export function lipSlot(shape: BodyShape, lip: Lip): LipSlot {
  const [c, s] = cosSinDeg(lip.angleDeg);
  const outward: Point2 = [-c + 0, -s + 0];
  const mouth: Point2 = [lip.slotStationMm, -offsetAt(shape.bellySquared, lip.slotStationMm)];
  return {
    angleDeg: lip.angleDeg,
    mouth,
    end: sub(mouth, times(outward, lip.slotDepthMm)),
    outward,
    widthMm: lip.slotWidthMm,
    depthMm: lip.slotDepthMm,
  };
}

/** The slot seen from the side, from its inner end so far outward. */
export function slotView(
  slot: LipSlot,
  lengthMm: number,
): readonly [right: Point2, left: Point2, leftOut: Point2, rightOut: Point2] {
  const [right, left] = slotCorners(slot);
  const out = times(slot.outward, lengthMm);
  return [right, left, add(left, out), add(right, out)];
}

/** The two inner corners, on the right and on the left of the outward direction. */
export function slotCorners({ end, outward, widthMm }: LipSlot): readonly [Point2, Point2] {
  const half = times(quarterLeft(outward), widthMm / 2);
  return [sub(end, half), add(end, half)];
}
