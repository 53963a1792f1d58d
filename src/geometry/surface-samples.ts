/** Points spread over the surface of a mesh. */
import type { Facets } from './facet-tree.js';
import type { Point3 } from './vec.js';

export type Sample = { readonly at: Point3; readonly normal: Point3; readonly facet: number };

/** R2, a sequence that leaves no large gaps (M. Roberts, 2018): powers of 1/1.3247…, the root of x³ = x + 1. */
const [R, S] = [0.7548776662466927, 0.5698402909980532];

/**
 * One point for each `step` × `step` of surface, the facets taken in their order, so small facets
 * share one; of the rest those of `each` and more have one in their middle. The sequence runs on from
 * facet to facet: the middles of a fan's slivers alone would leave all but a ring of it bare.
 */
export function surfaceSamples(
  { corners, normals }: Facets,
  step: number,
  each = Infinity,
): Sample[] {
  const samples: Sample[] = [];
  let owed = 0.5;
  let drawn = 0;
  for (let f = 0; f < corners.length / 9; f++) {
    const area = facetArea(corners, 9 * f);
    owed += area / (step * step);
    const due = Math.floor(owed);
    owed -= due;
    const normal: Point3 = [normals[3 * f], normals[3 * f + 1], normals[3 * f + 2]];
    const put = (spread: readonly [number, number]) =>
      samples.push({ at: within(corners, 9 * f, spread), normal, facet: f });
    for (let k = 0; k < due; k++) put(spreadOf(++drawn));
    if (due === 0 && area >= each) put([1 / 3, 1 / 3]);
  }
  return samples;
}

/** Shares of two sides of a triangle. */
function spreadOf(k: number): readonly [number, number] {
  const [u, v] = [(k * R) % 1, (k * S) % 1];
  return u + v <= 1 ? [u, v] : [1 - u, 1 - v];
}

const within = (c: Float64Array, o: number, [u, v]: readonly [number, number]): Point3 => [
  c[o] + u * (c[o + 3] - c[o]) + v * (c[o + 6] - c[o]),
  c[o + 1] + u * (c[o + 4] - c[o + 1]) + v * (c[o + 7] - c[o + 1]),
  c[o + 2] + u * (c[o + 5] - c[o + 2]) + v * (c[o + 8] - c[o + 2]),
];

/** Area of the facet at `o` of corners, nine numbers a facet. */
export function facetArea(c: Float64Array, o: number): number {
  const [ax, ay, az] = [c[o + 3] - c[o], c[o + 4] - c[o + 1], c[o + 5] - c[o + 2]];
  const [bx, by, bz] = [c[o + 6] - c[o], c[o + 7] - c[o + 1], c[o + 8] - c[o + 2]];
  return Math.hypot(ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx) / 2;
}
