/**
 * Nose-to-tail rows: double lattices of one outline, that is rows of copies at 0° alternating with
 * rows turned by 180°. Found by direct search over row directions, for any outline, hollow or not;
 * for a convex one the densest of them tends to the double lattice of Kuperberg and Kuperberg (1990).
 */
import {
  add,
  type Box,
  cosSinDeg,
  cross,
  length,
  type Point2,
  sub,
  times,
} from '../geometry/vec.js';
import { type Band, bandAround, bandPoints, heightAt, type Line } from './band.js';
import { isInside, type MovedBand } from './contact.js';
import { type EmptyFace, isFree, type Spot } from './fill.js';
import type { ShapeSet } from './nofit.js';

/**
 * Copies at 0° lie at i·u + j·v, copies at 180° at w + i·u + j·v. The cell |u × v| holds two.
 */
export type DoubleLattice = {
  /** Shape index of the copies at 0°; the turned shape is the next one. */
  readonly shape: number;
  readonly u: Point2;
  readonly v: Point2;
  readonly w: Point2;
  readonly cellMm2: number;
};

/** Row directions tried over half a turn, and places of the next row tried along one step of a row. */
const DIRECTIONS = 90;
const PHASES = 48;

/** One lattice per row direction, densest first. `shape` is the index of the part's shape at 0°. */
export function doubleLattices(set: ShapeSet, shape: number): DoubleLattice[] {
  return Array.from({ length: DIRECTIONS }, (_, i) => (i * 180) / DIRECTIONS)
    .map((deg) => latticeAlong(set, shape, deg))
    .filter((l) => l !== null)
    .sort((a, b) => a.cellMm2 - b.cellMm2 || a.u[0] - b.u[0] || a.u[1] - b.u[1]);
}

function latticeAlong(set: ShapeSet, shape: number, deg: number): DoubleLattice | null {
  const [cos, sin] = cosSinDeg(deg);
  const turnedBack = (p: Point2): Point2 => [cos * p[0] + sin * p[1], cos * p[1] - sin * p[0]];
  const turnedTo = (p: Point2): Point2 => [cos * p[0] - sin * p[1], cos * p[1] + sin * p[0]];
  const along = (fixed: number, moving: number): Point2[] =>
    bandPoints(set.noFit(fixed, moving)).map(turnedBack);
  const step = exitAlongX(along(shape, shape));
  const up = lowestAbove(bandAround(along(shape, shape + 1)).high, step);
  const on = lowestAbove(bandAround(along(shape + 1, shape)).high, step);
  // Whole steps along the row change nothing; taken off, they leave a short v and w.
  const short = ([x, y]: Point2): Point2 => [x - Math.round(x / step) * step, y];
  const lattice = {
    shape,
    u: turnedTo([step, 0]),
    v: turnedTo(short(add(up, on))),
    w: turnedTo(short(up)),
    cellMm2: step * (up[1] + on[1]),
  };
  return isApart(set, lattice) ? lattice : null;
}

/** Where the +x axis leaves a polygon for good. */
function exitAlongX(points: readonly Point2[]): number {
  let exit = 0;
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length];
    if (p[1] > 0 === q[1] > 0) return;
    exit = Math.max(exit, p[0] + ((q[0] - p[0]) * p[1]) / (p[1] - q[1]));
  });
  return exit;
}

/** Lowest place above a line repeated every `step` along x. */
function lowestAbove(line: Line, step: number): Point2 {
  const height = (x: number): number => rowHeight(line, step, x);
  const samples = Array.from({ length: PHASES }, (_, i) => (i * step) / PHASES);
  const lowest = samples.reduce((best, x) => (height(x) < height(best) ? x : best), 0);
  const x = leastNear(height, lowest - step / PHASES, lowest + step / PHASES);
  return height(x) < height(lowest) ? [x, height(x)] : [lowest, height(lowest)];
}

function rowHeight(line: Line, step: number, x: number): number {
  const [minX, maxX] = [line.x[0], line.x[line.x.length - 1]];
  let top = -Infinity;
  for (let k = Math.ceil((x - maxX) / step); k <= (x - minX) / step; k++) {
    top = Math.max(top, heightAt(line, x - k * step));
  }
  return top;
}

/** Golden-section search; the valley need not be smooth. */
function leastNear(f: (x: number) => number, from: number, to: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [from, to];
  for (let i = 0; i < 40; i++) {
    const p = b - share * (b - a);
    const q = a + share * (b - a);
    if (f(p) <= f(q)) b = q;
    else a = p;
  }
  return (a + b) / 2;
}

/** True if no copy of the lattice overlaps another: all neighbors near enough are tested. */
function isApart(set: ShapeSet, { shape, u, v, w, cellMm2 }: DoubleLattice): boolean {
  const like: MovedBand = { band: set.noFit(shape, shape), dx: 0, dy: 0 };
  const other: MovedBand = { band: set.noFit(shape, shape + 1), dx: -w[0], dy: -w[1] };
  const far = Math.max(reachOf(like.band), reachOf(other.band) + length(w));
  const mostI = Math.ceil((far * length(v)) / cellMm2);
  const mostJ = Math.ceil((far * length(u)) / cellMm2);
  for (let i = -mostI; i <= mostI; i++) {
    for (let j = -mostJ; j <= mostJ; j++) {
      const x = i * u[0] + j * v[0];
      const y = i * u[1] + j * v[1];
      if ((i !== 0 || j !== 0) && isInside(like, x, y)) return false;
      if (isInside(other, x, y)) return false;
    }
  }
  return true;
}

/** No point of the band lies further from the origin. */
const reachOf = ({ minX, maxX, minY, maxY }: Band): number =>
  Math.hypot(Math.max(-minX, maxX), Math.max(-minY, maxY));

/** Steps and lengths (mm) that agree to this are equal: a copy may touch the margin. */
const SAME = 1e-9;
/** Shifts of a lattice tried along each side of its cell, beside those that touch a corner of the face. */
const SHIFTS = 2;

/** The copies of a lattice that lie on the face, at the shift that gives most; those that end furthest left first. */
export function latticeSpots(face: EmptyFace, lattice: DoubleLattice): Spot[] {
  let best: Spot[] = [];
  for (const shift of shifts(face, lattice)) {
    const upright = rowsOn(face, lattice, lattice.shape, shift);
    const turned = rowsOn(face, lattice, lattice.shape + 1, add(shift, lattice.w));
    const rows = [...upright, ...turned];
    // Knots only take away, so a shift that can not give more needs no closer look.
    if (rows.reduce((sum, r) => sum + Math.max(0, r.last - r.first + 1), 0) <= best.length)
      continue;
    const spots = [
      ...copies(face, lattice, lattice.shape, upright),
      ...copies(face, lattice, lattice.shape + 1, turned),
    ];
    if (spots.length > best.length) best = spots;
  }
  const end = ({ shape, x }: Spot): number => x + face.set.shapes[shape].box[2];
  return best.sort((a, b) => end(a) - end(b) || a.y - b.y);
}

function shifts(face: EmptyFace, { shape, u, v, w }: DoubleLattice): Point2[] {
  const out: Point2[] = [];
  for (let i = 0; i < SHIFTS; i++) {
    for (let j = 0; j < SHIFTS; j++) out.push(add(times(u, i / SHIFTS), times(v, j / SHIFTS)));
  }
  const corners = (of: number): Point2[] => {
    const [left, bottom, right, top] = face.rooms[of]?.fit ?? [0, 0, 0, 0];
    return [
      [left, bottom],
      [left, top],
      [right, bottom],
      [right, top],
    ];
  };
  return [...corners(shape), ...corners(shape + 1).map((c) => sub(c, w)), ...out];
}

/** Points start + i·u of a lattice row, i from first to last; none if last < first. */
type Row = { readonly start: Point2; readonly first: number; readonly last: number };

/** Rows origin + j·v of the points on the face where a shape may lie, knots left aside. */
function rowsOn(face: EmptyFace, { u, v }: DoubleLattice, shape: number, origin: Point2): Row[] {
  const fit = face.rooms[shape]?.fit;
  if (!fit) return [];
  // In lattice coordinates the face is a parallelogram; its corners bound j, then each row's i.
  const js = [0, 1, 2, 3].map(
    (k) => cross(u, sub([fit[k & 1 ? 2 : 0], fit[k & 2 ? 3 : 1]], origin)) / cross(u, v),
  );
  const rows: Row[] = [];
  for (let j = Math.ceil(Math.min(...js) - SAME); j <= Math.max(...js) + SAME; j++) {
    const start = add(origin, times(v, j));
    const [from, to] = rowRange(start, u, fit);
    rows.push({ start, first: Math.ceil(from - SAME), last: Math.floor(to + SAME) });
  }
  return rows;
}

function copies(
  face: EmptyFace,
  { u }: DoubleLattice,
  shape: number,
  rows: readonly Row[],
): Spot[] {
  const out: Spot[] = [];
  for (const { start, first, last } of rows) {
    for (let i = first; i <= last; i++) {
      const spot = { shape, x: start[0] + i * u[0], y: start[1] + i * u[1] };
      if (isFree(face, spot)) out.push(spot);
    }
  }
  return out;
}

/** Range of i for which start + i·u lies in the rectangle; empty if to < from. */
function rowRange(start: Point2, u: Point2, [left, bottom, right, top]: Box): [number, number] {
  let [from, to] = [-Infinity, Infinity];
  for (const [at, step, low, high] of [
    [start[0], u[0], left, right],
    [start[1], u[1], bottom, top],
  ]) {
    if (Math.abs(step) < 1e-12) {
      if (at < low - SAME || at > high + SAME) return [0, -1];
      continue;
    }
    const ends = [(low - at) / step, (high - at) / step];
    from = Math.max(from, Math.min(...ends));
    to = Math.min(to, Math.max(...ends));
  }
  return [from, to];
}
