/** How far apart two endless rows must lie, by the shift of one along the other. */
import type { RowFrame, Turn } from './frame.js';

/** Shifts tabled along one period. */
const SHIFTS = 512;

/** Distance up from a row of one turn to a row of another whose copies are shifted by `shiftMm`. */
export type Pitch = (below: Turn, above: Turn, shiftMm: number) => number;

/** Read off between tabled shifts: rows so placed may overlap by a trifle, which the stacking mends. */
export function pitchOf({ noFits }: RowFrame, periodMm: number): Pitch {
  const tables = noFits.map((row) => row.map((line) => topsOf(line, periodMm)));
  return (below, above, shiftMm) => {
    const share = shiftMm / periodMm;
    const at = (share - Math.floor(share)) * SHIFTS;
    const table = tables[below][above];
    const i = Math.floor(at) % SHIFTS;
    const t = at - Math.floor(at);
    return table[i] * (1 - t) + table[(i + 1) % SHIFTS] * t;
  };
}

/** Heights over a closed line repeated along x, at shifts evenly spaced over one period. */
export function topsOf(
  line: readonly (readonly [number, number])[],
  periodMm: number,
): Float64Array {
  const tops = new Float64Array(SHIFTS).fill(-Infinity);
  const unit = periodMm / SHIFTS;
  for (let i = 1; i < line.length; i++) {
    const [[x0, y0], [x1, y1]] = [line[i - 1], line[i]];
    if (x0 === x1) continue;
    const last = Math.max(x0, x1) / unit;
    for (let k = Math.ceil(Math.min(x0, x1) / unit); k <= last; k++) {
      const y = y0 + ((k * unit - x0) * (y1 - y0)) / (x1 - x0);
      const at = ((k % SHIFTS) + SHIFTS) % SHIFTS;
      if (y > tops[at]) tops[at] = y;
    }
  }
  // Rows spread wider than the outline is long could pass each other; they are kept in order.
  return tops.map((y) => Math.max(y, 0));
}
