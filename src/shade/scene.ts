/** What is to be pictured: bodies where they stand, ways they move along, and from where they are seen. */
import type { Mesh } from '../geometry/mesh.js';
import type { Point3 } from '../geometry/vec.js';

/** What a body is made of, for its tone. A ghost is drawn as a dashed outline, and hides nothing. */
export const TONES = ['plastic', 'wood', 'metal', 'ghost'] as const;
export type Tone = (typeof TONES)[number];

export type Body = {
  readonly mesh: Mesh;
  /** Rigid motion from the mesh to the scene: 16 numbers, column-major. */
  readonly matrix: readonly number[];
  readonly tone: Tone;
};

/** A line in the scene that something moves along; drawn dashed where it can be seen. */
export type Way = { readonly from: Point3; readonly to: Point3 };

/** All in mm of one frame. The grain of what is of wood runs along the x axis of its own mesh. */
export type Scene = { readonly bodies: readonly Body[]; readonly ways: readonly Way[] };

export const UNMOVED: readonly number[] = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];

/** A point of a body's mesh in the scene. */
export const placed = (
  m: readonly number[],
  [x, y, z]: ArrayLike<number> & Iterable<number>,
): Point3 => [
  m[0] * x + m[4] * y + m[8] * z + m[12],
  m[1] * x + m[5] * y + m[9] * z + m[13],
  m[2] * x + m[6] * y + m[10] * z + m[14],
];
