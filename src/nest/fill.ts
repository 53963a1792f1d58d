/** Fills one face, one outline after the other, each put into a free corner chosen by a rule. */
import { type Box, boxOf } from '../geometry/vec.js';
import type { FaceSize } from './nest.js';
import type { ShapeSet } from './nofit.js';
import { addObstacle, copyOfRoom, emptyRoom, isOpen, type Room, SAME_MM } from './room.js';
import type { Shape } from './shape.js';

/** A shape (index in the set) moved to a place on the face. */
export type Spot = { readonly shape: number; readonly x: number; readonly y: number };

/** How the next place is chosen; all weights may be zero. */
export type FillRule = {
  /** Towards the lower (> 0) or the upper edge (< 0), per mm of advance along the grain. */
  readonly lean: number;
  /** How much nestling into the hollows beside placed outlines counts. */
  readonly hug: number;
  /** 0 takes what advances least, so short outlines first; 1 what begins furthest left; more takes long ones first. */
  readonly longFirst: number;
  /** Turn of the first outline; null leaves it open. */
  readonly firstTurnDeg: 0 | 180 | null;
};

/** A face before anything is placed: one room a shape, null where the shape is larger than the face. */
export type EmptyFace = { readonly set: ShapeSet; readonly rooms: readonly (Room | null)[] };

export const emptyFace = (face: FaceSize, set: ShapeSet): EmptyFace => ({
  set,
  rooms: set.shapes.map((shape) => emptyRoom(face, shape)),
});

/** True if the shape can lie somewhere on the empty face. */
export const hasRoom = ({ rooms }: EmptyFace, shape: number): boolean =>
  (rooms[shape]?.x.length ?? 0) > 0;

/** True if the shape may lie there when nothing else does. */
export function isFree({ rooms }: EmptyFace, { shape, x, y }: Spot): boolean {
  const room = rooms[shape];
  return room !== null && isOpen(room, x, y);
}

/**
 * Lays out as many outlines as are wanted and find room.
 * @param wanted outlines to place, by part
 * @param placed outlines that lie on the face already; they count as wanted and are kept
 */
export function fillFace(
  face: EmptyFace,
  wanted: readonly number[],
  rule: FillRule,
  placed: readonly Spot[] = [],
): Spot[] {
  const { shapes, noFit } = face.set;
  const left = [...wanted];
  const spots: Spot[] = [];
  const boxes: Box[] = [];
  const rooms = face.rooms.map((r, i) => (r && !shapes[i].isTilted ? copyOfRoom(r) : null));
  const put = (spot: Spot): void => {
    left[shapes[spot.shape].partIndex]--;
    const box = boxAt(shapes[spot.shape], spot.x, spot.y);
    spots.push(spot);
    boxes.push(box);
    rooms.forEach((room, i) => {
      if (!room || left[shapes[i].partIndex] <= 0) return;
      const own = shapes[i].box;
      const obstacle = { band: noFit(spot.shape, i), dx: spot.x, dy: spot.y };
      addObstacle(room, obstacle, {
        more: (x, y) => overlap(own, x, y, box),
        all: (x, y) => boxes.reduce((sum, b) => sum + overlap(own, x, y, b), 0),
      });
    });
  };
  for (const spot of placed) put(spot);
  for (;;) {
    const next = bestSpot(rooms, shapes, left, { ...rule, isFirst: spots.length === 0 });
    if (!next) return spots;
    put(next);
  }
}

const boxAt = ({ box }: Shape, x: number, y: number): Box => [
  box[0] + x,
  box[1] + y,
  box[2] + x,
  box[3] + y,
];

function overlap(box: Box, x: number, y: number, other: Box): number {
  const width = Math.min(box[2] + x, other[2]) - Math.max(box[0] + x, other[0]);
  const height = Math.min(box[3] + y, other[3]) - Math.max(box[1] + y, other[1]);
  return width > 0 && height > 0 ? width * height : 0;
}

function bestSpot(
  rooms: readonly (Room | null)[],
  shapes: readonly Shape[],
  left: readonly number[],
  rule: FillRule & { readonly isFirst: boolean },
): Spot | null {
  let best: Spot | null = null;
  let least = Infinity;
  rooms.forEach((room, shape) => {
    const { partIndex, turnDeg, box } = shapes[shape];
    if (!room || left[partIndex] <= 0) return;
    if (rule.isFirst && rule.firstTurnDeg !== null && rule.firstTurnDeg !== turnDeg) return;
    const ahead = box[2] - rule.longFirst * (box[2] - box[0]);
    const middle = (box[1] + box[3]) / 2;
    const hug = rule.hug / (box[3] - box[1]);
    for (let i = 0; i < room.x.length; i++) {
      const cost = room.x[i] + ahead + rule.lean * (room.y[i] + middle) - hug * room.nestled[i];
      if (cost < least - SAME_MM) {
        least = cost;
        best = { shape, x: room.x[i], y: room.y[i] };
      }
    }
  });
  return best;
}

/** Box of all outlines placed; its right edge is the length used. */
export const spotsBox = (set: ShapeSet, spots: readonly Spot[]): Box =>
  boxOf(
    spots.flatMap(({ shape, x, y }) => {
      const b = boxAt(set.shapes[shape], x, y);
      return [
        [b[0], b[1]],
        [b[2], b[3]],
      ] as const;
    }),
  );
