/** The edges of a closed mesh and the facets that meet in them. */
import type { Mesh } from './mesh.js';

/**
 * Edge e runs from vertex `ends[2e]` to `ends[2e + 1]`, as the facet on its left `sides[2e]` winds;
 * the facet on its right, `sides[2e + 1]`, winds the other way.
 */
export type MeshEdges = { readonly ends: Uint32Array; readonly sides: Uint32Array };

/** All edges of the mesh, by their lower vertex. Linear in the facets: half edges wait at their lower vertex for their other half. */
export function meshEdges({ positions, triangles }: Mesh): MeshEdges {
  const starts = startsByLowerVertex(triangles, positions.length / 3);
  const filled = starts.slice();
  const halves = new Uint32Array(triangles.length);
  for (let h = 0; h < triangles.length; h++) {
    halves[filled[Math.min(triangles[h], triangles[nextCorner(h)])]++] = h;
  }
  const ends = new Uint32Array(triangles.length);
  const sides = new Uint32Array(triangles.length);
  let at = 0;
  for (let v = 0; v + 1 < starts.length; v++) {
    for (let i = starts[v]; i < starts[v + 1]; i++) {
      const h = halves[i];
      if (triangles[h] !== v) continue;
      const to = triangles[nextCorner(h)];
      for (let k = starts[v]; k < starts[v + 1]; k++) {
        if (triangles[halves[k]] !== to) continue;
        ends[at] = v;
        ends[at + 1] = to;
        sides[at] = Math.floor(h / 3);
        sides[at + 1] = Math.floor(halves[k] / 3);
        at += 2;
      }
    }
  }
  return { ends, sides };
}

/** The corner after this one in the same triangle. */
export const nextCorner = (h: number): number => (h % 3 === 2 ? h - 2 : h + 1);

function startsByLowerVertex(triangles: Uint32Array, vertices: number): Uint32Array {
  const starts = new Uint32Array(vertices + 1);
  for (let h = 0; h < triangles.length; h++) {
    starts[Math.min(triangles[h], triangles[nextCorner(h)]) + 1]++;
  }
  for (let v = 0; v < vertices; v++) starts[v + 1] += starts[v];
  return starts;
}
