/** Whether a lure floats. */

export type Verdict = 'floats' | 'suspends' | 'sinks';

/** Of the full displacement: so near to neutral a lure suspends. Common practice, no source. */
export const SUSPEND_BAND = 0.005;

/** @param fullG mass of the water the lure keeps out when it is wholly under */
export function verdictOf(massG: number, fullG: number): Verdict {
  if (Math.abs(massG - fullG) <= SUSPEND_BAND * fullG) return 'suspends';
  return massG < fullG ? 'floats' : 'sinks';
}
