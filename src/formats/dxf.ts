/**
 * DXF R12 (AC1009), the version every reader opens: closed POLYLINEs with bulges, CIRCLEs, every
 * layer declared, millimeters declared, extents true to the strokes. Codes: DXF Reference, HEADER,
 * TABLES, POLYLINE, VERTEX, CIRCLE.
 */
import {
  type Drawing,
  LAYERS,
  type LayerName,
  type Stroke,
  strokesBox,
} from '../drawing/drawing.js';
import { fixed } from './number.js';
import { BULGE_DECIMALS, COORDINATE_DECIMALS, writtenStrokes } from './written.js';

/** A group code and its value. */
type Tag = readonly [code: number, value: string];

const MILLIMETERS = '4'; // $INSUNITS
const METRIC = '1'; // $MEASUREMENT
/**
 * Color numbers, one a layer so that a machine that sorts by color can tell them apart. 7 is black on
 * white or white on black; the others are dull middle tones of our own choice, seen on either, without further meaning.
 */
const COLOR: Readonly<Record<LayerName, string>> = {
  MARK: '133',
  LABEL: '191',
  SAW_ROUTE: '93',
  CUT_INSIDE: '33',
  CUT_OUTSIDE: '7',
  STOCK: '8',
  RULE: '9',
};

/**
 * The drawing as the text of a DXF file: one entity a stroke, in the order of cutting.
 * @throws Fault as `writtenStrokes` does.
 */
export function dxf(drawing: Drawing): string {
  const strokes = writtenStrokes(drawing);
  const tags: Tag[] = [
    ...section('HEADER', header(strokes)),
    ...section('TABLES', [...lineTypes(), ...layers()]),
    ...section('ENTITIES', strokes.flatMap(entity)),
    [0, 'EOF'],
  ];
  return tags.map(([code, value]) => `${String(code).padStart(3)}\n${value}\n`).join('');
}

const section = (name: string, content: readonly Tag[]): Tag[] => [
  [0, 'SECTION'],
  [2, name],
  ...content,
  [0, 'ENDSEC'],
];

function header(strokes: readonly Stroke[]): Tag[] {
  const [minX, minY, maxX, maxY] = strokesBox(strokes);
  return [
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [9, '$INSUNITS'],
    [70, MILLIMETERS],
    [9, '$MEASUREMENT'],
    [70, METRIC],
    [9, '$EXTMIN'],
    ...point(minX, minY),
    [9, '$EXTMAX'],
    ...point(maxX, maxY),
  ];
}

const lineTypes = (): Tag[] =>
  table('LTYPE', 1, [
    [0, 'LTYPE'],
    [2, 'CONTINUOUS'],
    [70, '0'],
    [3, 'Solid line'],
    [72, '65'],
    [73, '0'],
    [40, '0.0'],
  ]);

const layers = (): Tag[] =>
  table(
    'LAYER',
    LAYERS.length,
    LAYERS.flatMap((name): Tag[] => [
      [0, 'LAYER'],
      [2, name],
      [70, '0'],
      [62, COLOR[name]],
      [6, 'CONTINUOUS'],
    ]),
  );

const table = (name: string, rows: number, content: readonly Tag[]): Tag[] => [
  [0, 'TABLE'],
  [2, name],
  [70, String(rows)],
  ...content,
  [0, 'ENDTAB'],
];

type StrokeOf<K extends Stroke['kind']> = Extract<Stroke, { kind: K }>;

/** One entry a kind: a new kind of stroke does not compile until it is written here. */
const ENTITY: { readonly [K in Stroke['kind']]: (stroke: StrokeOf<K>) => Tag[] } = {
  path: ({ layer, path }) => [
    [0, 'POLYLINE'],
    [8, layer],
    [66, '1'],
    ...point(0, 0),
    [70, path.closed ? '1' : '0'],
    ...path.vertices.flatMap(({ x, y, bulge }) => vertex(layer, x, y, bulge)),
    [0, 'SEQEND'],
    [8, layer],
  ],
  circle: ({ layer, circle }) => [
    [0, 'CIRCLE'],
    [8, layer],
    ...point(...circle.center),
    [40, fixed(circle.radius, COORDINATE_DECIMALS)],
  ],
};

const entity = <K extends Stroke['kind']>(stroke: StrokeOf<K>): Tag[] =>
  (ENTITY[stroke.kind] as (stroke: StrokeOf<K>) => Tag[])(stroke);

const vertex = (layer: LayerName, x: number, y: number, bulge: number): Tag[] => [
  [0, 'VERTEX'],
  [8, layer],
  ...point(x, y),
  ...(bulge === 0 ? [] : [[42, fixed(bulge, BULGE_DECIMALS)] as const]),
];

const point = (x: number, y: number): Tag[] => [
  [10, fixed(x, COORDINATE_DECIMALS)],
  [20, fixed(y, COORDINATE_DECIMALS)],
  [30, fixed(0, COORDINATE_DECIMALS)],
];
