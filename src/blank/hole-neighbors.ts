/** Wood between a ballast hole and what else is cut into the blank: other holes, the lip slot, hangers. */
import { betweenOutlines } from '../geometry/clip.js';
import { type Ballast, PATHS } from '../pattern/pattern.js';
import { type Problem, problem } from '../problem.js';
import type { BallastHole } from './blank.js';
import { reachOf, sideView, uprightMouth } from './hole.js';
import { type LipSlot, slotView } from './slot.js';

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
  if (a.tiltDeg !== b.tiltDeg) return betweenOutlines(sideView(a), sideView(b));
  const apart = Math.abs(uprightMouth(a)[0] - uprightMouth(b)[0]);
  return apart - (a.diameterMm + b.diameterMm) / 2;
}

/** A hole, its point included, needs wood between it and the lip slot. */
export function holeAtSlot(hole: BallastHole, i: number, slot: LipSlot): Problem[] {
  const betweenMm = betweenOutlines(sideView(hole), slotView(slot, slot.depthMm));
  if (betweenMm >= LEAST_WOOD_MM) return [];
  const facts = { stationMm: hole.stationMm, betweenMm, limitMm: LEAST_WOOD_MM };
  return [problem('hole-meets-slot', PATHS.ballast(i), facts)];
}
