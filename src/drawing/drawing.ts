/**
 * A drawing: strokes on named layers, mm, y up. It knows no file format; a writer in `formats/`
 * decides nothing but spelling.
 */
import type { ArcPath, Circle } from '../geometry/arcpath.js';

/** Order of cutting and of writing: what is listed first is cut first. */
export const LAYERS = ['CUT_INSIDE', 'CUT_OUTSIDE', 'MARK', 'LABEL', 'STOCK', 'RULE'] as const;
export type LayerName = (typeof LAYERS)[number];

export const LAYER_MEANING: Readonly<Record<LayerName, string>> = {
  CUT_INSIDE: 'openings, cut before the outlines',
  CUT_OUTSIDE: 'outlines',
  MARK: 'lines to draw or score: datum line, weight mark, hangers, lip slot',
  LABEL: 'name, length and version, single strokes',
  STOCK: 'edge of the block or sheet, its margin, its knots; not cut',
  RULE: '100 mm scale bar and notes outside the work; not cut',
};

export type Stroke =
  | { readonly kind: 'path'; readonly layer: LayerName; readonly path: ArcPath }
  | { readonly kind: 'circle'; readonly layer: LayerName; readonly circle: Circle };

export type Drawing = {
  readonly title: string;
  /** What a reader should know: whether kerf is in it, layers of the stack. */
  readonly description: string;
  readonly strokes: readonly Stroke[];
};
