/** Median time of a piece of work over so many runs, ms. */
export function medianMs(runs: number, work: () => unknown): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return times[Math.floor(runs / 2)];
}
