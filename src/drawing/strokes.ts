/** The small things drawings are made of: lines, circles, letters, the scale bar, lines of notes. */
import { movedPath, polyline } from '../geometry/arcpath.js';
import { lettering, letteringWidth } from '../geometry/lettering.js';
import { type Motion, moved, type Point2 } from '../geometry/vec.js';
import type { LayerName, ReadyCut, Stroke } from './drawing.js';

export const lineStroke = (layer: LayerName, from: Point2, to: Point2): Stroke => ({
  kind: 'path',
  layer,
  path: polyline([from, to], false),
});

export const polygonStroke = (layer: LayerName, points: readonly Point2[]): Stroke => ({
  kind: 'path',
  layer,
  path: polyline(points, true),
});

export const circleStroke = (layer: LayerName, center: Point2, radius: number): Stroke => ({
  kind: 'circle',
  layer,
  circle: { center, radius },
});

/** A cut where its blank lies. */
export const cutStroke = ({ layer, shape }: ReadyCut, motion: Motion): Stroke =>
  shape.kind === 'path'
    ? { kind: 'path', layer, path: movedPath(motion, shape.path) }
    : circleStroke(layer, moved(motion, shape.circle.center), shape.circle.radius);

/** One line of letters; `at` is the lower left of its ink, about which it is turned. */
export type Lettered = {
  readonly text: string;
  readonly heightMm: number;
  readonly at: Point2;
  readonly turnDeg?: number;
};

export const textStrokes = (
  layer: LayerName,
  { text, heightMm, at, turnDeg = 0 }: Lettered,
): Stroke[] =>
  lettering(text, { heightMm }).map((stroke) => ({
    kind: 'path',
    layer,
    path: polyline(
      stroke.map((p) => moved({ turnDeg, move: at }, p)),
      false,
    ),
  }));

/** Letters of notes and of the scale bar, mm. */
export const NOTE_HEIGHT_MM = 3;

/** From one line of notes to the next, mm. */
export const NOTE_PITCH_MM = 5.5;

/** Lines of notes in RULE, one below the other; `at` is the lower left of the first. */
export const noteStrokes = (lines: readonly string[], [x, y]: Point2): Stroke[] =>
  lines.flatMap((text, i) =>
    textStrokes('RULE', { text, heightMm: NOTE_HEIGHT_MM, at: [x, y - i * NOTE_PITCH_MM] }),
  );

/** Length of the scale bar, mm, exact in every output. */
export const SCALE_BAR_MM = 100;

const TICK_MM = 2;

/**
 * The bar to lay a rule against: exactly 100 mm between its end ticks, with its length above it.
 * `at` is its left end; give it whole millimeters, so that no rounding touches the length.
 */
export function scaleBar([x, y]: Point2): Stroke[] {
  const end = x + SCALE_BAR_MM;
  const text = `${SCALE_BAR_MM} mm`;
  const width = letteringWidth(text, { heightMm: NOTE_HEIGHT_MM });
  return [
    lineStroke('RULE', [x, y], [end, y]),
    lineStroke('RULE', [x, y - TICK_MM], [x, y + TICK_MM]),
    lineStroke('RULE', [end, y - TICK_MM], [end, y + TICK_MM]),
    ...textStrokes('RULE', {
      text,
      heightMm: NOTE_HEIGHT_MM,
      at: [x + (SCALE_BAR_MM - width) / 2, y + 1.5],
    }),
  ];
}

/** Height of the scale bar's axis under the work, mm. */
export const BAR_BELOW_MM = 9;

/**
 * What stands under the work, clear of it: scale bar, then notes. `under` is the left end of the
 * work's lower edge.
 */
export function underneath(under: Point2, notes: readonly string[]): Stroke[] {
  const [x, y] = [Math.round(under[0]), Math.floor(under[1]) - BAR_BELOW_MM];
  return [...scaleBar([x, y]), ...noteStrokes(notes, [x, y - 8])];
}

/**
 * Whether kerf is in the cut lines, as it is written on every drawing. `kerfMm` is the kerf that the
 * cut paths allow for; null when they are the outlines themselves, for a saw steered beside them.
 */
export const kerfNote = (kerfMm: number | null): string =>
  kerfMm === null
    ? 'KERF NOT INCLUDED: LEAVE THE LINE, SAW ON THE WASTE SIDE'
    : `KERF ${plain(kerfMm)} MM INCLUDED: CUT ON THE LINE`;

/** A number as makers write it: at most two decimals, none that is not needed. */
export const plain = (value: number): string => String(Number(value.toFixed(2)));
