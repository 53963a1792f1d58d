/**
 * SVG at true size: one unit is one millimeter, width and height say so in mm, y is flipped here and
 * nowhere else. The one door to svgson, which spells tags and escapes; it is given strings only,
 * because it writes numbers and `undefined` as they come.
 */
import { type INode, stringify } from 'svgson';
import {
  type Drawing,
  LAYER_MEANING,
  LAYERS,
  type LayerName,
  type Stroke,
  strokesBox,
} from '../drawing/drawing.js';
import { arcOf, type Segment, segmentsOf } from '../geometry/arcpath.js';
import type { Point2 } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import { trimmed } from './number.js';
import { COORDINATE_DECIMALS, writtenStrokes } from './written.js';

/** White left around the strokes, mm, so that no line lies on the edge of the picture. */
const BORDER_MM = 3;

type Attributes = Readonly<Record<string, string>>;

/** How a layer looks: a dark tone of its own for machines that sort by color, widths (mm) that tell them apart in black and white. */
const LOOK: Readonly<Record<LayerName, Attributes>> = {
  CUT_INSIDE: { stroke: '#4a2a0a', 'stroke-width': '0.25' },
  CUT_OUTSIDE: { stroke: '#000', 'stroke-width': '0.35' },
  MARK: { stroke: '#1f4d5c', 'stroke-width': '0.18' },
  LABEL: { stroke: '#4b2c5e', 'stroke-width': '0.3' },
  SAW_ROUTE: { stroke: '#2f5d34', 'stroke-width': '0.25' },
  STOCK: { stroke: '#8a8a80', 'stroke-width': '0.25' },
  RULE: { stroke: '#55554d', 'stroke-width': '0.2' },
};

/** Dashes of strokes that are to be drawn broken, mm. */
const DASHES = '2.5 1.5';

/** Turns a point of the drawing (y up) into one of the picture (y down, corner at 0, 0). */
type Place = (p: Point2) => readonly [x: string, y: string];

/**
 * The drawing as the text of an SVG file: one group a layer, in the order of cutting, arcs as arcs.
 * @throws Fault as `writtenStrokes` does, and on control characters in title or description.
 */
export function svg(drawing: Drawing): string {
  const strokes = writtenStrokes(drawing);
  const [minX, minY, maxX, maxY] = strokesBox(strokes);
  // Whole millimeters: written coordinates stay exact under the shift.
  const left = Math.floor(minX) - BORDER_MM;
  const top = Math.ceil(maxY) + BORDER_MM;
  const width = mm(Math.ceil(maxX) + BORDER_MM - left);
  const height = mm(top - Math.floor(minY) + BORDER_MM);
  const place: Place = ([x, y]) => [mm(x - left), mm(top - y)];
  const root = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      version: '1.1',
      width: `${width}mm`,
      height: `${height}mm`,
      viewBox: `0 0 ${width} ${height}`,
    },
    [
      element('title', {}, [text(drawing.title)]),
      element('desc', {}, [text(drawing.description)]),
      ...LAYERS.flatMap((layer) => group(layer, strokes, place)),
    ],
  );
  return `${stringify(root)}\n`;
}

function group(layer: LayerName, strokes: readonly Stroke[], place: Place): INode[] {
  const mine = strokes.filter((stroke) => stroke.layer === layer);
  if (mine.length === 0) return [];
  const attributes = {
    id: layer,
    'data-meaning': LAYER_MEANING[layer],
    fill: 'none',
    ...LOOK[layer],
    'stroke-linecap': 'round',
    'stroke-linejoin': 'round',
  };
  return [
    element(
      'g',
      attributes,
      mine.map((stroke) => shape(stroke, place)),
    ),
  ];
}

type StrokeOf<K extends Stroke['kind']> = Extract<Stroke, { kind: K }>;

/** One entry a kind: a new kind of stroke does not compile until it is written here. */
const SHAPE: {
  readonly [K in Stroke['kind']]: (stroke: StrokeOf<K>, place: Place) => [string, Attributes];
} = {
  path: ({ path }, place) => ['path', { d: pathData(path, place) }],
  circle: ({ circle: { center, radius } }, place) => {
    const [cx, cy] = place(center);
    return ['circle', { cx, cy, r: mm(radius) }];
  },
};

function shape<K extends Stroke['kind']>(stroke: StrokeOf<K>, place: Place): INode {
  const write = SHAPE[stroke.kind] as (s: StrokeOf<K>, place: Place) => [string, Attributes];
  const [name, attributes] = write(stroke, place);
  return element(name, stroke.dashed ? { ...attributes, 'stroke-dasharray': DASHES } : attributes);
}

function pathData(path: StrokeOf<'path'>['path'], place: Place): string {
  const { x, y } = path.vertices[0];
  const segments = segmentsOf(path);
  const last = segments[segments.length - 1];
  // Z draws the straight line home.
  const drawn = path.closed && last.bulge === 0 ? segments.slice(0, -1) : segments;
  const moves = drawn.map((segment) => command(segment) + place(segment.to).join(' '));
  return `M${place([x, y]).join(' ')}${moves.join('')}${path.closed ? 'Z' : ''}`;
}

/** The letter that draws a segment, with what an arc needs before its end point. */
function command(segment: Segment): string {
  if (segment.bulge === 0) return 'L';
  const radius = mm(arcOf(segment).radius);
  const large = Math.abs(segment.bulge) > 1 ? 1 : 0;
  // Flipped, a counter-clockwise arc runs against SVG's positive (clockwise) sense.
  const sweep = segment.bulge > 0 ? 0 : 1;
  return `A${radius} ${radius} 0 ${large} ${sweep} `;
}

const mm = (value: number): string => trimmed(value, COORDINATE_DECIMALS);

/** An element with each child on a line of its own, so that files compare line by line. */
function element(name: string, attributes: Attributes, children: readonly INode[] = []): INode {
  const apart = children.some((child) => child.type === 'element');
  return {
    type: 'element',
    name,
    value: '',
    attributes: { ...attributes },
    children: apart ? [...children.flatMap((child) => [NEWLINE, child]), NEWLINE] : [...children],
  };
}

const text = (value: string): INode => {
  // XML 1.0 has no way to write these. svgson splits only the first "]]>" of a CDATA section.
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is refused
  if (/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\]\]>/.test(value)) {
    throw new Fault(`text that XML cannot hold: ${JSON.stringify(value)}`);
  }
  return { type: 'text', name: '', value, attributes: {}, children: [] };
};

const NEWLINE = text('\n');
