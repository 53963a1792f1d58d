/** Walls by the squares of a grid they come near, so that a box is tried only against its neighbors. */
import { type Box, boxOf } from '../geometry/vec.js';
import { isFree, type Wall } from './room.js';

export type WallGrid = {
  readonly add: (walls: readonly Wall[]) => void;
  /** True when the box keeps the room of every wall added so far. */
  readonly isFree: (box: Box) => boolean;
};

/** Side of a square, mm: about that of a ring round a number. */
const SQUARE_MM = 8;
/** More squares than any face has across its width. */
const ROWS = 2 ** 20;

export function wallGrid(walls: readonly Wall[]): WallGrid {
  const squares = new Map<number, Wall[]>();
  const add = (more: readonly Wall[]): void => {
    for (const wall of more) {
      const [minX, minY, maxX, maxY] = boxOf([wall.from, wall.to]);
      const { room } = wall;
      for (const key of keysIn([minX - room, minY - room, maxX + room, maxY + room])) {
        const square = squares.get(key);
        if (square) square.push(wall);
        else squares.set(key, [wall]);
      }
    }
  };
  add(walls);
  return { add, isFree: (box) => keysIn(box).every((key) => isFree(box, squares.get(key) ?? [])) };
}

/** The squares that a box touches. */
function keysIn(box: Box): number[] {
  const [left, bottom, right, top] = box.map((mm) => Math.floor(mm / SQUARE_MM));
  const keys: number[] = [];
  for (let column = left; column <= right; column++)
    for (let row = bottom; row <= top; row++) keys.push(column * ROWS + row);
  return keys;
}
