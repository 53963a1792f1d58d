/** What is written on a center scribe, and where. */
import { labelOf } from '../../blank/blank.js';
import { insideRing, type Ring } from '../../geometry/ring.js';
import { add, type Point2, quarterLeft, times } from '../../geometry/vec.js';
import type { JigWork } from '../jig.js';
import { type Face, placed, type Room } from '../letters.js';
import { roomsIn } from '../outline.js';
import type { Tray } from './plan.js';
import type { CenterScribeSetup } from './setup.js';
import type { Tick } from './ticks.js';

const FLOOR_WIDTHS = [70, 56, 44, 34, 26, 18]; // mm, rooms tried on the floor
const SHIFTS = [0, 4, -4, 7, -7]; // mm along the wall from the notch
const ROOM_HEIGHTS = [9, 8, 7, 6, 5]; // mm, rooms tried on the apron

/** A letter for each tick on the apron beside it; whom the tray is for on the floor, under the blank. */
export function scribeLetters(
  blank: JigWork['blank'],
  setup: CenterScribeSetup,
  tray: Tray,
  ticks: readonly Tick[],
) {
  const apron = levelFace('apron', setup.floorMm);
  const floor = levelFace('floor', setup.floorMm);
  const title = labelOf(blank);
  const wishes = [
    ...ticks.map((tick) => ({
      breaks: [[tick.letter]],
      places: ROOM_HEIGHTS.map((high) => ({
        face: apron,
        rooms: besideNotch(tick, high, setup, tray),
      })),
    })),
    {
      breaks: [[title], title.split(' ')],
      places: [{ face: floor, rooms: roomsIn(tray.cavity, FLOOR_WIDTHS).map(seen) }],
    },
  ];
  return placed(wishes, setup.letters);
}

/** A level face read from the belly's side: its right and up are −X and −Y. */
const levelFace = (name: string, z: number): Face => ({
  name,
  origin: [0, 0, z],
  right: [-1, 0, 0],
  up: [0, -1, 0],
  out: [0, 0, 1],
});

/** A rectangle in X and Y as such a face sees it. */
const seen = ({ left, right, bottom, top }: Room): Room => ({
  left: 0 - right,
  right: 0 - left,
  bottom: 0 - top,
  top: 0 - bottom,
});

/** Rooms of one height that lie on the apron, clear of the wall, at the notch and a little to its sides. */
function besideNotch(
  { at, outward, letter }: Tick,
  high: number,
  { clearanceMm, wallMm, apronMm }: CenterScribeSetup,
  { wall, apron, toTray }: Tray,
): Room[] {
  const wide = high * (letter.length > 1 ? 1.7 : 1);
  return SHIFTS.flatMap((shift) => {
    const middle = add(
      add(at, times(outward, clearanceMm + wallMm + apronMm / 2)),
      times(quarterLeft(outward), shift),
    );
    const [x, y] = toTray(middle);
    const room = {
      left: x - wide / 2,
      right: x + wide / 2,
      bottom: y - high / 2,
      top: y + high / 2,
    };
    return isOn(room, apron, wall) ? [seen(room)] : [];
  });
}

const isOn = ({ left, right, bottom, top }: Room, apron: Ring, wall: Ring): boolean => {
  const [x, y] = [(left + right) / 2, (bottom + top) / 2];
  const edge: Point2[] = [left, x, right].flatMap((a) =>
    [bottom, y, top].map((b): Point2 => [a, b]),
  );
  return edge.every((p) => insideRing(p, apron) && !insideRing(p, wall));
};
