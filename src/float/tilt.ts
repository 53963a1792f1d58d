/** Directions to the sky and small tilts of them: the sphere on which rest attitudes are sought. */
import type { Point2, Point3 } from '../geometry/vec.js';
import { along3, cross3, length3, sub3, unit3 } from '../geometry/vec3.js';

/** Two unit vectors in the water's surface, square to each other; u × v is up. */
export type Tangents = readonly [u: Point3, v: Point3];

/** The same for the same direction, always; it jumps where another axis becomes the one most aslant. */
export function tangentsOf(up: Point3): Tangents {
  const [x, y, z] = up.map(Math.abs);
  const aslant: Point3 = x <= y && x <= z ? [1, 0, 0] : y <= z ? [0, 1, 0] : [0, 0, 1];
  const u = unit3(cross3(aslant, up));
  return [u, cross3(up, u)];
}

/** A vector of the surface given in its tangents. */
export const spread3 = ([u, v]: Tangents, [a, b]: Point2): Point3 => [
  a * u[0] + b * v[0],
  a * u[1] + b * v[1],
  a * u[2] + b * v[2],
];

/** Up tilted along the great circle by the tangent vector; its length is the angle in radians. */
export function tilted(up: Point3, tilt: Point3): Point3 {
  const angle = length3(tilt);
  if (angle === 0) return up;
  const [c, s] = [Math.cos(angle), Math.sin(angle) / angle];
  return unit3([c * up[0] + s * tilt[0], c * up[1] + s * tilt[1], c * up[2] + s * tilt[2]]);
}

/** Angle in radians between two unit vectors, exact for small ones too. */
export const angleBetween = (a: Point3, b: Point3): number =>
  2 * Math.atan2(length3(sub3(a, b)), length3(along3(a, 1, b)));

/**
 * Unit vectors spread evenly: points of a Fibonacci spiral from pole to pole about the x axis.
 * The n points of one count are none of those of another.
 */
export const spiral = (count: number): Point3[] =>
  Array.from({ length: count }, (_, i) => {
    const x = 1 - (2 * i + 1) / count;
    const turn = i * Math.PI * (3 - Math.sqrt(5));
    const r = Math.sqrt(1 - x * x);
    return [x, r * Math.sin(turn), r * Math.cos(turn)];
  });

/** A symmetric 2 × 2 matrix in the tangents of an up. */
export type Symmetric2 = { readonly uu: number; readonly uv: number; readonly vv: number };

/** The form t · K · t. */
export const form2 = ({ uu, uv, vv }: Symmetric2, [a, b]: Point2): number =>
  uu * a * a + 2 * uv * a * b + vv * b * b;

/** Eigenvalues, the lesser first, and the unit vector of the lesser; the other's is a quarter turn left of it. */
export type Eigen2 = { readonly low: number; readonly high: number; readonly lowWay: Point2 };

export function eigen2({ uu, uv, vv }: Symmetric2): Eigen2 {
  const [middle, half] = [(uu + vv) / 2, (uu - vv) / 2];
  const radius = Math.hypot(half, uv);
  // The angle of the greater one's vector is half that of (half, uv).
  const turn = Math.atan2(uv, half) / 2;
  return { low: middle - radius, high: middle + radius, lowWay: [-Math.sin(turn), Math.cos(turn)] };
}
