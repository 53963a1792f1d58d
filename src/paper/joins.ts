/**
 * Where two pages of a drawing are put together: cut on a line in the middle of their overlap, through
 * register crosses that both show. Crosses and line keep clear of the drawing's own lines.
 */
import type { PageItem } from '../formats/pdf.js';
import { pathPoints } from '../geometry/arcpath.js';
import { circleRing } from '../geometry/ring.js';
import type { Box, Point2 } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import { lineItem, PENS } from './pens.js';
import type { Tiling } from './tiling.js';
import { textBox } from './words.js';

/** An upright (axis 0) or level (axis 1) line: the coordinate it has, and from where to where it runs. */
export type Join = {
  readonly axis: 0 | 1;
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly crosses: readonly Point2[];
  /** Stretches of it that are clear of the drawing. */
  readonly clear: readonly Stretch[];
};

type Stretch = readonly [from: number, to: number];

const ARM_MM = 2.5; // of a register cross
const AIR_MM = 0.8; // between a cross, or the line, and the drawing
const APART_MM = 15; // least distance of two crosses
const STEP_MM = 1;
const ENDS_MM = 0.5; // from the ends of a line to the edge of the window
const CHORD_MM = 0.05; // of arcs that are kept clear of

/** The join on the right of a tile, or under it; null where the drawing ends. */
export function joinOf(
  { tiles, rows, columns }: Tiling,
  [row, column]: readonly [number, number],
  side: 'right' | 'below',
  { ink, overlapMm }: { readonly ink: readonly Point2[][]; readonly overlapMm: number },
): Join | null {
  const axis = side === 'right' ? 0 : 1;
  if (side === 'right' ? column === columns : row === rows) return null;
  const [x0, y0, x1, y1] = tiles[(row - 1) * columns + column - 1].drawingMm;
  const at = axis === 0 ? x1 - overlapMm / 2 : y0 + overlapMm / 2;
  const [from, to] = axis === 0 ? [y0, y1] : [x0, x1];
  const over = overlapMm + ARM_MM;
  // Crosses lie on these two pages alone, clear of the pages beyond them.
  const before = axis === 0 ? row < rows : column > 1;
  const after = axis === 0 ? row > 1 : column < columns;
  const span: Stretch = [
    from + (before ? over : ARM_MM + AIR_MM),
    to - (after ? over : ARM_MM + AIR_MM),
  ];
  const crosses = crossesOn(span, taken(ink, axis, at, ARM_MM + AIR_MM));
  return {
    axis,
    at,
    from,
    to,
    crosses: crosses.map((s): Point2 => (axis === 0 ? [at, s] : [s, at])),
    clear: freeOf([from + ENDS_MM, to - ENDS_MM], taken(ink, axis, at, AIR_MM)),
  };
}

/** One cross as near to each end as the drawing lets it; the ends themselves where it is everywhere. */
function crossesOn([from, to]: Stretch, blocked: readonly Stretch[]): number[] {
  const isFree = (s: number) => blocked.every(([a, b]) => s < a || s > b);
  const steps = Math.max(0, Math.floor((to - from) / STEP_MM));
  const places = Array.from({ length: steps + 1 }, (_, i) => i * STEP_MM);
  const low = from + (places.find((d) => isFree(from + d)) ?? 0);
  const high = to - (places.find((d) => isFree(to - d) && to - d - low >= APART_MM) ?? 0);
  return high - low >= APART_MM
    ? [low, high]
    : [from, to].filter((s, i, all) => i === 0 || s > all[0]);
}

/** Where along a line the drawing comes nearer to it than so much, grown by as much. */
function taken(ink: readonly Point2[][], axis: 0 | 1, at: number, nearMm: number): Stretch[] {
  const along = axis === 0 ? 1 : 0;
  const stretches: Stretch[] = [];
  for (const line of ink) {
    for (let i = 1; i < line.length; i++) {
      const [p, q] = [line[i - 1], line[i]];
      const [low, high] = p[axis] <= q[axis] ? [p, q] : [q, p];
      if (high[axis] < at - nearMm || low[axis] > at + nearMm) continue;
      const share = (value: number) =>
        high[axis] === low[axis] ? 0 : (value - low[axis]) / (high[axis] - low[axis]);
      const [a, b] =
        high[axis] === low[axis]
          ? [0, 1]
          : [Math.max(0, share(at - nearMm)), Math.min(1, share(at + nearMm))];
      const ends = [a, b].map((t) => low[along] + t * (high[along] - low[along]));
      stretches.push([Math.min(...ends) - nearMm, Math.max(...ends) + nearMm]);
    }
  }
  return stretches;
}

/** What is left of a stretch. */
function freeOf([from, to]: Stretch, blocked: readonly Stretch[]): Stretch[] {
  const free: Stretch[] = [];
  let at = from;
  for (const [a, b] of [...blocked].sort((p, q) => p[0] - q[0])) {
    if (a > at) free.push([at, Math.min(a, to)]);
    at = Math.max(at, b);
    if (at >= to) return free;
  }
  return [...free, [at, to]];
}

/** Register crosses and the line to cut on, in the frame of the drawing. */
export function joinItems({ axis, at, crosses, clear }: Join): PageItem[] {
  const on = (s: number): Point2 => (axis === 0 ? [at, s] : [s, at]);
  return [
    ...crosses.flatMap(crossItems),
    ...clear.filter(([a, b]) => b - a > 1).map(([a, b]) => lineItem(on(a), on(b), PENS.broken)),
  ];
}

const crossItems = ([x, y]: Point2): PageItem[] => [
  lineItem([x - ARM_MM, y], [x + ARM_MM, y], PENS.mark),
  lineItem([x, y - ARM_MM], [x, y + ARM_MM], PENS.mark),
];

/** The lines of a drawing as points, for whatever keeps clear of them; a text as its box. */
export const inkOf = (items: readonly PageItem[]): Point2[][] => items.flatMap(lineOf);

function lineOf(item: PageItem): Point2[][] {
  switch (item.kind) {
    case 'path': {
      const points = pathPoints(item.path, CHORD_MM);
      return [item.path.closed ? [...points, points[0]] : points];
    }
    case 'circle': {
      const { center, radius } = item.circle;
      const points = circleRing(center, radius, { segments: 48, circumscribed: true });
      return [[...points, points[0]]];
    }
    case 'text':
      return [boxLine(textBox(item))];
    case 'image':
    case 'group':
      throw new Fault(`a sketch with a ${item.kind} in it`);
  }
}

const boxLine = ([x0, y0, x1, y1]: Box): Point2[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
  [x0, y0],
];
