/** Walls of a set-up held against the printer's nozzle. */
import type { JigProblem } from './jig.js';

/**
 * A problem for each wall that is thinner than a line of the nozzle: the slicer would leave it out.
 * @param walls thickness by the set-up's key
 */
export const belowNozzle = (
  walls: Readonly<Record<string, number>>,
  nozzleMm: number,
): JigProblem[] =>
  Object.entries(walls)
    .filter(([, wallMm]) => wallMm < nozzleMm)
    .map(([key, wallMm]) => ({
      code: 'jig-wall-below-nozzle',
      path: [],
      facts: { key, wallMm, nozzleMm },
    }));
