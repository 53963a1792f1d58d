/** Sketches on pages: each one's part of the drawing in its window, joins round it, the footer under it. */
import type { PageItem } from '../formats/pdf.js';
import type { Box, Point2 } from '../geometry/vec.js';
import type { Paper } from '../pattern/paper.js';
import { itemBox, meet } from './extent.js';
import { footer } from './footer.js';
import { corrected } from './frame.js';
import { inkOf, type Join, joinItems, joinOf } from './joins.js';
import type { Leaflet, PaperFile, PaperPage, Sketch } from './paper-file.js';
import { lineItem, PENS } from './pens.js';
import { roomsOn, type Tile, type Tiling, tiling } from './tiling.js';
import { TEXT_MM, textItem, widthMm } from './words.js';

/** Every sketch on pages of its own. */
export function paperFile(leaflet: Leaflet, sketches: readonly Sketch[], paper: Paper): PaperFile {
  const told: Leaflet = {
    ...leaflet,
    notes: [...leaflet.notes, ...joinNotes(leaflet, sketches, paper)],
  };
  const rooms = roomsOn(paper, told);
  const tilings = sketches.map((sketch) => tiling(sketch.box, rooms, paper.overlapMm));
  const of = tilings.reduce((sum, { tiles }) => sum + tiles.length, 0);
  const starts = tilings.map((_, i) =>
    tilings.slice(0, i).reduce((sum, { tiles }) => sum + tiles.length, 1),
  );
  const pages = tilings.flatMap((laid, i) =>
    pagesOf(told, sketches[i], laid, { paper, sheet: i + 1, first: starts[i], of }),
  );
  const sheets = tilings.map(({ rows, columns, boxMm }) => ({ rows, columns, boxMm }));
  return { ...told, sheets, pages };
}

/** How pages are put together, where a drawing needs several. The sentence takes room itself. */
function joinNotes(leaflet: Leaflet, sketches: readonly Sketch[], paper: Paper): string[] {
  const rooms = roomsOn(paper, leaflet);
  const joined = sketches.some(({ box }) => tiling(box, rooms, paper.overlapMm).tiles.length > 1);
  return joined ? [JOINING] : [];
}

const JOINING =
  'Several pages: check the bars first; then cut each page on its broken lines and glue it over the next ones, cross on cross.';

type Numbering = {
  readonly paper: Paper;
  readonly sheet: number;
  /** Number of the sketch's first page, and how many the file has. */
  readonly first: number;
  readonly of: number;
};

function pagesOf(
  leaflet: Leaflet,
  { items }: Sketch,
  laid: Tiling,
  { paper: { overlapMm }, sheet, first, of }: Numbering,
): PaperPage[] {
  const { rows, columns, frame } = laid;
  const ink = laid.tiles.length > 1 ? inkOf(items) : [];
  const boxes = items.map(itemBox);
  const join = (row: number, column: number, side: 'right' | 'below') =>
    row < 1 || column < 1 ? null : joinOf(laid, [row, column], side, { ink, overlapMm });
  return laid.tiles.map((tile, i): PaperPage => {
    const { row, column, drawingMm, atMm } = tile;
    const number = first + i;
    const cut = [join(row, column, 'right'), join(row, column, 'below')];
    const under = [join(row, column - 1, 'right'), join(row - 1, column, 'below')];
    const joins = [...cut, ...under].filter((j) => j !== null);
    const place = { number, of, row, column, rows, columns };
    const below = footer(frame, leaflet, place);
    const page = {
      widthMm: frame.widthMm,
      heightMm: frame.heightMm,
      items: [
        corrected(frame, [
          windowed(tile, [
            ...items.filter((_, k) => meet(boxes[k], drawingMm)),
            ...cut.flatMap((j) => (j ? joinItems(j) : [])),
            ...under.flatMap((j) => (j ? joinItems({ ...j, clear: [] }) : [])),
          ]),
          ...borderItems(tile, cut, { number, rows, columns }),
          ...below.items,
        ]),
      ],
    };
    const crossesMm = joins.flatMap((j) => j.crosses);
    const { bars } = below;
    return { number, sheet, row, column, drawingMm, atMm, crossesMm, bars, page };
  });
}

/** The tile's part of the drawing, moved onto the page. */
const windowed = ({ drawingMm, atMm }: Tile, items: readonly PageItem[]): PageItem => ({
  kind: 'group',
  matrix: [1, 0, 0, 1, atMm[0] - drawingMm[0], atMm[1] - drawingMm[1]],
  window: drawingMm,
  items,
});

const [TICK_FROM_MM, TICK_TO_MM] = [0.7, 4.5]; // beyond the window, at the ends of a cut line
const ENDS_MM = 24; // both ends of an edge, where ticks stand

/** Beyond the window: ends of the cut lines, and over or under which page it goes on each side. */
function borderItems(
  { drawingMm: [x0, y0, x1, y1], atMm: [left, bottom], row, column }: Tile,
  [right, below]: readonly (Join | null)[],
  {
    number,
    rows,
    columns,
  }: { readonly number: number; readonly rows: number; readonly columns: number },
): PageItem[] {
  const window: Box = [left, bottom, left + x1 - x0, bottom + y1 - y0];
  const on = (j: Join) => j.at - (j.axis === 0 ? x0 - left : y0 - bottom);
  const upright = (x: number) =>
    [window[1], window[3]].map((y, i) => tick([x, y], [0, i === 0 ? -1 : 1]));
  const level = (y: number) =>
    [window[0], window[2]].map((x, i) => tick([x, y], [i === 0 ? -1 : 1, 0]));
  const cut = (page: number) => [
    `cut on the broken line, glue over page ${page}, cross on cross`,
    `cut here, glue over page ${page}`,
    `over page ${page}`,
  ];
  const under = (page: number) => [`goes under page ${page}`, `under ${page}`];
  return [
    ...(right ? [...upright(on(right)), ...words(window, 'right', cut(number + 1))] : []),
    ...(below ? [...level(on(below)), ...words(window, 'bottom', cut(number + columns))] : []),
    ...(column > 1 && columns > 1 ? words(window, 'left', under(number - 1)) : []),
    ...(row > 1 && rows > 1 ? words(window, 'top', under(number - columns)) : []),
  ];
}

const tick = ([x, y]: Point2, [dx, dy]: Point2): PageItem =>
  lineItem(
    [x + dx * TICK_FROM_MM, y + dy * TICK_FROM_MM],
    [x + dx * TICK_TO_MM, y + dy * TICK_TO_MM],
    PENS.mark,
  );

/** The longest of the texts that there is room for, along a side of the window. */
function words(
  [x0, y0, x1, y1]: Box,
  side: 'left' | 'right' | 'top' | 'bottom',
  texts: readonly string[],
): PageItem[] {
  const isUpright = side === 'left' || side === 'right';
  const room = (isUpright ? y1 - y0 : x1 - x0) - ENDS_MM;
  const text = texts.find((t) => widthMm(t, TEXT_MM) <= room);
  if (text === undefined) return [];
  const at: Readonly<Record<typeof side, Point2>> = {
    left: [x0 - 1.2, (y0 + y1) / 2],
    right: [x1 + 3.8, (y0 + y1) / 2],
    top: [(x0 + x1) / 2, y1 + 1.4],
    bottom: [(x0 + x1) / 2, y0 - 3.8],
  };
  return [textItem(text, at[side], { anchor: 'middle', turnDeg: isUpright ? 90 : 0 })];
}
