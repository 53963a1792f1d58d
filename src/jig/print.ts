/** From a jig to what is printed: one part where the bed is large enough. */
import type { Mesh } from '../geometry/mesh.js';
import type { Point3 } from '../geometry/vec.js';
import type { Jig, JigProblem } from './jig.js';
import type { Bed, Printer } from './printer.js';
import type { JigSetup } from './setup.js';

/** One solid as the printer gets it, resting on z = 0, no coordinate negative. */
export type PrintedPart = {
  /** Which piece of the jig; empty where it is whole. */
  readonly piece: string;
  readonly mesh: Mesh;
  readonly sizeMm: Point3;
  readonly massG: number;
};

export type Printed = {
  readonly parts: readonly PrintedPart[];
  readonly problems: readonly JigProblem[];
};

export function printed(jig: Jig, { bed }: JigSetup, printer: Printer): Printed {
  const problem = bedProblem(jig.sizeMm, bed ?? printer.bed);
  if (problem) return { parts: [], problems: [problem] };
  const massG = jig.volumeMm3 * printer.plasticDensityKgM3 * 1e-6;
  return {
    parts: [{ piece: '', mesh: jig.mesh, sizeMm: jig.sizeMm, massG }],
    problems: [],
  };
}

/** The problem of a jig that fits the bed neither along nor across, or is too high; else null. */
function bedProblem([x, y, z]: Point3, bed: Bed): JigProblem | null {
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
