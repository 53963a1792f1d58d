/** The body with its coats on, as a mesh. */
import { type Mesh, meshVolume, reshaped, vertexNormals } from '../geometry/mesh.js';

/**
 * The mesh with every corner moved out along its normal (the mean of its facets', by area) by one
 * distance, so that its volume grows by exactly so much. Nothing to add: the very same mesh. Meant
 * for films, thin against the body's radii.
 */
export function grown(m: Mesh, addMm3: number): Mesh {
  if (addMm3 === 0) return m;
  const normals = vertexNormals(m.positions, m.triangles);
  const wanted = meshVolume(m) + addMm3;
  const [c0, c1, c2, c3] = volumeCubic(m, normals);
  let out = 0;
  // Newton on a cubic that is nearly straight: a handful of steps reach rounding.
  for (let i = 0; i < 20; i++) {
    const miss = c0 + out * (c1 + out * (c2 + out * c3)) - wanted;
    out -= miss / (c1 + out * (2 * c2 + out * 3 * c3));
    if (Math.abs(miss) <= 1e-13 * wanted) break;
  }
  return reshaped(
    m,
    m.positions.map((p, i) => p + out * normals[i]),
  );
}

/** Volume as a cubic in the distance moved: each facet's determinant, multiplied out. */
function volumeCubic({ positions: p, triangles }: Mesh, n: Float64Array): number[] {
  const sums = [0, 0, 0, 0];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t], 3 * triangles[t + 1], 3 * triangles[t + 2]];
    const det = (u: Float64Array, v: Float64Array, w: Float64Array) =>
      u[a] * (v[b + 1] * w[c + 2] - v[b + 2] * w[c + 1]) +
      u[a + 1] * (v[b + 2] * w[c] - v[b] * w[c + 2]) +
      u[a + 2] * (v[b] * w[c + 1] - v[b + 1] * w[c]);
    sums[0] += det(p, p, p);
    sums[1] += det(n, p, p) + det(p, n, p) + det(p, p, n);
    sums[2] += det(n, n, p) + det(n, p, n) + det(p, n, n);
    sums[3] += det(n, n, n);
  }
  return sums.map((s) => s / 6);
}
