/** Sides of a workpiece, in the words of a lure. */
import type { Point3 } from '../../geometry/vec.js';

export type Side = 'nose' | 'tail' | 'port side' | 'starboard side' | 'back' | 'belly';

/** The side of the workpiece that looks this way, lure frame. */
export function sideOf([x, y, z]: Point3): Side {
  const most = Math.max(Math.abs(x), Math.abs(y), Math.abs(z));
  if (Math.abs(x) === most) return x < 0 ? 'nose' : 'tail';
  if (Math.abs(y) === most) return y > 0 ? 'port side' : 'starboard side';
  return z > 0 ? 'back' : 'belly';
}
