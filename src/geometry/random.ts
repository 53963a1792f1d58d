/**
 * A seeded sequence of draws in [0, 1), the same on every machine: 32-bit integer arithmetic only
 * (the generator known as mulberry32, public domain).
 */
export function seededDraws(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
