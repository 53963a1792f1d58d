/** Wood between a ballast hole and what else is cut into the blank: other holes, the lip slot, hangers. */
import { asRegion, intersect } from '../geometry/clip.js';
import { ring } from '../geometry/ring.js';
import { add, distanceToEdge, type Point2, times } from '../geometry/vec.js';
import { type Ballast, PATHS } from '../pattern/pattern.js';
import { type Problem, problem } from '../problem.js';
import type { BallastHole } from './blank.js';
import { reachOf, sideView, uprightMouth } from './hole.js';
import { type LipSlot, slotCorners } from './slot.js';

/** Least wood over a slot, beside, over and between holes, mm: common practice, no source. */
export const LEAST_WOOD_MM = 2;

/** From a station to where a hole begins or ends, seen from the side; negative where the hole is over it. */
export function besideHole(hole: Ballast, stationMm: number): number {
  const { foreMm, aftMm } = reachOf(hole);
  const aft = stationMm - hole.stationMm;
  return Math.max(aft - aftMm, -aft - foreMm);
}

/** Ballast holes need wood between them. */
export function meetingHoles(holes: readonly BallastHole[]): Problem[] {
  return holes.flatMap((b, j) =>
    holes.slice(0, j).flatMap((a) => {
      const facts = {
        firstMm: a.stationMm,
        secondMm: b.stationMm,
        betweenMm: betweenHoles(a, b),
        limitMm: LEAST_WOOD_MM,
      };
      return facts.betweenMm < LEAST_WOOD_MM
        ? [problem('holes-meet', PATHS.ballast(j), facts)]
        : [];
    }),
  );
}

/** Parallel holes by their axes, however deep they are; others by their side views. */
function betweenHoles(a: BallastHole, b: BallastHole): number {
  if (a.tiltDeg !== b.tiltDeg) return betweenViews(sideView(a), sideView(b));
  const apart = Math.abs(uprightMouth(a)[0] - uprightMouth(b)[0]);
  return apart - (a.diameterMm + b.diameterMm) / 2;
}

/** Distance between two convex side views, by their corners and edges; 0 where they overlap. */
function betweenViews(a: readonly Point2[], b: readonly Point2[]): number {
  const overlap = intersect([asRegion(ring(a))], [asRegion(ring(b))]).length > 0;
  if (overlap) return 0;
  return Math.min(...a.map((p) => distanceToEdge(p, b)), ...b.map((p) => distanceToEdge(p, a)));
}

/** A hole, its point included, needs wood between it and the lip slot. */
export function holeAtSlot(hole: BallastHole, i: number, slot: LipSlot): Problem[] {
  const [right, left] = slotCorners(slot);
  const out = times(slot.outward, slot.depthMm);
  const cut: Point2[] = [right, left, add(left, out), add(right, out)];
  const betweenMm = betweenViews(sideView(hole), cut);
  if (betweenMm >= LEAST_WOOD_MM) return [];
  const facts = { stationMm: hole.stationMm, betweenMm, limitMm: LEAST_WOOD_MM };
  return [problem('hole-meets-slot', PATHS.ballast(i), facts)];
}
