/** Plans are judged by what counts, first things first. */

/** Sums that agree to this are equal, relative. */
const SAME = 1e-9;

/** True if `a` is less than `b` in the first figure in which they differ. */
export function isLess(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((v, i) => Math.abs(v - b[i]) > SAME * Math.abs(b[i]));
  return at >= 0 && a[at] < b[at];
}
