/** Parts beside each other in plain rows on as many sheets as it takes. */
import { type Ring, rectRing } from '../geometry/ring.js';
import type { Point2 } from '../geometry/vec.js';

type Clear = {
  readonly lengthMm: number;
  /** Infinity for a roll without end. */
  readonly widthMm: number;
  readonly marginMm: number;
};

/** From one sheet of the drawing to the next under it, mm. */
const BETWEEN_MM = 15;

/**
 * Lower left corners of parts by their lengths and widths, in their order: from left to right, rows
 * from the top of a sheet down, the next sheet under it. Each part must fit a sheet.
 */
export function rowsOf(
  sizes: readonly Point2[],
  { lengthMm, widthMm, marginMm }: Clear,
  gapMm: number,
): { readonly corners: readonly Point2[]; readonly sheets: readonly Ring[] } {
  const corners: Point2[] = [];
  // The first sheet's upper edge is the x axis.
  let [sheetTop, x, rowTop, rowWidth] = [0, marginMm, -marginMm, 0];
  const tops = [0];
  for (const [length, width] of sizes) {
    if (x > marginMm && x + length > lengthMm - marginMm) {
      [x, rowTop, rowWidth] = [marginMm, rowTop - rowWidth - gapMm, 0];
    }
    if (rowTop < sheetTop - marginMm && rowTop - width < sheetTop - widthMm + marginMm) {
      sheetTop -= widthMm + BETWEEN_MM;
      tops.push(sheetTop);
      [x, rowTop, rowWidth] = [marginMm, sheetTop - marginMm, 0];
    }
    corners.push([x, rowTop - width]);
    x += length + gapMm;
    rowWidth = Math.max(rowWidth, width);
  }
  const bottom = (top: number) =>
    Number.isFinite(widthMm) ? top - widthMm : rowTop - rowWidth - marginMm;
  return {
    corners,
    sheets: tops.map((top) => rectRing(0, bottom(top), lengthMm, top)),
  };
}
