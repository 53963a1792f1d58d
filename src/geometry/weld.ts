/**
 * A mesh as a file can hold it. Rounding can bring two corners together; they are joined and the
 * facets that collapse are dropped, so that what is written is what was checked.
 */
import { type Mesh, mesh } from './mesh.js';

/** The mesh as a file of 32-bit floats holds it, `welded`. */
export const roundedToFloat32 = (
  positions: ArrayLike<number>,
  triangles: ArrayLike<number>,
): Mesh => welded(positions, triangles, Math.fround);

/**
 * The mesh with every coordinate rounded (no negative zero), corners that then coincide joined,
 * collapsed facets and pairs of facets back to back removed. Order of facets and corners is kept.
 * @throws Fault if the rest is not a closed, outward solid.
 */
export function welded(
  positions: ArrayLike<number>,
  triangles: ArrayLike<number>,
  round: (value: number) => number,
): Mesh {
  const { rounded, index } = joinEqual(positions, round);
  const facets: Facet[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [index[triangles[t]], index[triangles[t + 1]], index[triangles[t + 2]]];
    if (a !== b && b !== c && c !== a) facets.push([a, b, c]);
  }
  return mesh(...withoutLooseCorners(rounded, withoutBackToBack(facets, index.length)));
}

type Facet = readonly [number, number, number];

function joinEqual(positions: ArrayLike<number>, round: (value: number) => number) {
  // Adding 0 turns −0 into 0, so that both are one corner and one spelling in a file.
  const rounded = Float64Array.from(positions, (value) => round(value) + 0);
  const order = Uint32Array.from({ length: rounded.length / 3 }, (_, v) => v);
  const compare = (a: number, b: number) =>
    rounded[3 * a] - rounded[3 * b] ||
    rounded[3 * a + 1] - rounded[3 * b + 1] ||
    rounded[3 * a + 2] - rounded[3 * b + 2];
  order.sort((a, b) => compare(a, b) || a - b);
  const index = new Uint32Array(order.length);
  for (let i = 0; i < order.length; i++) {
    const same = i > 0 && compare(order[i], order[i - 1]) === 0;
    index[order[i]] = same ? index[order[i - 1]] : order[i];
  }
  return { rounded, index };
}

/** Two facets on the same corners, wound opposite ways, enclose nothing. */
function withoutBackToBack(facets: readonly Facet[], corners: number) {
  const byCorners = new Map<number, number[]>();
  const dropped = new Set<number>();
  for (const [i, [a, b, c]] of facets.entries()) {
    const [least, most] = [Math.min(a, b, c), Math.max(a, b, c)];
    const key = (least * corners + (a + b + c - least - most)) * corners + most;
    const open = byCorners.get(key);
    if (!open) {
      byCorners.set(key, [i]);
      continue;
    }
    const partner = open.findIndex((j) => turnOf(facets[j]) !== turnOf(facets[i]));
    if (partner >= 0) {
      dropped.add(i).add(open[partner]);
      open.splice(partner, 1);
    } else open.push(i);
  }
  return dropped.size === 0 ? facets : facets.filter((_, i) => !dropped.has(i));
}

/** Which of the two ways a facet is wound: an even permutation of its sorted corners, or an odd one. */
function turnOf([a, b, c]: Facet): boolean {
  return Number(a < b) + Number(b < c) + Number(c < a) === 2;
}

/** Corners numbered in the order facets first use them. */
function withoutLooseCorners(
  corners: Float64Array,
  facets: readonly Facet[],
): [Float64Array, Uint32Array] {
  const unused = corners.length;
  const renumbered = new Uint32Array(corners.length / 3).fill(unused);
  const positions: number[] = [];
  const triangles = new Uint32Array(3 * facets.length);
  for (const [t, facet] of facets.entries()) {
    for (const [k, v] of facet.entries()) {
      if (renumbered[v] === unused) {
        renumbered[v] = positions.length / 3;
        positions.push(corners[3 * v], corners[3 * v + 1], corners[3 * v + 2]);
      }
      triangles[3 * t + k] = renumbered[v];
    }
  }
  return [Float64Array.from(positions), triangles];
}
