/**
 * A straight strip across the body, seen from the side: the lip slot, or the plate in it. It starts
 * at the slot's inner end and runs outward; at each place the body is so wide. What lies inside and
 * what sticks out follow by integration.
 */

import type { LipSlot } from '../blank/slot.js';
import { halves } from '../body/properties.js';
import type { BodyShape } from '../body/shape.js';
import { UNIT_RULE } from '../geometry/quadrature.js';
import { add, type Point2, quarterLeft, times } from '../geometry/vec.js';
import { type Moments, NOTHING } from './moments.js';

/** Half the breadth of the body at a point of the center plane, mm; 0 outside its side view. */
export function halfBreadthAt(shape: BodyShape, [x, z]: Point2): number {
  if (x <= 0 || x >= shape.lengthMm) return 0;
  const { b, h, n } = halves(shape, x)[z >= 0 ? 0 : 1];
  const rest = 1 - (Math.abs(z) / h) ** n;
  return rest > 0 ? b * rest ** (1 / n) : 0;
}

/** The point a way outward from the slot's inner end and a way across its thickness. */
export const inSlot = (
  { end, outward }: Pick<LipSlot, 'end' | 'outward'>,
  alongMm: number,
  acrossMm: number,
): Point2 => add(add(end, times(outward, alongMm)), times(quarterLeft(outward), acrossMm));

const LOOKS = 400; // places looked at along the strip for the last one inside the body

/**
 * How far along a line of the strip the body reaches: the last place inside it, to rounding. A strip
 * that leaves the body and comes back within a 400th of its length is taken to have stayed.
 */
function reach(
  shape: BodyShape,
  slot: LipSlot,
  { acrossMm, farMm }: { acrossMm: number; farMm: number },
): number {
  const inside = (s: number) => halfBreadthAt(shape, inSlot(slot, s, acrossMm)) > 0;
  let k = LOOKS;
  while (k >= 0 && !inside((farMm * k) / LOOKS)) k--;
  if (k < 0) return 0;
  let [low, high] = [(farMm * k) / LOOKS, (farMm * Math.min(LOOKS, k + 1)) / LOOKS];
  for (let i = 0; i < 50 && high > low; i++) {
    const middle = (low + high) / 2;
    if (inside(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Where the strip is looked at: lines across its thickness, each with its share and its reach. */
export type StripLine = {
  readonly acrossMm: number;
  readonly weightMm: number;
  readonly reachMm: number;
};

export function stripLines(
  shape: BodyShape,
  slot: LipSlot,
  { thicknessMm, farMm }: { readonly thicknessMm: number; readonly farMm: number },
): StripLine[] {
  return UNIT_RULE.map(({ t, weight }) => {
    const acrossMm = (t - 0.5) * thicknessMm;
    const reachMm = reach(shape, slot, { acrossMm, farMm });
    return { acrossMm, weightMm: weight * thicknessMm, reachMm };
  });
}

export type StripPart = {
  readonly lines: readonly StripLine[];
  /** Stretch along the strip, from the slot's inner end outward. */
  readonly fromMm: number;
  readonly toMm: number;
  /** No wider than this to either side, by the way from the inner end: the plate. Infinity for the slot, which is as wide as the body. */
  readonly halfWidthAt: (alongMm: number) => number;
};

/**
 * The body inside a stretch of the strip, as moments per mm³. Along each line the points crowd
 * toward the surface, where the breadth ends like a root: accuracy about 1e-5.
 */
export function insideStrip(shape: BodyShape, slot: LipSlot, part: StripPart): Moments {
  const sum = { ...NOTHING };
  for (const { acrossMm, weightMm, reachMm } of part.lines) {
    const end = Math.min(part.toMm, reachMm);
    const stretch = end - part.fromMm;
    if (stretch <= 0) continue;
    for (const { t, weight } of UNIT_RULE) {
      const along = end - stretch * t * t;
      const [x, z] = inSlot(slot, along, acrossMm);
      const half = Math.min(part.halfWidthAt(along), halfBreadthAt(shape, [x, z]));
      const w = weightMm * weight * 2 * t * stretch * 2 * half;
      sum.amount += w;
      sum.x += w * x;
      sum.z += w * z;
      sum.xx += w * x * x;
      sum.yy += (w * half * half) / 3;
      sum.zz += w * z * z;
      sum.xz += w * x * z;
    }
  }
  return sum;
}
