/** The faces of a drill-stop jig that carry letters, and the room on them. */
import { type Ring, ringBox } from '../../geometry/ring.js';
import type { Place, Room } from '../letters.js';
import { bandsOf, reachBetween } from '../outline.js';
import type { Cradle } from './cradle.js';
import type { Faced } from './guided.js';
import { leans } from './guided.js';
import type { DrillStopPlan } from './plan.js';
import type { DrillStopSetup } from './setup.js';

/** Widths tried for letters, narrow first, so that what is beside a guide stays near it, mm. */
const WIDTHS = [14, 18, 22, 28, 34, 40, 48, 60, 80, 100, 130];
/** Those tried where there is no guide to be near to. */
const WIDTHS_ALONG = [22, 34, 48, 80, 130];
const STEP = 4; // mm between the places tried

type Span = readonly [from: number, to: number];

/** Stretches of some widths as near to a place as the span allows; the whole span last. */
function windowsAt(near: number, [from, to]: Span): Span[] {
  const inside = WIDTHS.filter((w) => w < to - from);
  return [
    ...inside.map((w): Span => {
      const start = Math.min(Math.max(near - w / 2, from), to - w);
      return [start, start + w];
    }),
    [from, to],
  ];
}

/** Stretches of some widths all along a span. */
function windowsAlong([from, to]: Span): Span[] {
  return WIDTHS_ALONG.filter((w) => w < to - from).flatMap((w) => {
    const count = Math.floor((to - from - w) / STEP) + 1;
    return Array.from({ length: count }, (_, i): Span => [from + i * STEP, from + i * STEP + w]);
  });
}

/** Where guides and bosses stand in the stop face: stations, and heights above the bed. */
type Taken = { readonly along: Span; readonly up: Span };

function takenBy(guide: Faced, { axisUpMm, stopFaceMm, bosses }: Cradle): Taken {
  const [x] = guide.boring.mouth;
  const r = guide.seatRadius;
  if (!leans(guide)) return { along: [x - r, x + r], up: [axisUpMm - r, axisUpMm + r] };
  // The boss whose face is this guide's: what of it stands out of the stop face.
  const own = bosses
    .map(({ outline }) => ringBox(outline))
    .find(([a, low, b]) => {
      return low < stopFaceMm && a <= guide.face[0] && guide.face[0] <= b;
    });
  const [a, , b] = own ?? [x - r, 0, x + r];
  return { along: [a, b], up: [0, Infinity] };
}

const belly = ({ guides }: DrillStopPlan): Faced[] =>
  guides.filter(({ boring }) => boring.inward[1] > 0);

/** Seen from under the jig's belly wall; nose to the right. */
const stopFace = ({ cradle }: DrillStopPlan, rooms: readonly Room[]): Place => ({
  face: {
    name: 'stop face',
    origin: [cradle.aftEndMm - cradle.originMm, cradle.baseMm - cradle.stopFaceMm, 0],
    right: [-1, 0, 0],
    up: [0, 0, 1],
    out: [0, 1, 0],
  },
  rooms,
});

const onStopFace = ({ aftEndMm }: Cradle, [from, to]: Span, [bottom, top]: Span): Room => ({
  left: aftEndMm - to,
  right: aftEndMm - from,
  bottom,
  top,
});

/** Under and over a guide, as far as halfway to its neighbors; and on both sides of it up to them. */
export function besideGuide(plan: DrillStopPlan, guide: Faced): Place {
  const { cradle } = plan;
  const all = belly(plan).map((g) => takenBy(g, cradle));
  const i = belly(plan).indexOf(guide);
  const { along, up } = all[i];
  const fore = i > 0 ? all[i - 1].along[1] : cradle.noseEndMm;
  const aft = i + 1 < all.length ? all[i + 1].along[0] : cradle.aftEndMm;
  const halfway: Span = [
    i > 0 ? (fore + along[0]) / 2 : fore,
    i + 1 < all.length ? (aft + along[1]) / 2 : aft,
  ];
  const middle = (along[0] + along[1]) / 2;
  const bands: Span[] = [
    [0, up[0]],
    [up[1], cradle.wallTopMm],
  ];
  const whole: Span = [0, cradle.wallTopMm];
  return stopFace(plan, [
    ...bands.flatMap((band) =>
      windowsAt(middle, halfway).map((span) => onStopFace(cradle, span, band)),
    ),
    ...bands.flatMap((band) =>
      centered(middle, halfway, cradle).map((s) => onStopFace(cradle, s, band)),
    ),
    ...windowsAt(along[0], [fore, along[0]]).map((span) => onStopFace(cradle, span, whole)),
    ...windowsAt(along[1], [along[1], aft]).map((span) => onStopFace(cradle, span, whole)),
  ]);
}

/** Stretches centered on a guide that go on under or over its neighbors. */
const centered = (middle: number, [from, to]: Span, { noseEndMm, aftEndMm }: Cradle): Span[] =>
  WIDTHS.filter((w) => w > to - from)
    .map((w): Span => [middle - w / 2, middle + w / 2])
    .filter(([a, b]) => a >= noseEndMm && b <= aftEndMm);

/** Between the guides of the stop face over its whole height, and all along under and over them. */
export function freeStopFace(plan: DrillStopPlan): Place {
  const { cradle } = plan;
  const all = belly(plan).map((g) => takenBy(g, cradle));
  const { noseEndMm, aftEndMm, wallTopMm } = cradle;
  const gaps = [...all, null].map((next, i): Span => {
    const from = i > 0 ? all[i - 1].along[1] : noseEndMm;
    return [from, next ? next.along[0] : aftEndMm];
  });
  const under = Math.min(wallTopMm, ...all.map(({ up }) => up[0]));
  const over = Math.max(0, ...all.map(({ up }) => up[1]));
  const along: Span = [noseEndMm, aftEndMm];
  return stopFace(plan, [
    ...gaps.flatMap((gap) =>
      [gap, ...windowsAlong(gap)].map((span) => onStopFace(cradle, span, [0, wallTopMm])),
    ),
    ...[[0, under] as const, [over, wallTopMm] as const].flatMap((band) =>
      windowsAlong(along).map((span) => onStopFace(cradle, span, band)),
    ),
  ]);
}

/** Round the guide of tow eye or tail eye, on the end it is drilled from, over its ear. */
export function besideEye({ cradle }: DrillStopPlan, guide: Faced): Place {
  const { originMm, stopFaceMm, baseMm, noseEndMm, aftEndMm, axisUpMm, wallTopMm, ears } = cradle;
  const height = guide.boring.mouth[1];
  const back = baseMm - (ears?.thicknessMm ?? 0);
  const r = guide.seatRadius;
  const isNose = guide.boring.inward[0] > 0;
  // From heights in the lure to left and right on the face.
  const room = ([low, high]: Span, [bottom, top]: Span): Room =>
    isNose
      ? { left: low - stopFaceMm, right: high - stopFaceMm, bottom, top }
      : { left: baseMm - high, right: baseMm - low, bottom, top };
  const all: Span = [stopFaceMm, back];
  return {
    face: isNose
      ? {
          name: 'nose end',
          origin: [noseEndMm - originMm, baseMm - stopFaceMm, 0],
          right: [0, -1, 0],
          up: [0, 0, 1],
          out: [-1, 0, 0],
        }
      : {
          name: 'tail end',
          origin: [aftEndMm - originMm, 0, 0],
          right: [0, 1, 0],
          up: [0, 0, 1],
          out: [1, 0, 0],
        },
    rooms: [
      ...windowsAt(height, all).map((span) => room(span, [0, axisUpMm - r])),
      ...windowsAt(height, all).map((span) => room(span, [axisUpMm + r, wallTopMm])),
      ...windowsAt(height - r, [stopFaceMm, height - r]).map((s) => room(s, [0, wallTopMm])),
      ...windowsAt(height + r, [height + r, back]).map((s) => room(s, [0, wallTopMm])),
    ],
  };
}

/**
 * The top of the belly wall, seen from the open side, nose to the left; and that of the part of it
 * that is raised about the guides. With a station: as near to it as can be.
 */
export function wallTops(plan: DrillStopPlan, stationMm?: number): Place[] {
  const { noseEndMm, aftEndMm, wallTopMm, bosses } = plan.cradle;
  const raised = bosses
    .filter(({ topMm }) => topMm > wallTopMm)
    .map(({ outline, topMm }) => ({ span: stationsOf(outline), topMm }));
  const low = gapsIn([noseEndMm, aftEndMm], raised.map(({ span }) => span).sort(byStart));
  const belly = raised.filter(({ topMm }, i) => i === 0 && raised.every((r) => r.topMm <= topMm));
  return [
    ...low.map((span) => wallTop(plan, 'wall top', { span, topMm: wallTopMm }, stationMm)),
    ...belly.map((part) => wallTop(plan, 'raised wall top', part, stationMm)),
  ];
}

const byStart = (a: Span, b: Span): number => a[0] - b[0];

function stationsOf(outline: Ring): Span {
  const [from, , to] = ringBox(outline);
  return [from, to];
}

/** What sorted spans leave of a span. */
function gapsIn([from, to]: Span, taken: readonly Span[]): Span[] {
  const starts = [from, ...taken.map(([, b]) => b)];
  const stops = [...taken.map(([a]) => a), to];
  return starts.map((start, i): Span => [start, stops[i]]).filter(([start, stop]) => stop > start);
}

function wallTop(
  { cradle, cavity }: DrillStopPlan,
  name: string,
  { span, topMm }: { readonly span: Span; readonly topMm: number },
  stationMm?: number,
): Place {
  const { originMm, noseEndMm, baseMm, stopFaceMm } = cradle;
  const windows =
    stationMm === undefined ? [span, ...windowsAlong(span)] : windowsAt(stationMm, span);
  return {
    face: {
      name,
      origin: [noseEndMm - originMm, 0, topMm],
      right: [1, 0, 0],
      up: [0, 1, 0],
      out: [0, 0, 1],
    },
    rooms: windows.map(([from, to]) => ({
      left: from - noseEndMm,
      right: to - noseEndMm,
      bottom: baseMm - (reachBetween(cavity, from, to)?.low ?? baseMm),
      top: baseMm - stopFaceMm,
    })),
  };
}

/** What lies on the printer's bed, under the belly wall, where all is solid above; nose to the right. */
export function underside({ cradle, cavity }: DrillStopPlan): Place {
  const { originMm, noseEndMm, aftEndMm, baseMm, stopFaceMm } = cradle;
  const span: Span = [noseEndMm, aftEndMm];
  return {
    face: {
      name: 'underside',
      origin: [aftEndMm - originMm, 0, 0],
      right: [-1, 0, 0],
      up: [0, 1, 0],
      out: [0, 0, -1],
    },
    rooms: [span, ...windowsAlong(span)].map(([from, to]) => ({
      left: aftEndMm - to,
      right: aftEndMm - from,
      bottom: baseMm - (reachBetween(cavity, from, to)?.low ?? baseMm),
      top: baseMm - stopFaceMm,
    })),
  };
}

/** Rectangles inside the cavity, clear of the push hole, highest first. */
export function floor({ cradle, cavity, pushHole }: DrillStopPlan, setup: DrillStopSetup): Place {
  const { originMm, baseMm, aftEndMm, floorMm } = cradle;
  const [from, , tail] = ringBox(cavity);
  const radius = setup.pushHoleDiameterMm / 2;
  const bandOf = bandsOf(cavity);
  const rooms = windowsAlong([from, Math.min(tail, aftEndMm)]).flatMap(([x0, x1]): Room[] => {
    const band = bandOf(x0, x1);
    if (!band || (pushHole && x0 < pushHole[0] + radius && x1 > pushHole[0] - radius)) return [];
    const [bottom, top] = [baseMm - band.high, baseMm - band.low];
    return [{ left: x0 - originMm, right: x1 - originMm, bottom, top }];
  });
  return {
    face: {
      name: 'floor',
      origin: [0, 0, floorMm],
      right: [1, 0, 0],
      up: [0, 1, 0],
      out: [0, 0, 1],
    },
    rooms: rooms.sort((a, b) => b.top - b.bottom - (a.top - a.bottom) || a.left - b.left),
  };
}

/** Seen from behind the back of the blank; nose to the left. */
export function base({ cradle }: DrillStopPlan): Place {
  const { originMm, noseEndMm, aftEndMm, wallTopMm } = cradle;
  const half = wallTopMm / 2;
  const bands: Span[] = [
    [0, wallTopMm],
    [0, half],
    [half, wallTopMm],
  ];
  return {
    face: {
      name: 'base',
      origin: [noseEndMm - originMm, 0, 0],
      right: [1, 0, 0],
      up: [0, 0, 1],
      out: [0, -1, 0],
    },
    rooms: windowsAlong([0, aftEndMm - noseEndMm])
      .concat([[0, aftEndMm - noseEndMm]])
      .flatMap(([left, right]) =>
        bands.map(([bottom, top]): Room => ({ left, right, bottom, top })),
      ),
  };
}
