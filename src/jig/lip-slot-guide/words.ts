/** What the shop sheet says of a lip-slot guide: how to press, which saw, where it stops, what to look out for. */
import { told } from '../wording.js';
import type { Held } from './held.js';
import type { LipSlotPlan } from './plan.js';
import type { LipSlotGuideSetup } from './setup.js';

/** Less than this is straight along the slot, as far as a hand can tell. */
const STRAIGHT_DEG = 5;

export function guideWords(held: Held, plan: LipSlotPlan, setup: LipSlotGuideSetup): string[] {
  return [
    press(plan),
    held.kind === 'sawn' ? sides(plan) : centerLine(plan),
    saw(plan, setup),
    `Set the stop ${mm(setup.stopHeightMm)} from the teeth; saw until it rests on the guide on both sides of the slot and over both cheeks.`,
    ...fingers(plan, setup),
    'Local rules and the instructions of the saw come first. A small part is never held by the fingers alone near a blade: clamp guide and lure, or press them on the bench; saw with light strokes and wear eye protection.',
  ];
}

function press({ hold }: LipSlotPlan): string {
  const way =
    hold.pushDeg < STRAIGHT_DEG
      ? 'straight along the slot'
      : `along the slot and ${Math.round(hold.pushDeg)}° from it toward the nose wall`;
  return `Press guide and lure together, ${way}, and keep pressing while you saw: the saw drives them apart.`;
}

const sides = ({ leanDeg }: LipSlotPlan): string =>
  `Keep a flat side of the blank against one cheek${
    leanDeg === null ? '' : `: free between them, the slot could lean by ${deg(leanDeg)}`
  }.`;

const centerLine = ({ leanDeg }: LipSlotPlan): string =>
  leanDeg === null
    ? 'The seat does not keep this body from rolling: set its center line to the marks on the guide’s ends and clamp it. A slot sawn in the square blank is truer.'
    : `Set the body’s center line to the marks on the guide’s ends: by its seat alone the slot could lean by ${deg(leanDeg)}. A slot sawn in the square blank is truer.`;

function saw({ passes, guideSlotMm }: LipSlotPlan, { sawKerfMm }: LipSlotGuideSetup): string {
  const blade = `A saw that cuts ${mm(sawKerfMm)} over the set of its teeth, in the guide’s slot of ${mm(guideSlotMm)}`;
  return passes === 'one'
    ? `${blade}: one pass.`
    : `${blade}: first along one wall, then along the other, then clear what stands between.`;
}

function fingers({ wing }: LipSlotPlan, { guardMm }: LipSlotGuideSetup): string[] {
  if (!wing)
    return [
      'The guide has no wings: hold it where no finger is in line with the blade, or clamp it.',
    ];
  const where =
    wing.starboard && wing.port
      ? 'the wings on both cheeks'
      : `the wing on the ${wing.port ? 'port' : 'starboard'} cheek, away from the saw hand`;
  return [
    `Hold the guide by ${where}, thumb and fingers behind the fin; a strip clamped to the blade is no wider than ${mm(guardMm)} to that side.`,
  ];
}

const mm = (value: number): string => `${told(value, 2)} mm`;
const deg = (value: number): string => `${told(value)}°`;
