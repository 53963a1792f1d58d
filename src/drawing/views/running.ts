/**
 * Running dimensions: all from one origin, along one line (ISO 129-1). Each number stands at the end of
 * its extension line and is read from the right; where two would meet, their lines are bent apart.
 */
import type { Shape } from '../picture/picture.js';
import { textWidthMm } from '../picture/picture.js';
import { SIZES } from '../picture/words.js';
import { turned } from './dimension.js';
import { arrowhead, ink } from './ink.js';
import { spreadWithin } from './spread.js';

/** What stands at a place of the line. `y` is where its extension line begins. */
export type Mark = { readonly x: number; readonly y: number; readonly text: string };

/** From number to number, mm. */
export const NUMBER_STEP_MM = SIZES.note * 1.35;
/** Parts of an extension line under the dimension line: straight, bent, straight again. */
const UNDER_MM = { straight: 1.5, bent: 3.5, end: 4.5 } as const;
const TO_TEXT_MM = 0.8;
/** From a turned text's baseline to its middle: letters stand to the left of it. */
const HALF_LETTER_MM = 0.28 * SIZES.note;
const ORIGIN_MM = 0.9;

/** Height under the dimension line that the numbers take, mm. */
export const runningMm = (texts: readonly string[]): number =>
  UNDER_MM.end + TO_TEXT_MM + Math.max(0, ...texts.map((text) => textWidthMm(text, SIZES.note)));

/** Marks of any order from an origin at `x0`; numbers stay within `bounds`. */
export function runningDimensions(
  marks: readonly Mark[],
  {
    x0,
    y,
    bounds,
  }: { readonly x0: number; readonly y: number; readonly bounds: readonly [number, number] },
): Shape[] {
  const sorted = [...marks].sort((a, b) => a.x - b.x);
  const half = NUMBER_STEP_MM / 2;
  const places = spreadWithin(
    sorted.map(({ x }) => x),
    NUMBER_STEP_MM,
    [bounds[0] + half, bounds[1] - half],
  );
  const last = sorted[sorted.length - 1];
  return [
    ink(
      [
        [x0, y],
        [last.x, y],
      ],
      'hair',
    ),
    ...sorted.flatMap((mark, i): Shape[] => [
      ink(
        [
          [mark.x, mark.y],
          [mark.x, y - UNDER_MM.straight],
          [places[i], y - UNDER_MM.bent],
          [places[i], y - UNDER_MM.end],
        ],
        'hair',
      ),
      ...(mark.x - x0 > 1e-9 ? [arrowhead([mark.x, y], [1, 0])] : []),
      turned(mark.text, places[i] + HALF_LETTER_MM, y - UNDER_MM.end - TO_TEXT_MM, 'end'),
    ]),
    { kind: 'disc', center: [x0, y], radiusMm: ORIGIN_MM, role: 'sheet', pen: 'hair', clear: true },
  ];
}
