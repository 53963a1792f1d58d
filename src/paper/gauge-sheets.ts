/** Gauges on paper, to be glued on card or thin ply: as many on a page as it takes, each one whole. */
import type { Blank } from '../blank/blank.js';
import type { Stroke } from '../drawing/drawing.js';
import { roomText } from '../drawing/plate-text.js';
import { rowsOf } from '../drawing/rows.js';
import { lineStroke } from '../drawing/strokes.js';
import type { Gauges } from '../gauge/gauges.js';
import type { Plate } from '../gauge/plate.js';
import { movedPath, pathBox } from '../geometry/arcpath.js';
import { type Motion, moved, type Point2 } from '../geometry/vec.js';
import type { Paper } from '../pattern/paper.js';
import type { Leaflet, Sketch } from './paper-file.js';
import { sketchOf } from './pens.js';
import { DUST_CAUTION, titleOf } from './sentences.js';
import { fits, roomsOn, sizeOf } from './tiling.js';

export const gaugeLeaflet = (blank: Blank): Leaflet => ({
  file: `gauges/${blank.name}-gauges.pdf`,
  kind: 'gauge',
  pattern: blank.name,
  title: titleOf('Gauges', blank),
  kerf: 'not in it',
  notes: [
    'For bare shaped wood: no coat is allowed for.',
    'Lettered face on the station, plate toward the thinner end; turn it over for the other side.',
    DUST_CAUTION,
  ],
});

const BETWEEN_MM = 4; // paper between two plates
const EDGE_MM = 0.5; // ink beyond a plate's outline

/**
 * Plates in rows, page by page; one that is longer than a page is a sketch of its own, which may take
 * several.
 */
export function gaugeSketches(gauges: Gauges, leaflet: Leaflet, paper: Paper): Sketch[] {
  const plates: readonly Plate[] = [...gauges.profiles, ...gauges.sections];
  const rooms = roomsOn(paper, leaflet).map(({ whole }) => sizeOf(whole));
  const isWhole = (plate: Plate) => rooms.some((room) => fits(plateSize(plate), room));
  const long = plates.filter((p) => !isWhole(p));
  const layouts = rooms
    .map((room) => inRows(plates.filter(isWhole), room))
    .filter((layout) => layout !== null);
  const fewest = layouts.reduce((a, b) => (b.length < a.length ? b : a), layouts[0] ?? []);
  return [...long.map((plate) => sketched([{ plate, move: [0, 0] }])), ...fewest.map(sketched)];
}

/** With its ink. */
export function plateSize({ outline }: Plate): Point2 {
  const [w, h] = sizeOf(pathBox(outline.path));
  return [w + 2 * EDGE_MM, h + 2 * EDGE_MM];
}

type Laid = { readonly plate: Plate; readonly move: Point2 };

/** Plates by pages of such a size; null where one does not fit it. */
function inRows(plates: readonly Plate[], [wide, high]: Point2): Laid[][] | null {
  const sizes = plates.map(plateSize);
  if (!sizes.every((size) => fits(size, [wide, high]))) return null;
  const clear = { lengthMm: wide, widthMm: high, marginMm: 0 };
  const { corners, sheets } = rowsOf(sizes, clear, BETWEEN_MM);
  return sheets
    .map((edge) => {
      const [, bottom] = edge[0];
      return plates.flatMap((plate, i): Laid[] => {
        const [x, y] = corners[i];
        if (y < bottom - 1e-9 || y > bottom + high) return [];
        const [x0, y0] = pathBox(plate.outline.path);
        return [{ plate, move: [x + EDGE_MM - x0, y + EDGE_MM - y0] }];
      });
    })
    .filter((laid) => laid.length > 0);
}

const sketched = (laid: readonly Laid[]): Sketch => sketchOf(laid.flatMap(plateStrokes));

function plateStrokes({ plate: { outline, ticks, texts }, move }: Laid): Stroke[] {
  const motion: Motion = { turnDeg: 0, move };
  return [
    { kind: 'path', layer: 'CUT_OUTSIDE', path: movedPath(motion, outline.path) },
    ...ticks.map(([from, to]) => lineStroke('MARK', moved(motion, from), moved(motion, to))),
    ...texts.flatMap((text) => roomText('LABEL', text, move) ?? []),
  ];
}
