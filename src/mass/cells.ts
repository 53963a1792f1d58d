/** Small closed solids that stand for what keeps water out beside the body. */
import { type Mesh, mesh } from '../geometry/mesh.js';
import type { Point3 } from '../geometry/vec.js';

/** A box: its corner and three edges from there, right-handed. */
export type Cell = {
  readonly corner: Point3;
  readonly edges: readonly [Point3, Point3, Point3];
};

/** Facets of a box whose corner k is moved by edge i when bit i of k is set; outward. */
const BOX_FACETS = [
  [0, 2, 3, 1],
  [4, 5, 7, 6],
  [0, 1, 5, 4],
  [2, 6, 7, 3],
  [0, 4, 6, 2],
  [1, 3, 7, 5],
].flatMap(([a, b, c, d]) => [a, b, c, a, c, d]);

/** Boxes side by side as one mesh; each is closed in itself. At least one. */
export function cellsMesh(cells: readonly Cell[]): Mesh {
  const positions = cells.flatMap(({ corner, edges }) =>
    Array.from({ length: 8 }, (_, k) =>
      [0, 1, 2].map((axis) =>
        edges.reduce((sum, edge, i) => sum + ((k >> i) & 1) * edge[axis], corner[axis]),
      ),
    ).flat(),
  );
  const triangles = cells.flatMap((_, i) => BOX_FACETS.map((corner) => 8 * i + corner));
  return mesh(Float64Array.from(positions), Uint32Array.from(triangles));
}

/** Facets of an octahedron with corners +x, −x, +y, −y, +z, −z; outward. */
const OCTAHEDRON = [0, 2, 4, 2, 1, 4, 1, 3, 4, 3, 0, 4, 2, 0, 5, 1, 2, 5, 3, 1, 5, 0, 3, 5];

/** Octahedra of given volumes about given points, as one mesh. At least one. */
export function beadsMesh(
  beads: readonly { readonly centerMm: Point3; readonly volumeMm3: number }[],
): Mesh {
  const positions = beads.flatMap(({ centerMm: [x, y, z], volumeMm3 }) => {
    const r = Math.cbrt((3 / 4) * volumeMm3); // volume of an octahedron 4r³/3
    return [x + r, y, z, x - r, y, z, x, y + r, z, x, y - r, z, x, y, z + r, x, y, z - r];
  });
  const triangles = beads.flatMap((_, i) => OCTAHEDRON.map((corner) => 6 * i + corner));
  return mesh(Float64Array.from(positions), Uint32Array.from(triangles));
}
