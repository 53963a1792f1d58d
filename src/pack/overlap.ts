/** How deep one outline overlaps another, and the shortest way out. The inner loop of all packing. */
import type { Table } from './table.js';

/** A way out: x, y of the move that parts two outlines. */
export type Exit = Float64Array;

export type Overlap = {
  /**
   * Depth of the overlap when the moving outline lies at (dx, dy) from the fixed one: the length of the
   * shortest move that parts them; 0 if they are apart or touch.
   * @param pair moving × count of turned outlines + fixed
   */
  readonly depth: (pair: number, dx: number, dy: number) => number;
  /** The same; the shortest move is put into `exit` if there is an overlap. */
  readonly exit: (pair: number, dx: number, dy: number, exit: Exit) => number;
};

/** Overlaps of less than this share of a polygon's size are rounding. */
const ROUNDING = 1e-9;

export function overlapOf(table: Table): Overlap {
  const { boxes, polygon, turning, origin, grid, start, near, edges } = table;

  /** Walks the edges near a place; the numbers of the nearest are left in `at`. */
  let nearest = 0;
  let alongNearest = 0;
  const walk = (pair: number, dx: number, dy: number): number => {
    const b = 4 * pair;
    if (!(dx > boxes[b] && dx < boxes[b + 2] && dy > boxes[b + 1] && dy < boxes[b + 3])) return 0;
    const cos = turning[2 * pair];
    const sin = turning[2 * pair + 1];
    const px = cos * dx + sin * dy;
    const py = cos * dy - sin * dx;
    const k = polygon[pair];
    const side = grid[2 * k];
    let column = Math.floor((px - origin[4 * k]) * origin[4 * k + 2]);
    let row = Math.floor((py - origin[4 * k + 1]) * origin[4 * k + 3]);
    column = column < 0 ? 0 : column >= side ? side - 1 : column;
    row = row < 0 ? 0 : row >= side ? side - 1 : row;
    const cell = grid[2 * k + 1] + row * side + column;
    const end = start[cell + 1];
    let least = Infinity;
    let inside = false;
    for (let i = start[cell]; i < end; i++) {
      const e = near[i];
      const ex = px - edges[e];
      const ey = py - edges[e + 1];
      const ux = edges[e + 4];
      const uy = edges[e + 5];
      const along = ex * ux + ey * uy;
      if (along <= 0) {
        const square = ex * ex + ey * ey;
        if (square < least) {
          least = square;
          inside = (edges[e + 7] & 1) !== 0;
          nearest = e;
          alongNearest = 0;
        }
      } else if (along >= edges[e + 6]) {
        const fx = px - edges[e + 2];
        const fy = py - edges[e + 3];
        const square = fx * fx + fy * fy;
        if (square < least) {
          least = square;
          inside = (edges[e + 7] & 2) !== 0;
          nearest = e;
          alongNearest = edges[e + 6];
        }
      } else {
        const side = ux * ey - uy * ex;
        const square = side * side;
        if (square < least) {
          least = square;
          inside = side > 0;
          nearest = e;
          alongNearest = along;
        }
      }
    }
    if (!inside) return 0;
    const depth = Math.sqrt(least);
    return depth * origin[4 * k + 2] < ROUNDING ? 0 : depth;
  };

  return {
    depth: walk,
    exit: (pair, dx, dy, exit) => {
      const depth = walk(pair, dx, dy);
      if (depth === 0) return 0;
      const cos = turning[2 * pair];
      const sin = turning[2 * pair + 1];
      const x = edges[nearest] + alongNearest * edges[nearest + 4] - (cos * dx + sin * dy);
      const y = edges[nearest + 1] + alongNearest * edges[nearest + 5] - (cos * dy - sin * dx);
      exit[0] = cos * x - sin * y;
      exit[1] = sin * x + cos * y;
      return depth;
    },
  };
}
