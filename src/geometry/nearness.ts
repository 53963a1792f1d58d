/** Distances to and between meshes. Algorithms after C. Ericson, Real-Time Collision Detection (2005), 5.1. */
import { type Facets, type FacetTree, search } from './facet-tree.js';
import type { Point3 } from './vec.js';

/** Distance from a point to the nearest facet; `upTo` if none is nearer. */
export function distanceToFacets(tree: FacetTree, [x, y, z]: Point3, upTo: number): number {
  let least = upTo * upTo;
  search(
    tree,
    least,
    (boxes, at) => {
      const dx = Math.max(boxes[at] - x, 0, x - boxes[at + 3]);
      const dy = Math.max(boxes[at + 1] - y, 0, y - boxes[at + 4]);
      const dz = Math.max(boxes[at + 2] - z, 0, z - boxes[at + 5]);
      return dx * dx + dy * dy + dz * dz;
    },
    (f) => {
      least = Math.min(least, pointToFacet(x, y, z, tree.corners, 9 * f));
      return least;
    },
  );
  return Math.sqrt(least);
}

/** What two pairs of facets must differ by to be told apart: many lie equally near where flats face flats. */
const AS_NEAR = 1 - 1e-4;

/**
 * Distance between two meshes that do not cross, to a ten-thousandth of itself; `upTo` if they are
 * not nearer. Facets that cross count as far apart as their edges and corners are: overlap is
 * another question. With a `move` the second mesh is moved, and only those of its facets count that
 * face the way it goes: the others come to where it was.
 */
export function distanceBetween(
  tree: FacetTree,
  { corners, normals }: Facets,
  { upTo, move }: { upTo: number; move?: Point3 },
): number {
  let limit = AS_NEAR * upTo * upTo;
  const facet = new Float64Array(9);
  const [box, own] = [new Float64Array(6), new Float64Array(6)];
  const bound = (boxes: Float64Array, at: number) => betweenBoxes(boxes, at, box);
  const goes = (f: number) =>
    !move ||
    normals[3 * f] * move[0] + normals[3 * f + 1] * move[1] + normals[3 * f + 2] * move[2] > 0;
  const take = (f: number) => {
    for (let i = 0; i < 9; i++) facet[i] = corners[9 * f + i] + (move ? move[i % 3] : 0);
    boundFacets(box, facet, 0, 9);
  };
  const isNear = () => {
    let near = false;
    search(tree, limit, bound, (f) => {
      boundFacets(own, tree.corners, 9 * f, 9 * f + 9);
      near ||= betweenBoxes(own, 0, box) < limit;
      return near ? 0 : limit;
    });
    return near;
  };
  const measure = (n: number) =>
    search(tree, limit, bound, (f) => {
      boundFacets(own, tree.corners, 9 * f, 9 * f + 9);
      if (
        betweenBoxes(own, 0, box) < limit &&
        acrossPlane(tree.corners, 9 * f, tree.normals, 3 * f, facet, 0) < limit &&
        acrossPlane(facet, 0, normals, 3 * n, tree.corners, 9 * f) < limit
      ) {
        limit = Math.min(limit, AS_NEAR * betweenFacets(tree.corners, 9 * f, facet, 0));
      }
      return limit;
    });
  const count = corners.length / 9;
  for (let from = 0; from < count; from += RUN) {
    const to = Math.min(count, from + RUN);
    boundFacets(box, corners, 9 * from, 9 * to);
    for (let k = 0; k < 6; k++) box[k] += move ? move[k % 3] : 0;
    if (!isNear()) continue;
    for (let f = from; f < to; f++) {
      if (!goes(f)) continue;
      take(f);
      measure(f);
    }
  }
  return Math.sqrt(limit / AS_NEAR);
}

/** Facets asked about together first: those that follow each other in a mesh mostly lie together. */
const RUN = 32;

/** Squared distance of facet b from the plane of facet a; 0 where it crosses it. */
function acrossPlane(
  a: Float64Array,
  i: number,
  normals: Float64Array,
  n: number,
  b: Float64Array,
  j: number,
): number {
  const [x, y, z] = [normals[n], normals[n + 1], normals[n + 2]];
  const base = x * a[i] + y * a[i + 1] + z * a[i + 2];
  const p = x * b[j] + y * b[j + 1] + z * b[j + 2] - base;
  const q = x * b[j + 3] + y * b[j + 4] + z * b[j + 5] - base;
  const r = x * b[j + 6] + y * b[j + 7] + z * b[j + 8] - base;
  const apart = Math.max(Math.min(p, q, r), -Math.max(p, q, r), 0);
  return apart * apart;
}

/** Squared. */
function betweenBoxes(a: Float64Array, at: number, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < 3; k++) {
    const apart = Math.max(a[at + k] - b[k + 3], b[k] - a[at + k + 3]);
    if (apart > 0) sum += apart * apart;
  }
  return sum;
}

/** Writes the box around the corners from one place in a list to another. */
function boundFacets(box: Float64Array, c: Float64Array, from: number, to: number): void {
  box.fill(Infinity, 0, 3);
  box.fill(-Infinity, 3, 6);
  for (let i = from; i < to; i += 3) {
    for (let k = 0; k < 3; k++) {
      if (c[i + k] < box[k]) box[k] = c[i + k];
      if (c[i + k] > box[k + 3]) box[k + 3] = c[i + k];
    }
  }
}

/** Squared: the least of corner to facet and edge to edge. */
function betweenFacets(a: Float64Array, i: number, b: Float64Array, j: number): number {
  let least = Infinity;
  for (let k = 0; k < 9; k += 3) {
    least = Math.min(
      least,
      pointToFacet(a[i + k], a[i + k + 1], a[i + k + 2], b, j),
      pointToFacet(b[j + k], b[j + k + 1], b[j + k + 2], a, i),
    );
    for (let m = 0; m < 9; m += 3) {
      least = Math.min(
        least,
        betweenPieces(a, i + k, i + ((k + 3) % 9), b, j + m, j + ((m + 3) % 9)),
      );
    }
  }
  return least;
}

/** Squared distance from a point to the facet at `o`. */
function pointToFacet(x: number, y: number, z: number, c: Float64Array, o: number): number {
  const [abx, aby, abz] = [c[o + 3] - c[o], c[o + 4] - c[o + 1], c[o + 5] - c[o + 2]];
  const [acx, acy, acz] = [c[o + 6] - c[o], c[o + 7] - c[o + 1], c[o + 8] - c[o + 2]];
  const [apx, apy, apz] = [x - c[o], y - c[o + 1], z - c[o + 2]];
  const [d1, d2] = [abx * apx + aby * apy + abz * apz, acx * apx + acy * apy + acz * apz];
  const [bb, cc, bc] = [
    abx * abx + aby * aby + abz * abz,
    acx * acx + acy * acy + acz * acz,
    abx * acx + aby * acy + abz * acz,
  ];
  const away = (v: number, w: number): number => {
    const [dx, dy, dz] = [
      apx - v * abx - w * acx,
      apy - v * aby - w * acy,
      apz - v * abz - w * acz,
    ];
    return dx * dx + dy * dy + dz * dz;
  };
  const det = bb * cc - bc * bc;
  if (det > 0) {
    const [v, w] = [(cc * d1 - bc * d2) / det, (bb * d2 - bc * d1) / det];
    if (v >= 0 && w >= 0 && v + w <= 1) return away(v, w);
  }
  const t = share(d1, bb);
  const s = share(d2, cc);
  // On the third edge: from the second corner to the third.
  const r = share(d2 - d1 - bc + bb, bb + cc - 2 * bc);
  return Math.min(away(t, 0), away(0, s), away(1 - r, r));
}

/** Where on a piece of squared length `square` the foot of a point lies, kept on the piece. */
const share = (along: number, square: number): number =>
  square > 0 ? Math.min(1, Math.max(0, along / square)) : 0;

/** Squared distance between two straight pieces. */
function betweenPieces(
  a: Float64Array,
  p: number,
  q: number,
  b: Float64Array,
  r: number,
  s: number,
): number {
  const [ux, uy, uz] = [a[q] - a[p], a[q + 1] - a[p + 1], a[q + 2] - a[p + 2]];
  const [vx, vy, vz] = [b[s] - b[r], b[s + 1] - b[r + 1], b[s + 2] - b[r + 2]];
  const [wx, wy, wz] = [a[p] - b[r], a[p + 1] - b[r + 1], a[p + 2] - b[r + 2]];
  const [uu, vv, uv] = [
    ux * ux + uy * uy + uz * uz,
    vx * vx + vy * vy + vz * vz,
    ux * vx + uy * vy + uz * vz,
  ];
  const [uw, vw] = [ux * wx + uy * wy + uz * wz, vx * wx + vy * wy + vz * wz];
  const det = uu * vv - uv * uv;
  let t = det > 0 ? Math.min(1, Math.max(0, (uv * vw - vv * uw) / det)) : 0;
  const k = share(uv * t + vw, vv);
  t = share(uv * k - uw, uu);
  const [dx, dy, dz] = [wx + t * ux - k * vx, wy + t * uy - k * vy, wz + t * uz - k * vz];
  return dx * dx + dy * dy + dz * dz;
}
