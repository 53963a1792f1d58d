/** How an upright strip meets an outline from below: where it first touches it, and where all of it is inside. */
import { crossings, movedRing, type Ring } from '../../geometry/ring.js';
import { add, type Point2, times } from '../../geometry/vec.js';
import { reachBetween } from '../outline.js';
import { upright } from './boring.js';

export type WayIn = {
  /** Lowest place of the outline in the strip. */
  readonly touchMm: number;
  /** From here on the whole width of the strip is inside, up to `leaveMm`. */
  readonly insideMm: number;
  readonly leaveMm: number;
};

/** Both sides of a corner of the outline are looked at: a fold begins there. */
const BESIDE = 1e-6; // mm

/** Null where part of the strip misses the outline, or is out of it again before all of it is in. */
export function wayIn(outline: Ring, from: number, to: number): WayIn | null {
  const corners = outline.map(([x]) => x).filter((x) => x > from && x < to);
  const columns = [from, ...corners.flatMap((x) => [x - BESIDE, x + BESIDE]), to].map((x) =>
    crossings([outline], 0, x),
  );
  const reach = reachBetween(outline, from, to);
  if (!reach || columns.some((c) => c.length < 2)) return null;
  const insideMm = Math.max(...columns.map(([first]) => first));
  const leaveMm = Math.min(...columns.map(([, second]) => second));
  return insideMm < leaveMm ? { touchMm: reach.low, insideMm, leaveMm } : null;
}

/** Where an axis through a point first enters the outline; null where it misses it. */
export function entrance(outline: Ring, through: Point2, inward: Point2): Point2 | null {
  const [across, along] = upright(inward, through);
  const [enters] = crossings([turned(outline, inward)], 0, across);
  if (enters === undefined) return null;
  return add(through, times(inward, enters - along));
}

/** The outline turned so that an axis stands upright, as `upright` turns a point. */
export function turned(outline: Ring, [x, z]: Point2): Ring {
  const turnDeg = (Math.atan2(x, z) * 180) / Math.PI;
  return turnDeg === 0 ? outline : movedRing({ turnDeg, move: [0, 0] }, outline);
}
