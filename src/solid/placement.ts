/** Rigid motions in space as 4 × 4 matrices of 16 numbers, column-major: the fourth column is the move. */
import type { Point3 } from '../geometry/vec.js';
import { cross3, dot3 } from '../geometry/vec3.js';
import { Fault } from '../problem.js';

export type Matrix = readonly number[];

/**
 * The motion that takes the x, y, z axes to these directions and the origin to `at`.
 * @throws Fault unless the directions are unit, square to each other and right-handed: anything
 * else would stretch or mirror a part (and its letters).
 */
export function placement(x: Point3, y: Point3, z: Point3, at: Point3): Matrix {
  const m = [...x, 0, ...y, 0, ...z, 0, ...at, 1];
  assertRigid(m);
  return m;
}

export const translation = (x: number, y: number, z: number): Matrix =>
  placement([1, 0, 0], [0, 1, 0], [0, 0, 1], [x, y, z]);

const RIGID = 1e-9; // greatest error of lengths and angles: 1e-7 mm over 100 mm, under float32

/** @throws Fault if the matrix is not a finite, right-handed rigid motion. */
export function assertRigid(m: Matrix): void {
  const columns = [0, 4, 8].map((i): Point3 => [m[i], m[i + 1], m[i + 2]]);
  const finite = m.length === 16 && m.every(Number.isFinite);
  const square = columns.every((a, i) =>
    columns.every((b, j) => Math.abs(dot3(a, b) - (i === j ? 1 : 0)) < RIGID),
  );
  const rightHanded = finite && dot3(cross3(columns[0], columns[1]), columns[2]) > 0;
  if (!finite || !square || !rightHanded) throw new Fault(`not a rigid motion: ${m.join(' ')}`);
}

export const pointBy = (m: Matrix, [x, y, z]: Point3): Point3 => [
  m[0] * x + m[4] * y + m[8] * z + m[12],
  m[1] * x + m[5] * y + m[9] * z + m[13],
  m[2] * x + m[6] * y + m[10] * z + m[14],
];

/** A direction after the motion: turned, not moved. */
export const turnedBy = (m: Matrix, [x, y, z]: Point3): Point3 => [
  m[0] * x + m[4] * y + m[8] * z,
  m[1] * x + m[5] * y + m[9] * z,
  m[2] * x + m[6] * y + m[10] * z,
];

/** One motion and then another, as one. */
export const after = (first: Matrix, then: Matrix): Matrix =>
  Array.from({ length: 16 }, (_, i) =>
    [0, 1, 2, 3].reduce((sum, k) => sum + then[(i % 4) + 4 * k] * first[k + i - (i % 4)], 0),
  );

/** The rigid motion that undoes m. */
export function inverse(m: Matrix): Matrix {
  assertRigid(m);
  const at: Point3 = [m[12], m[13], m[14]];
  const back = (i: number) => 0 - dot3([m[i], m[i + 1], m[i + 2]], at);
  return placement(
    [m[0], m[4], m[8]],
    [m[1], m[5], m[9]],
    [m[2], m[6], m[10]],
    [back(0), back(4), back(8)],
  );
}
