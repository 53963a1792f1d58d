/** From where a scene is seen: parallel projection square to the plane of the picture (ISO 5456-3, axonometric). */
import type { Point2, Point3 } from '../geometry/vec.js';
import { cross3, dot3, unit3 } from '../geometry/vec3.js';
import { Fault } from '../problem.js';

/**
 * Directions in the frame of the scene, of any length: toward the viewer, and what is up for them.
 * Toward [±1, ±1, ±1] is an isometric view: the axes all look shorter by √(2/3).
 */
export type View = { readonly toward: Point3; readonly up: Point3 };

/** Unit vectors, right-handed: to the right and up in the picture, and out of it toward the viewer. */
export type Axes = { readonly right: Point3; readonly up: Point3; readonly toward: Point3 };

/** @throws Fault when the viewer looks straight along what is to be up, or a direction is none. */
export function axesOf({ toward, up }: View): Axes {
  const out = unit3(toward);
  const right = unit3(cross3(up, out));
  if (![...out, ...right].every(Number.isFinite) || Math.abs(dot3(unit3(up), out)) > 1 - 1e-9)
    throw new Fault(`view from ${toward.join(' ')} with ${up.join(' ')} up`);
  return { right, up: cross3(out, right), toward: out };
}

/** A direction as seen: right, up, toward. */
export const asSeen = ({ right, up, toward }: Axes, d: Point3): Point3 => [
  dot3(right, d),
  dot3(up, d),
  dot3(toward, d),
];

/** Where a point of the scene is seen: right and up. */
export const viewedAt = (axes: Axes, p: Point3): Point2 => [dot3(axes.right, p), dot3(axes.up, p)];
