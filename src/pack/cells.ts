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
  /** Cells along x, and as many along y. */
  readonly side: number;
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
  return { box, side, edges, near };
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
  const [left, bottom, right, top] = cell;
  const distances = new Float64Array(among.length);
  // From no point of the cell is an edge further than from its corners (distance is convex).
  let reach = Infinity;
  let least = Infinity;
  for (let n = 0; n < among.length; n++) {
    const e = among[n];
    const a = distanceTo(edges, e, left, bottom);
    const b = distanceTo(edges, e, right, bottom);
    const c = distanceTo(edges, e, right, top);
    const d = distanceTo(edges, e, left, top);
    reach = Math.min(reach, Math.max(a, b, c, d));
    distances[n] = Math.min(a, b, c, d, endsTo(edges, e, cell));
    least = Math.min(least, distances[n]);
  }
  const most = reach + 1e-9 * (1 + reach);
  const found: number[] = [];
  for (let n = 0; n < among.length; n++) if (distances[n] <= most) found.push(among[n]);
  const [x, y] = [(left + right) / 2, (bottom + top) / 2];
  return least > 0 && !isInside(edges, found, x, y) ? [] : found;
}

function distanceTo(edges: readonly number[], e: number, x: number, y: number): number {
  const k = e * EDGE_STRIDE;
  const dx = x - edges[k];
  const dy = y - edges[k + 1];
  const along = Math.min(Math.max(dx * edges[k + 4] + dy * edges[k + 5], 0), edges[k + 6]);
  const ex = dx - along * edges[k + 4];
  const ey = dy - along * edges[k + 5];
  return Math.sqrt(ex * ex + ey * ey);
}

/** Distance from a rectangle to the nearer end of an edge; 0 if the edge meets the rectangle. */
function endsTo(edges: readonly number[], e: number, cell: Box): number {
  const k = e * EDGE_STRIDE;
  if (meetsBox(edges[k], edges[k + 1], edges[k + 2], edges[k + 3], cell)) return 0;
  const start = toBox(edges[k], edges[k + 1], cell);
  return Math.min(start, toBox(edges[k + 2], edges[k + 3], cell));
}

function toBox(x: number, y: number, [left, bottom, right, top]: Box): number {
  const dx = Math.max(left - x, 0, x - right);
  const dy = Math.max(bottom - y, 0, y - top);
  return Math.sqrt(dx * dx + dy * dy);
}

/** True if a straight piece meets a rectangle (clipped as by Liang and Barsky, 1984). */
function meetsBox(x1: number, y1: number, x2: number, y2: number, box: Box): boolean {
  const [left, bottom, right, top] = box;
  if (Math.max(x1, x2) < left || Math.min(x1, x2) > right) return false;
  if (Math.max(y1, y2) < bottom || Math.min(y1, y2) > top) return false;
  const [dx, dy] = [x2 - x1, y2 - y1];
  const xa = dx === 0 ? 0 : (left - x1) / dx;
  const xb = dx === 0 ? 1 : (right - x1) / dx;
  const ya = dy === 0 ? 0 : (bottom - y1) / dy;
  const yb = dy === 0 ? 1 : (top - y1) / dy;
  const from = Math.max(0, Math.min(xa, xb), Math.min(ya, yb));
  return from <= Math.min(1, Math.max(xa, xb), Math.max(ya, yb));
}

/** By the nearest edge alone: left of it, or past an end of it that is a hollow. */
function isInside(
  edges: readonly number[],
  near: readonly number[],
  x: number,
  y: number,
): boolean {
  let best = near[0];
  for (const e of near) if (distanceTo(edges, e, x, y) < distanceTo(edges, best, x, y)) best = e;
  const k = best * EDGE_STRIDE;
  const [dx, dy] = [x - edges[k], y - edges[k + 1]];
  const along = dx * edges[k + 4] + dy * edges[k + 5];
  if (along <= 0) return (edges[k + 7] & 1) !== 0;
  if (along >= edges[k + 6]) return (edges[k + 7] & 2) !== 0;
  return edges[k + 4] * dy - edges[k + 5] * dx > 0;
}
