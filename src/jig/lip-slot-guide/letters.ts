/** What is written on a lip-slot guide, and where. */
import type { JigBlank, JigSlot } from '../jig.js';
import { type Face, placed, type Room } from '../letters.js';
import type { LipSlotPlan } from './plan.js';
import type { LipSlotGuideSetup } from './setup.js';

/**
 * Name and version, the lip angle ("A45") with the slot's depth, and the stop height the saw must be
 * set to: on the cheeks, and what does not fit there on the nose end.
 */
export function lipSlotLetters(given: {
  readonly blank: JigBlank;
  readonly slot: JigSlot;
  readonly setup: LipSlotGuideSetup;
  readonly plan: LipSlotPlan;
  /** Over both cheeks. */
  readonly widthMm: number;
}) {
  const { blank, slot, setup, plan, widthMm } = given;
  const places = [
    { face: starboard(), rooms: roomsOf(plan, false) },
    { face: port(plan.lengthMm, widthMm), rooms: roomsOf(plan, true) },
    {
      face: noseEnd(widthMm),
      rooms: [{ left: 0, right: widthMm, bottom: 0, top: plan.heightMm }],
    },
  ];
  const title = [blank.name.toUpperCase(), `V${blank.version}`.toUpperCase()];
  const slotText = [`A${number(slot.angleDeg)}`, `DEPTH ${number(slot.depthMm)}`];
  const stopText = ['STOP', number(setup.stopHeightMm)];
  return placed(
    [title, slotText, stopText].map((lines) => ({ breaks: [[lines.join(' ')], lines], places })),
    setup.letters,
  );
}

const number = (value: number): string => String(Number(value.toFixed(1)));

/** Seen from starboard, X to the right. */
const starboard = (): Face => ({
  name: 'starboard cheek',
  origin: [0, 0, 0],
  right: [1, 0, 0],
  up: [0, 0, 1],
  out: [0, -1, 0],
});

/** Seen from port, X to the left. */
const port = (lengthMm: number, widthMm: number): Face => ({
  name: 'port cheek',
  origin: [lengthMm, widthMm, 0],
  right: [-1, 0, 0],
  up: [0, 0, 1],
  out: [0, 1, 0],
});

/** Seen from ahead of the nose wall, port to the left. */
const noseEnd = (widthMm: number): Face => ({
  name: 'nose end',
  origin: [0, widthMm, 0],
  right: [0, -1, 0],
  up: [0, 0, 1],
  out: [-1, 0, 0],
});

/** Nose side of the slot, far side, and the band over it. */
function roomsOf(plan: LipSlotPlan, mirrored: boolean): Room[] {
  const { lengthMm, heightMm, slotX, slotTopZ } = plan;
  const half = plan.guideSlotMm / 2;
  const rooms = [
    { left: 0, right: slotX - half, bottom: 0, top: heightMm },
    { left: slotX + half, right: lengthMm, bottom: 0, top: heightMm },
    { left: 0, right: lengthMm, bottom: slotTopZ, top: heightMm },
  ];
  if (!mirrored) return rooms;
  return rooms.map((r) => ({ ...r, left: lengthMm - r.right, right: lengthMm - r.left }));
}
