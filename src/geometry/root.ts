/** Roots of functions of one number. */

const MOST_STEPS = 100;

/**
 * A root between two places at which the function has different signs (0 counts as either), to
 * `tolerance`. False position that halves the weight of an end which stays (the Illinois rule; from
 * memory), so that a smooth function takes a handful of looks.
 */
export function rootBetween(
  f: (x: number) => number,
  [from, to]: readonly [from: number, to: number],
  tolerance: number,
): number {
  let [a, b] = [from, to];
  let [fa, fb] = [f(a), f(b)];
  for (let i = 0; i < MOST_STEPS && Math.abs(b - a) > tolerance && fb !== 0; i++) {
    const c = fa === fb ? (a + b) / 2 : b - (fb * (b - a)) / (fb - fa);
    const fc = f(c);
    if (fc > 0 !== fb > 0) [a, fa] = [b, fb];
    else fa /= 2;
    if (Math.abs(c - b) <= tolerance / 2 && Math.abs(fc) <= tolerance) return c;
    [b, fb] = [c, fc];
  }
  return b;
}
