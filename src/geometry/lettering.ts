/**
 * Single-stroke letters: what a pen, a scribe or a laser at low power can follow. The one door to
 * the text module of @jscad/modeling, imported by its own path (5 ms; the whole package is 137 ms).
 */
import text from '@jscad/modeling/src/text/index.js';
import { Fault } from '../problem.js';
import { boxOf, type Point2 } from './vec.js';

/**
 * The library's `height` is not the height of its capitals: with `height: 14` they stand 21 high.
 */
const HEIGHT_PER_CAPITAL = 14 / 21;

/**
 * The strokes of one line of text as open polylines. Capitals and digits stand `heightMm` high on
 * the baseline y = 0; the leftmost ink is at x = 0. Descenders and brackets reach down to
 * −heightMm/3 and brackets up to 1.2 heightMm. Text without ink gives no strokes.
 * @throws Fault on a character that is not printable ASCII, or a height that is not positive.
 */
export function lettering(
  line: string,
  { heightMm }: { readonly heightMm: number },
): readonly (readonly Point2[])[] {
  if (!(heightMm > 0 && heightMm < Infinity)) throw new Fault(`letters ${heightMm} mm high`);
  // The library draws "?" for what it lacks, and for an empty text.
  if (!/^[\x20-\x7e]*$/.test(line)) throw new Fault(`no letters for ${JSON.stringify(line)}`);
  if (line.trim() === '') return [];
  const strokes = text.vectorText({ height: heightMm * HEIGHT_PER_CAPITAL }, line);
  const [left] = boxOf(strokes.flat());
  return strokes.map((stroke) => stroke.map(([x, y]): Point2 => [x - left, y]));
}

/** Width of the ink of a line of text, mm; 0 when there is none. */
export function letteringWidth(line: string, height: { readonly heightMm: number }): number {
  const ink = lettering(line, height).flat();
  return ink.length === 0 ? 0 : boxOf(ink)[2];
}

const LINE_PITCH = 1.7; // capitals' heights from baseline to baseline

/** Strokes of lines set centered under each other, the middle of the first baseline at the origin. */
export function centeredLines(
  lines: readonly string[],
  { heightMm }: { readonly heightMm: number },
): readonly (readonly Point2[])[] {
  return lines.flatMap((line, i) => {
    const strokes = lettering(line, { heightMm });
    const [left, , right] = boxOf(strokes.flat());
    const [dx, dy] = [-(left + right) / 2, -i * LINE_PITCH * heightMm];
    return strokes.map((stroke) => stroke.map(([x, y]): Point2 => [x + dx, y + dy]));
  });
}
