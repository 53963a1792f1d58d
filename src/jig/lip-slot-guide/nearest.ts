/** What to change when a saddle does not hold its angle: the nearest value with which it does. */
import { insideRing } from '../../geometry/ring.js';
import { add, cosSinDeg, times } from '../../geometry/vec.js';
import type { JigSlot } from '../jig.js';
import type { Held } from './held.js';
import { planSaddle } from './saddle.js';
import { LEAST_RISE } from './seat.js';
import type { LipSlotGuideSetup } from './setup.js';

const LONGER = 1.25; // from one reach tried to the next
const LONGEST = 300; // mm, what a set-up may ask for
const HALVINGS = 5;
const MOST_TURN = 30; // whole degrees to either side tried

/**
 * In words of the files: a longer reach, which changes no lure, else the nearest whole degree of the
 * lip's angle at the same mouth and depth, else "none".
 */
export function nearestHeld(held: Held, slot: JigSlot, setup: LipSlotGuideSetup): string {
  const reachMm = nearestReach(held, slot, setup);
  if (reachMm !== null) return `reachMm ${reachMm}`;
  const angleDeg = nearestAngle(held, slot, setup);
  return angleDeg === null ? 'none' : `lip.angleDeg ${angleDeg}`;
}

const holds = (held: Held, slot: JigSlot, setup: LipSlotGuideSetup): boolean => {
  const { plan } = planSaddle(held, slot, setup);
  return plan !== null && plan.hold.riseMm > LEAST_RISE;
};

function nearestReach(held: Held, slot: JigSlot, setup: LipSlotGuideSetup): number | null {
  const held0 = (reachMm: number) => holds(held, slot, { ...setup, reachMm });
  let [short, long] = [setup.reachMm, setup.reachMm * LONGER];
  while (!held0(long)) {
    if (long >= LONGEST) return null;
    [short, long] = [long, Math.min(LONGEST, long * LONGER)];
  }
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (short + long) / 2;
    if (held0(middle)) long = middle;
    else short = middle;
  }
  const told = Math.ceil(long * 10) / 10;
  return held0(told) ? told : long;
}

function nearestAngle(held: Held, slot: JigSlot, setup: LipSlotGuideSetup): number | null {
  const from = Math.round(slot.angleDeg);
  for (let turn = 1; turn <= MOST_TURN; turn++) {
    for (const angleDeg of [from + turn, from - turn]) {
      if (angleDeg < 0 || angleDeg > 90) continue;
      const turned = atAngle(slot, angleDeg);
      if (insideRing(turned.end, held.outline) && holds(held, turned, setup)) return angleDeg;
    }
  }
  return null;
}

function atAngle(slot: JigSlot, angleDeg: number): JigSlot {
  const [cos, sin] = cosSinDeg(angleDeg);
  const end = add(slot.mouth, times([cos, sin], slot.depthMm));
  return { ...slot, angleDeg, end, outward: [0 - cos, 0 - sin] };
}
