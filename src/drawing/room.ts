/** Room for a box among lines: how far a box is from straight pieces. */
import { type Box, distanceToPiece, type Point2 } from '../geometry/vec.js';

/** A straight piece and the room to leave around it. A round hole is a wall of no length. */
export type Wall = { readonly from: Point2; readonly to: Point2; readonly room: number };

/** The sides of a polygon, or the pieces of an open line. */
export const walled = (points: readonly Point2[], closed: boolean, room: number): Wall[] =>
  points.flatMap((from, i) =>
    i < points.length - 1 || closed ? [{ from, to: points[(i + 1) % points.length], room }] : [],
  );

/** True when the box keeps each wall's room, measured exactly. */
export const isFree = (box: Box, walls: readonly Wall[]): boolean =>
  walls.every((wall) => keepsRoom(box, wall));

function keepsRoom(box: Box, { from, to, room }: Wall): boolean {
  const [minX, minY, maxX, maxY] = box;
  if (Math.max(from[0], to[0]) < minX - room || Math.min(from[0], to[0]) > maxX + room) return true;
  if (Math.max(from[1], to[1]) < minY - room || Math.min(from[1], to[1]) > maxY + room) return true;
  if (crossesBox(box, from, to)) return false;
  const corners: Point2[] = [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
  // Apart, a segment and a box are nearest at an end of the one or at a corner of the other.
  return (
    [from, to].every((p) => toBox(p, box) >= room) &&
    corners.every((c) => distanceToPiece(c, from, to) >= room)
  );
}

function toBox([x, y]: Point2, [minX, minY, maxX, maxY]: Box): number {
  return Math.hypot(Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY));
}

/** True when any of the segment lies in the box (its shares inside both pairs of edges overlap). */
function crossesBox([minX, minY, maxX, maxY]: Box, from: Point2, to: Point2): boolean {
  let [enter, leave] = [0, 1];
  const edges = [
    [from[0], to[0], minX, maxX],
    [from[1], to[1], minY, maxY],
  ];
  for (const [a, b, min, max] of edges) {
    if (a === b) {
      if (a < min || a > max) return false;
      continue;
    }
    const [first, second] = [(min - a) / (b - a), (max - a) / (b - a)];
    enter = Math.max(enter, Math.min(first, second));
    leave = Math.min(leave, Math.max(first, second));
  }
  return enter <= leave;
}
