/**
 * Double lattices: copies of one outline at 0° on a lattice and copies turned by 180° on the same
 * lattice moved by w. That is a nest that keeps the grain, nose-to-tail pairs allowed
 * (G. Kuperberg and W. Kuperberg, Discrete Comput. Geom. 5, 1990, 389–397).
 */
import { cross, dot, type Point2, sub, times } from '../geometry/vec.js';

/**
 * Copies at 0° lie at i·u + j·v, copies at 180° at w + i·u + j·v for all whole i and j; each is the
 * outline turned about its own origin, then moved. mm.
 */
export type DoubleLattice = {
  readonly u: Point2;
  readonly v: Point2;
  readonly w: Point2;
  /** Area |u × v| of the cell, which holds two copies. */
  readonly cellMm2: number;
};

/** One copy of an outline: turned about the outline's own origin, then moved by (x, y), mm. */
export type LatticeCopy = { readonly turnDeg: 0 | 180; readonly x: number; readonly y: number };

/** Area of the copies over the area they take, 0..1. */
export const densityOf = ({ cellMm2 }: DoubleLattice, outlineAreaMm2: number): number =>
  (2 * outlineAreaMm2) / cellMm2;

/** The lattice of u, v and w told by its shortest steps (C. F. Gauss): |u| ≤ |v|, u × v > 0, w in the middle cell. */
export function reduced(u: Point2, v: Point2, w: Point2): DoubleLattice {
  let [a, b] = [u, v];
  for (;;) {
    if (dot(a, a) > dot(b, b)) [a, b] = [b, a];
    const share = dot(a, b) / dot(a, a);
    // Halves are left alone: rounding would exchange two equal choices for ever.
    if (!(Math.abs(share) > 0.5 + 1e-9)) break;
    b = sub(b, times(a, Math.round(share)));
  }
  if (cross(a, b) < 0) b = times(b, -1);
  const cellMm2 = cross(a, b);
  const i = Math.round(cross(w, b) / cellMm2);
  const j = Math.round(cross(a, w) / cellMm2);
  return { u: a, v: b, w: [w[0] - i * a[0] - j * b[0], w[1] - i * a[1] - j * b[1]], cellMm2 };
}
