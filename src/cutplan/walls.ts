/**
 * The edges of all outlines in a grid of cells, so that "does a blade fit along here?" looks at few
 * of them. Typed arrays; no allocation in a query.
 */
import type { Point2 } from '../geometry/vec.js';

export type Walls = {
  /** True when the piece from a to b keeps more than `least` from every edge, those of `except` aside. */
  readonly clear: (a: Point2, b: Point2, least: number, except?: number) => boolean;
  /** Share of the way from a to b at which the first edge is met, and that edge; null if none is. */
  readonly firstMet: (
    a: Point2,
    b: Point2,
  ) => { readonly share: number; readonly edge: number } | null;
  /** Which ring an edge belongs to, and which point of it the edge starts at. */
  readonly ringOf: (edge: number) => { readonly ring: number; readonly from: number };
};

/** Edges of the rings given; `cellMm` is the side of a cell. */
export function wallsOf(rings: readonly (readonly Point2[])[], cellMm: number): Walls {
  const edges = edgesOf(rings);
  const grid = gridOf(edges, cellMm);
  const seen = new Uint32Array(edges.count);
  let stamp = 0;

  const clear = (a: Point2, b: Point2, least: number, except = -1): boolean => {
    stamp++;
    return grid.along(a[0], a[1], b[0], b[1], least, (first, last) => {
      for (let k = first; k < last; k++) {
        const e = grid.items[k];
        if (seen[e] === stamp) continue;
        seen[e] = stamp;
        if (edges.ring[e] !== except && !apart(edges, e, a, b, least)) return false;
      }
      return true;
    });
  };

  const firstMet = (a: Point2, b: Point2) => {
    let share = Infinity;
    let edge = -1;
    stamp++;
    grid.along(a[0], a[1], b[0], b[1], 0, (first, last) => {
      for (let k = first; k < last; k++) {
        const e = grid.items[k];
        if (seen[e] === stamp) continue;
        seen[e] = stamp;
        const t = meeting(edges, e, a, b);
        if (t < share) [share, edge] = [t, e];
      }
      return true;
    });
    return edge < 0 ? null : { share, edge };
  };

  const ringOf = (edge: number) => ({ ring: edges.ring[edge], from: edges.from[edge] });
  return { clear, firstMet, ringOf };
}

type Edges = {
  readonly count: number;
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  readonly ring: Int32Array;
  readonly from: Int32Array;
};

function edgesOf(rings: readonly (readonly Point2[])[]): Edges {
  const count = rings.reduce((n, r) => n + r.length, 0);
  const real = () => new Float64Array(count);
  const [ax, ay, bx, by] = [real(), real(), real(), real()];
  const [ring, from] = [new Int32Array(count), new Int32Array(count)];
  let e = 0;
  rings.forEach((points, r) => {
    points.forEach(([x, y], i) => {
      const [u, v] = points[(i + 1) % points.length];
      ax[e] = x;
      ay[e] = y;
      bx[e] = u;
      by[e] = v;
      ring[e] = r;
      from[e++] = i;
    });
  });
  return { count, ax, ay, bx, by, ring, from };
}

type Visit = (first: number, last: number) => boolean;

type Grid = {
  readonly items: Int32Array;
  /** Visits every cell within `pad` of a piece until a visit says false; false then. */
  readonly along: (
    ax: number,
    ay: number,
    bx: number,
    by: number,
    pad: number,
    visit: Visit,
  ) => boolean;
};

function gridOf(edges: Edges, cellMm: number): Grid {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let e = 0; e < edges.count; e++) {
    left = Math.min(left, edges.ax[e]);
    right = Math.max(right, edges.ax[e]);
    bottom = Math.min(bottom, edges.ay[e]);
    top = Math.max(top, edges.ay[e]);
  }
  const columns = edges.count > 0 ? Math.floor((right - left) / cellMm) + 1 : 0;
  const rows = edges.count > 0 ? Math.floor((top - bottom) / cellMm) + 1 : 0;
  const cells = (
    [ax, ay, bx, by, pad]: readonly number[],
    visit: (cell: number) => boolean,
  ): boolean => {
    const [x0, x1] = ax < bx ? [ax, bx] : [bx, ax];
    const first = Math.max(0, Math.floor((x0 - pad - left) / cellMm));
    const last = Math.min(columns - 1, Math.floor((x1 + pad - left) / cellMm));
    const slope = x1 > x0 ? (by - ay) / (bx - ax) : 0;
    for (let c = first; c <= last; c++) {
      let [y0, y1] = [ay, by];
      if (x1 - x0 > 1e-9) {
        const from = Math.min(x1, Math.max(x0, left + c * cellMm - pad));
        const to = Math.max(x0, Math.min(x1, left + (c + 1) * cellMm + pad));
        y0 = ay + slope * (from - ax);
        y1 = ay + slope * (to - ax);
      }
      if (y0 > y1) [y0, y1] = [y1, y0];
      const low = Math.max(0, Math.floor((y0 - pad - bottom) / cellMm));
      const high = Math.min(rows - 1, Math.floor((y1 + pad - bottom) / cellMm));
      for (let r = low; r <= high; r++) if (!visit(c * rows + r)) return false;
    }
    return true;
  };
  const start = new Int32Array(columns * rows + 1);
  const inCells = (e: number, visit: (cell: number) => void): void => {
    // A hair of room, so that no rounding loses an edge that lies on the line between two cells.
    cells([edges.ax[e], edges.ay[e], edges.bx[e], edges.by[e], 1e-6], (cell) => {
      visit(cell);
      return true;
    });
  };
  for (let e = 0; e < edges.count; e++) inCells(e, (cell) => start[cell + 1]++);
  for (let c = 0; c < columns * rows; c++) start[c + 1] += start[c];
  const items = new Int32Array(start[columns * rows]);
  const filled = start.slice();
  for (let e = 0; e < edges.count; e++) {
    inCells(e, (cell) => {
      items[filled[cell]++] = e;
    });
  }
  return {
    items,
    along: (ax, ay, bx, by, pad, visit) =>
      cells([ax, ay, bx, by, pad], (cell) => visit(start[cell], start[cell + 1])),
  };
}

/** True when an edge and the piece from a to b keep more than `least` between them. */
function apart(edges: Edges, e: number, a: Point2, b: Point2, least: number): boolean {
  const [px, py, qx, qy] = [edges.ax[e], edges.ay[e], edges.bx[e], edges.by[e]];
  if (Math.min(px, qx) > Math.max(a[0], b[0]) + least) return true;
  if (Math.max(px, qx) < Math.min(a[0], b[0]) - least) return true;
  if (Math.min(py, qy) > Math.max(a[1], b[1]) + least) return true;
  if (Math.max(py, qy) < Math.min(a[1], b[1]) - least) return true;
  if (meeting(edges, e, a, b) <= 1) return false;
  const square = least * least;
  return (
    toPiece(px, py, a[0], a[1], b[0], b[1]) > square &&
    toPiece(qx, qy, a[0], a[1], b[0], b[1]) > square &&
    toPiece(a[0], a[1], px, py, qx, qy) > square &&
    toPiece(b[0], b[1], px, py, qx, qy) > square
  );
}

/** Share of the way from a to b at which it meets the edge; Infinity if it does not. */
function meeting(edges: Edges, e: number, a: Point2, b: Point2): number {
  const [px, py] = [edges.ax[e], edges.ay[e]];
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const [ex, ey] = [edges.bx[e] - px, edges.by[e] - py];
  const turn = dx * ey - dy * ex;
  if (turn === 0) return Infinity;
  const [sx, sy] = [px - a[0], py - a[1]];
  const t = (sx * ey - sy * ex) / turn;
  const u = (sx * dy - sy * dx) / turn;
  return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? t : Infinity;
}

/** Squared distance from (x, y) to the piece from (ax, ay) to (bx, by). */
function toPiece(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const [dx, dy] = [bx - ax, by - ay];
  const run = dx * dx + dy * dy;
  const t = run > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / run)) : 0;
  const [ux, uy] = [x - ax - t * dx, y - ay - t * dy];
  return ux * ux + uy * uy;
}
