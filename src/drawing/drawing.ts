/**
 * A drawing: strokes on named layers, mm, y up. It knows no file format; a writer in `formats/`
 * decides nothing but spelling.
 */
import { type ArcPath, type Circle, pathBox } from '../geometry/arcpath.js';
import { type Box, boxOf, type Point2 } from '../geometry/vec.js';

/**
 * Order of work and of writing: marks while the part still lies fast, then openings, and last the
 * outlines that set it free.
 */
export const LAYERS = [
  'MARK',
  'LABEL',
  'SAW_ROUTE',
  'CUT_INSIDE',
  'CUT_OUTSIDE',
  'STOCK',
  'RULE',
] as const;
export type LayerName = (typeof LAYERS)[number];

export const LAYER_MEANING: Readonly<Record<LayerName, string>> = {
  CUT_INSIDE: 'openings, cut before the outlines',
  CUT_OUTSIDE: 'outlines',
  MARK: 'lines to draw or score: datum line, weight mark, hangers, lip slot',
  LABEL: 'name, length and version, single strokes',
  SAW_ROUTE:
    'ways in for a blade led by hand (dashed), relief and parting cuts, their order; never cut by a machine',
  STOCK: 'edge of the block or sheet, its margin, its flaws; not cut',
  RULE: '100 mm scale bar and notes outside the work; not cut',
};

/**
 * `dashed` strokes are drawn broken where the format can; they are never cut. A `joined` cut is open
 * because a neighbor's cut closes it.
 */
export type Stroke =
  | {
      readonly kind: 'path';
      readonly layer: LayerName;
      readonly path: ArcPath;
      readonly dashed?: true;
      readonly joined?: true;
    }
  | {
      readonly kind: 'circle';
      readonly layer: LayerName;
      readonly circle: Circle;
      readonly dashed?: true;
    };

/**
 * A line that the tool follows, kerf already dealt with. In the frame of its blank until a drawing
 * moves it.
 */
export type ReadyCut = {
  readonly layer: 'CUT_INSIDE' | 'CUT_OUTSIDE';
  readonly shape:
    | { readonly kind: 'path'; readonly path: ArcPath }
    | { readonly kind: 'circle'; readonly circle: Circle };
};

/** A drawing, and the names of the blanks on it that have no room for a label of 2 mm letters. */
export type Drawn = { readonly drawing: Drawing; readonly unlabeled: readonly string[] };

export type Drawing = {
  readonly title: string;
  /** What a reader should know: whether kerf is in it, layers of the stack. */
  readonly description: string;
  readonly strokes: readonly Stroke[];
};

/** Box around one stroke, the bulges of its arcs included. */
export function strokeBox(stroke: Stroke): Box {
  if (stroke.kind === 'path') return pathBox(stroke.path);
  const {
    center: [x, y],
    radius,
  } = stroke.circle;
  return [x - radius, y - radius, x + radius, y + radius];
}

/** Box around strokes, the bulges of arcs included; of none, the empty box (Infinity, …, −Infinity). */
export const strokesBox = (strokes: readonly Stroke[]): Box =>
  boxOf(
    strokes.flatMap((stroke): Point2[] => {
      const [minX, minY, maxX, maxY] = strokeBox(stroke);
      return [
        [minX, minY],
        [maxX, maxY],
      ];
    }),
  );
