/** Whether two numbers that should be one are not, but for rounding; relative to the larger. */
export const differs = (a: number, b: number, relative = 1e-9): boolean =>
  !(Math.abs(a - b) <= relative * Math.max(1e-9, Math.abs(a), Math.abs(b)));
