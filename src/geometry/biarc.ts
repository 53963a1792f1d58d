/**
 * Smooth curves as chains of arcs: between two points with their tangents there is a pair of arcs
 * that meets both and joins smoothly (a biarc). Halving the curve until the pair is close enough
 * gives a chain with no corner in it, which machines follow better than chords.
 *
 * Source: K. M. Bolton, "Biarc curves", Computer-Aided Design 7(2), 1975, 89–92; the choice of equal
 * tangent lengths is the usual one (from memory).
 */
import { arcOf, type Segment } from './arcpath.js';
import {
  add,
  cross,
  distance,
  distanceToPiece,
  dot,
  type Point2,
  sub,
  times,
  unit,
} from './vec.js';

/** A smooth curve over a parameter: where it is, and its direction of travel (any length but zero). */
export type SmoothCurve = (t: number) => { readonly point: Point2; readonly tangent: Point2 };

const SAMPLES = 16; // points between the ends at which a pair of arcs is held against the curve
const SHORTEST = 1e-3; // pieces of this share of the tolerance are not halved further: a corner lies inside

/** Arcs and lines that stay within `tolerance` of the curve from t0 to t1 and join without a corner. */
export function arcsAlong(
  curve: SmoothCurve,
  t0: number,
  t1: number,
  tolerance: number,
): Segment[] {
  const out: Segment[] = [];
  const visit = (a: number, b: number): void => {
    const [start, end] = [curve(a), curve(b)];
    const middle = (a + b) / 2;
    // All three, as a closed curve starts where it ends.
    const [p, q, r] = [start.point, curve(middle).point, end.point];
    const tiny = Math.max(distance(p, q), distance(q, r)) <= SHORTEST * tolerance;
    if (tiny) {
      if (start.point[0] !== end.point[0] || start.point[1] !== end.point[1]) {
        out.push({ from: start.point, to: end.point, bulge: 0 });
      }
      return;
    }
    const pair = biarc(start, end);
    if (closeEnough(curve, a, b, pair, tolerance)) {
      out.push(...pair);
      return;
    }
    visit(a, middle);
    visit(middle, b);
  };
  visit(t0, t1);
  return out;
}

type End = ReturnType<SmoothCurve>;

function biarc(a: End, b: End): Segment[] {
  const [t1, t2] = [unit(a.tangent), unit(b.tangent)];
  const v = sub(b.point, a.point);
  const t = add(t1, t2);
  const spread = 2 * (1 - dot(t1, t2));
  const vt = dot(v, t);
  const vv = dot(v, v);
  // d: equal tangent lengths from both ends to the middle joint.
  const d = spread > 1e-12 ? (Math.sqrt(vt * vt + spread * vv) - vt) / spread : vv / (2 * vt);
  const joint = times(add(add(a.point, b.point), times(sub(t1, t2), d)), 0.5);
  const first = { from: a.point, to: joint, bulge: bulgeFrom(t1, sub(joint, a.point)) };
  const second = { from: joint, to: b.point, bulge: bulgeFrom(sub(b.point, joint), t2) };
  return [first, second];
}

/** Bulge of the arc whose tangent at an end makes this angle with its chord; 0 when it is straight. */
function bulgeFrom(u: Point2, w: Point2): number {
  const angle = Math.atan2(cross(u, w), dot(u, w));
  return Math.abs(angle) < 1e-9 ? 0 : Math.tan(angle / 2);
}

function closeEnough(
  curve: SmoothCurve,
  a: number,
  b: number,
  pair: Segment[],
  tolerance: number,
): boolean {
  // A pair that turns by more than a quarter circle a piece is not yet following the curve.
  if (pair.some((s) => !(Math.abs(s.bulge) < Math.tan(Math.PI / 8)))) return false;
  for (let k = 1; k < SAMPLES; k++) {
    const p = curve(a + ((b - a) * k) / SAMPLES).point;
    if (!(Math.min(...pair.map((s) => distanceTo(s, p))) <= tolerance)) return false;
  }
  return true;
}

function distanceTo(s: Segment, p: Point2): number {
  if (s.bulge === 0) return distanceToPiece(p, s.from, s.to);
  const { center, radius } = arcOf(s);
  const [u, w, q] = [sub(s.from, center), sub(s.to, center), sub(p, center)];
  const turn = Math.sign(s.bulge);
  const between = cross(u, q) * turn >= 0 && cross(q, w) * turn >= 0; // arcs here are under half a circle
  return between
    ? Math.abs(distance(p, center) - radius)
    : Math.min(distance(p, s.from), distance(p, s.to));
}
