/** A page as it is laid out: which way round, what of it can be printed, what the printer errs. */
import type { PageItem } from '../formats/pdf.js';
import type { Box } from '../geometry/vec.js';
import { correctionOf, type Paper } from '../pattern/paper.js';

/** `upright`: as the sheet goes through the printer. `turned`: a quarter, long side across. */
export type Way = 'upright' | 'turned';
export const WAYS: readonly Way[] = ['upright', 'turned'];

export type Frame = {
  readonly way: Way;
  readonly widthMm: number;
  readonly heightMm: number;
  /** What lengths on the page are multiplied by about its middle; a turned page has them exchanged. */
  readonly scale: readonly [x: number, y: number];
  /** What can be used: as written, and as it then comes out, all of it lies inside the margins. */
  readonly clear: Box;
};

/** Half of the broadest line at the edge of what can be used, mm. */
const INK_MM = 0.2;

const UNSCALED = { x: 1, y: 1 } as const;

/** @param isCorrected false for the page that measures the printer */
export function frameOf(paper: Paper, way: Way, isCorrected = true): Frame {
  const { x, y } = isCorrected ? correctionOf(paper) : UNSCALED;
  const turned = way === 'turned';
  const [widthMm, heightMm] = turned
    ? [paper.alongMm, paper.acrossMm]
    : [paper.acrossMm, paper.alongMm];
  const scale = turned ? ([y, x] as const) : ([x, y] as const);
  const [halfX, halfY] = [widthMm, heightMm].map(
    (side, i) => (side / 2 - paper.marginMm - INK_MM) / Math.max(1, scale[i]),
  );
  const clear: Box = [
    widthMm / 2 - halfX,
    heightMm / 2 - halfY,
    widthMm / 2 + halfX,
    heightMm / 2 + halfY,
  ];
  return { way, widthMm, heightMm, scale, clear };
}

/** Items of a page, scaled about its middle against the printer's error. */
export function corrected(
  { widthMm, heightMm, scale: [x, y] }: Frame,
  items: readonly PageItem[],
): PageItem {
  const [dx, dy] = [(widthMm / 2) * (1 - x), (heightMm / 2) * (1 - y)];
  return { kind: 'group', matrix: [x, 0, 0, y, dx, dy], window: null, items };
}
