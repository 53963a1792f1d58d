/**
 * A region cut into cells, each with the few edges that can be nearest to a point in it, so that "how
 * deep inside?" looks at two or three edges and not at all of them. The answer stays exact.
 */
import type { Region } from '../geometry/ring.js';
import { type Box, boxOf, cross, type Point2, sub } from '../geometry/vec.js';

/** Numbers an edge is stored as: both ends, unit direction, length, whether its ends are hollows. */
export const EDGE_STRIDE = 8;

export type Cells = {
  readonly box: Box;
  readonly columns: number;
  readonly rows: number;
  /** Edges, EDGE_STRIDE numbers each; the inside lies to their left. */
  readonly edges: readonly number[];
  /** Cell by cell, row by row: the numbers of its edges; none where all of it lies outside. */
  readonly near: readonly (readonly number[])[];
};

/** Cells a side for so many edges, a power of two: finer than this the lists get no shorter. */
const sideFor = (edges: number): number =>
  edges <= 4 ? 4 : edges <= 12 ? 8 : edges <= 40 ? 16 : 32;

export function cellsOf(regions: readonly Region[]): Cells {
  const loops = regions
    .flatMap((r) => [r.outer, ...r.holes.map((h) => [...h].reverse())])
    .map(withoutStraight);
  const box = boxOf(loops.flat());
  const edges = loops.flatMap(edgesOf);
  const count = edges.length / EDGE_STRIDE;
  const side = sideFor(count);
  const near: (readonly number[])[] = Array.from({ length: side * side }, () => []);
  // Quarter by quarter: what is near to a point of a quarter is near to a point of the whole.
  const fill = (column: number, row: number, cells: number, among: readonly number[]): void => {
    const [width, height] = [(box[2] - box[0]) / side, (box[3] - box[1]) / side];
    const [x, y] = [box[0] + column * width, box[1] + row * height];
    const found = nearEdges(edges, among, [x, y, x + cells * width, y + cells * height]);
    if (cells === 1) near[row * side + column] = found;
    if (cells === 1 || found.length === 0) return;
    const half = cells / 2;
    for (const dx of [0, half])
      for (const dy of [0, half]) fill(column + dx, row + dy, half, found);
  };
  const all = Array.from({ length: count }, (_, e) => e);
  fill(0, 0, side, all);
  return { box, columns: side, rows: side, edges, near };
}

/**
 * Without corners in a straight line: at a corner the nearest edge is told inside or outside by the
 * way it turns, so it must turn.
 */
const withoutStraight = (loop: readonly Point2[]): Point2[] =>
  loop.filter((b, i) => {
    const [a, c] = [loop[(i + loop.length - 1) % loop.length], loop[(i + 1) % loop.length]];
    const [p, q] = [sub(b, a), sub(c, b)];
    return Math.abs(cross(p, q)) > STRAIGHT * Math.hypot(...p) * Math.hypot(...q);
  });

/** Sine of a turn that counts as none. */
const STRAIGHT = 1e-10;

function edgesOf(loop: readonly Point2[]): number[] {
  const n = loop.length;
  const hollow = (i: number): number => {
    const [a, b, c] = [loop[(i + n - 1) % n], loop[i % n], loop[(i + 1) % n]];
    return cross(sub(b, a), sub(c, b)) < 0 ? 1 : 0;
  };
  return loop.flatMap(([x, y], i) => {
    const [endX, endY] = loop[(i + 1) % n];
    const length = Math.sqrt((endX - x) ** 2 + (endY - y) ** 2);
    const kinds = hollow(i) + 2 * hollow(i + 1);
    return [x, y, endX, endY, (endX - x) / length, (endY - y) / length, length, kinds];
  });
}

/** Edges that are nearest to some point of a cell; none if all of the cell lies outside. */
function nearEdges(edges: readonly number[], among: readonly number[], cell: Box): number[] {
  const corners: Point2[] = [
    [cell[0], cell[1]],
    [cell[2], cell[1]],
    [cell[2], cell[3]],
    [cell[0], cell[3]],
  ];
  // From no point of the cell is an edge further than from its corners (distance is convex).
  let reach = Infinity;
  for (const e of among) {
    let far = 0;
    for (const p of corners) far = Math.max(far, distanceTo(edges, e, p));
    reach = Math.min(reach, far);
  }
  const slack = 1e-9 * (1 + reach);
  const found: number[] = [];
  let least = Infinity;
  for (const e of among) {
    const d = cellDistance(edges, e, cell, corners);
    least = Math.min(least, d);
    if (d <= reach + slack) found.push(e);
  }
  const middle: Point2 = [(cell[0] + cell[2]) / 2, (cell[1] + cell[3]) / 2];
  return least > 0 && !isInside(edges, found, middle) ? [] : found;
}

function distanceTo(edges: readonly number[], e: number, [x, y]: Point2): number {
  const k = e * EDGE_STRIDE;
  const [dx, dy] = [x - edges[k], y - edges[k + 1]];
  const along = Math.min(Math.max(dx * edges[k + 4] + dy * edges[k + 5], 0), edges[k + 6]);
  const [ex, ey] = [dx - along * edges[k + 4], dy - along * edges[k + 5]];
  return Math.sqrt(ex * ex + ey * ey);
}

/** Distance from an edge to a rectangle; 0 if they meet. */
function cellDistance(
  edges: readonly number[],
  e: number,
  cell: Box,
  corners: readonly Point2[],
): number {
  const k = e * EDGE_STRIDE;
  if (meetsBox(edges[k], edges[k + 1], edges[k + 2], edges[k + 3], cell)) return 0;
  let least = Infinity;
  for (const p of corners) least = Math.min(least, distanceTo(edges, e, p));
  for (const end of [0, 2]) {
    const dx = Math.max(cell[0] - edges[k + end], 0, edges[k + end] - cell[2]);
    const dy = Math.max(cell[1] - edges[k + end + 1], 0, edges[k + end + 1] - cell[3]);
    least = Math.min(least, Math.sqrt(dx * dx + dy * dy));
  }
  return least;
}

/** True if a straight piece meets a rectangle (clipped as by Liang and Barsky, 1984). */
function meetsBox(x1: number, y1: number, x2: number, y2: number, box: Box): boolean {
  let [from, to] = [0, 1];
  for (const [start, step, low, high] of [
    [x1, x2 - x1, box[0], box[2]],
    [y1, y2 - y1, box[1], box[3]],
  ]) {
    if (step === 0) {
      if (start < low || start > high) return false;
      continue;
    }
    const [a, b] = [(low - start) / step, (high - start) / step];
    from = Math.max(from, Math.min(a, b));
    to = Math.min(to, Math.max(a, b));
  }
  return from <= to;
}

/** By the nearest edge alone: left of it, or past an end of it that is a hollow. */
function isInside(edges: readonly number[], near: readonly number[], p: Point2): boolean {
  const best = near.reduce((a, b) => (distanceTo(edges, b, p) < distanceTo(edges, a, p) ? b : a));
  const k = best * EDGE_STRIDE;
  const [dx, dy] = [p[0] - edges[k], p[1] - edges[k + 1]];
  const along = dx * edges[k + 4] + dy * edges[k + 5];
  if (along <= 0) return (edges[k + 7] & 1) !== 0;
  if (along >= edges[k + 6]) return (edges[k + 7] & 2) !== 0;
  return edges[k + 4] * dy - edges[k + 5] * dx > 0;
}
