/** Closed triangle meshes: indexed, welded, oriented outward. */
import { Fault } from '../problem.js';
import type { Point3 } from './vec.js';
import { cross3, dot3, sub3, unit3 } from './vec3.js';

declare const meshMark: unique symbol;
/** Corner k of triangle t is vertex `triangles[3t + k]`; vertex v is `positions[3v..3v+2]`. Only `mesh()` makes one. */
export type Mesh = {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  readonly [meshMark]: true;
};

export type MeshFlaws = {
  /** Directed edges that are not met by exactly one edge the other way round. */
  readonly openEdges: number;
  /** Triangles with a repeated corner. */
  readonly degenerate: number;
  readonly notFinite: number;
  readonly volume: number;
};

/** Counts what keeps a triangle soup from being a closed, outward solid. */
export function meshFlaws(positions: Float64Array, triangles: Uint32Array): MeshFlaws {
  const vertices = positions.length / 3;
  const edges = new Map<number, number>();
  let degenerate = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const corner = [triangles[t], triangles[t + 1], triangles[t + 2]];
    if (corner[0] === corner[1] || corner[1] === corner[2] || corner[2] === corner[0]) degenerate++;
    for (let k = 0; k < 3; k++) {
      const key = corner[k] * vertices + corner[(k + 1) % 3];
      edges.set(key, (edges.get(key) ?? 0) + 1);
    }
  }
  let openEdges = 0;
  for (const [key, count] of edges) {
    const from = Math.floor(key / vertices);
    const to = key % vertices;
    if (count !== 1 || edges.get(to * vertices + from) !== 1) openEdges++;
  }
  let notFinite = 0;
  for (const value of positions) if (!Number.isFinite(value)) notFinite++;
  return { openEdges, degenerate, notFinite, volume: signedVolume(positions, triangles) };
}

/** Makes a mesh. @throws Fault unless it is closed, finite, without degenerate triangles and encloses a positive volume. */
export function mesh(positions: Float64Array, triangles: Uint32Array): Mesh {
  const flaws = meshFlaws(positions, triangles);
  if (flaws.openEdges || flaws.degenerate || flaws.notFinite || !(flaws.volume > 0)) {
    throw new Fault(
      `mesh of ${triangles.length / 3} triangles: ${flaws.openEdges} open edges, ${flaws.degenerate} degenerate, ` +
        `${flaws.notFinite} numbers not finite, volume ${flaws.volume}`,
    );
  }
  return { positions, triangles } as Mesh;
}

/** The same triangles with their corners elsewhere. @throws Fault unless all is finite and the volume positive */
export function reshaped({ triangles }: Mesh, positions: Float64Array): Mesh {
  const volume = signedVolume(positions, triangles);
  // Every corner is in some triangle, so one number that is not finite spoils the volume.
  if (!(volume > 0 && volume < Infinity)) throw new Fault(`reshaped mesh of volume ${volume}`);
  return { positions, triangles } as Mesh;
}

/** Volume by the divergence theorem; positive when triangles wind counter-clockwise seen from outside. */
export function signedVolume(positions: Float64Array, triangles: Uint32Array): number {
  let six = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t], 3 * triangles[t + 1], 3 * triangles[t + 2]];
    const [ax, ay, az] = [positions[a], positions[a + 1], positions[a + 2]];
    const [bx, by, bz] = [positions[b], positions[b + 1], positions[b + 2]];
    const [cx, cy, cz] = [positions[c], positions[c + 1], positions[c + 2]];
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

/** Unit normals at the vertices: those of the triangles round each, weighted by area. */
export function vertexNormals(positions: Float64Array, triangles: Uint32Array): Float64Array {
  const normals = new Float64Array(positions.length);
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t], 3 * triangles[t + 1], 3 * triangles[t + 2]];
    for (let k = 0; k < 3; k++) {
      const [u, w] = [(k + 1) % 3, (k + 2) % 3];
      const n =
        (positions[b + u] - positions[a + u]) * (positions[c + w] - positions[a + w]) -
        (positions[b + w] - positions[a + w]) * (positions[c + u] - positions[a + u]);
      normals[a + k] += n;
      normals[b + k] += n;
      normals[c + k] += n;
    }
  }
  for (let v = 0; v < normals.length; v += 3) {
    const size = Math.hypot(normals[v], normals[v + 1], normals[v + 2]);
    for (let k = 0; k < 3; k++) normals[v + k] /= size;
  }
  return normals;
}

/** How much further than its facets a corner may be moved where they meet at an edge. */
const LONGEST_CORNER = 3;

/**
 * The mesh with every facet moved out by at least `by`: each corner goes along its mean normal, the
 * further the sharper its facets meet, up to three times as far (the corner of a box needs 2.5 at most).
 */
export function outset(m: Mesh, by: number): Mesh {
  const { positions, triangles } = m;
  const normals = vertexNormals(positions, triangles);
  const least = new Float64Array(positions.length / 3).fill(1);
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [0, 1, 2].map((k) => 3 * triangles[t + k]);
    const [a, b, c] = corners.map(
      (v): Point3 => [positions[v], positions[v + 1], positions[v + 2]],
    );
    const normal = unit3(cross3(sub3(b, a), sub3(c, a)));
    for (const v of corners) {
      const along = dot3(normal, [normals[v], normals[v + 1], normals[v + 2]]);
      least[v / 3] = Math.min(least[v / 3], along);
    }
  }
  return reshaped(
    m,
    positions.map((p, i) => {
      const further = Math.min(LONGEST_CORNER, 1 / Math.max(least[Math.floor(i / 3)], 1e-9));
      return p + by * further * normals[i];
    }),
  );
}

export const meshVolume = (m: Mesh): number => signedVolume(m.positions, m.triangles);

export function meshBox(m: Mesh): readonly [min: Point3, max: Point3] {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < m.positions.length; i++) {
    min[i % 3] = Math.min(min[i % 3], m.positions[i]);
    max[i % 3] = Math.max(max[i % 3], m.positions[i]);
  }
  return [min, max];
}

/** Where edges of a closed mesh cross the plane on which one coordinate has a value, each edge once. */
export function meshCrossings(
  { positions, triangles }: Mesh,
  axis: 0 | 1 | 2,
  value: number,
): Point3[] {
  const found: Point3[] = [];
  const isOver = (corner: number) => positions[3 * triangles[corner] + axis] > value;
  for (let t = 0; t < triangles.length; t += 3) {
    const first = isOver(t);
    // Nearly all triangles lie to one side.
    if (isOver(t + 1) === first && isOver(t + 2) === first) continue;
    for (let k = 0; k < 3; k++) {
      const [v, w] = [3 * triangles[t + k], 3 * triangles[t + ((k + 1) % 3)]];
      const [a, b] = [positions[v + axis], positions[w + axis]];
      // Two triangles share an edge and run along it in opposite ways.
      if (!(a <= value && b > value)) continue;
      const share = (value - a) / (b - a);
      const at = (c: number) => positions[v + c] + share * (positions[w + c] - positions[v + c]);
      found.push([at(0), at(1), at(2)]);
    }
  }
  return found;
}
