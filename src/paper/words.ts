/** Real text on a page, and the room it takes. */
import { textWidthMm } from '../drawing/picture/picture.js';
import { shortened, wrapped } from '../drawing/picture/words.js';
import type { PageItem } from '../formats/pdf.js';
import { type Box, boxOf, moved, type Point2 } from '../geometry/vec.js';
import { INK } from './pens.js';

/** Letters of notes, read at arm's length (common practice, no source); from line to line; letters of titles. */
export const TEXT_MM = 3;
export const LINE_MM = 4.1;
export const TITLE_MM = 4;

export type TextItem = Extract<PageItem, { kind: 'text' }>;

type Style = Partial<Pick<TextItem, 'anchor' | 'sizeMm' | 'turnDeg' | 'bold'>>;

export const textItem = (
  text: string,
  at: Point2,
  { anchor = 'start', sizeMm = TEXT_MM, ...more }: Style = {},
): TextItem => ({ kind: 'text', text, at, anchor, sizeMm, tone: INK, ...more });

/** Pages are set in the condensed face, nine tenths as wide as the one the estimate is for. */
const CONDENSED = 0.9;

/** Width of a text, estimated from above. */
export const widthMm = (text: string, sizeMm: number, bold = false): number =>
  CONDENSED * textWidthMm(text, sizeMm, bold);

/** A text in lines no wider than told. */
export const linesOf = (text: string, mostMm: number): string[] =>
  wrapped(text, TEXT_MM, mostMm / CONDENSED);

/** A text, or as much of it as fits, with an ellipsis behind. */
export const fitted = (text: string, sizeMm: number, mostMm: number, bold = false): string =>
  shortened(text, sizeMm, mostMm / CONDENSED, bold);

/** How far letters reach over and under their baseline, in sizes. */
const [OVER, UNDER] = [0.8, 0.25];

/** Box of a text; its width is estimated from above. */
export function textBox({ text, at, anchor, sizeMm, bold, turnDeg = 0 }: TextItem): Box {
  const width = widthMm(text, sizeMm, bold);
  const left = anchor === 'start' ? 0 : anchor === 'end' ? -width : -width / 2;
  const corners: Point2[] = [
    [left, -UNDER * sizeMm],
    [left + width, -UNDER * sizeMm],
    [left, OVER * sizeMm],
    [left + width, OVER * sizeMm],
  ];
  return boxOf(corners.map((c) => moved({ turnDeg, move: at }, c)));
}
