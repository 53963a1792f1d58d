import type { Point3 } from '../geometry/vec.js';

/** A line in the blank frame: the axis of a drill, or the way of a saw. */
export type Axis = { readonly originMm: Point3; readonly direction: Point3 };
