/** Walls of a set-up held against the printer's nozzle. */
import type { Jig, JigOutcome, JigProblem } from './jig.js';

/**
 * A problem for each wall of which no line of the nozzle is left: the slicer would leave it out.
 * @param walls thickness by the set-up's key
 * @param sunkMm what is sunk into them
 */
export function belowNozzle(
  walls: Readonly<Record<string, number>>,
  nozzleMm: number,
  sunkMm = 0,
): JigProblem[] {
  const leastMm = nozzleMm + sunkMm;
  return Object.entries(walls)
    .filter(([, wallMm]) => wallMm < leastMm)
    .map(([key, wallMm]) => ({
      code: 'jig-wall-below-nozzle',
      path: [],
      facts: { key, wallMm, nozzleMm, leastMm },
    }));
}

/** Makes nothing of walls that no nozzle lays. */
export function ifPrintable<J extends Jig>(
  walls: Readonly<Record<string, number>>,
  nozzleMm: number,
  make: () => JigOutcome<J>,
): JigOutcome<J> {
  const problems = belowNozzle(walls, nozzleMm);
  return problems.length > 0 ? { jigs: [], problems } : make();
}
