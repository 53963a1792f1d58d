/** Lines for tracing, black on white, and a drawing's strokes in them. */
import type { LayerName, Stroke } from '../drawing/drawing.js';
import { strokesBox } from '../drawing/drawing.js';
import type { PageItem, Pen } from '../formats/pdf.js';
import { polyline } from '../geometry/arcpath.js';
import type { Box, Point2 } from '../geometry/vec.js';
import type { Sketch } from './paper-file.js';

export const INK = '#000000';
export const PAPER = '#ffffff';

const pen = (widthMm: number, dashMm?: Pen['dashMm']): Pen =>
  dashMm ? { widthMm, tone: INK, dashMm } : { widthMm, tone: INK };

/** Widths that double from mark to outline, so that a copy still tells them apart. Common practice, no source. */
export const PENS = {
  /** To saw or cut along: its middle is the outline. */
  outline: pen(0.35),
  letter: pen(0.25),
  route: pen(0.25, [3, 1.5]),
  mark: pen(0.18),
  broken: pen(0.18, [2, 1.2]),
  hair: pen(0.12),
  center: pen(0.12, [4, 1]),
} as const satisfies Record<string, Pen>;

/** Pens of solid and of dashed strokes; rules and notes are left to the page. */
const BY_LAYER: Readonly<Record<LayerName, readonly [solid: Pen, dashed: Pen] | null>> = {
  CUT_INSIDE: [PENS.outline, PENS.route],
  CUT_OUTSIDE: [PENS.outline, PENS.route],
  MARK: [PENS.mark, PENS.broken],
  LABEL: [PENS.letter, PENS.letter],
  SAW_ROUTE: [PENS.letter, PENS.route],
  STOCK: [PENS.letter, PENS.broken],
  RULE: null,
};

/** Ink reaches so far beyond the lines themselves, mm, with some air. */
const INK_MM = 0.5;

function strokeItems(strokes: readonly Stroke[]): PageItem[] {
  return strokes.flatMap((stroke): PageItem[] => {
    const pens = BY_LAYER[stroke.layer];
    if (!pens) return [];
    const drawn = pens[stroke.dashed ? 1 : 0];
    return stroke.kind === 'path'
      ? [{ kind: 'path', path: stroke.path, pen: drawn }]
      : [{ kind: 'circle', circle: stroke.circle, pen: drawn }];
  });
}

/** Strokes of a drawing as a sketch, all but its rules and notes. */
export function sketchOf(strokes: readonly Stroke[]): Sketch {
  const kept = strokes.filter((s) => BY_LAYER[s.layer] !== null);
  return { items: strokeItems(kept), box: grown(strokesBox(kept), INK_MM) };
}

export const grown = ([x0, y0, x1, y1]: Box, mm: number): Box => [
  x0 - mm,
  y0 - mm,
  x1 + mm,
  y1 + mm,
];

export const lineItem = (from: Point2, to: Point2, drawn: Pen): PageItem => ({
  kind: 'path',
  path: polyline([from, to], false),
  pen: drawn,
});
