/** The best layout found for one face: several layouts are made in different ways and compared. */

import { seededDraws } from '../geometry/random.js';
import type { LatticeCopy } from '../lattice/double.js';
import { latticeLayouts } from '../lattice/face.js';
import { boxRows } from './boxes.js';
import {
  type EmptyFace,
  type FillRule,
  fillFace,
  hasRoom,
  isFree,
  type Spot,
  spotsBox,
} from './fill.js';
import { clearOf } from './fit.js';
import { movedFlaws } from './flaw.js';
import { improvedFace } from './improve-face.js';
import type { Kit } from './kit.js';
import type { FaceSize } from './nest.js';
import type { ShapeSet } from './nofit.js';

/** Outlines on a face, and what they come to. */
export type Layout = {
  readonly spots: readonly Spot[];
  readonly areaMm2: number;
  /** From the face's left end to the right end of the last outline; 0 for an empty layout. */
  readonly usedLengthMm: number;
};

export type PackOptions = {
  readonly face: FaceSize;
  /** Outlines wanted on this face, by part. */
  readonly wanted: readonly number[];
  readonly tries: number;
  readonly seed: number;
  /** Asked while it searches; ends it with the best so far. */
  readonly shouldStop?: (() => boolean) | undefined;
};

/** Layouts in rows filled up and compared, of those that give most by themselves. */
const ROWS_FILLED = 3;
/** From so many copies on a face, lattices are laid on it beside rows. */
const LATTICE_FROM = 24;
/** On large faces fewer lattices are laid, about so many copies in all at each shift. */
const COPIES_LAID = 15_000;
const LEAST_LATTICES = 2;
/** Faces for more parts than this are not searched: no-fit polygons are needed for every pair. */
const MOST_KINDS = 16;
/** Places the search may look at for every try. */
const LOOKS_A_TRY = 4000;

/**
 * The layout with the greatest area of outlines, of equals the one that uses least length. Tried are
 * rows of bounding boxes, rows and lattices of each part, and `tries` fillings under fixed and then
 * drawn rules, every other one a change of the best so far; the best is then searched for more. Same
 * input, same layout.
 */
export function packFace(kit: Kit, options: PackOptions): Layout {
  const { face, wanted, tries, seed, shouldStop = () => false } = options;
  const empty = kit.empty(face);
  if (mostOn(kit, face, wanted) > MOST_AT_ONCE) return packHalves(kit, options, empty);
  const layout = (spots: readonly Spot[]): Layout => layoutOf(kit.set, spots);
  const fill = (rule: FillRule, placed: readonly Spot[] = []): Layout =>
    layout(fillFace(empty, wanted, rule, placed));
  let best = fill(PLAIN, boxRows(face, empty, wanted, kit.gapMm));
  const offer = (next: Layout): void => {
    if (isBetter(next, best)) best = next;
  };
  for (const [part, count] of wanted.entries()) {
    if (shouldStop()) return best;
    for (const rows of rowsOn(kit, { face, empty, part, count })) offer(fill(PLAIN, rows));
  }
  const draw = seededDraws(seed);
  for (let i = 0, spent = 0; spent < tries && !shouldStop(); i++) {
    const rule = FIXED_RULES[i] ?? drawnRule(draw);
    const kept = i >= FIXED_RULES.length && i % 2 === 1 ? keptLeft(kit.set, best, draw()) : [];
    const next = fill(rule, kept);
    offer(next);
    spent += Math.max(1, next.spots.length / OUTLINES_PER_TRY);
  }
  const looks = tries * LOOKS_A_TRY;
  const kinds = wanted.filter((n) => n > 0).length;
  // Making ready for a search takes longer than the search where there is much to make ready.
  if (looks === 0 || kinds > MOST_KINDS || shouldStop()) return best;
  offer(layout(improvedFace(kit, { face, wanted }, best.spots, { draw, looks, shouldStop })));
  return best;
}

/** More outlines than this are not packed at once: the work grows with their square. */
const MOST_AT_ONCE = 500;
/** Where so many lie, each half is tried less often. */
const TRIES_A_HALF = 4;

/** No more outlines than this lie on a face. */
function mostOn(kit: Kit, face: FaceSize, wanted: readonly number[]): number {
  const areas = wanted.flatMap((n, part) => (n > 0 ? [kit.set.shapes[2 * part].areaMm2] : []));
  const { clearLengthMm, clearWidthMm } = clearOf(face);
  const total = wanted.reduce((sum, n) => sum + n, 0);
  return areas.length === 0
    ? 0
    : Math.min(total, (clearLengthMm * clearWidthMm) / Math.min(...areas));
}

/** A face in two halves, each packed for itself; or rows over all of it, if one part alone gives more so. */
function packHalves(kit: Kit, options: PackOptions, empty: EmptyFace): Layout {
  const { face, wanted } = options;
  const { lengthMm, marginMm } = face;
  const tries = Math.min(options.tries, TRIES_A_HALF);
  const middleMm = lengthMm / 2;
  const halfMm = middleMm - kit.gapMm / 2 + marginMm;
  const left = packFace(kit, { ...options, tries, face: { ...face, lengthMm: halfMm } });
  const laid = countsOf(kit, left);
  const fromMm = lengthMm - halfMm;
  const right = packFace(kit, {
    ...options,
    tries,
    face: { ...face, ...movedFlaws(face, -fromMm), lengthMm: halfMm },
    wanted: wanted.map((n, part) => n - laid[part]),
  });
  const moved = right.spots.map((s) => ({ ...s, x: s.x + fromMm }));
  const only = wanted.filter((n) => n > 0).length === 1 ? wanted : [];
  return only
    .flatMap((count, part) => rowsOn(kit, { face, empty, part, count }))
    .map((rows) => layoutOf(kit.set, rows))
    .reduce(
      (best, next) => (isBetter(next, best) ? next : best),
      layoutOf(kit.set, [...left.spots, ...moved]),
    );
}

const layoutOf = (set: ShapeSet, spots: readonly Spot[]): Layout => ({
  spots,
  areaMm2: spots.reduce((sum, s) => sum + set.shapes[s.shape].areaMm2, 0),
  usedLengthMm: spots.length === 0 ? 0 : spotsBox(set, spots)[2],
});

/** Differences smaller than this are rounding: relative for areas, mm for lengths. */
const SAME = 1e-9;

function isBetter(a: Layout, b: Layout): boolean {
  const gain = a.areaMm2 - b.areaMm2;
  if (Math.abs(gain) > SAME * b.areaMm2) return gain > 0;
  return a.usedLengthMm < b.usedLengthMm - SAME;
}

type RowsTask = {
  readonly face: FaceSize;
  readonly empty: EmptyFace;
  readonly part: number;
  readonly count: number;
};

/** Copies of one part in rows or on a lattice, at most `count`, the leftmost. */
function rowsOn(kit: Kit, { face, empty, part, count }: RowsTask): Spot[][] {
  if (count < 2 || !hasRoom(empty, 2 * part)) return [];
  const right = ({ shape, x }: Spot): number => x + kit.set.shapes[shape].box[2];
  return kit
    .rows(face, part, () =>
      fullRows(kit, face, empty, part).map((spots) =>
        spots.sort((a, b) => right(a) - right(b) || a.y - b.y),
      ),
    )
    .map((spots) => spots.slice(0, count));
}

function fullRows(kit: Kit, face: FaceSize, empty: EmptyFace, part: number): Spot[][] {
  const { marginMm } = face;
  const { clearLengthMm: lengthMm, clearWidthMm: widthMm } = clearOf(face);
  const spotOf = ({ turnDeg, x, y }: LatticeCopy): Spot => ({
    shape: 2 * part + (turnDeg === 0 ? 0 : 1),
    x: x + marginMm,
    y: y + marginMm,
  });
  const clear = {
    lengthMm,
    widthMm,
    isFree: (copy: LatticeCopy) => isFree(empty, spotOf(copy)),
  };
  const fitting = (lengthMm * widthMm) / kit.set.shapes[2 * part].areaMm2;
  const most = Math.max(LEAST_LATTICES, Math.floor(COPIES_LAID / fitting));
  const lattices = fitting < LATTICE_FROM ? [] : kit.lattices(part).slice(0, most);
  const layouts = latticeLayouts(kit.grown(part), clear, { most: ROWS_FILLED, lattices });
  return layouts.map(({ copies }) => copies.map(spotOf));
}

/** A layout of more outlines than this counts as several tries, so that planks take no longer than blocks. */
const OUTLINES_PER_TRY = 16;

const PLAIN: FillRule = { lean: 0.1, hug: 0.5, longFirst: 1, firstTurnDeg: null };

const FIXED_RULES: readonly FillRule[] = [
  PLAIN,
  { ...PLAIN, longFirst: 0 },
  { ...PLAIN, hug: 0, firstTurnDeg: 180 },
  { ...PLAIN, lean: -0.1, hug: 1, firstTurnDeg: 0 },
];

const drawnRule = (draw: () => number): FillRule => ({
  lean: draw() - 0.5,
  hug: 2 * draw(),
  longFirst: 1.5 * draw(),
  firstTurnDeg: draw() < 0.5 ? 0 : 180,
});

/** The outlines that begin in the left `share` of the used length. */
const keptLeft = ({ shapes }: ShapeSet, { spots, usedLengthMm }: Layout, share: number): Spot[] =>
  spots.filter((s) => s.x + shapes[s.shape].box[0] < share * usedLengthMm);

/** A layout with as many further outlines as are wanted and find room; what lies there stays. */
export function topUp(kit: Kit, face: FaceSize, wanted: readonly number[], layout: Layout): Layout {
  return layoutOf(kit.set, fillFace(kit.empty(face), wanted, PLAIN, layout.spots));
}

/** A layout with only so many outlines of each part, the rightmost taken off. */
export function thinnedOut({ set }: Kit, { spots }: Layout, counts: readonly number[]): Layout {
  const right = ({ shape, x }: Spot): number => x + set.shapes[shape].box[2];
  const left = [...counts];
  const kept = [...spots]
    .sort((a, b) => right(a) - right(b) || a.y - b.y)
    .filter(({ shape }) => left[set.shapes[shape].partIndex]-- > 0);
  return layoutOf(set, kept);
}

/** Outlines of each part in a layout. */
export function countsOf({ set, parts }: Kit, { spots }: Layout): number[] {
  const counts = Array<number>(parts).fill(0);
  for (const { shape } of spots) counts[set.shapes[shape].partIndex]++;
  return counts;
}
