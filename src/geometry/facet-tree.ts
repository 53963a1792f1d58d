/** The facets of a mesh in nested boxes, so that a question about a place meets few of them. */
import type { Mesh } from './mesh.js';

export type Facets = {
  /** Nine numbers a facet: its corners, in the order of the mesh. */
  readonly corners: Float64Array;
  /** Three numbers a facet: outward, unit; zero for a facet without area. */
  readonly normals: Float64Array;
};

export type FacetTree = Facets & {
  /** Six numbers a box: least x, y, z, greatest x, y, z. Box 0 holds all. */
  readonly boxes: Float64Array;
  /** Two numbers a box: its two parts, or its facets in `order` as ~first and count. */
  readonly parts: Int32Array;
  readonly order: Uint32Array;
};

const LEAF = 4; // facets in a box that is not divided further

export const facetTree = (mesh: Mesh): FacetTree => treeOf(cornersOf(mesh));

/** The corners of every facet, nine numbers each. */
export function cornersOf({ positions, triangles }: Mesh): Float64Array {
  const corners = new Float64Array(3 * triangles.length);
  for (let i = 0; i < triangles.length; i++) {
    for (let k = 0; k < 3; k++) corners[3 * i + k] = positions[3 * triangles[i] + k];
  }
  return corners;
}

/** The tree over any facets, nine numbers each. */
export function treeOf(corners: Float64Array): FacetTree {
  const count = corners.length / 9;
  const order = Uint32Array.from({ length: count }, (_, i) => i);
  const middles = middlesOf(corners);
  const boxes = new Float64Array(12 * Math.max(1, count));
  const parts = new Int32Array(4 * Math.max(1, count));
  let used = 0;
  const divide = (from: number, to: number): number => {
    const box = used++;
    const axis = bound(boxes, 6 * box, corners, order.subarray(from, to));
    if (to - from <= LEAF) {
      parts[2 * box] = ~from;
      parts[2 * box + 1] = to - from;
      return box;
    }
    const half = (boxes[6 * box + axis] + boxes[6 * box + 3 + axis]) / 2;
    const at = parted(order, middles, { from, to, axis, half });
    parts[2 * box] = divide(from, at);
    parts[2 * box + 1] = divide(at, to);
    return box;
  };
  divide(0, count);
  return { corners, normals: normalsOf(corners), boxes, parts, order };
}

/** Facets whose middle lies below `half` first; in the middle of the list where that parts nothing. */
function parted(
  order: Uint32Array,
  middles: Float64Array,
  { from, to, axis, half }: { from: number; to: number; axis: number; half: number },
): number {
  let at = from;
  for (let i = from; i < to; i++) {
    const facet = order[i];
    if (middles[3 * facet + axis] >= half) continue;
    order[i] = order[at];
    order[at++] = facet;
  }
  return at === from || at === to ? (from + to) >> 1 : at;
}

/** Writes the box around facets and gives its longest axis. */
function bound(boxes: Float64Array, at: number, corners: Float64Array, facets: Uint32Array) {
  boxes.fill(Infinity, at, at + 3);
  boxes.fill(-Infinity, at + 3, at + 6);
  for (const f of facets) {
    for (let i = 9 * f; i < 9 * f + 9; i += 3) {
      for (let k = 0; k < 3; k++) {
        const value = corners[i + k];
        if (value < boxes[at + k]) boxes[at + k] = value;
        if (value > boxes[at + 3 + k]) boxes[at + 3 + k] = value;
      }
    }
  }
  const x = boxes[at + 3] - boxes[at];
  const y = boxes[at + 4] - boxes[at + 1];
  const z = boxes[at + 5] - boxes[at + 2];
  return x >= y && x >= z ? 0 : y >= z ? 1 : 2;
}

function middlesOf(corners: Float64Array): Float64Array {
  const middles = new Float64Array(corners.length / 3);
  for (let i = 0; i < middles.length; i++) {
    const at = 9 * Math.floor(i / 3) + (i % 3);
    middles[i] = (corners[at] + corners[at + 3] + corners[at + 6]) / 3;
  }
  return middles;
}

/** Outward, unit, three numbers a facet; zero for a facet without area. */
export function normalsOf(c: Float64Array): Float64Array {
  const normals = new Float64Array(c.length / 3);
  for (let f = 0; f < c.length; f += 9) {
    const [ax, ay, az] = [c[f + 3] - c[f], c[f + 4] - c[f + 1], c[f + 5] - c[f + 2]];
    const [bx, by, bz] = [c[f + 6] - c[f], c[f + 7] - c[f + 1], c[f + 8] - c[f + 2]];
    const [x, y, z] = [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx];
    const size = Math.sqrt(x * x + y * y + z * z);
    if (!(size > 0)) continue;
    normals[f / 3] = x / size;
    normals[f / 3 + 1] = y / size;
    normals[f / 3 + 2] = z / size;
  }
  return normals;
}

/**
 * Visits the facets of every box whose bound is under the limit, the box of the lesser bound first.
 * @param bound a number no facet in the box that starts at `at` can go below
 * @param visit gives the limit from then on
 */
export function search(
  tree: FacetTree,
  limit: number,
  bound: (boxes: Float64Array, at: number) => number,
  visit: (facet: number) => number,
): void {
  const { boxes, parts, order } = tree;
  let now = limit;
  const enter = (box: number): void => {
    const [one, other] = [parts[2 * box], parts[2 * box + 1]];
    if (one < 0) {
      for (let i = ~one; i < ~one + other; i++) now = visit(order[i]);
      return;
    }
    const [a, b] = [bound(boxes, 6 * one), bound(boxes, 6 * other)];
    const [first, second] = a <= b ? [one, other] : [other, one];
    if (Math.min(a, b) < now) enter(first);
    if (Math.max(a, b) < now) enter(second);
  };
  if (order.length > 0 && bound(boxes, 0) < now) enter(0);
}
