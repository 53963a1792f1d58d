/** Flaws of the wood on a face: each kind with a look of its own in black and white, and a line of notes. */
import type { ArcPath, Circle } from '../geometry/arcpath.js';
import { add, type Point2, quarterLeft, sub, times, unit } from '../geometry/vec.js';
import type { Stroke } from './drawing.js';
import { circleStroke, lineStroke, plain } from './strokes.js';

/** A split: all within half its width of the straight piece between two points. */
export type SplitWork = {
  readonly fromMm: Point2;
  readonly toMm: Point2;
  readonly widthMm: number;
};

export type FlawWork = {
  readonly knots: readonly Circle[];
  readonly splits: readonly SplitWork[];
  /** Where no nose part may lie. */
  readonly poorZones: readonly Circle[];
  /** Share of a blank's length, from the nose, that is its nose part. */
  readonly clearNoseRatio: number;
};

/** Between the two circles of a poor zone, mm. */
const DOUBLED_MM = 1;

/**
 * A knot is one circle; a split a long round outline with its middle line; a poor zone two circles,
 * dashed where the format can.
 */
export const flawStrokes = ({ knots, splits, poorZones }: FlawWork): Stroke[] => [
  ...knots.map(({ center, radius }) => circleStroke('STOCK', center, radius)),
  ...splits.flatMap(splitStrokes),
  ...poorZones.flatMap(({ center, radius }) =>
    [radius, Math.max(radius / 2, radius - DOUBLED_MM)].map(
      (r): Stroke => ({ ...circleStroke('STOCK', center, r), dashed: true }),
    ),
  ),
];

function splitStrokes({ fromMm, toMm, widthMm }: SplitWork): Stroke[] {
  if (fromMm[0] === toMm[0] && fromMm[1] === toMm[1]) {
    return [widthMm / 2, widthMm / 4].map((r) => circleStroke('STOCK', fromMm, r));
  }
  const side = times(quarterLeft(unit(sub(toMm, fromMm))), widthMm / 2);
  const corner = ([x, y]: Point2, bulge: number) => ({ x, y, bulge });
  const path: ArcPath = {
    closed: true,
    vertices: [
      corner(sub(fromMm, side), 0),
      corner(sub(toMm, side), 1),
      corner(add(toMm, side), 0),
      corner(add(fromMm, side), 1),
    ],
  };
  return [{ kind: 'path', layer: 'STOCK', path }, lineStroke('STOCK', fromMm, toMm)];
}

/** What the marks mean; nothing for a face without them. */
export const flawNotes = ({ splits, poorZones, clearNoseRatio }: FlawWork): string[] => [
  ...(splits.length > 0 ? ['SPLITS: LONG OUTLINES WITH A MIDDLE LINE, NOTHING TOUCHES THEM'] : []),
  ...(poorZones.length > 0
    ? [
        clearNoseRatio > 0
          ? `POOR WOOD: DOUBLE CIRCLES, THE FIRST ${plain(100 * clearNoseRatio)} % FROM THE NOSE KEEP OUT`
          : 'POOR WOOD: DOUBLE CIRCLES',
      ]
    : []),
];
