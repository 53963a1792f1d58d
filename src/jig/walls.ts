/** How thin a printed solid gets, measured on its facets: straight in from one, out through another. */
import type { Mesh } from '../geometry/mesh.js';
import type { Point3 } from '../geometry/vec.js';
import { cross3, dot3 } from '../geometry/vec3.js';
import type { Face, Sunk } from './letters.js';

/** Facets that face away from each other within this are two sides of a wall; else it is an edge. */
const OPPOSITE = Math.cos((14 * Math.PI) / 180);
const LEAST_AREA = 0.02; // mm²: smaller facets are not sampled
const FLAT = 1e-4; // mm: corners this near a face lie in it

type Facet = {
  readonly a: Point3;
  readonly b: Point3;
  readonly c: Point3;
  /** Outward, unit. */
  readonly normal: Point3;
  readonly area: number;
  /** Side of a letter's groove. */
  readonly groove: boolean;
  readonly min: Point3;
  readonly max: Point3;
};

/**
 * Thickness at the thinnest place under `upTo`, which is returned if nothing is thinner. It is
 * measured from the middle of every facet; the bottoms of letters count, their sides do not.
 */
export function thinnestWall(mesh: Mesh, letters: readonly Sunk[], upTo: number): number {
  const facets = facetsOf(mesh, letters);
  const cells = cellsOf(facets, upTo);
  return facets
    .filter((f) => f.area > LEAST_AREA && !f.groove)
    .reduce((least, f) => Math.min(least, thicknessAt(f, cells, least)), upTo);
}

/** Facets by the cubes of space they reach into, so that a short line meets few of them. */
type Cells = {
  readonly size: number;
  readonly facets: ReadonlyMap<number, readonly Facet[]>;
};

function cellsOf(facets: readonly Facet[], size: number): Cells {
  const cells = new Map<number, Facet[]>();
  for (const facet of facets) {
    for (const name of cellNames(facet.min, facet.max, size)) {
      const cell = cells.get(name);
      if (cell) cell.push(facet);
      else cells.set(name, [facet]);
    }
  }
  return { size, facets: cells };
}

const CELLS = 4096; // cubes along an axis; a jig has some dozens

/** Numbers of the cubes a box reaches into. */
function cellNames(min: Point3, max: Point3, size: number): number[] {
  const cell = (v: number) => Math.floor(v / size) + CELLS / 2;
  const names: number[] = [];
  for (let i = cell(min[0]); i <= cell(max[0]); i++) {
    for (let j = cell(min[1]); j <= cell(max[1]); j++) {
      for (let k = cell(min[2]); k <= cell(max[2]); k++) names.push((i * CELLS + j) * CELLS + k);
    }
  }
  return names;
}

function thicknessAt(from: Facet, { size, facets }: Cells, upTo: number): number {
  const start = middle(from);
  const way = scaled(from.normal, -1);
  const end = added(start, scaled(way, upTo));
  const [low, high] = [extreme(Math.min, start, end), extreme(Math.max, start, end)];
  let nearest = upTo;
  let opposite = false;
  for (const name of cellNames(low, high, size)) {
    for (const to of facets.get(name) ?? []) {
      if (to === from || beside(to, low, high)) continue;
      const distance = hit(start, way, to);
      if (distance === null || distance >= nearest) continue;
      nearest = distance;
      opposite = !to.groove && dot3(to.normal, way) > OPPOSITE;
    }
  }
  return opposite ? nearest : upTo;
}

const extreme = (pick: (...values: number[]) => number, ...points: Point3[]): Point3 => [
  pick(...points.map((p) => p[0])),
  pick(...points.map((p) => p[1])),
  pick(...points.map((p) => p[2])),
];

const beside = ({ min, max }: Facet, low: Point3, high: Point3): boolean =>
  max[0] < low[0] ||
  min[0] > high[0] ||
  max[1] < low[1] ||
  min[1] > high[1] ||
  max[2] < low[2] ||
  min[2] > high[2];

/** Distance to where the line leaves through the facet; null if it does not (T. Möller and B. Trumbore, 1997). */
function hit(start: Point3, way: Point3, { a, b, c, normal }: Facet): number | null {
  if (dot3(normal, way) <= 0) return null;
  const [ab, ac] = [minus(b, a), minus(c, a)];
  const p = cross3(way, ac);
  const det = dot3(ab, p);
  if (Math.abs(det) < 1e-12) return null;
  const s = minus(start, a);
  const u = dot3(s, p) / det;
  const q = cross3(s, ab);
  const v = dot3(way, q) / det;
  if (u < 0 || v < 0 || u + v > 1) return null;
  const distance = dot3(ac, q) / det;
  return distance > FLAT ? distance : null;
}

function facetsOf({ positions, triangles }: Mesh, letters: readonly Sunk[]): Facet[] {
  const corner = (v: number): Point3 => [
    positions[3 * v],
    positions[3 * v + 1],
    positions[3 * v + 2],
  ];
  const faces = [...new Map(letters.map((s) => [s.face.name, s])).values()];
  return Array.from({ length: triangles.length / 3 }, (_, t): Facet => {
    const [a, b, c] = [0, 1, 2].map((k) => corner(triangles[3 * t + k]));
    const twice = cross3(minus(b, a), minus(c, a));
    const size = Math.hypot(...twice);
    return {
      a,
      b,
      c,
      normal: size > 0 ? scaled(twice, 1 / size) : [0, 0, 0],
      area: size / 2,
      groove: faces.some(({ face, depthMm }) => inGroove([a, b, c], face, depthMm)),
      min: extreme(Math.min, a, b, c),
      max: extreme(Math.max, a, b, c),
    };
  });
}

/** Corners both in the face and at the bottom of its letters. */
function inGroove(corners: readonly Point3[], { out, origin }: Face, depthMm: number): boolean {
  const depths = corners.map((p) => dot3(minus(origin, p), out));
  const near = (d: number, target: number) => Math.abs(d - target) < FLAT;
  return (
    depths.every((d) => near(d, 0) || near(d, depthMm)) &&
    depths.some((d) => near(d, 0)) &&
    depths.some((d) => near(d, depthMm))
  );
}

const middle = ({ a, b, c }: Facet): Point3 => scaled(added(added(a, b), c), 1 / 3);
const added = (a: Point3, b: Point3): Point3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const minus = (a: Point3, b: Point3): Point3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const scaled = (a: Point3, k: number): Point3 => [a[0] * k, a[1] * k, a[2] * k];
