/** Where a straight line first meets the facets of a mesh. */
import { type FacetTree, search } from './facet-tree.js';
import type { Point3 } from './vec.js';

export type Hit = { readonly facet: number; readonly distance: number };

/** Which facets count: those met from outside, from inside, or both. */
export type Sides = 'in' | 'out' | 'both';

const FLAT = 1e-12;

/**
 * The first facet on the way from a point along a unit vector, at most `upTo` away and further than
 * `from`; null if there is none.
 */
export function firstHit(
  tree: FacetTree,
  start: Point3,
  way: Point3,
  { from = 0, upTo, sides = 'both' }: { from?: number; upTo: number; sides?: Sides },
): Hit | null {
  let [facet, distance] = [-1, upTo];
  const entry = entryInto(start, way, from);
  search(tree, upTo, entry, (f) => {
    const toward = sides === 'both' ? 0 : facing(tree, f, way);
    if ((sides === 'in' && toward >= 0) || (sides === 'out' && toward <= 0)) return distance;
    const d = crossing(tree.corners, 9 * f, start, way);
    if (d > from && d < distance) [facet, distance] = [f, d];
    return distance;
  });
  return facet < 0 ? null : { facet, distance };
}

/** The facet's normal along the way: negative where the line goes into the solid. */
export const facing = ({ normals }: FacetTree, f: number, [x, y, z]: Point3): number =>
  normals[3 * f] * x + normals[3 * f + 1] * y + normals[3 * f + 2] * z;

/** Distance at which the line enters a box (T. Kay and J. Kajiya's slabs, 1986); Infinity beside it or before `from`. */
function entryInto(start: Point3, way: Point3, from: number) {
  const inverse = way.map((w) => (Math.abs(w) > FLAT ? 1 / w : 0));
  return (boxes: Float64Array, at: number): number => {
    let near = from;
    let far = Infinity;
    for (let k = 0; k < 3; k++) {
      const low = boxes[at + k] - start[k];
      const high = boxes[at + 3 + k] - start[k];
      const i = inverse[k];
      if (i === 0) {
        if (low > 0 || high < 0) return Infinity;
        continue;
      }
      const enter = i > 0 ? low * i : high * i;
      const leave = i > 0 ? high * i : low * i;
      if (enter > near) near = enter;
      if (leave < far) far = leave;
    }
    return near <= far ? near : Infinity;
  };
}

/** Distance to the facet along the line; NaN beside it (T. Möller and B. Trumbore, 1997). */
function crossing(c: Float64Array, o: number, start: Point3, way: Point3): number {
  const [wx, wy, wz] = way;
  const [ex, ey, ez] = [c[o + 3] - c[o], c[o + 4] - c[o + 1], c[o + 5] - c[o + 2]];
  const [fx, fy, fz] = [c[o + 6] - c[o], c[o + 7] - c[o + 1], c[o + 8] - c[o + 2]];
  const [px, py, pz] = [wy * fz - wz * fy, wz * fx - wx * fz, wx * fy - wy * fx];
  const det = ex * px + ey * py + ez * pz;
  if (Math.abs(det) < FLAT) return Number.NaN;
  const [sx, sy, sz] = [start[0] - c[o], start[1] - c[o + 1], start[2] - c[o + 2]];
  const u = (sx * px + sy * py + sz * pz) / det;
  if (u < 0 || u > 1) return Number.NaN;
  const [qx, qy, qz] = [sy * ez - sz * ey, sz * ex - sx * ez, sx * ey - sy * ex];
  const v = (wx * qx + wy * qy + wz * qz) / det;
  if (v < 0 || u + v > 1) return Number.NaN;
  return (fx * qx + fy * qy + fz * qz) / det;
}
