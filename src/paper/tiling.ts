/** A drawing on the fewest pages: one, either way round, or rows and columns that overlap. */
import type { Box, Point2 } from '../geometry/vec.js';
import type { Paper } from '../pattern/paper.js';
import { BARS_WIDE_MM, footerHeight } from './footer.js';
import { type Frame, frameOf, WAYS, type Way } from './frame.js';
import type { Leaflet } from './paper-file.js';
import { grown } from './pens.js';

/** Between drawing and footer, mm. */
const OVER_FOOTER_MM = 2;
/** Round the drawing's part of a page that is joined to others, for words and the ends of cut lines, mm. */
const BORDER_MM = 5;
/** White round a drawing on several pages, so that there is room for register crosses, mm. */
const WHITE_MM = 7;

/** What of a page a drawing may take: all over the footer, and what is left of it inside a border. */
export type Room = { readonly frame: Frame; readonly whole: Box; readonly joined: Box };

function roomOn(paper: Paper, way: Way, leaflet: Leaflet): Room {
  const frame = frameOf(paper, way);
  const [left, bottom, right, top] = frame.clear;
  const whole: Box = [left, bottom + footerHeight(frame, leaflet) + OVER_FOOTER_MM, right, top];
  return { frame, whole, joined: grown(whole, -BORDER_MM) };
}

/** Upright, then turned, where the bars fit. */
export const roomsOn = (paper: Paper, leaflet: Leaflet): readonly Room[] =>
  WAYS.map((way) => roomOn(paper, way, leaflet)).filter(
    ({ whole: [left, , right] }) => right - left >= BARS_WIDE_MM,
  );

export const sizeOf = ([x0, y0, x1, y1]: Box): Point2 => [x1 - x0, y1 - y0];

export type Tile = {
  readonly row: number;
  readonly column: number;
  readonly drawingMm: Box;
  readonly atMm: Point2;
};

export type Tiling = {
  readonly frame: Frame;
  readonly rows: number;
  readonly columns: number;
  /** The drawing's box; with white round it where it takes several pages. */
  readonly boxMm: Box;
  /** Row by row. */
  readonly tiles: readonly Tile[];
};

/** Whether pages of such rooms can be joined: at least half of each is new, both ways. */
export const canJoin = ({ joined }: Room, overlapMm: number): boolean =>
  fits([2 * overlapMm, 2 * overlapMm], sizeOf(joined));

/** @param rooms of which one can be joined */
export function tiling(box: Box, rooms: readonly Room[], overlapMm: number): Tiling {
  const single = rooms.find(({ whole }) => fits(sizeOf(box), sizeOf(whole)));
  if (single) {
    const { frame, whole } = single;
    return gridOf(frame, box, whole, { rows: 1, columns: 1, overlapMm });
  }
  const boxMm = grown(box, WHITE_MM);
  const [wide, high] = sizeOf(boxMm);
  const joinable = rooms.filter((room) => canJoin(room, overlapMm));
  const grids = joinable.map(({ frame, joined }) => {
    const [w, h] = sizeOf(joined);
    const grid = { columns: piecesOf(wide, w, overlapMm), rows: piecesOf(high, h, overlapMm) };
    return { frame, joined, grid, pages: grid.columns * grid.rows };
  });
  const { frame, joined, grid } = grids.reduce((a, b) => (b.pages < a.pages ? b : a));
  return gridOf(frame, boxMm, joined, { ...grid, overlapMm });
}

export const fits = ([w, h]: Point2, [wide, high]: Point2): boolean => w <= wide && h <= high;

/** Fewest pieces that cover a length, each no longer than so much, overlapping. */
const piecesOf = (lengthMm: number, mostMm: number, overlapMm: number): number =>
  Math.max(1, Math.ceil((lengthMm - overlapMm) / (mostMm - overlapMm) - 1e-9));

type Grid = { readonly rows: number; readonly columns: number; readonly overlapMm: number };

/** Equal tiles, each in the middle of its page's room. */
function gridOf(frame: Frame, boxMm: Box, room: Box, { rows, columns, overlapMm }: Grid): Tiling {
  const [wide, high] = sizeOf(boxMm);
  const width = (wide + (columns - 1) * overlapMm) / columns;
  const height = (high + (rows - 1) * overlapMm) / rows;
  const atMm: Point2 = [(room[0] + room[2] - width) / 2, (room[1] + room[3] - height) / 2];
  const tiles = Array.from({ length: rows * columns }, (_, i): Tile => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    const left = boxMm[0] + column * (width - overlapMm);
    const top = boxMm[3] - row * (height - overlapMm);
    const drawingMm: Box = [left, top - height, left + width, top];
    return { row: row + 1, column: column + 1, drawingMm, atMm };
  });
  return { frame, rows, columns, boxMm, tiles };
}
