/**
 * The path parallel to a closed path of lines and arcs: lines shift, arcs keep their center, corners
 * are bridged by an arc or trimmed. Exact, where a polygon offset has chords.
 */
import {
  type ArcPath,
  arcOf,
  directions,
  partOf,
  pathOf,
  type Segment,
  segmentLength,
  segmentsOf,
} from './arcpath.js';
import { meetings } from './meet.js';
import { cross, distance, dot, type Point2, quarterLeft, sub, times } from './vec.js';

/** Why there is no parallel path: an arc tighter than the distance, or neighbors that swallow a segment. */
export type NoParallel =
  | { readonly kind: 'too-tight'; readonly at: Point2; readonly radius: number }
  | { readonly kind: 'swallowed'; readonly at: Point2 };

const SMOOTH_RAD = 1e-5; // joints that turn by less are smooth

/**
 * Every point at distance |by| outside (by > 0) or inside (by < 0) a counter-clockwise closed path.
 * Corners on the growing side become arcs of radius |by|; on the shrinking side neighbors are
 * trimmed where they meet. Only neighbors are trimmed: that distant parts do not collide is for the
 * caller to check (area against a polygon offset).
 */
export function parallel(path: ArcPath, by: number): ArcPath | NoParallel {
  if (by === 0) return path;
  const shifted: Segment[] = [];
  for (const s of segmentsOf(path)) {
    const moved = shift(s, by);
    if ('kind' in moved) return moved;
    shifted.push(moved);
  }
  const original = segmentsOf(path);
  const out: Segment[] = [];
  let pending = shifted[0];
  for (let i = 0; i < shifted.length; i++) {
    const last = i === shifted.length - 1;
    const next = last ? (out[0] ?? pending) : shifted[i + 1];
    const corner = original[i].to;
    const turn = turnAt(original[i], original[(i + 1) % original.length]);
    if (Math.abs(turn) < SMOOTH_RAD) {
      out.push({ ...pending, to: next.from });
      pending = next;
    } else if (turn * by > 0) {
      out.push(pending, bridge(pending.to, next.from, corner, by));
      pending = next;
    } else {
      const meeting = nearest(meetings(pending, next), corner);
      if (!meeting) return { kind: 'swallowed', at: corner };
      out.push(partOf(pending, pending.from, meeting));
      pending = partOf(next, meeting, next.to);
    }
    // The first segment was written before its own start was trimmed: write that start now.
    if (last) out[0] = partOf(out[0], pending.from, out[0].to);
  }
  const whole = out.filter((s) => segmentLength(s) > 1e-7);
  return pathOf(
    whole.map((s, i) => ({ ...s, to: whole[(i + 1) % whole.length].from })),
    true,
  );
}

/** The segment moved sideways: to the right of travel for by > 0, which is outside of a counter-clockwise path. */
function shift(s: Segment, by: number): Segment | NoParallel {
  const [start, end] = directions(s);
  const aside = (p: Point2, d: Point2) => sub(p, times(quarterLeft(d), by));
  if (s.bulge !== 0) {
    const { radius } = arcOf(s);
    if (radius + Math.sign(s.bulge) * by <= 1e-9) return { kind: 'too-tight', at: s.from, radius };
  }
  return { from: aside(s.from, start), to: aside(s.to, end), bulge: s.bulge };
}

const turnAt = (a: Segment, b: Segment): number => {
  const [u, w] = [directions(a)[1], directions(b)[0]];
  return Math.atan2(cross(u, w), dot(u, w));
};

function bridge(from: Point2, to: Point2, center: Point2, by: number): Segment {
  const [u, w] = [sub(from, center), sub(to, center)];
  const angle = Math.atan2(cross(u, w), dot(u, w));
  return { from, to, bulge: Math.tan(angle / 4) * (Math.sign(angle) === Math.sign(by) ? 1 : -1) };
}

const nearest = (points: readonly Point2[], to: Point2): Point2 | undefined =>
  [...points].sort((a, b) => distance(a, to) - distance(b, to))[0];
