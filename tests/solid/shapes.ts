/** Small solids of known measure for the tests of the solid room. */
import { asRegion } from '../../src/geometry/clip.js';
import { rectRing } from '../../src/geometry/ring.js';
import { type Csg, extruded, holeAlongZ } from '../../src/solid/csg.js';

export const box = (x: number, y: number, z: number, at = [0, 0, 0]): Csg =>
  extruded([asRegion(rectRing(at[0], at[1], at[0] + x, at[1] + y))], at[2], at[2] + z);

export const through = (radius: number, fromZ = -1, toZ = 11): Csg =>
  holeAlongZ(radius, { fromZ, toZ, tolerance: 0.01 });

/** Area of the regular polygon around a circle: n r² tan(π/n). */
export const aroundArea = (radius: number, segments: number): number =>
  segments * radius * radius * Math.tan(Math.PI / segments);
