/** What is known of a lip-slot guide beyond what every jig tells. */
import type { Axis, Jig } from '../jig.js';
import type { Hold } from './seat.js';

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
  /** Most the slot can be out of square to the sides, from the gap at the cheeks. */
  readonly leanDeg: number;
  /** How well the saddle holds the angle, and how to push. */
  readonly hold: Hold;
};
