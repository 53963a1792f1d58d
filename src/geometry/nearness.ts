/** Distances to and between meshes. Algorithms after C. Ericson, Real-Time Collision Detection (2005), 5.1. */
import { type FacetTree, search } from './facet-tree.js';
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

/** Facets that can be measured: a tree is one. */
export type Facets = Pick<FacetTree, 'corners' | 'normals'>;

/**
 * Distance between two meshes that do not cross, the second moved, to a ten-thousandth of itself;
 * `upTo` if they are not nearer. Facets that cross count as far apart as their edges and corners
 * are: overlap is another question.
 */
export function distanceBetween(
  tree: FacetTree,
  { corners, normals }: Facets,
  { upTo, move = [0, 0, 0] }: { upTo: number; move?: Point3 },
): number {
  let least = upTo * upTo;
  const facet = new Float64Array(9);
  const [box, own] = [new Float64Array(6), new Float64Array(6)];
  for (let o = 0; o < corners.length; o += 9) {
    for (let i = 0; i < 9; i++) facet[i] = corners[o + i] + move[i % 3];
    boundFacet(box, facet, 0);
    search(
      tree,
      AS_NEAR * least,
      (boxes, at) => betweenBoxes(boxes, at, box),
      (f) => {
        const limit = AS_NEAR * least;
        boundFacet(own, tree.corners, 9 * f);
        if (
          betweenBoxes(own, 0, box) < limit &&
          acrossPlane(tree.corners, 9 * f, tree.normals, 3 * f, facet, 0) < limit &&
          acrossPlane(facet, 0, normals, o / 3, tree.corners, 9 * f) < limit
        ) {
          least = Math.min(least, betweenFacets(tree.corners, 9 * f, facet, 0));
        }
        return AS_NEAR * least;
      },
    );
  }
  return Math.sqrt(least);
}

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

function boundFacet(box: Float64Array, c: Float64Array, o: number): void {
  for (let k = 0; k < 3; k++) {
    box[k] = Math.min(c[o + k], c[o + 3 + k], c[o + 6 + k]);
    box[k + 3] = Math.max(c[o + k], c[o + 3 + k], c[o + 6 + k]);
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
