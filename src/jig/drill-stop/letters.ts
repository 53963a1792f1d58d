/** What is written on a drill-stop jig, and where. */
import { ringBox } from '../../geometry/ring.js';
import type { JigBlank } from '../jig.js';
import { type Face, placed, type Room, type Wish } from '../letters.js';
import { bandsOf } from '../outline.js';
import type { DrillGuide } from './jig.js';
import type { DrillStopPlan } from './plan.js';
import type { DrillStopSetup } from './setup.js';

const FLOOR_STEP = 2; // mm between the places tried for letters on the floor
const FLOOR_WIDTHS = [48, 40, 32, 24, 18]; // mm, rooms tried there

/**
 * Beside each guide its bit and collar setting ("D8 L40.0"). Name and version on the stop face if
 * they fit, else on the floor, else on the base. On the floor, where somebody might think of it, "NO
 * CASTING", else on the base.
 */
export function drillStopLetters(blank: JigBlank, setup: DrillStopSetup, plan: DrillStopPlan) {
  const stop = stopFaceOf(plan);
  const floor = { face: floorOf(plan), rooms: floorRooms(plan, setup) };
  const base = { face: baseOf(), rooms: [baseRoom(plan)] };
  const title = [blank.name.toUpperCase(), `V${blank.version}`.toUpperCase()];
  const wishes: Wish[] = [
    ...plan.guides.map((guide) => ({
      breaks: [[settingOf(guide)]],
      places: [{ face: stop, rooms: besideGuide(plan, guide) }],
    })),
    {
      breaks: [[title.join(' ')], title],
      places: [{ face: stop, rooms: endRooms(plan) }, floor, base],
    },
    { breaks: [['NO CASTING'], ['NO', 'CASTING']], places: [floor, base] },
  ];
  return placed(wishes, setup.letters);
}

/** Bit and collar setting as cut into the jig: "D8 L40.0". */
const settingOf = ({ bitDiameterMm, collarSettingMm }: DrillGuide): string =>
  `D${Number(bitDiameterMm.toFixed(2))} L${collarSettingMm.toFixed(1)}`;

/** Seen from under the jig's belly wall; nose to the right. */
function stopFaceOf({ cradle }: DrillStopPlan): Face {
  return {
    name: 'stop face',
    origin: [cradle.aftEndMm - cradle.noseEndMm, cradle.baseMm - cradle.stopFaceMm, 0],
    right: [-1, 0, 0],
    up: [0, 0, 1],
    out: [0, 1, 0],
  };
}

function floorOf({ cradle }: DrillStopPlan): Face {
  return {
    name: 'floor',
    origin: [0, 0, cradle.floorMm],
    right: [1, 0, 0],
    up: [0, 1, 0],
    out: [0, 0, 1],
  };
}

/** Seen from behind the back of the blank; nose to the left. */
const baseOf = (): Face => ({
  name: 'base',
  origin: [0, 0, 0],
  right: [1, 0, 0],
  up: [0, 0, 1],
  out: [0, -1, 0],
});

const baseRoom = ({ cradle }: DrillStopPlan): Room => ({
  left: 0,
  right: cradle.aftEndMm - cradle.noseEndMm,
  bottom: 0,
  top: cradle.wallTopMm,
});

/** Bands under and over a guide, centered on it, as far as halfway to its neighbors. */
function besideGuide({ cradle, guides }: DrillStopPlan, guide: DrillGuide): Room[] {
  const i = guides.indexOf(guide);
  const halfway = (other: DrillGuide | undefined, end: number) =>
    other ? (other.stationMm + guide.stationMm) / 2 : end;
  const from = halfway(guides[i - 1], cradle.noseEndMm);
  const to = halfway(guides[i + 1], cradle.aftEndMm);
  const reach = Math.min(guide.stationMm - from, to - guide.stationMm);
  const radius = guide.holeDiameterMm / 2;
  const bands = [
    { bottom: 0, top: cradle.axisUpMm - radius },
    { bottom: cradle.axisUpMm + radius, top: Math.min(cradle.wallTopMm, cradle.bossTopMm) },
  ];
  return bands.flatMap((band) =>
    [
      [guide.stationMm - reach, guide.stationMm + reach],
      [from, to],
    ].map(([x0, x1]) => ({ ...band, left: cradle.aftEndMm - x1, right: cradle.aftEndMm - x0 })),
  );
}

/** Nose end and tail end, beside the guides or over the settings under them; and the band over the guides. */
function endRooms({ cradle, guides }: DrillStopPlan): Room[] {
  const first = guides[0];
  const last = guides[guides.length - 1];
  const room = (from: number, to: number, bottom: number): Room => ({
    left: cradle.aftEndMm - to,
    right: cradle.aftEndMm - from,
    bottom,
    top: cradle.wallTopMm,
  });
  const widest = Math.max(...guides.map((g) => g.holeDiameterMm)) / 2;
  const [under, over] = [cradle.axisUpMm - widest, cradle.axisUpMm + widest];
  const ends = [0, under].flatMap((bottom) => [
    room(cradle.noseEndMm, first.stationMm - first.holeDiameterMm / 2, bottom),
    room(last.stationMm + last.holeDiameterMm / 2, cradle.aftEndMm, bottom),
  ]);
  return [...ends, room(cradle.noseEndMm, cradle.aftEndMm, over)];
}

/** Rectangles of several widths inside the cavity, clear of the push hole, highest first; floor coordinates. */
function floorRooms({ cradle, cavity, pushHole }: DrillStopPlan, setup: DrillStopSetup): Room[] {
  const [from, , tail] = ringBox(cavity);
  const to = Math.min(tail, cradle.aftEndMm);
  const radius = setup.pushHoleDiameterMm / 2;
  const bandOf = bandsOf(cavity);
  const rooms = FLOOR_WIDTHS.flatMap((width) => {
    const count = Math.max(0, Math.floor((to - from - width) / FLOOR_STEP));
    return Array.from({ length: count }, (_, i): Room[] => {
      const [x0, x1] = [from + i * FLOOR_STEP, from + i * FLOOR_STEP + width];
      const band = bandOf(x0, x1);
      if (!band || (pushHole && x0 < pushHole[0] + radius && x1 > pushHole[0] - radius)) return [];
      const { noseEndMm, baseMm } = cradle;
      const [bottom, top] = [baseMm - band.high, baseMm - band.low];
      return [{ left: x0 - noseEndMm, right: x1 - noseEndMm, bottom, top }];
    }).flat();
  });
  return rooms.sort((a, b) => b.top - b.bottom - (a.top - a.bottom) || a.left - b.left);
}
