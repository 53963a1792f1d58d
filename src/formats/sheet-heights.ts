/**
 * About how high a block of the sheet will be on a page, rather more than less: what is kept together is
 * lost by pdfmake where it is higher than a page, so nothing is kept together that might be.
 */
import { Fault } from '../problem.js';
import type { Block, Inlines, Picture, Table } from '../sheet/document.js';
import { POINTS_PER_MM } from './pdf.js';
import { columnShares } from './sheet-columns.js';
import { POINTS, WRITING_MM } from './sheet-style.js';
import { type Setting, textNodes, widthPt } from './sheet-text.js';

/** Line to line over the size of the letters. */
const LINE_RATIO = 1.4;
/** Over and under a block. */
const AIR_PT = 14;
/** Beside and over the text of a cell, both sides together. */
const CELL_PT = 12;

export function heightPt(block: Block, setting: Setting): number {
  const wide = setting.widthPt;
  switch (block.kind) {
    case 'heading':
      return linesPt(block.inlines, POINTS.subheading, wide, setting) + AIR_PT;
    case 'paragraph':
      return linesPt(block.inlines, POINTS.text, wide, setting) + AIR_PT;
    case 'note':
      return block.lines.reduce((sum, line) => {
        const text: Inlines = [{ kind: 'free', text: line }];
        return sum + linesPt(text, POINTS.text, wide - 3 * CELL_PT, setting) + 4;
      }, 3 * AIR_PT);
    case 'list':
      return (listRows(block.items, setting) + 2) * POINTS.heading * LINE_RATIO + AIR_PT;
    case 'caution':
      return block.items.reduce(
        (sum, item) => sum + linesPt(item, POINTS.text, wide - 4 * CELL_PT, setting) + 2,
        4 * AIR_PT,
      );
    case 'figures':
      return Math.max(
        ...block.figures.map(({ label, value, detail }) => {
          const each = wide / block.figures.length - CELL_PT;
          return (
            linesPt(label, POINTS.head, each, setting) +
            linesPt(value, POINTS.figure, each, setting) +
            linesPt(detail, POINTS.text, each, setting) +
            2 * AIR_PT
          );
        }),
      );
    case 'table':
      return tablePt(block, setting);
    case 'picture':
      return fittedPt(block, wide)[1] + 2 * AIR_PT;
    case 'together':
      return block.blocks.reduce((sum, inner) => sum + heightPt(inner, setting), 0);
  }
}

/** Columns that items need, each as wide as the widest with its box. */
export function listColumns(items: readonly Inlines[], setting: Setting): number {
  const texts = items.map((item) => lineOf([{ kind: 'tick' }, ...item], setting));
  const widest = Math.max(...texts.map((t) => widthPt(t, POINTS.text))) + 2 * CELL_PT;
  return Math.max(1, Math.min(MOST_COLUMNS, items.length, Math.floor(setting.widthPt / widest)));
}

const MOST_COLUMNS = 6;

const listRows = (items: readonly Inlines[], setting: Setting): number =>
  Math.ceil(items.length / listColumns(items, setting));

/** Width and height of a picture between the margins. @throws Fault for one that does not say how large it is */
export function fittedPt(
  { svg, mostHeightMm }: Picture,
  mostWidthPt: number,
): readonly [number, number] {
  const size = /<svg[^>]* width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg);
  if (!size) throw new Fault('a picture without a size');
  const [width, height] = [Number(size[1]), Number(size[2])];
  const scale = Math.min(mostWidthPt / width, (mostHeightMm * POINTS_PER_MM) / height);
  return [scale * width, scale * height];
}

function tablePt(table: Table, setting: Setting): number {
  const { title, columns, rows, forWriting } = table;
  const shares = columnShares(table, setting.sheet.inches);
  const heads = columns.map((c) => c.head);
  const least = forWriting ? WRITING_MM * POINTS_PER_MM : 0;
  return rows.reduce(
    (sum, row) => sum + Math.max(least, rowPt(row, shares, POINTS.table, setting)),
    rowPt(heads, shares, POINTS.head, setting) + (title ? 2 * AIR_PT : 0) + AIR_PT,
  );
}

/** The highest row of a table. */
export function highestRowPt(table: Table, setting: Setting): number {
  const shares = columnShares(table, setting.sheet.inches);
  return Math.max(0, ...table.rows.map((row) => rowPt(row, shares, POINTS.table, setting)));
}

function rowPt(
  cells: readonly Inlines[],
  shares: readonly number[],
  sizePt: number,
  setting: Setting,
): number {
  const lines = cells.map((cell, i) =>
    linesPt(cell, sizePt, setting.widthPt * shares[i] - CELL_PT, setting),
  );
  return Math.max(sizePt * LINE_RATIO, ...lines) + CELL_PT / 2;
}

/** Lines break before the width is spent: a third is reckoned lost. */
const LOST_RATIO = 1.3;

function linesPt(inlines: Inlines, sizePt: number, wide: number, setting: Setting): number {
  const text = lineOf(inlines, setting);
  const lines = Math.ceil((LOST_RATIO * widthPt(text, sizePt)) / Math.max(wide, sizePt));
  return Math.max(1, lines) * sizePt * LINE_RATIO;
}

const lineOf = (inlines: Inlines, setting: Setting): string =>
  textNodes(inlines, setting)
    .map((node) => node.text)
    .join('');
