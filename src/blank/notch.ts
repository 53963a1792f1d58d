/** Cuts the lip slot into an outline: two parallel walls and a square inner end. */
import {
  type ArcPath,
  partOf,
  pathLength,
  pathOf,
  type Segment,
  segmentsOf,
} from '../geometry/arcpath.js';
import { meetings } from '../geometry/meet.js';
import { add, distance, type Point2, times } from '../geometry/vec.js';
import { Fault } from '../problem.js';

import { type LipSlot, slotCorners } from './slot.js';

type Crossing = { readonly index: number; readonly at: Point2 };

/**
 * The outline with the slot as a notch. Each wall runs from its inner corner out along the lip until
 * it leaves the outline; what lies between the two places is taken away.
 */
export function notched(outline: ArcPath, slot: LipSlot): ArcPath {
  const segments = segmentsOf(outline);
  const corners = slotCorners(slot);
  const [a, b] = corners.map((corner) => exit(segments, corner, slot.outward));
  const [first, second] = [cutBetween(segments, b, a), cutBetween(segments, a, b)];
  // Of the two ways round, the longer is the blank; the shorter is the slot's mouth.
  const [kept, ends] =
    pathLength(pathOf(first, false)) > pathLength(pathOf(second, false))
      ? [first, [corners[0], corners[1]] as const]
      : [second, [corners[1], corners[0]] as const];
  const [from, to] = [kept[kept.length - 1].to, kept[0].from];
  const line = (p: Point2, q: Point2): Segment => ({ from: p, to: q, bulge: 0 });
  return pathOf([...kept, line(from, ends[0]), line(ends[0], ends[1]), line(ends[1], to)], true);
}

/** Where a wall leaves the outline: the meeting nearest to its inner corner. */
function exit(segments: readonly Segment[], corner: Point2, outward: Point2): Crossing {
  const far = segments.reduce((most, s) => Math.max(most, distance(corner, s.from)), 0) + 1;
  const wall: Segment = { from: corner, to: add(corner, times(outward, far)), bulge: 0 };
  let best: Crossing | null = null;
  segments.forEach((s, index) => {
    for (const at of meetings(s, wall)) {
      if (best === null || distance(at, corner) < distance(best.at, corner) - 1e-9)
        best = { index, at };
    }
  });
  if (best === null) throw new Fault('lip slot wall does not leave the outline');
  return best;
}

/** The outline from one crossing to another, in its direction of travel. */
function cutBetween(segments: readonly Segment[], from: Crossing, to: Crossing): Segment[] {
  const n = segments.length;
  const [s, e] = [segments[from.index], segments[to.index]];
  const sameAndAhead =
    from.index === to.index && distance(s.from, from.at) <= distance(s.from, to.at);
  if (sameAndAhead) return [partOf(s, from.at, to.at)];
  const middle: Segment[] = [];
  for (let i = (from.index + 1) % n; i !== to.index; i = (i + 1) % n) middle.push(segments[i]);
  return [partOf(s, from.at, s.to), ...middle, partOf(e, e.from, to.at)].filter(
    (x) => distance(x.from, x.to) > 1e-9,
  );
}
