/**
 * Profile gauges: one plate over the back and one under the belly with the negative of the finished
 * side view. Beyond nose and tail their edges lie on the datum line, where half notches of both make
 * a window over the line; the corners where those edges end are nose tip and tail. Ticks stand at the
 * stations of the section gauges. It gauges bare shaped wood.
 */
import { nominal } from '../blank/nominal.js';
import { profilePath } from '../blank/profile.js';
import { type LipSlot, slotCorners } from '../blank/slot.js';
import { type BodyShape, offsetAt } from '../body/shape.js';
import { partOf, pathOf, pointOn, type Segment, segmentsOf } from '../geometry/arcpath.js';
import {
  add,
  cross,
  distance,
  type Point2,
  quarterLeft,
  sub,
  times,
  unit,
} from '../geometry/vec.js';
import { Fault } from '../problem.js';
import {
  lines,
  NOTCH_MM,
  type Plate,
  type PlateName,
  type PlateSizes,
  TICK_MM,
  titleWords,
} from './plate.js';
import type { SectionGauge } from './section.js';

/** Frame of the plate: that of the side view. */
export type ProfileGauge = Plate & {
  readonly side: 'back' | 'belly';
  /** Stations between which the edge is interrupted for the lip slot, or null. */
  readonly interruptedMm: readonly [number, number] | null;
};

type Ticked = Pick<SectionGauge, 'number' | 'stationMm'>;

/** What both plates are made from. */
type Given = {
  readonly shape: BodyShape;
  readonly slot: LipSlot | null;
  readonly sections: readonly Ticked[];
  readonly sizes: PlateSizes;
  readonly name: PlateName;
};

export function profileGauges(given: Given): readonly [back: ProfileGauge, belly: ProfileGauge] {
  const { shape, slot } = given;
  const sides = sidesOf(shape);
  const mouth = slot && mouthOf(shape, slot);
  return [
    { ...plateOf('back', sides.back, given, null), interruptedMm: null },
    {
      ...plateOf('belly', mouth ? interrupted(sides.belly, mouth) : sides.belly, given, mouth),
      interruptedMm: mouth,
    },
  ];
}

/** The finished side view: belly from nose to tail, back from tail to nose. */
export function sidesOf(shape: BodyShape): Readonly<Record<ProfileGauge['side'], Segment[]>> {
  const segments = segmentsOf(profilePath(shape));
  const tail = segments.reduce((most, s, i) => (s.to[0] > segments[most].to[0] ? i : most), 0);
  return { belly: segments.slice(0, tail + 1), back: segments.slice(tail + 1) };
}

function plateOf(
  side: ProfileGauge['side'],
  edge: readonly Segment[],
  { shape, sections, sizes, name }: Given,
  interruptedMm: ProfileGauge['interruptedMm'],
): Omit<ProfileGauge, 'interruptedMm'> {
  const { lengthMm: L } = shape;
  const { endMm, profileRimMm } = sizes;
  const out = side === 'back' ? 1 : -1;
  const squared = side === 'back' ? shape.backSquared : shape.bellySquared;
  const reachMm = Math.max(...edge.map((s) => out * s.to[1])) + profileRimMm;
  const [nose, tail] = [-endMm, L + endMm];
  const far = out * reachMm;
  const noseEdge = notched([nose, 0], [0, 0], out);
  const tailEdge = notched([L, 0], [tail, 0], out);
  const along =
    side === 'back'
      ? [...noseEdge, ...reversed(edge), ...tailEdge]
      : [...reversed(tailEdge), ...reversed(edge), ...reversed(noseEdge)];
  const corners: Point2[] = [
    [tail, 0],
    [tail, far],
    [nose, far],
    [nose, 0],
  ];
  const outline = pathOf([...along, ...lines(side === 'back' ? corners : corners.reverse())], true);
  const height = (x: number) => offsetAt(squared, x);
  const [from, to] = interruptedMm ?? [Infinity, Infinity];
  const hasEdge = ({ stationMm: x }: Ticked) => x < from || x > to;
  return {
    side,
    outline: nominal(outline),
    ticks: sections.filter(hasEdge).map(({ stationMm: x }) => [
      [x, out * height(x)],
      [x, out * (height(x) + TICK_MM)],
    ]),
    texts: textsOf({ side, sections, sizes, name, height, reachMm, lengthMm: L }),
  };
}

const reversed = (segments: readonly Segment[]): Segment[] =>
  [...segments].reverse().map(({ from, to, bulge }) => ({ from: to, to: from, bulge: 0 - bulge }));

/** A straight edge on the datum line with a half notch in its middle. */
function notched([x0, y0]: Point2, [x1, y1]: Point2, out: number): Segment[] {
  const x = (x0 + x1) / 2;
  return lines([
    [x0, y0],
    [x - NOTCH_MM, y0],
    [x, out * NOTCH_MM],
    [x + NOTCH_MM, y1],
    [x1, y1],
  ]);
}

const PAST_SLOT_MM = 1; // the edge is interrupted so far to either side of the slot's mouth
const RECESS_MM = 2; // how far the plate stays off the wood there

/** Where the walls of the slot leave the finished belly, and a little beyond. */
function mouthOf(shape: BodyShape, slot: LipSlot): readonly [number, number] {
  const L = shape.lengthMm;
  const isInside = ([x, z]: Point2) => x > 0 && x < L && z > -offsetAt(shape.bellySquared, x);
  const exits = slotCorners(slot).map((corner) => {
    const at = (t: number) => add(corner, times(slot.outward, t));
    let [inside, outside] = [0, slot.widthMm];
    while (isInside(at(outside))) [inside, outside] = [outside, outside + slot.widthMm];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (inside + outside) / 2;
      if (isInside(at(middle))) inside = middle;
      else outside = middle;
    }
    return at(inside)[0];
  });
  const within = (x: number) => Math.min(L - PAST_SLOT_MM, Math.max(PAST_SLOT_MM / 2, x));
  return [within(Math.min(...exits) - PAST_SLOT_MM), within(Math.max(...exits) + PAST_SLOT_MM)];
}

const HALVINGS = 30; // of a slot's width or a segment: to a nanometer

/** The belly's edge, from nose to tail, with a square recess over a stretch of stations. */
function interrupted(edge: readonly Segment[], [from, to]: readonly [number, number]): Segment[] {
  const first = edge.findIndex((s) => s.to[0] > from);
  const last = edge.findIndex((s) => s.to[0] > to);
  if (first < 0 || last < 0) throw new Fault(`lip slot at ${from} to ${to} beyond the belly`);
  const [a, b] = [atStation(edge[first], from), atStation(edge[last], to)];
  const chord = unit(sub(b, a));
  // The belly bows out of its chord.
  const bow = Math.max(0, ...edge.slice(first, last).map((s) => cross(sub(s.to, a), chord)));
  const off = times(quarterLeft(chord), -(RECESS_MM + bow));
  return [
    ...edge.slice(0, first),
    partOf(edge[first], edge[first].from, a),
    ...lines([a, add(a, off), add(b, off), b]),
    partOf(edge[last], b, edge[last].to),
    ...edge.slice(last + 1),
  ].filter((s) => distance(s.from, s.to) > 1e-9);
}

/** The point of a segment that runs aft, at a station. */
function atStation(s: Segment, x: number): Point2 {
  let [before, after] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (before + after) / 2;
    if (pointOn(s, middle)[0] < x) before = middle;
    else after = middle;
  }
  return pointOn(s, before);
}

const TITLE_MM = 8; // height of the band for name and version, along the outer edge
const NUMBER_MM = 6; // half the width of the room for a number

/** Name and side along the outer edge, a number over each tick, NOSE and TAIL over the ends. */
function textsOf(given: {
  readonly side: ProfileGauge['side'];
  readonly sections: readonly Ticked[];
  readonly sizes: PlateSizes;
  readonly name: PlateName;
  readonly height: (x: number) => number;
  readonly reachMm: number;
  readonly lengthMm: number;
}): Plate['texts'] {
  const { side, sections, sizes, name, height, reachMm, lengthMm } = given;
  const top = reachMm - TITLE_MM;
  const room = (
    left: number,
    low: number,
    right: number,
    high: number,
  ): Plate['texts'][number]['room'] =>
    side === 'back' ? [left, low, right, high] : [left, -high, right, -low];
  const numbers = sections.map(({ number, stationMm: x }, i) => {
    const gaps = [sections[i - 1], sections[i + 1]].map((s) =>
      s ? Math.abs(s.stationMm - x) / 2 : NUMBER_MM,
    );
    const half = Math.min(NUMBER_MM, ...gaps);
    const highest = Math.max(...[-1, 0, 1].map((k) => height(x + k * half)));
    const low = Math.max(height(x) + TICK_MM, highest);
    return { breaks: [[String(number)]], room: room(x - half, low, x + half, top) };
  });
  const { full, initials } = titleWords(name);
  const titled = (words: readonly string[]) => [[[...words, side.toUpperCase()].join(' ')]];
  return [
    {
      breaks: titled(full),
      instead: titled(initials),
      room: room(-sizes.endMm, top, lengthMm + sizes.endMm, reachMm),
    },
    ...numbers,
    { breaks: [['NOSE']], room: room(-sizes.endMm, NOTCH_MM, 0, top) },
    { breaks: [['TAIL']], room: room(lengthMm, NOTCH_MM, lengthMm + sizes.endMm, top) },
  ];
}

/** A stretch of stations, mm. */
export type Stretch = { readonly fromMm: number; readonly toMm: number };

/** A profile gauge as lengths no longer than so much, that overlap; one when it is short enough. */
export function stretchesOf(
  lengthMm: number,
  endMm: number,
  { longestMm, overlapMm }: { readonly longestMm: number; readonly overlapMm: number },
): readonly Stretch[] {
  const whole = lengthMm + 2 * endMm;
  const over = Math.min(overlapMm, longestMm / 2);
  const count = whole <= longestMm ? 1 : Math.ceil((whole - over) / (longestMm - over));
  const each = (whole + (count - 1) * over) / count;
  return Array.from({ length: count }, (_, i) => {
    const fromMm = -endMm + i * (each - over);
    return { fromMm, toMm: fromMm + each };
  });
}

/** What of a plate's texts and ticks lies on a stretch of it; the title keeps what room there is. */
export function onStretch(
  { ticks, texts: [title, ...others] }: Pick<Plate, 'ticks' | 'texts'>,
  { fromMm, toMm }: Stretch,
): Pick<Plate, 'ticks' | 'texts'> {
  const [left, low, right, high] = title.room;
  return {
    ticks: ticks.filter(([[x]]) => x > fromMm && x < toMm),
    texts: [
      { ...title, room: [Math.max(left, fromMm), low, Math.min(right, toMm), high] },
      ...others.filter(({ room }) => room[0] >= fromMm - 1e-9 && room[2] <= toMm + 1e-9),
    ],
  };
}
