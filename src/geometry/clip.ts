/**
 * Polygon booleans and offsets: the one door to clipper2-ts. It guards that library's silent traps
 * (NaN gives an empty result, a coarse default grid, orientation decides growth), so callers may
 * trust an empty answer to mean empty.
 *
 * Coordinates are kept to 1e-6 (precision 6). Round corners of an offset are chords inside the true
 * arc by at most `arcTolerance`.
 */
import {
  Clipper,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  type Path64,
  type PathD,
  type Paths64,
  type PathsD,
  type PolyPathD,
  PolyTreeD,
} from 'clipper2-ts';
import { Fault } from '../problem.js';
import { type Region, type Ring, ring, selfCrossing, signedArea } from './ring.js';
import { betweenEdges, cross, dot, length, type Point2, sub } from './vec.js';

const PRECISION = 6; // decimals clipper keeps; its default of 2 moves vertices by 0.017 mm
const SLIVER_AREA = 1e-9; // mm²: pieces below this are rounding, not material

/** Chord error allowed at round corners of an offset when the caller states none, mm. */
export const ARC_TOLERANCE = 0.005;

/** Everything within distance `by` of the region (by > 0), or the part further than −by from its edge (by < 0). */
export function offset(
  regions: readonly Region[],
  by: number,
  arcTolerance = ARC_TOLERANCE,
): Region[] {
  if (!Number.isFinite(by) || !(arcTolerance > 0))
    throw new Fault(`offset by ${by}, tolerance ${arcTolerance}`);
  if (by === 0) return [...regions];
  const inflated = regions.map((r) =>
    Clipper.inflatePathsD(
      toPaths([r]),
      by,
      JoinType.Round,
      EndType.Polygon,
      2,
      PRECISION,
      arcTolerance,
    ),
  );
  return toRegions(inflated.flat(), [], ClipType.Union);
}

export const union = (regions: readonly Region[]): Region[] =>
  toRegions(toPaths(regions), [], ClipType.Union);
export const subtract = (a: readonly Region[], b: readonly Region[]): Region[] =>
  toRegions(toPaths(a), toPaths(b), ClipType.Difference);
export const intersect = (a: readonly Region[], b: readonly Region[]): Region[] =>
  toRegions(toPaths(a), toPaths(b), ClipType.Intersection);

/** Least distance between two outlines; 0 where they overlap. */
export const betweenOutlines = (a: readonly Point2[], b: readonly Point2[]): number =>
  intersect([asRegion(ring(a))], [asRegion(ring(b))]).length > 0 ? 0 : betweenEdges(a, b);

/** The area that closed lines wind round, whichever way and however they cross themselves. */
export const woundRound = (lines: readonly (readonly Point2[])[]): Region[] =>
  toRegions(lines.map(toPath), [], ClipType.Union);

/**
 * All sums a + b of a point of ring a and a point of ring b (Minkowski sum), holes filled.
 * The boundary sum is united with b moved to a's first point and a moved to b's first point, so that
 * one ring inside the other still covers.
 */
export function minkowskiSum(a: Ring, b: Ring): Ring {
  const band = scaled(Clipper.minkowskiSum(grid(a), grid(b), true));
  const core = [
    toPath(b.map(([x, y]): Point2 => [x + a[0][0], y + a[0][1]])),
    toPath(a.map(([x, y]): Point2 => [x + b[0][0], y + b[0][1]])),
  ];
  const regions = toRegions([...band, ...core], [], ClipType.Union);
  if (regions.length !== 1) throw new Fault(`Minkowski sum fell into ${regions.length} pieces`);
  return regions[0].outer;
}

/** The library's own sum of paths in numbers keeps two decimals, so it is given whole millionths. */
const GRID = 10 ** PRECISION;
const grid = (points: readonly Point2[]): Path64 =>
  toPath(points).map(({ x, y }) => ({ x: Math.round(x * GRID), y: Math.round(y * GRID) }));
const scaled = (paths: Paths64): PathsD =>
  paths.map((path) => path.map(({ x, y }) => ({ x: Number(x) / GRID, y: Number(y) / GRID })));

/**
 * The area a round pen of this width covers when it follows open lines; a line of one point is a
 * dot. Its outline's chords lie inside the true edge by at most `arcTolerance`.
 */
export function penned(
  lines: readonly (readonly Point2[])[],
  width: number,
  arcTolerance = ARC_TOLERANCE,
): Region[] {
  if (!(width > 0 && width < Infinity)) throw new Fault(`line ${width} wide`);
  const band = Clipper.inflatePathsD(
    lines.map(toPath),
    width / 2,
    JoinType.Round,
    EndType.Round,
    2,
    PRECISION,
    arcTolerance,
  );
  return toRegions(band, [], ClipType.Union);
}

export const asRegion = (outer: Ring): Region => ({ outer, holes: [] });

const toPath = (points: readonly Point2[]): PathD =>
  points.map(([x, y]) => {
    if (!Number.isFinite(x) || !Number.isFinite(y))
      throw new Fault(`polygon point (${x}, ${y}) is not finite`);
    return { x, y };
  });

const toPaths = (regions: readonly Region[]): PathsD =>
  regions.flatMap((r) => [toPath(r.outer), ...r.holes.map((h) => toPath(h).reverse())]);

function toRegions(subject: PathsD, clip: PathsD, type: ClipType): Region[] {
  if (subject.length === 0) return [];
  const tree = new PolyTreeD();
  Clipper.booleanOpDWithPolyTree(type, subject, clip, tree, FillRule.NonZero, PRECISION);
  const out: Region[] = [];
  const visit = (node: PolyPathD): void => {
    const outer = points(node);
    const children = Array.from({ length: node.count }, (_, i) => node.child(i));
    if (outer) {
      out.push({ outer, holes: children.map(points).filter((h): h is Ring => h !== null) });
    }
    for (const hole of children) for (let i = 0; i < hole.count; i++) visit(hole.child(i));
  };
  for (let i = 0; i < tree.count; i++) visit(tree.child(i));
  return out;
}

function points(node: PolyPathD): Ring | null {
  const poly = node.poly;
  if (!poly || poly.length < 3) return null;
  const list = poly.map((p): Point2 => [p.x, p.y]);
  if (Math.abs(signedArea(list)) <= SLIVER_AREA) return null;
  try {
    return ring(list, 1e-7);
  } catch (error) {
    // Asked only now: the question is slow, and the answer almost always no.
    if (!selfCrossing(list)) throw error;
    return isHair(list) ? null : ring(withoutHairs(list), 1e-7);
  }
}

const HAIR_MM = 3e-6; // three steps of the grid
const HAIR_WIDTH_MM = 1e-4;

/**
 * Rounded to the grid, a hair of an outline, where two others run together, may come to cross itself.
 * Corners at which the outline turns back onto itself are left out until there is none.
 */
function withoutHairs(list: readonly Point2[]): readonly Point2[] {
  const n = list.length;
  const at = list.findIndex((p, i) => turnsBack(list[(i + n - 1) % n], p, list[(i + 1) % n]));
  return at < 0 || n <= 3 ? list : withoutHairs(list.filter((_, i) => i !== at));
}

/** So thin all along that it is what rounding left between two outlines. */
function isHair(list: readonly Point2[]): boolean {
  const around = list.reduce((sum, p, i) => sum + length(sub(list[(i + 1) % list.length], p)), 0);
  return Math.abs(signedArea(list)) < HAIR_WIDTH_MM * around;
}

function turnsBack(a: Point2, b: Point2, c: Point2): boolean {
  const [there, back] = [sub(b, a), sub(c, b)];
  const reach = Math.max(length(there), length(back));
  return dot(there, back) < 0 && Math.abs(cross(there, back)) <= HAIR_MM * reach;
}
