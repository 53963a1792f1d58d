/** Texts of a plate in the rooms it has for them. */
import type { PlateText } from '../gauge/plate.js';
import { polyline } from '../geometry/arcpath.js';
import { centeredLines } from '../geometry/lettering.js';
import { add, type Box, boxOf, type Point2 } from '../geometry/vec.js';
import type { LayerName, Stroke } from './drawing.js';
import { LEAST_HEIGHT_MM } from './label.js';

const GREATEST_HEIGHT_MM = 5;
const ROOM_MM = 1.2; // between ink and the edge of the room

/** As large as the room allows, up to 5 mm, in the middle of it; null where not even 2 mm fit. */
export function roomText(
  layer: LayerName,
  { breaks, instead = [], room }: PlateText,
  move: Point2,
): readonly Stroke[] | null {
  const best = largest(breaks, room) ?? largest(instead, room);
  if (!best) return null;
  const ink = centeredLines(best.lines, best);
  const [x0, y0, x1, y1] = boxOf(ink.flat());
  const [left, bottom, right, top] = room;
  const middle: Point2 = [(left + right - x0 - x1) / 2, (bottom + top - y0 - y1) / 2];
  const shift = add(middle, move);
  return ink.map((stroke) => ({
    kind: 'path',
    layer,
    path: polyline(
      stroke.map((p) => add(p, shift)),
      false,
    ),
  }));
}

type Set = { readonly lines: readonly string[]; readonly heightMm: number };

/** The way of breaking that gives the largest letters; the first of equal ones. */
function largest(breaks: PlateText['breaks'], [left, bottom, right, top]: Box): Set | null {
  const [wide, high] = [right - left - 2 * ROOM_MM, top - bottom - 2 * ROOM_MM];
  const sets = breaks.map((lines): Set => {
    const [x0, y0, x1, y1] = boxOf(centeredLines(lines, { heightMm: 1 }).flat());
    const fits = Math.min(GREATEST_HEIGHT_MM, wide / (x1 - x0), high / (y1 - y0));
    return { lines, heightMm: Math.floor(fits * 4) / 4 };
  });
  const readable = sets.filter((s) => s.heightMm >= LEAST_HEIGHT_MM);
  return readable.length === 0
    ? null
    : readable.reduce((a, b) => (b.heightMm > a.heightMm ? b : a));
}
