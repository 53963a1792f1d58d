/** The bodies of a scene as one list of facets and edges; made once, seen from as many sides as wanted. */

import type { Mesh } from '../geometry/mesh.js';
import { type MeshEdges, meshEdges, nextCorner } from '../geometry/mesh-edges.js';
import { Fault } from '../problem.js';
import type { Body, Scene, Way } from './scene.js';
import type { Axes } from './view.js';

/** Facets, corners and edges counted through all bodies. */
export type Model = {
  readonly bodies: readonly Body[];
  readonly ways: readonly Way[];
  readonly corners: Float64Array;
  readonly triangles: Uint32Array;
  readonly bodyOf: Uint16Array;
  /** Unit, outward; a facet too thin to have a normal has that of its neighbor. */
  readonly normals: Float64Array;
  readonly edges: MeshEdges;
};

/** The same with corners and normals as a viewer has them: x to the right, y up, z toward them. */
export type Seen = Model & { readonly axes: Axes };

export function modelOf({ bodies, ways }: Scene): Model {
  const sizes = bodies.map(({ mesh }) => mesh.positions.length);
  const corners = new Float64Array(sum(sizes));
  const triangles = new Uint32Array(sum(bodies.map(({ mesh }) => mesh.triangles.length)));
  const bodyOf = new Uint16Array(triangles.length / 3);
  const normals = new Float64Array(triangles.length);
  const ends = new Uint32Array(triangles.length);
  const sides = new Uint32Array(triangles.length);
  let [v, t] = [0, 0];
  for (const [b, { mesh, matrix }] of bodies.entries()) {
    const moved = { ...mesh, positions: movedAll(mesh.positions, matrix) };
    const edges = meshEdges(mesh);
    corners.set(moved.positions, 3 * v);
    normals.set(facetNormals(moved, edges), t);
    triangles.set(
      mesh.triangles.map((corner) => corner + v),
      t,
    );
    ends.set(
      edges.ends.map((corner) => corner + v),
      t,
    );
    sides.set(
      edges.sides.map((facet) => facet + t / 3),
      t,
    );
    bodyOf.fill(b, t / 3, (t + mesh.triangles.length) / 3);
    v += mesh.positions.length / 3;
    t += mesh.triangles.length;
  }
  return { bodies, ways, corners, triangles, bodyOf, normals, edges: { ends, sides } };
}

export function seenFrom(model: Model, axes: Axes): Seen {
  const turn = turnTo(axes);
  return {
    ...model,
    axes,
    corners: movedAll(model.corners, turn),
    normals: movedAll(model.normals, turn),
  };
}

/** The model's corners as seen. */
export const seenCorners = ({ corners }: Model, axes: Axes): Float64Array =>
  movedAll(corners, turnTo(axes));

/** The motion from the scene's frame to the viewer's: right, up, toward. */
const turnTo = ({ right: r, up: u, toward: t }: Axes): readonly number[] => [
  ...[r[0], u[0], t[0], 0],
  ...[r[1], u[1], t[1], 0],
  ...[r[2], u[2], t[2], 0],
  ...[0, 0, 0, 1],
];

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** @throws Fault on a matrix that is none. */
function movedAll(points: Float64Array, m: readonly number[]): Float64Array {
  if (m.length !== 16 || !m.every(Number.isFinite)) throw new Fault(`matrix ${m.join(' ')}`);
  const [ax, ay, az, , bx, by, bz, , cx, cy, cz, , x, y, z] = m;
  const out = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    const [a, b, c] = [points[i], points[i + 1], points[i + 2]];
    out[i] = ax * a + bx * b + cx * c + x;
    out[i + 1] = ay * a + by * b + cy * c + y;
    out[i + 2] = az * a + bz * b + cz * c + z;
  }
  return out;
}

/**
 * Facets lower than this over their longest edge have no normal of their own: booleans leave needles,
 * and rounding their corners to 32-bit floats (1e-5 mm) turns them anywhere.
 */
const NEEDLE_MM = 1e-3;

/** A needle lies in the plane of the neighbor over its longest edge, which may be a needle too. */
function facetNormals(
  { positions, triangles }: Pick<Mesh, 'positions' | 'triangles'>,
  edges: MeshEdges,
) {
  const normals = new Float64Array(triangles.length);
  const over = new Int32Array(triangles.length / 3).fill(-1);
  const longest = new Uint8Array(over.length);
  for (let f = 0; f < over.length; f++) {
    const [size, length, k] = setNormal(positions, triangles, normals, f);
    longest[f] = k;
    if (!(size > NEEDLE_MM * length)) over[f] = f;
  }
  if (!over.some((f) => f >= 0)) return normals;
  const { ends, sides } = edges;
  for (let e = 0; e < ends.length; e += 2) {
    for (const [facet, other] of [
      [sides[e], sides[e + 1]],
      [sides[e + 1], sides[e]],
    ]) {
      const h = 3 * facet + longest[facet];
      const [a, b] = [triangles[h], triangles[nextCorner(h)]];
      const isLongest =
        Math.min(a, b) === Math.min(ends[e], ends[e + 1]) &&
        Math.max(a, b) === Math.max(ends[e], ends[e + 1]);
      if (over[facet] >= 0 && isLongest) over[facet] = other;
    }
  }
  for (let f = 0; f < over.length; f++) {
    let at = f;
    // Two needles back to back over their longest edges would send us round for ever.
    for (let step = 0; over[at] >= 0 && step < 16; step++) at = over[at];
    if (at !== f) normals.copyWithin(3 * f, 3 * at, 3 * at + 3);
  }
  return normals;
}

/** Sets the unit normal of facet f; gives twice its area, its longest edge and which that is. */
function setNormal(
  p: Float64Array,
  triangles: Uint32Array,
  normals: Float64Array,
  f: number,
): readonly [twiceArea: number, longest: number, k: number] {
  const [a, b, c] = [3 * triangles[3 * f], 3 * triangles[3 * f + 1], 3 * triangles[3 * f + 2]];
  const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
  const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.sqrt(nx * nx + ny * ny + nz * nz);
  if (size > 0) {
    normals[3 * f] = nx / size;
    normals[3 * f + 1] = ny / size;
    normals[3 * f + 2] = nz / size;
  }
  const [wx, wy, wz] = [vx - ux, vy - uy, vz - uz];
  const squares = [
    ux * ux + uy * uy + uz * uz,
    wx * wx + wy * wy + wz * wz,
    vx * vx + vy * vy + vz * vz,
  ];
  const most = Math.max(...squares);
  return [size, Math.sqrt(most), squares.indexOf(most)];
}
