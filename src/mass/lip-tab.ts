/** Whether the lip's tab is hidden in the body. */
import type { LipSlot } from '../blank/slot.js';
import type { BodyShape } from '../body/shape.js';
import type { Pattern } from '../pattern/pattern.js';
import { type Problem, problem } from '../problem.js';
import { halfBreadthAt, inSlot } from './strip.js';

const LOOKS = 100; // places along the slot; the body's breadth changes by less than 1 % between them

/**
 * A tab wider than the body is anywhere along the slot sticks out beside it all the way, and might as
 * well be the lip. (Toward the belly the body always ends narrower than the tab.)
 */
export function tabProblems({ lip }: Pattern, shape: BodyShape, slot: LipSlot | null): Problem[] {
  if (!lip?.tab || !slot) return [];
  const tabMm = lip.tab.widthMm;
  const breadths = Array.from(
    { length: LOOKS + 1 },
    (_, i) => 2 * halfBreadthAt(shape, inSlot(slot, (slot.depthMm * i) / LOOKS, 0)),
  );
  const breadthMm = Math.max(...breadths);
  const limitMm = Math.floor(breadthMm * 10) / 10;
  return tabMm > breadthMm
    ? [problem('lip-tab-wider-than-body', ['lip', 'tab', 'widthMm'], { tabMm, breadthMm, limitMm })]
    : [];
}
