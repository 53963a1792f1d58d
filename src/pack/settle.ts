/**
 * Settling a layout: all items move a little at once so that the strip becomes as short as it can
 * without any pair changing sides, and outlines that overlap by rounding touch exactly. A linear
 * program, repeated while it gains (compaction after Z. Li and V. Milenkovic, 1995).
 */
import { movedRing, type Ring } from '../geometry/ring.js';
import type { Point2 } from '../geometry/vec.js';
import { type LinearSolver, type Row, solve } from '../linear/solver.js';
import { copyOfPlaces, usedLength } from './crowd.js';
import { convexNoFits, piecesOf } from './nofit.js';
import type { StripLayout, StripProblem } from './strip.js';

/** How far an item may move in one program, as a share of the strip's height. */
const MOVE_SHARE = 0.01;
const MOST_ROUNDS = 8;
/** A program that shortens the strip by less than this share is the last. */
const LEAST_GAIN = 1e-7;
/** Rows are kept to this share of the strip's height, or nearly. */
const TOLERANCE = 1e-10;
/** Overlap is worth so many times its depth in length: it is only kept where it can not be helped. */
const OVERLAP_COST = 1e4;

/** The no-fit polygons of the convex pieces of two turned outlines, as lines to stay beyond. */
type Lines = (fixed: number, moving: number) => readonly (readonly Apart[])[];

/**
 * @param rings true outlines, about the same origins as those of the problem's table
 * @returns the settled layout; the one given if no program can be solved
 */
export function settled(
  solver: LinearSolver,
  problem: StripProblem,
  rings: readonly Ring[],
  layout: StripLayout,
): StripLayout {
  const lines = linesOf(problem, rings);
  let best = layout;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = settledOnce(solver, problem, lines, best);
    if (!next) return best;
    const gain = best.length - next.length;
    best = next;
    if (gain < LEAST_GAIN * best.length) return best;
  }
  return best;
}

/** The line a pair has to stay beyond: normal · (b − a) ≥ least. */
type Apart = { readonly normal: Point2; readonly least: number };

function settledOnce(
  solver: LinearSolver,
  { table, height }: StripProblem,
  lines: Lines,
  { length, places }: StripLayout,
): StripLayout | null {
  const { turned, x, y } = places;
  const count = turned.length;
  const reach = MOVE_SHARE * height;
  // Unknowns: the moves along x and y of each item plus `reach`; the length; the greatest overlap.
  const [lengthAt, overlapAt] = [2 * count, 2 * count + 1];
  const rows: Row[] = [];
  for (let i = 0; i < count; i++) {
    const { box } = table.turned[turned[i]];
    rows.push({ terms: [[2 * i, 1]], least: reach - x[i] - box[0], most: Infinity });
    rows.push({
      terms: [
        [2 * i, 1],
        [lengthAt, -1],
      ],
      least: -Infinity,
      most: reach - x[i] - box[2],
    });
    rows.push({
      terms: [[2 * i + 1, 1]],
      least: reach - y[i] - box[1],
      most: reach + height - y[i] - box[3],
    });
    for (let j = i + 1; j < count; j++) {
      const [dx, dy] = [x[j] - x[i], y[j] - y[i]];
      for (const { normal, least } of aparts(lines(turned[i], turned[j]), [dx, dy], reach)) {
        const [nx, ny] = normal;
        rows.push({
          terms: [
            [2 * i, -nx],
            [2 * i + 1, -ny],
            [2 * j, nx],
            [2 * j + 1, ny],
            [overlapAt, 1],
          ],
          least: least - nx * dx - ny * dy,
          most: Infinity,
        });
      }
    }
  }
  const moves = Array.from({ length: 2 * count }, () => ({
    cost: 0,
    most: 2 * reach,
    whole: false,
  }));
  const unknowns = [
    ...moves,
    { cost: 1, most: 2 * length, whole: false },
    { cost: OVERLAP_COST, most: height, whole: false },
  ];
  const solved = solve(solver, { unknowns, rows }, { nodes: 1, tolerance: TOLERANCE });
  if (!solved) return null;
  const moved = copyOfPlaces(places);
  for (let i = 0; i < count; i++) {
    moved.x[i] += solved.values[2 * i] - reach;
    moved.y[i] += solved.values[2 * i + 1] - reach;
  }
  return { length: usedLength(table, moved), places: moved };
}

/** Each pair of turned outlines is looked at in every program, its polygons are made once. */
function linesOf({ table }: StripProblem, rings: readonly Ring[]): Lines {
  const pieces = table.turned.map(({ outline, turnDeg }) =>
    piecesOf(movedRing({ turnDeg, move: [0, 0] }, rings[outline])),
  );
  const known = new Map<number, readonly (readonly Apart[])[]>();
  return (fixed, moving) => {
    const pair = fixed * pieces.length + moving;
    const lines = known.get(pair) ?? convexNoFits(pieces[fixed], pieces[moving]).map(edgeLines);
    known.set(pair, lines);
    return lines;
  };
}

/** The lines along the edges of a convex polygon; its inside lies before all of them. */
const edgeLines = (polygon: readonly Point2[]): Apart[] =>
  polygon.flatMap(([x, y], k) => {
    const [toX, toY] = polygon[(k + 1) % polygon.length];
    const run = Math.sqrt((toX - x) ** 2 + (toY - y) ** 2);
    if (run === 0) return [];
    const normal: Point2 = [(toY - y) / run, (x - toX) / run];
    return [{ normal, least: normal[0] * x + normal[1] * y }];
  });

/** For each pair of convex pieces that could meet within the reach of both items, the line they are furthest beyond. */
function aparts(polygons: readonly (readonly Apart[])[], [dx, dy]: Point2, reach: number): Apart[] {
  const near = 4 * reach;
  return polygons.flatMap((lines) => {
    let best = lines[0];
    let furthest = -Infinity;
    for (const line of lines) {
      const beyond = line.normal[0] * dx + line.normal[1] * dy - line.least;
      if (beyond > furthest) [furthest, best] = [beyond, line];
    }
    return furthest < near ? [best] : [];
  });
}
