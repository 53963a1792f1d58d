/** True-scale paper in the record: what an outsider needs to put the pages of a drawing together. */
import type { PaperFile, Papers } from '../paper/paper-file.js';
import { correctionOf } from '../pattern/paper.js';

export function paperRecord({ paper, files, checkLines }: Papers): unknown {
  const { size, acrossMm, alongMm, marginMm, overlapMm, check, printed } = paper;
  return {
    size,
    acrossMm,
    alongMm,
    marginMm,
    overlapMm,
    check,
    checkLinesMm: checkLines,
    printed,
    correction: correctionOf(paper),
    files: files.map(fileRecord),
  };
}

/** A page's lengths are those before correction; a turned page has x and y of it exchanged. */
const fileRecord = ({ file, kind, pattern, kerf, sheets, pages }: PaperFile): unknown => ({
  file,
  kind,
  pattern,
  kerf,
  sheets,
  pages: pages.map(({ page, bars, ...rest }) => ({
    ...rest,
    turnDeg: 0,
    widthMm: page.widthMm,
    heightMm: page.heightMm,
    barsMm: bars.map(({ fromMm, toMm }) => [fromMm, toMm]),
  })),
});
