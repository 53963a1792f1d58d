/** Vectors in space as plain tuples. */
import type { Point3 } from './vec.js';

export const dot3 = (a: Point3, b: Point3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const cross3 = (a: Point3, b: Point3): Point3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

export const sub3 = (a: Point3, b: Point3): Point3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/** a + k b. */
export const along3 = (a: Point3, k: number, b: Point3): Point3 => [
  a[0] + k * b[0],
  a[1] + k * b[1],
  a[2] + k * b[2],
];

export const length3 = (a: Point3): number => Math.hypot(a[0], a[1], a[2]);

/** How far `a` reaches aside of the line along a unit vector. */
export const aside3 = (a: Point3, unit: Point3): number =>
  length3(along3(a, 0 - dot3(a, unit), unit));

/** The zero vector has no direction and gives NaN. */
export function unit3(a: Point3): Point3 {
  const size = length3(a);
  return [a[0] / size, a[1] / size, a[2] / size];
}

export const mixed3 = (a: Point3, b: Point3, t: number): Point3 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];
