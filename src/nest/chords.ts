/** A region as its chords: how much of it lies on every line of a direction. */
import type { Region, Ring } from '../geometry/ring.js';

/** A band across the region, in which the chord's length runs evenly from one value to the other. */
export type ChordBand = {
  readonly widthMm: number;
  readonly fromMm: number;
  readonly toMm: number;
};

/** Bands of chords along x (0) or along y (1), from one side of the region to the other. */
export function chordBands({ outer, holes }: Region, along: 0 | 1): readonly ChordBand[] {
  const across = along === 0 ? 1 : 0;
  const rings = [outer, ...holes];
  const levels = [...new Set(rings.flat().map((p) => p[across]))].sort((a, b) => a - b);
  return levels.slice(1).flatMap((end, i): ChordBand[] => {
    const start = levels[i];
    const widthMm = end - start;
    // Inside a band no corner lies, so two levels tell the whole of it.
    const [a, b] = [0.25, 0.75].map((t) => chordAt(rings, along, start + t * widthMm));
    const slope = b - a;
    return [{ widthMm, fromMm: Math.max(0, a - slope / 2), toMm: Math.max(0, b + slope / 2) }];
  });
}

function chordAt(rings: readonly Ring[], along: 0 | 1, level: number): number {
  const across = along === 0 ? 1 : 0;
  const meets: number[] = [];
  for (const ring of rings) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length];
      const [c, d] = [p[across] - level, q[across] - level];
      if (c > 0 !== d > 0) meets.push(p[along] + ((q[along] - p[along]) * c) / (c - d));
    });
  }
  meets.sort((a, b) => a - b);
  return meets.reduce((sum, at, i) => sum + (i % 2 === 0 ? -at : at), 0);
}

export const chordArea = (bands: readonly ChordBand[]): number =>
  bands.reduce((sum, b) => sum + (b.widthMm * (b.fromMm + b.toMm)) / 2, 0);
