/** Leaflets, sketches and printers made up for tests. */
import type { PageItem } from '../../src/formats/pdf.js';
import { polyline } from '../../src/geometry/arcpath.js';
import type { Box, Point2 } from '../../src/geometry/vec.js';
import type { Leaflet, Sketch } from '../../src/paper/paper-file.js';
import { PENS } from '../../src/paper/pens.js';
import { type Paper, type PaperWish, paperOf } from '../../src/pattern/paper.js';

export const LEAFLET: Leaflet = {
  file: 'templates/skerry.pdf',
  kind: 'template',
  pattern: 'skerry',
  title: 'Template: skerry, version 1.3',
  kerf: 'not in it',
  notes: [],
};

export const A4: Paper = paperOf(undefined).paper;

/** The printer of the tests errs by 1.5 % across and by −1 % along: 180 → 182.7 mm, 240 → 237.6 mm. */
export const ERRING: PaperWish = { printed: { acrossMm: 182.7, alongMm: 237.6 } };

export const lineOf = (points: readonly Point2[], closed = false): PageItem => ({
  kind: 'path',
  path: polyline(points, closed),
  pen: PENS.outline,
});

/** Nothing but a box. */
export function boxSketch(wide: number, high: number): Sketch {
  const box: Box = [0, 0, wide, high];
  const inner: Point2[] = [
    [1, 1],
    [wide - 1, 1],
    [wide - 1, high - 1],
    [1, high - 1],
  ];
  return { items: [lineOf(inner, true)], box };
}
