/**
 * The room a face has for one shape: the obstacles, and the corners of what is free, that is points
 * where two no-fit edges cross, or one crosses the edge of the face, and bottoms of hollows. A shape
 * pushed as far as it goes always ends in such a corner, so no other place need be tried.
 */
import type { Box } from '../geometry/vec.js';
import { rectBand } from './band.js';
import { crossings, isInside, type MovedBand } from './contact.js';
import type { FaceSize } from './nest.js';
import { flawNoFits } from './nofit.js';
import type { Shape } from './shape.js';

export type Room = {
  /** Moves that keep the shape's true box inside the margins. */
  readonly fit: Box;
  /** Moves that bring it too near to something. */
  readonly obstacles: MovedBand[];
  /** The free corners: where to, and how much the shape would nestle there. */
  readonly x: number[];
  readonly y: number[];
  /** Area by which the shape's box would overlap the boxes of what is placed, mm². */
  readonly nestled: number[];
};

/** Sizes that agree to this are equal, mm: a part exactly as large as the face fits. */
export const SAME_MM = 1e-9;

/** The room on a face with nothing but its flaws; null if the shape is larger than the clear face. */
export function emptyRoom(face: FaceSize, shape: Shape): Room | null {
  const [minX, minY, maxX, maxY] = shape.box;
  const left = face.marginMm - minX;
  const bottom = face.marginMm - minY;
  const right = face.lengthMm - face.marginMm - maxX;
  const top = face.widthMm - face.marginMm - maxY;
  if (right < left - SAME_MM || top < bottom - SAME_MM) return null;
  const fit: Box = [left, bottom, Math.max(left, right), Math.max(bottom, top)];
  const room: Room = { fit, obstacles: [], x: [], y: [], nestled: [] };
  for (const x of [fit[0], fit[2]]) for (const y of [fit[1], fit[3]]) addCorner(room, x, y, 0);
  const none = (): number => 0;
  for (const band of flawNoFits(face, shape)) {
    addObstacle(room, { band, dx: 0, dy: 0 }, { more: none, all: none });
  }
  return room;
}

export const copyOfRoom = ({ fit, obstacles, x, y, nestled }: Room): Room => ({
  fit,
  obstacles: [...obstacles],
  x: [...x],
  y: [...y],
  nestled: [...nestled],
});

/** True if a move keeps the shape inside the margins and off all obstacles. */
export const isOpen = ({ fit, obstacles }: Room, x: number, y: number): boolean =>
  x >= fit[0] - SAME_MM &&
  x <= fit[2] + SAME_MM &&
  y >= fit[1] - SAME_MM &&
  y <= fit[3] + SAME_MM &&
  !obstacles.some((o) => isInside(o, x, y));

/** How much a corner nestles against the new obstacle alone, and against everything placed. */
export type Nestling = {
  readonly more: (x: number, y: number) => number;
  readonly all: (x: number, y: number) => number;
};

/** Adds an obstacle to a room (in place): corners inside it go, crossings with it come. */
export function addObstacle(room: Room, obstacle: MovedBand, { more, all }: Nestling): void {
  dropCorners(room, obstacle, more);
  const { fit, obstacles } = room;
  const found = (px: number, py: number): void => {
    const x = snapped(px, fit[0], fit[2]);
    const y = snapped(py, fit[1], fit[3]);
    if (isOpen(room, x, y)) addCorner(room, x, y, all(x, y));
  };
  const edge: MovedBand = { band: rectBand(...fit), dx: 0, dy: 0 };
  for (const other of [edge, ...obstacles]) crossings(other, obstacle, found);
  for (const [x, y] of obstacle.band.pockets) found(x + obstacle.dx, y + obstacle.dy);
  obstacles.push(obstacle);
}

/** A crossing with the edge of the face, off by rounding, put exactly on it. */
const snapped = (v: number, least: number, most: number): number =>
  Math.abs(v - least) <= SAME_MM ? least : Math.abs(v - most) <= SAME_MM ? most : v;

function dropCorners(room: Room, obstacle: MovedBand, more: Nestling['more']): void {
  let kept = 0;
  for (let i = 0; i < room.x.length; i++) {
    const [x, y] = [room.x[i], room.y[i]];
    if (isInside(obstacle, x, y)) continue;
    room.x[kept] = x;
    room.y[kept] = y;
    room.nestled[kept] = room.nestled[i] + more(x, y);
    kept++;
  }
  room.x.length = kept;
  room.y.length = kept;
  room.nestled.length = kept;
}

function addCorner(room: Room, x: number, y: number, nestled: number): void {
  room.x.push(x);
  room.y.push(y);
  room.nestled.push(nestled);
}
