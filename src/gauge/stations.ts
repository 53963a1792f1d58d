/** Which stations get a section gauge. */
import type { Blank } from '../blank/blank.js';
import { halves } from '../body/properties.js';
import { halfSectionMoments } from '../body/section.js';
import type { BodyShape } from '../body/shape.js';

/** What a set-up asks for. */
export type StationWish = {
  /** How many gauges there shall be; the rule adds to the listed ones until there are so many. */
  readonly stations: number;
  readonly stationsMm: readonly number[];
  /** Shares of the length: 0 nose, 1 tail. */
  readonly stationRatios: readonly number[];
};

export type StationReason =
  | 'listed'
  | 'widest'
  | 'nose shoulder'
  | 'tail shoulder'
  | 'deepest'
  | 'between';

export type GaugeStation = { readonly stationMm: number; readonly reason: StationReason };

/** Nearer to nose or tail there is no section to hold a plate against, as a share of the length. */
export const LEAST_RATIO = 0.02;

const APART_RATIO = 0.05; // of the length: least distance of two gauges by the rule
const APART_MM = 6; // and in a small lure: two plates, and room for their numbers on the profile gauges
const TWO_DIGITS_MM = 8; // the same for numbers of two digits
const GIVES_WAY_RATIO = 0.05; // of the length: how far a gauge may give way
const CLEAR_MM = 2; // between a gauge and the edge of a hole, a hanger or the lip slot: half a plate and a little
const LEVEL_MM = 0.01; // sections this near to the greatest are as great

/**
 * The listed stations as they are; then, until there are enough, at whole mm (a maker marks them with
 * a rule):
 * 1. the widest section: sides are sanded to it first, and the blank is held by it;
 * 2. the nose shoulder and 3. the tail shoulder, where the section has half the area of the largest:
 *    outward of them the body is round and short, and the profile gauge serves;
 * 4. the deepest section, where it is not the widest;
 * 5. between these, each time where a fair line from gauge to gauge would be furthest off in breadth,
 *    back or belly: there the section changes fastest against its neighbors.
 * None by the rule is nearer than a twentieth of the length, and 6 mm, to another. One that falls on a
 * ballast hole, a hanger or the lip slot gives way to the nearest clear station within a twentieth of
 * the length, and stays if there is none. When no room is left there are fewer. In order of station.
 */
export function gaugeStations(
  shape: BodyShape,
  blank: Pick<Blank, 'holes' | 'hangers' | 'slot'>,
  wish: StationWish,
): readonly GaugeStation[] {
  const { lengthMm } = shape;
  const grid = gridOf(shape);
  const apartMm = Math.max(wish.stations > 9 ? TWO_DIGITS_MM : APART_MM, APART_RATIO * lengthMm);
  const isClear = clearOf(blank);
  const chosen: GaugeStation[] = listed(wish, lengthMm).map((stationMm) => ({
    stationMm,
    reason: 'listed',
  }));
  const isApart = (x: number) => chosen.every((c) => Math.abs(c.stationMm - x) >= apartMm);
  const add = (wanted: number, reason: StationReason) => {
    const stationMm = served(wanted, grid, GIVES_WAY_RATIO * lengthMm, isClear);
    if (chosen.length < wish.stations && isApart(stationMm)) chosen.push({ stationMm, reason });
  };
  for (const { stationMm, reason } of landmarks(grid)) add(stationMm, reason);
  while (chosen.length < wish.stations) {
    const next = furthestOff(
      grid.filter(({ x }) => isClear(x) && isApart(x)),
      inOrder(chosen).map((c) => sectionOf(shape, c.stationMm)),
    );
    if (next === null) break;
    chosen.push({ stationMm: next, reason: 'between' });
  }
  return inOrder(chosen);
}

const inOrder = (stations: readonly GaugeStation[]): GaugeStation[] =>
  [...stations].sort((a, b) => a.stationMm - b.stationMm);

function listed({ stationsMm, stationRatios }: StationWish, lengthMm: number): number[] {
  const all = [...stationsMm, ...stationRatios.map((r) => r * lengthMm)].sort((a, b) => a - b);
  return all.filter((x, i) => i === 0 || x - all[i - 1] > LEVEL_MM);
}

type Section = {
  readonly x: number;
  /** Half-breadth, back, belly, mm. */
  readonly sizes: readonly [number, number, number];
  readonly areaMm2: number;
};

function sectionOf(shape: BodyShape, x: number): Section {
  const [upper, lower] = halves(shape, x);
  const areaMm2 = halfSectionMoments(upper).area + halfSectionMoments(lower).area;
  return { x, sizes: [upper.b, upper.h, lower.h], areaMm2 };
}

/** Sections at every whole mm where a gauge can stand. */
function gridOf(shape: BodyShape): Section[] {
  const first = Math.ceil(LEAST_RATIO * shape.lengthMm);
  const last = Math.floor((1 - LEAST_RATIO) * shape.lengthMm);
  return Array.from({ length: last - first + 1 }, (_, i) => sectionOf(shape, first + i));
}

/** The stations that a shape itself marks, most wanted first. */
function landmarks(grid: readonly Section[]): GaugeStation[] {
  const half = Math.max(...grid.map((s) => s.areaMm2)) / 2;
  const full = grid.filter((s) => s.areaMm2 >= half);
  return [
    { stationMm: greatest(grid, ({ sizes: [b] }) => b), reason: 'widest' },
    { stationMm: full[0].x, reason: 'nose shoulder' },
    { stationMm: full[full.length - 1].x, reason: 'tail shoulder' },
    { stationMm: greatest(grid, ({ sizes: [, back, belly] }) => back + belly), reason: 'deepest' },
  ];
}

/** The middle of the stretch where a size is greatest. */
function greatest(grid: readonly Section[], size: (s: Section) => number): number {
  const most = Math.max(...grid.map(size));
  const from = grid.findIndex((s) => size(s) >= most - LEVEL_MM);
  const after = grid.findIndex((s, i) => i > from && size(s) < most - LEVEL_MM);
  const to = (after < 0 ? grid.length : after) - 1;
  return grid[Math.floor((from + to) / 2)].x;
}

/** The nearest clear station not further than a gauge may give way; the wanted one if there is none. */
function served(
  wanted: number,
  grid: readonly Section[],
  withinMm: number,
  isClear: (x: number) => boolean,
): number {
  const far = ({ x }: Section) => Math.abs(x - wanted);
  const near = grid.filter((s) => far(s) <= withinMm && isClear(s.x));
  return near.length === 0 ? wanted : near.reduce((a, b) => (far(b) < far(a) ? b : a)).x;
}

/** Where a straight line between the neighboring gauges is furthest from the body; of equal places the one furthest from them. */
function furthestOff(free: readonly Section[], gauges: readonly Section[]): number | null {
  let best: { readonly x: number; readonly off: number } | null = null;
  for (const { x, sizes } of free) {
    const after = gauges.findIndex((g) => g.x > x);
    if (after <= 0) continue;
    const [a, b] = [gauges[after - 1], gauges[after]];
    const share = (x - a.x) / (b.x - a.x);
    const offs = sizes.map((s, k) => Math.abs(s - a.sizes[k] - share * (b.sizes[k] - a.sizes[k])));
    const off = Math.max(...offs) + 1e-6 * Math.min(x - a.x, b.x - x);
    if (best === null || off > best.off) best = { x, off };
  }
  return best?.x ?? null;
}

/** False on ballast holes, hangers and the lip slot, where the wood is not whole. */
function clearOf({
  holes,
  hangers,
  slot,
}: Pick<Blank, 'holes' | 'hangers' | 'slot'>): (x: number) => boolean {
  const stretches = [
    ...holes.map((h) => [h.stationMm - h.diameterMm / 2, h.stationMm + h.diameterMm / 2]),
    ...hangers.map((h) => [h.stationMm, h.stationMm]),
    ...(slot
      ? [
          [
            Math.min(slot.mouth[0], slot.end[0]) - slot.widthMm,
            Math.max(slot.mouth[0], slot.end[0]) + slot.widthMm,
          ],
        ]
      : []),
  ];
  return (x) => stretches.every(([from, to]) => x < from - CLEAR_MM || x > to + CLEAR_MM);
}
