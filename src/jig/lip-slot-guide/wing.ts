/**
 * Wings: where the hand that does not saw presses and is kept from the blade. On a cheek, beside the
 * slot on the side the workpiece goes on, stands a fin as high as the blade comes; behind it a ledge
 * for thumb or finger, level with the stop face. Both stand on the bed as they are printed.
 */
import { asRegion, union } from '../../geometry/clip.js';
import { type Region, type Ring, rectRing, ring } from '../../geometry/ring.js';
import type { Point2 } from '../../geometry/vec.js';
import { wholeMicrons } from '../outline.js';
import type { SaddlePlan } from './saddle.js';
import type { LipSlotGuideSetup } from './setup.js';

/** A thumb's breadth; common practice, no source. */
const THUMB_MM = 22;
/** Least of the ledge behind the fin. */
const LEDGE_MM = 12;
/** Corners the hand meets are cut off by this. */
const CORNER_MM = 3;

/** Jig coordinates along X. */
export type WingPlan = {
  /** The fin's face toward the blade. */
  readonly fromX: number;
  readonly finToX: number;
  readonly toX: number;
  readonly outMm: number;
  readonly thickMm: number;
  /** Cheeks that carry one. */
  readonly starboard: boolean;
  readonly port: boolean;
};

/**
 * Null without wings. Who saws with the right hand stands at the starboard cheek with the body to
 * the left: that cheek stays plain for the knuckles of the saw hand, and the wing is on the other.
 */
export function planWing(
  { slotX, guideSlotMm, lengthMm }: Pick<SaddlePlan, 'slotX' | 'guideSlotMm' | 'lengthMm'>,
  { hand, wingMm, guardMm, wallMm }: LipSlotGuideSetup,
): WingPlan | null {
  if (wingMm === 0) return null;
  const fromX = wholeMicrons(slotX + guideSlotMm / 2 + guardMm);
  const finToX = wholeMicrons(fromX + wallMm);
  const reached = Math.min(lengthMm, fromX + THUMB_MM);
  return {
    fromX,
    finToX,
    toX: wholeMicrons(Math.max(finToX + LEDGE_MM, reached)),
    outMm: wingMm,
    thickMm: wallMm,
    starboard: hand !== 'right',
    port: hand !== 'left',
  };
}

/** The cheeks go on as far as what stands on them. */
export const cheekLength = (lengthMm: number, wing: WingPlan | null): number =>
  Math.max(lengthMm, wing?.toX ?? 0);

/** The guide seen along the slot (X, Y), in prisms that all begin at the stop face. */
export type Storey = { readonly regions: readonly Region[]; readonly toZ: number };

export type PlanView = {
  readonly lengthMm: number;
  readonly cheekLengthMm: number;
  readonly cheekMm: number;
  /** Outer faces of the two cheeks. */
  readonly fromY: number;
  readonly toY: number;
};

export function storeys(
  view: PlanView,
  wing: WingPlan | null,
  { slotTopZ, heightMm }: Pick<SaddlePlan, 'slotTopZ' | 'heightMm'>,
): Storey[] {
  const block = blockRings(view);
  const over = (rings: readonly Ring[], toZ: number): Storey => ({
    regions: union([...block, ...rings].map(asRegion)),
    toZ,
  });
  if (!wing) return [over([], heightMm)];
  const fins = wingRings(view, wing, [wing.fromX, wing.finToX]);
  const ledges = wingRings(view, wing, [wing.fromX, wing.toX]);
  return [over([], heightMm), over(fins, slotTopZ), over(ledges, wing.thickMm)];
}

function blockRings({ lengthMm, cheekLengthMm, cheekMm, fromY, toY }: PlanView): Ring[] {
  return [
    rectRing(0, fromY, lengthMm, toY),
    ...(cheekLengthMm > lengthMm
      ? [
          rectRing(0, fromY, cheekLengthMm, fromY + cheekMm),
          rectRing(0, toY - cheekMm, cheekLengthMm, toY),
        ]
      : []),
  ];
}

/** What stands out from the cheeks between two X, rooted in them, its outer corner at the far end cut off. */
function wingRings(
  { fromY, toY, cheekMm }: PlanView,
  { starboard, port, outMm }: WingPlan,
  [fromX, toX]: Point2,
): Ring[] {
  const cut = Math.min(CORNER_MM, outMm / 2, (toX - fromX) / 2);
  const out = (face: number, way: 1 | -1): Ring =>
    ring([
      [fromX, face - way * (cheekMm / 2)],
      [fromX, face + way * outMm],
      [toX - cut, face + way * outMm],
      [toX, face + way * (outMm - cut)],
      [toX, face - way * (cheekMm / 2)],
    ]);
  return [...(starboard ? [out(fromY, -1)] : []), ...(port ? [out(toY, 1)] : [])];
}
