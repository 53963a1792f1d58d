/** A drill bit as a solid of its own, and sums over what it cuts: a second opinion that knows nothing of columns or chords. */
import { type Mesh, mesh } from '../../src/geometry/mesh.js';
import type { Point3 } from '../../src/geometry/vec.js';
import type { Moments } from '../../src/mass/moments.js';
import type { Ballast } from '../../src/pattern/pattern.js';

const SIDES = 512; // the prism of the same section is 1e-9 narrower than a circle at its flats

/** The bit in its hole, from so far outside the mouth: a prism of a circle's area with a pyramid for a point. */
export function bitIn(
  hole: Pick<Ballast, 'stationMm' | 'tiltDeg' | 'diameterMm' | 'depthMm' | 'pointAngleDeg'> & {
    readonly bellyMm: number;
  },
  outsideMm: number,
  pointed = true,
): Mesh {
  const tilt = (hole.tiltDeg * Math.PI) / 180;
  const step = (2 * Math.PI) / SIDES;
  const r = (hole.diameterMm / 2) * Math.sqrt(step / Math.sin(step));
  const point = pointed ? hole.diameterMm / 2 / Math.tan((hole.pointAngleDeg * Math.PI) / 360) : 0;
  const at = (across: number, y: number, deep: number): Point3 => [
    hole.stationMm + across * Math.cos(tilt) + deep * Math.sin(tilt),
    y,
    hole.bellyMm - across * Math.sin(tilt) + deep * Math.cos(tilt),
  ];
  const rim = (deep: number) =>
    Array.from({ length: SIDES }, (_, i) =>
      at(r * Math.cos(i * step), r * Math.sin(i * step), deep),
    );
  const corners = [
    ...rim(-outsideMm),
    ...rim(hole.depthMm),
    at(0, 0, -outsideMm),
    at(0, 0, hole.depthMm + point),
  ];
  const triangles = Array.from({ length: SIDES }, (_, i) => {
    const [a, b] = [i, (i + 1) % SIDES];
    const [c, d] = [a + SIDES, b + SIDES];
    return [a, b, d, a, d, c, b, a, 2 * SIDES, c, d, 2 * SIDES + 1];
  }).flat();
  return mesh(new Float64Array(corners.flat()), new Uint32Array(triangles));
}

/** Volume and its moments about the nose, by tetrahedra to the origin: ∫ p pᵀ = det/120 (Σ vᵢ vᵢᵀ + s sᵀ), s their sum (standard; from memory). */
export function sumsOf({ positions, triangles }: Mesh): Moments {
  const sum = { amount: 0, x: 0, z: 0, xx: 0, yy: 0, zz: 0, xz: 0 };
  const corner = (k: number) => positions.subarray(3 * triangles[k], 3 * triangles[k] + 3);
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [corner(t), corner(t + 1), corner(t + 2)];
    const det =
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
    const s = [0, 1, 2].map((k) => a[k] + b[k] + c[k]);
    const square = (i: number, j: number) =>
      (det / 120) * (a[i] * a[j] + b[i] * b[j] + c[i] * c[j] + s[i] * s[j]);
    sum.amount += det / 6;
    sum.x += (det / 24) * s[0];
    sum.z += (det / 24) * s[2];
    sum.xx += square(0, 0);
    sum.yy += square(1, 1);
    sum.zz += square(2, 2);
    sum.xz += square(0, 2);
  }
  return sum;
}
