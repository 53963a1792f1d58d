/** The table of offsets: the pattern's own stations with both ends, numbered from the nose. */
import { type BodyShape, offsetAt } from '../../body/shape.js';
import type { OffsetPoint, Pattern } from '../../pattern/pattern.js';

/** An offset, mm; `given` in the pattern, or read off the curve between those that are. */
export type Offset = { readonly mm: number; readonly given: boolean };

export type OffsetRow = {
  /** 0 is the nose; the last is the tail. */
  readonly number: number;
  readonly stationMm: number;
  readonly back: Offset;
  /** Below the datum line, counted positive. */
  readonly belly: Offset;
  readonly halfBreadth: Offset;
  readonly upperExponent: number;
  readonly lowerExponent: number;
};

/** Stations nearer than this are one: written as mm and as a share they differ in their last bit. */
const SAME_STATION_MM = 1e-6;

type Offsets = Pick<Pattern, 'lengthMm' | 'back' | 'belly' | 'halfBreadth'>;

export function offsetRows(pattern: Offsets, shape: BodyShape): readonly OffsetRow[] {
  const { lengthMm, back, belly, halfBreadth } = pattern;
  const ends = [0, lengthMm].map((stationMm) => ({ stationMm, offsetMm: 0 }));
  const all = [...back, ...belly, ...halfBreadth, ...ends]
    .map(({ stationMm }) => stationMm)
    .sort((a, b) => a - b);
  const stations = all.filter((x, i) => i === 0 || x - all[i - 1] > SAME_STATION_MM);
  return stations.map((stationMm, number): OffsetRow => {
    const at = (points: readonly OffsetPoint[], squared: BodyShape['backSquared']): Offset => {
      const own = [...points, ...ends].find(
        (p) => Math.abs(p.stationMm - stationMm) <= SAME_STATION_MM,
      );
      return own
        ? { mm: own.offsetMm, given: true }
        : { mm: offsetAt(squared, stationMm), given: false };
    };
    return {
      number,
      stationMm,
      back: at(back, shape.backSquared),
      belly: at(belly, shape.bellySquared),
      halfBreadth: at(halfBreadth, shape.halfBreadthSquared),
      upperExponent: shape.upperExponent.value(stationMm),
      lowerExponent: shape.lowerExponent.value(stationMm),
    };
  });
}

/** Rows to draw: both ends, and of those between as many as stand so far apart. */
export function apart(rows: readonly OffsetRow[], leastMm: number): readonly OffsetRow[] {
  const last = rows[rows.length - 1];
  const kept: OffsetRow[] = [];
  for (const row of rows) {
    const before = kept[kept.length - 1];
    const isFree =
      row.stationMm - (before?.stationMm ?? -leastMm) >= leastMm &&
      last.stationMm - row.stationMm >= leastMm;
    if (isFree || row === last || !before) kept.push(row);
  }
  return kept;
}
