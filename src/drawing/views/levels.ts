/** Which waterlines and buttocks are drawn: few, at round distances, far enough apart on paper to be named. */

const ROUND = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8] as const;
const TENS = [0.1, 1, 10, 100] as const;

/** The least round step of at least so much; what is beyond all of them is taken as it is. */
export function roundStep(leastMm: number): number {
  const steps = TENS.flatMap((ten) => ROUND.map((step) => Number((step * ten).toPrecision(2))));
  return steps.find((step) => step >= leastMm) ?? leastMm;
}

/** Multiples of a step under a reach, of which they leave a tenth. */
export const levelsWithin = (reachMm: number, stepMm: number): readonly number[] =>
  Array.from({ length: Math.floor((0.9 * reachMm) / stepMm + 1e-9) }, (_, i) => (i + 1) * stepMm);
