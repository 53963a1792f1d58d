/** A solid made ready for being cut by thousands of water surfaces. */
import type { Mesh } from '../geometry/mesh.js';
import type { Point3 } from '../geometry/vec.js';
import { Fault } from '../problem.js';

/**
 * One or more closed solids that keep water out, with what every cut needs computed once. The
 * triangles are in groups, near ones together, and the groups in groups: one that is wholly under or
 * wholly above a surface is settled by a look at the sphere around it.
 */
export type Immersible = {
  readonly volumeMm3: number;
  /** Center of the whole volume; coordinates below are relative to it. */
  readonly centroidMm: Point3;
  /** Radius of the sphere about the centroid that holds everything. */
  readonly radiusMm: number;
  /** Of the ellipsoid with the same volume moments: 5 ∫pp dV / V as [xx, yy, zz, xy, xz, yz], mm². */
  readonly ellipsoid: readonly number[];
  /** Ten numbers a triangle: three corners, and the volume of the tetrahedron from the centroid. */
  readonly triangles: Float64Array;
  /**
   * Eight numbers a group, each before its parts: center and radius of a sphere around it, the
   * volume of its tetrahedra from the centroid, and their volume moment.
   */
  readonly groups: Float64Array;
  /** Three numbers a group: the next group that is not part of it; first triangle and the one after its last, or −1 where it has parts. */
  readonly links: Int32Array;
  /** Nearly the same solid in far fewer triangles, to look for rests with; null where there is none. */
  readonly sketch: Immersible | null;
  /** Corners of what counts as the lure's height: coordinates of all of them, one after the other. */
  readonly crown: Float64Array;
};

/** Triangles in the smallest groups, and parts of the others; about the fastest of those tried. */
const LEAST_GROUP = 6;
const PARTS = 4;

/** What the numbers of a triangle, a group and a link take in their arrays. */
export const TRIANGLE = 10;
export const GROUP = 8;
export const LINK = 3;

/**
 * Prepares the solid made of the meshes together. Faces may coincide (a lip in its slot), the two then
 * cancel; where meshes overlap each counts whole.
 *
 * @param sketch the same volume, nearly the same shape, in far fewer triangles
 * @param crown what counts as the lure's height; left out: all of it. What hangs on a lure stands in for
 * its buoyancy only, and has no height to speak of
 * @throws Fault without a mesh.
 */
export function immersible(
  meshes: readonly Mesh[],
  sketch?: readonly Mesh[],
  crown: readonly Mesh[] = meshes,
): Immersible {
  const corners = gathered(meshes);
  const centroidMm = centroidOf(corners);
  const triangles = ordered(corners, centroidMm);
  const count = triangles.length / TRIANGLE;
  // Every group but the smallest has at least two parts, so there are fewer than twice the triangles.
  const tree = {
    groups: new Float64Array(2 * count * GROUP),
    links: new Int32Array(2 * count * LINK),
    count: 0,
  };
  grouped(triangles, 0, count, tree);
  let volumeMm3 = 0;
  let square = 0;
  for (let t = 0; t < triangles.length; t += TRIANGLE) {
    volumeMm3 += triangles[t + 9];
    for (let k = t; k < t + 9; k += 3) {
      square = Math.max(
        square,
        triangles[k] * triangles[k] +
          triangles[k + 1] * triangles[k + 1] +
          triangles[k + 2] * triangles[k + 2],
      );
    }
  }
  return {
    volumeMm3,
    centroidMm,
    radiusMm: Math.sqrt(square),
    ellipsoid: secondMoments(triangles).map((m) => (5 * m) / volumeMm3),
    triangles,
    groups: tree.groups.slice(0, tree.count * GROUP),
    links: tree.links.slice(0, tree.count * LINK),
    sketch: sketch ? immersible(sketch) : null,
    crown: joined(crown.map((m) => m.positions)),
  };
}

function joined(parts: readonly Float64Array[]): Float64Array {
  const out = new Float64Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}

/** Nine numbers a triangle, all meshes one after the other. */
function gathered(meshes: readonly Mesh[]): Float64Array {
  const corners = new Float64Array(3 * meshes.reduce((sum, m) => sum + m.triangles.length, 0));
  if (corners.length === 0) throw new Fault('nothing to immerse');
  let at = 0;
  for (const { positions, triangles } of meshes) {
    for (const vertex of triangles) {
      corners[at++] = positions[3 * vertex];
      corners[at++] = positions[3 * vertex + 1];
      corners[at++] = positions[3 * vertex + 2];
    }
  }
  return corners;
}

function centroidOf(corners: Float64Array): Point3 {
  // From a corner of the solid, so that a solid far from the origin loses no digits.
  const from: Point3 = [corners[0], corners[1], corners[2]];
  let [volume, x, y, z] = [0, 0, 0, 0];
  const c = new Float64Array(9);
  for (let t = 0; t < corners.length; t += 9) {
    for (let k = 0; k < 9; k += 3) {
      c[k] = corners[t + k] - from[0];
      c[k + 1] = corners[t + k + 1] - from[1];
      c[k + 2] = corners[t + k + 2] - from[2];
    }
    const v = tetrahedron(c, 0);
    volume += v;
    x += (v * (c[0] + c[3] + c[6])) / 4;
    y += (v * (c[1] + c[4] + c[7])) / 4;
    z += (v * (c[2] + c[5] + c[8])) / 4;
  }
  return [from[0] + x / volume, from[1] + y / volume, from[2] + z / volume];
}

/** Volume of the tetrahedron from the origin to the triangle whose nine numbers begin at `t`. */
const tetrahedron = (c: Float64Array, t: number): number =>
  (c[t] * (c[t + 4] * c[t + 8] - c[t + 5] * c[t + 7]) +
    c[t + 1] * (c[t + 5] * c[t + 6] - c[t + 3] * c[t + 8]) +
    c[t + 2] * (c[t + 3] * c[t + 7] - c[t + 4] * c[t + 6])) /
  6;

/** Triangles about the centroid, along a curve that fills space (Z order): neighbors in space mostly follow each other. */
function ordered(corners: Float64Array, [ox, oy, oz]: Point3): Float64Array {
  const count = corners.length / 9;
  const [low, scale] = grid(corners);
  const keys = new Float64Array(count);
  const cell = (at: number, k: number) =>
    spaced(scale * (corners[at] + corners[at + 3] + corners[at + 6] - 3 * low[k]));
  for (let i = 0; i < count; i++) {
    const place = cell(9 * i, 0) + 2 * cell(9 * i + 1, 1) + 4 * cell(9 * i + 2, 2);
    // 30 bits of place, then the number of the triangle: below 2^53.
    keys[i] = place * 2 ** 23 + i;
  }
  if (count > 2 ** 23) throw new Fault(`solid of ${count} triangles`);
  keys.sort();
  const triangles = new Float64Array(TRIANGLE * count);
  for (let i = 0; i < count; i++) {
    const from = 9 * (keys[i] % 2 ** 23);
    const to = TRIANGLE * i;
    for (let k = 0; k < 9; k += 3) {
      triangles[to + k] = corners[from + k] - ox;
      triangles[to + k + 1] = corners[from + k + 1] - oy;
      triangles[to + k + 2] = corners[from + k + 2] - oz;
    }
    triangles[to + 9] = tetrahedron(triangles, to);
  }
  return triangles;
}

/** Low corner of a cube of 1024³ cells round everything, and cells per three times the length. */
function grid(corners: Float64Array): readonly [low: Point3, scale: number] {
  let [x, y, z, most] = [Infinity, Infinity, Infinity, 0];
  for (let i = 0; i < corners.length; i += 3) {
    x = Math.min(x, corners[i]);
    y = Math.min(y, corners[i + 1]);
    z = Math.min(z, corners[i + 2]);
  }
  for (let i = 0; i < corners.length; i += 3) {
    most = Math.max(most, corners[i] - x, corners[i + 1] - y, corners[i + 2] - z);
  }
  return [[x, y, z], 1023 / (3 * most)];
}

/** The ten bits of a whole number below 1024, two zeros after each. */
function spaced(value: number): number {
  let n = value & 1023;
  n = (n | (n << 16)) & 0x30000ff;
  n = (n | (n << 8)) & 0x300f00f;
  n = (n | (n << 4)) & 0x30c30c3;
  return (n | (n << 2)) & 0x9249249;
}

/** A group while it is gathered: box, radius about the box's middle, volume and its moment. */
type Group = {
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly radius: number;
  readonly sums: readonly number[];
};

/** Arrays being filled, and how many groups are in them. */
type Tree = { readonly groups: Float64Array; readonly links: Int32Array; count: number };

/** Writes the group of a range of triangles, then those of its parts. */
function grouped(triangles: Float64Array, from: number, to: number, tree: Tree): Group {
  const { groups, links } = tree;
  const at = tree.count++;
  const leaf = to - from <= LEAST_GROUP;
  const parts: Group[] = [];
  const share = Math.ceil((to - from) / PARTS);
  for (let part = from; !leaf && part < to; part += share) {
    parts.push(grouped(triangles, part, Math.min(to, part + share), tree));
  }
  links[LINK * at] = tree.count;
  links[LINK * at + 1] = leaf ? from : -1;
  links[LINK * at + 2] = leaf ? to : -1;
  const group = leaf ? leafGroup(triangles, TRIANGLE * from, TRIANGLE * to) : joint(parts);
  const { low, high, radius, sums } = group;
  for (let k = 0; k < 3; k++) groups[GROUP * at + k] = (low[k] + high[k]) / 2;
  // A little more than the farthest corner, so that rounding cannot call a wet corner's group dry.
  groups[GROUP * at + 3] = radius * (1 + 1e-9) + 1e-12;
  for (let k = 0; k < 4; k++) groups[GROUP * at + 4 + k] = sums[k];
  return group;
}

function leafGroup(triangles: Float64Array, from: number, to: number): Group {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  const sums = [0, 0, 0, 0];
  for (let t = from; t < to; t += TRIANGLE) {
    sums[0] += triangles[t + 9];
    for (let k = 0; k < 9; k++) {
      const value = triangles[t + k];
      const axis = k % 3;
      sums[axis + 1] += (triangles[t + 9] * value) / 4;
      if (value < low[axis]) low[axis] = value;
      if (value > high[axis]) high[axis] = value;
    }
  }
  let square = 0;
  for (let t = from; t < to; t += TRIANGLE) {
    for (let k = t; k < t + 9; k += 3) {
      const x = triangles[k] - (low[0] + high[0]) / 2;
      const y = triangles[k + 1] - (low[1] + high[1]) / 2;
      const z = triangles[k + 2] - (low[2] + high[2]) / 2;
      square = Math.max(square, x * x + y * y + z * z);
    }
  }
  return { low, high, radius: Math.sqrt(square), sums };
}

/** The sphere reaches round those of the parts, or round the box if that is nearer. */
function joint(parts: readonly Group[]): Group {
  const low = [0, 1, 2].map((k) => Math.min(...parts.map((p) => p.low[k])));
  const high = [0, 1, 2].map((k) => Math.max(...parts.map((p) => p.high[k])));
  const sums = [0, 1, 2, 3].map((k) => parts.reduce((sum, p) => sum + p.sums[k], 0));
  const away = (p: Group) =>
    Math.hypot(...[0, 1, 2].map((k) => (p.low[k] + p.high[k] - low[k] - high[k]) / 2));
  const round = Math.max(...parts.map((p) => away(p) + p.radius));
  const box = Math.hypot(...[0, 1, 2].map((k) => high[k] - low[k])) / 2;
  return { low, high, radius: Math.min(round, box), sums };
}

/** ∫pp dV over the solid about its centroid, [xx, yy, zz, xy, xz, yz]. */
function secondMoments(triangles: Float64Array): number[] {
  let [xx, yy, zz, xy, xz, yz] = [0, 0, 0, 0, 0, 0];
  for (let t = 0; t < triangles.length; t += TRIANGLE) {
    const share = triangles[t + 9] / 20;
    const sx = triangles[t] + triangles[t + 3] + triangles[t + 6];
    const sy = triangles[t + 1] + triangles[t + 4] + triangles[t + 7];
    const sz = triangles[t + 2] + triangles[t + 5] + triangles[t + 8];
    xx += share * sx * sx;
    yy += share * sy * sy;
    zz += share * sz * sz;
    xy += share * sx * sy;
    xz += share * sx * sz;
    yz += share * sy * sz;
    for (let k = t; k < t + 9; k += 3) {
      const x = triangles[k];
      const y = triangles[k + 1];
      const z = triangles[k + 2];
      xx += share * x * x;
      yy += share * y * y;
      zz += share * z * z;
      xy += share * x * y;
      xz += share * x * z;
      yz += share * y * z;
    }
  }
  return [xx, yy, zz, xy, xz, yz];
}
