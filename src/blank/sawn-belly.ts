/** Where a bit meets the sawn blank. */
import { type ArcPath, type Segment, segmentsOf } from '../geometry/arcpath.js';
import { meetings } from '../geometry/meet.js';
import { cosSinDeg, distance, dot, type Point2, turned } from '../geometry/vec.js';

/** Height of the sawn belly at a station: the lowest place where the outline crosses it; Infinity beyond its ends. */
export const bellyAt = (profile: ArcPath, stationMm: number): number =>
  sawnBellyAlong(profile, stationMm, 0);

const FAR_MM = 1e4; // beyond any lure

/**
 * Where a bit on its way into the blank first meets the outline: the height along its line in the side
 * view turned by the tilt (`uprightMouth`), the place that of the line across it; Infinity where it
 * misses the blank.
 */
export function sawnBellyAlong(profile: ArcPath, placeMm: number, tiltDeg: number): number {
  const [c, s] = cosSinDeg(tiltDeg);
  const [from, to] = [-FAR_MM, FAR_MM].map((height) => turned([placeMm, height], -tiltDeg));
  const line = { from, to, bulge: 0 };
  const heights = segmentsOf(profile).flatMap((segment) =>
    isNear(segment, placeMm, [c, -s]) ? meetings(segment, line).map((p) => dot(p, [s, c])) : [],
  );
  return Math.min(...heights);
}

/** Whether a segment can come near a line so far along a direction; saves most of the exact look-ups. */
function isNear({ from, to, bulge }: Segment, placeMm: number, across: Point2): boolean {
  const [a, b] = [dot(from, across), dot(to, across)];
  const room = 1 + (Math.abs(bulge) * distance(from, to)) / 2;
  return Math.min(a, b) - room <= placeMm && Math.max(a, b) + room >= placeMm;
}
