/**
 * What rows of one outline need to know: rows run along x and are stacked along y. Rows along y are
 * rows along x of the outline with x and y exchanged, which leaves a half turn a half turn.
 */
import { noFitRegion, turnedHalf } from '../geometry/nofit.js';
import { type Ring, ring, ringBox } from '../geometry/ring.js';
import type { Box, Point2 } from '../geometry/vec.js';

/** 0: copies at 0°; 1: copies turned by 180°. */
export type Turn = 0 | 1;

export type RowFrame = {
  /** Boxes of the true outline at both turns. */
  readonly boxes: readonly [Box, Box];
  /** No-fit polygons of the grown outline by turn below and turn above; the first point is repeated. */
  readonly noFits: readonly (readonly (readonly Point2[])[])[];
  /** Their upper sides. */
  readonly skylines: readonly (readonly Skyline[])[];
  /** Least distance of copies in a row. */
  readonly leastPeriodMm: number;
};

/** An outline, and the same outline grown by half the gap that copies keep. */
export type Grown = { readonly outline: Ring; readonly grown: Ring };

export const exchanged = ({ outline, grown }: Grown): Grown => ({
  outline: ring(outline.map(([x, y]): Point2 => [y, x])),
  grown: ring(grown.map(([x, y]): Point2 => [y, x])),
});

export function rowFrame({ outline, grown }: Grown): RowFrame {
  const closed = (r: Ring): Point2[] => [...r, r[0]];
  const same = closed(noFitRegion(grown, grown).outer);
  const above = noFitRegion(grown, turnedHalf(grown)).outer;
  const noFits = [
    [same, closed(above)],
    [closed(turnedHalf(above)), same],
  ];
  return {
    boxes: [ringBox(outline), ringBox(turnedHalf(outline))],
    noFits,
    skylines: noFits.map((row) => row.map(skylineOf)),
    leastPeriodMm: exitAlongX(same),
  };
}

/** Where the +x axis leaves a closed line for good. */
function exitAlongX(line: readonly Point2[]): number {
  let exit = 0;
  for (let i = 1; i < line.length; i++) {
    const [[x0, y0], [x1, y1]] = [line[i - 1], line[i]];
    if (y0 > 0 !== y1 > 0) exit = Math.max(exit, x0 + ((x1 - x0) * y0) / (y0 - y1));
    // An edge along the axis is touched to its end.
    else if (y0 === 0 && y1 === 0) exit = Math.max(exit, x0, x1);
  }
  return exit;
}

/** A place within this of the end of a closed line touches it sideways, mm: clipping keeps 1e-6. */
const SIDEWAYS_MM = 1e-6;
const SLICES = 128;

/** The upper side of a closed line, its edges sorted into slices along x. */
export type Skyline = {
  readonly minX: number;
  readonly maxX: number;
  readonly slices: readonly (readonly (readonly [Point2, Point2])[])[];
};

export function skylineOf(line: readonly Point2[]): Skyline {
  const xs = line.map((p) => p[0]);
  const [minX, maxX] = [Math.min(...xs), Math.max(...xs)];
  const slices = Array.from({ length: SLICES }, (): [Point2, Point2][] => []);
  const slice = (x: number): number =>
    Math.min(SLICES - 1, Math.floor(((x - minX) / (maxX - minX)) * SLICES));
  for (let i = 1; i < line.length; i++) {
    const [a, b] = line[i - 1][0] < line[i][0] ? [line[i - 1], line[i]] : [line[i], line[i - 1]];
    if (a[0] === b[0]) continue;
    for (let k = slice(a[0]); k <= slice(b[0]); k++) slices[k].push([a, b]);
  }
  return { minX, maxX, slices };
}

/** Greatest y of the closed line at x; −∞ beside it or where it is only touched sideways. */
export function heightOver({ minX, maxX, slices }: Skyline, x: number): number {
  if (x <= minX + SIDEWAYS_MM || x >= maxX - SIDEWAYS_MM) return -Infinity;
  let top = -Infinity;
  for (const [a, b] of slices[Math.floor(((x - minX) / (maxX - minX)) * SLICES)]) {
    if (x < a[0] || x > b[0]) continue;
    top = Math.max(top, a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]));
  }
  return top;
}
