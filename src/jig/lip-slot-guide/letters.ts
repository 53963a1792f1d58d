/**
 * What is written on a lip-slot guide, and where: read as the saw stands over it, the stop face up.
 * The cheek toward the maker is lettered first.
 */

import type { Point3 } from '../../geometry/vec.js';
import type { JigBlank, JigSlot } from '../jig.js';
import { type Face, type Place, placed, type Room, type Sunk } from '../letters.js';
import { titleOf, told } from '../wording.js';
import type { LipSlotPlan } from './plan.js';
import type { LipSlotGuideSetup } from './setup.js';

const STARBOARD = 'starboard cheek';
const PORT = 'port cheek';

/** The slot's line goes on at least this far over its end, the center line's marks this far from an edge. */
export const LINE_MM = 3;
export const MARK_MM = 6;
/** Letters nearer to the middle of the slot's line than this are in its way. */
const BESIDE_MM = 0.8;

/**
 * Name and version, the lip angle ("A45") with the slot's depth, and the stop height the saw must be
 * set to: on the cheeks, and what does not fit there on the nose end.
 */
export function lipSlotLetters(given: {
  readonly blank: JigBlank;
  readonly slot: JigSlot;
  readonly setup: LipSlotGuideSetup;
  readonly plan: LipSlotPlan;
}) {
  const { blank, slot, setup, plan } = given;
  const starboard = { face: starboardFace(plan), rooms: cheekRooms(plan, 'starboard') };
  const port = { face: portFace(plan), rooms: cheekRooms(plan, 'port') };
  const cheeks: Place[] = setup.hand === 'left' ? [port, starboard] : [starboard, port];
  const places = [...cheeks, { face: noseEnd(plan), rooms: [noseRoom(plan)] }];
  const title = titleOf(blank);
  const [angle, depth] = [`A${told(slot.angleDeg)}`, told(slot.depthMm)];
  const stopText = ['STOP', told(setup.stopHeightMm)];
  const breaks = [
    [[title.join(' ')], title],
    [[`${angle} DEPTH ${depth}`], [angle, `DEPTH ${depth}`], [angle, 'DEPTH', depth]],
    [[stopText.join(' ')], stopText],
  ];
  return placed(
    breaks.map((lines) => ({ breaks: lines, places })),
    setup.letters,
  );
}

const DOWN: Point3 = [0, 0, -1];

/** Seen from starboard, stop face up: X to the left. */
const starboardFace = ({ cheekLengthMm, fromY, heightMm }: LipSlotPlan): Face => ({
  name: STARBOARD,
  origin: [cheekLengthMm, fromY, heightMm],
  right: [-1, 0, 0],
  up: DOWN,
  out: [0, -1, 0],
});

/** Seen from port, stop face up: X to the right. */
const portFace = ({ toY, heightMm }: LipSlotPlan): Face => ({
  name: PORT,
  origin: [0, toY, heightMm],
  right: [1, 0, 0],
  up: DOWN,
  out: [0, 1, 0],
});

/** Seen from ahead of the nose wall, stop face up: port to the right. */
const noseEnd = ({ fromY, heightMm }: LipSlotPlan): Face => ({
  name: 'nose end',
  origin: [0, fromY, heightMm],
  right: [0, 1, 0],
  up: DOWN,
  out: [-1, 0, 0],
});

const noseRoom = ({ fromY, toY, heightMm }: LipSlotPlan): Room => ({
  left: 0,
  right: toY - fromY,
  bottom: MARK_MM + LINE_MM,
  top: heightMm,
});

/** A rectangle of a cheek in jig coordinates. */
type Patch = {
  readonly fromX: number;
  readonly toX: number;
  readonly fromZ: number;
  readonly toZ: number;
};

/** Nose side of the slot, the other side clear of a wing, and the band over slot and fin. */
function cheekRooms(plan: LipSlotPlan, side: 'starboard' | 'port'): Room[] {
  const { cheekLengthMm: end, heightMm, slotX, slotTopZ, wing } = plan;
  const half = plan.guideSlotMm / 2;
  const beside = slotX + half;
  const aft: Patch[] = wing?.[side]
    ? [
        { fromX: wing.finToX, toX: end, fromZ: wing.thickMm, toZ: heightMm },
        { fromX: beside, toX: end, fromZ: slotTopZ, toZ: heightMm },
        { fromX: beside, toX: wing.fromX, fromZ: 0, toZ: heightMm },
      ]
    : [{ fromX: beside, toX: end, fromZ: 0, toZ: heightMm }];
  const patches: Patch[] = [
    { fromX: 0, toX: slotX - half, fromZ: 0, toZ: heightMm },
    ...aft,
    { fromX: 0, toX: end, fromZ: slotTopZ + LINE_MM, toZ: heightMm },
  ];
  return patches.map(({ fromX, toX, fromZ, toZ }) => {
    const [left, right] = side === 'starboard' ? [end - toX, end - fromX] : [fromX, toX];
    return { left, right, bottom: heightMm - toZ, top: heightMm - fromZ };
  });
}

/** How far up a cheek the slot's line can go on before it meets letters. */
export function lineTop(plan: LipSlotPlan, side: 'starboard' | 'port', sunk: readonly Sunk[]) {
  const { cheekLengthMm, heightMm, slotX, slotTopZ } = plan;
  const name = side === 'starboard' ? STARBOARD : PORT;
  const at = side === 'starboard' ? cheekLengthMm - slotX : slotX;
  const over = sunk.filter(
    ({ face, box }) =>
      face.name === name &&
      box.left - BESIDE_MM < at &&
      at < box.right + BESIDE_MM &&
      heightMm - box.bottom > slotTopZ,
  );
  return Math.min(Infinity, ...over.map(({ box }) => heightMm - box.top - BESIDE_MM));
}
