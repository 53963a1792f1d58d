/** Whether a jig fits the printer. */
import type { Point3 } from '../geometry/vec.js';
import type { JigProblem } from './jig.js';
import type { Bed } from './setup.js';

/** The problem of a jig that fits the bed neither along nor across, or is too high; else null. */
export function bedProblem([x, y, z]: Point3, bed: Bed): JigProblem | null {
  const lies = (a: number, b: number) => a <= bed.xMm && b <= bed.yMm;
  if ((lies(x, y) || lies(y, x)) && z <= bed.zMm) return null;
  return {
    code: 'jig-bed-too-small',
    facts: {
      needXMm: x,
      needYMm: y,
      needZMm: z,
      bedXMm: bed.xMm,
      bedYMm: bed.yMm,
      bedZMm: bed.zMm,
    },
  };
}
