/** What is known of a lip-slot guide beyond what every jig tells. */
import type { BodyShape } from '../../body/shape.js';
import type { Axis, Jig, JigBlank } from '../jig.js';
import type { Hold } from './seat.js';
import type { SlotSpread } from './spread.js';

/** What a guide is made for; the body's shape is only asked for by guides that hold it. */
export type GuideWork = {
  readonly blank: JigBlank;
  readonly body?: { readonly shape: BodyShape };
};

export type LipSlotGuide = Jig & {
  readonly kind: 'lip-slot-guide';
  /** From the mouth of the slot along it into the wood. */
  readonly axis: Axis;
  readonly angleDeg: number;
  readonly depthMm: number;
  /** Width of the guide's own slot. */
  readonly guideSlotMm: number;
  /** How the saw makes the slot: at once, or along one wall and then the other. */
  readonly passes: 'one' | 'both walls';
  readonly stopHeightMm: number;
  /** Stop face beside the slot, toward the nose wall and away from it. */
  readonly stopLandMm: readonly [number, number];
  /** Cheeks with a wing for the hand that does not saw. */
  readonly wings: readonly ('starboard' | 'port')[];
  /** Most the workpiece can turn about the slot's direction: the slot out of square to the sides. Null: the seat does not stop it. */
  readonly leanDeg: number | null;
  /** Most it can tip across the slot: one side sawn deeper than the other. Null: the seat does not stop it. */
  readonly tipDeg: number | null;
  /** How well the saddle holds the angle, and how to push. */
  readonly hold: Hold;
  /** What clearances, printer and blade's play add up to. */
  readonly spread: SlotSpread;
  /** Sentences for the shop sheet. */
  readonly words: readonly string[];
};
