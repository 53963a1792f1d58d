/**
 * The way out: a workpiece that moves along the free direction meets the jig where, on some line
 * along that direction, plastic lies beyond wood. Seen along the way both are known by their facets:
 * the plastic's that look out, the wood's that look in. Where two of them overlap in that view, the
 * plastic's must lie behind the wood's.
 */
import { type Facets, search, treeOf } from '../../geometry/facet-tree.js';
import type { Point3 } from '../../geometry/vec.js';
import { cross3, unit3 } from '../../geometry/vec3.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import type { Seated } from './seated.js';

const TOUCH = 1e-3; // mm² in the view, and mm along the way: less is rounding

/** Nothing to check where the jig names no way out. */
export function passage({ tree, workpieceFacets, free }: Seated): JigCheck {
  if (!free) return { flaws: [], measured: {} };
  const mm = blockedMm(tree, workpieceFacets, free);
  return {
    flaws: flawsOf([[mm > TOUCH, 'blank-cannot-move', mm, TOUCH]]),
    measured: { passageBlockedMm: mm },
  };
}

/** How far beyond the moving facets the standing ones reach, seen along the way, mm; 0 when it is clear. */
export function blockedMm(standing: Facets, moving: Facets, way: Point3): number {
  const ahead = treeOf(seenAlong(standing, way, 1));
  const behind = seenAlong(moving, way, -1);
  const view = new Float64Array(5); // least x, y, z of a moving facet, greatest x, y
  const apart = (boxes: Float64Array, at: number): number =>
    boxes[at] > view[3] ||
    boxes[at + 3] < view[0] ||
    boxes[at + 1] > view[4] ||
    boxes[at + 4] < view[1] ||
    boxes[at + 5] < view[2]
      ? 1
      : 0;
  let worst = 0;
  for (let o = 0; o < behind.length; o += 9) {
    for (let k = 0; k < 3; k++) {
      view[k] = Math.min(behind[o + k], behind[o + 3 + k], behind[o + 6 + k]);
      if (k < 2) view[3 + k] = Math.max(behind[o + k], behind[o + 3 + k], behind[o + 6 + k]);
    }
    search(ahead, 1, apart, (f) => {
      if (apartInView(ahead.corners, 9 * f, view)) return 1;
      worst = Math.max(worst, reachBeyond(ahead.corners, 9 * f, behind, o));
      return 1;
    });
  }
  return worst;
}

/** Beside the box in the view, or wholly behind it. */
function apartInView(t: Float64Array, o: number, view: Float64Array): boolean {
  for (let k = 0; k < 2; k++) {
    if (Math.min(t[o + k], t[o + 3 + k], t[o + 6 + k]) > view[3 + k]) return true;
    if (Math.max(t[o + k], t[o + 3 + k], t[o + 6 + k]) < view[k]) return true;
  }
  return Math.max(t[o + 2], t[o + 5], t[o + 8]) < view[2];
}

/** Facets whose normal leans less than this along the way are walls beside it. */
const LEVEL = 1e-6;

/** The facets that look along the way (`side` 1) or against it, in a frame whose third axis it is. */
function seenAlong({ corners, normals }: Facets, way: Point3, side: 1 | -1): Float64Array {
  const aside: Point3 = Math.abs(way[0]) < 0.5 ? [1, 0, 0] : [0, 1, 0];
  const u = unit3(cross3(way, aside));
  const axes = [u, cross3(way, u), way] as const;
  const seen = new Float64Array(corners.length);
  let used = 0;
  for (let f = 0; f < corners.length / 9; f++) {
    const n = 3 * f;
    const toward = normals[n] * way[0] + normals[n + 1] * way[1] + normals[n + 2] * way[2];
    if (side * toward < LEVEL) continue;
    for (let i = 9 * f; i < 9 * f + 9; i += 3) {
      for (const [x, y, z] of axes) {
        seen[used++] = x * corners[i] + y * corners[i + 1] + z * corners[i + 2];
      }
    }
  }
  return seen.subarray(0, used);
}

const doubledArea = (t: ArrayLike<number>, o = 0): number =>
  (t[o + 3] - t[o]) * (t[o + 7] - t[o + 1]) - (t[o + 4] - t[o + 1]) * (t[o + 6] - t[o]);

/** Greatest height of facet a over facet b where they overlap in the view; 0 where it is lower. */
function reachBeyond(a: Float64Array, i: number, b: Float64Array, j: number): number {
  const shared = clipped(cornersInView(a, i), b, j);
  if (shared.length < 3 || Math.abs(areaOf(shared)) < TOUCH) return 0;
  const [over, under] = [heightOn(a, i), heightOn(b, j)];
  return Math.max(0, ...shared.map(([x, y]) => over(x, y) - under(x, y)));
}

type View = readonly [number, number];

const cornersInView = (t: Float64Array, o: number): View[] => [
  [t[o], t[o + 1]],
  [t[o + 3], t[o + 4]],
  [t[o + 6], t[o + 7]],
];

/** What of a convex polygon lies inside a facet (I. Sutherland and G. Hodgman, 1974). */
function clipped(polygon: readonly View[], t: Float64Array, o: number): readonly View[] {
  const [p, q, r] = cornersInView(t, o);
  const turn = Math.sign(doubledArea(t, o));
  return [
    [p, q],
    [q, r],
    [r, p],
  ].reduce<readonly View[]>((rest, [from, to]) => {
    const inside = ([x, y]: View) =>
      turn * ((to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0]));
    return rest.flatMap((here, k): View[] => {
      const next = rest[(k + 1) % rest.length];
      const [d, e] = [inside(here), inside(next)];
      const kept: View[] = d >= 0 ? [here] : [];
      if (d >= 0 === e >= 0) return kept;
      const share = d / (d - e);
      return [
        ...kept,
        [here[0] + share * (next[0] - here[0]), here[1] + share * (next[1] - here[1])],
      ];
    });
  }, polygon);
}

const areaOf = (polygon: readonly View[]): number =>
  polygon.reduce((sum, [x, y], k) => {
    const [u, v] = polygon[(k + 1) % polygon.length];
    return sum + (x * v - u * y) / 2;
  }, 0);

/** Height of a facet's plane over the view. */
function heightOn(t: Float64Array, o: number): (x: number, y: number) => number {
  const det = doubledArea(t, o);
  const [ux, uy, uz] = [t[o + 3] - t[o], t[o + 4] - t[o + 1], t[o + 5] - t[o + 2]];
  const [vx, vy, vz] = [t[o + 6] - t[o], t[o + 7] - t[o + 1], t[o + 8] - t[o + 2]];
  return (x, y) => {
    const [dx, dy] = [x - t[o], y - t[o + 1]];
    const [s, r] = [(dx * vy - dy * vx) / det, (ux * dy - uy * dx) / det];
    return t[o + 2] + s * uz + r * vz;
  };
}
