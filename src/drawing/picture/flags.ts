/**
 * Labels of a drawing that must find room whatever is drawn: rows of text over and under it, each
 * with an upright leader that ends in a dot on what it names (ISO 128-2: a leader that ends inside an
 * outline ends in a dot).
 */
import type { Box, Point2 } from '../../geometry/vec.js';
import { stroke } from './lure-view.js';
import { type Shape, textBox } from './picture.js';
import { LINE_MM, SIZES, shortened, words } from './words.js';

export type Flag = { readonly text: string; readonly at: Point2 };

/** From the drawing to the nearest row, mm. */
const GAP_MM = 2.5;
const DOT_MM = 0.55;
/** From a leader to its text, mm. */
const ASIDE_MM = 1;

/** Height that so many rows need, with their gap to the drawing. */
export const rowsMm = (rows: number): number => (rows === 0 ? 0 : GAP_MM + rows * LINE_MM);

/** True for what is labeled over the drawing rather than under it. */
export const isOver = ([, y]: Point2, [, low, , high]: Box): boolean => y >= (low + high) / 2;

/** `drawing` is the box of what is drawn, inside the panel, with `rowsMm` free over and under it. */
export function flagged(flags: readonly Flag[], drawing: Box, panel: Box): Shape[] {
  const over = flags.filter(({ at }) => isOver(at, drawing));
  const under = flags.filter(({ at }) => !isOver(at, drawing));
  const baseOver = (row: number) => drawing[3] + GAP_MM + row * LINE_MM + 0.25 * SIZES.note;
  const baseUnder = (row: number) => drawing[1] - GAP_MM - (row + 0.75) * LINE_MM;
  return [...rowsOf(over, panel, baseOver), ...rowsOf(under, panel, baseUnder)];
}

/**
 * What lies nearest the middle has the nearest row, and text runs toward the middle: so a leader
 * passes no text but where one is wider than half the panel, and there it goes behind it.
 */
function rowsOf(flags: readonly Flag[], panel: Box, baseAt: (row: number) => number): Shape[] {
  const middle = (panel[0] + panel[2]) / 2;
  const far = ({ at: [x] }: Flag) => Math.abs(x - middle);
  const rows = [...flags]
    .sort((a, b) => far(a) - far(b))
    .map((flag, row) => ({ flag, y: baseAt(row) }));
  const leaders = rows.map(({ flag: { at }, y }) =>
    stroke([at, [at[0], y + 0.3 * SIZES.note]], 'ink', 'hair'),
  );
  const dots = rows.map(
    ({ flag: { at } }): Shape => ({
      kind: 'disc',
      center: at,
      radiusMm: DOT_MM,
      role: 'ink',
      pen: null,
    }),
  );
  return [...leaders, ...dots, ...rows.flatMap(({ flag, y }) => besides(flag, y, panel, middle))];
}

/** The text beside the end of its leader, on paper of its own. */
function besides({ text, at: [x] }: Flag, y: number, panel: Box, middle: number): Shape[] {
  const short = shortened(text, SIZES.note, panel[2] - panel[0]);
  if (short === '') return [];
  const [left, , right] = textBox(words(short, 0, y));
  const width = right - left;
  const wanted = x < middle ? x + ASIDE_MM : x - ASIDE_MM - width;
  const from = Math.max(panel[0], Math.min(panel[2] - width, wanted));
  const label = words(short, from, y);
  return [paper(textBox(label)), label];
}

const paper = ([minX, minY, maxX, maxY]: Box): Shape => ({
  kind: 'area',
  points: [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ],
  role: 'sheet',
});
