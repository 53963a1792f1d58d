/** A small drawing of which every number is known, and ways to damage it. */
import type { Drawing, LayerName, Stroke } from '../../src/drawing/drawing.js';
import { scaleBar } from '../../src/drawing/strokes.js';
import type { ArcPath } from '../../src/geometry/arcpath.js';
import { STADIUM } from '../drawing/sample.js';

export const pathOn = (
  layer: LayerName,
  closed: boolean,
  ...points: readonly (readonly [x: number, y: number, bulge?: number])[]
): Stroke => ({
  kind: 'path',
  layer,
  path: { closed, vertices: points.map(([x, y, bulge = 0]) => ({ x, y, bulge })) },
});

/** Three quarters of a circle of radius 5 about (50, 0), clockwise from (55, 0) to (50, 5). */
export const WIDE_ARC: ArcPath = {
  closed: false,
  // tan of a quarter of 270 degrees; clockwise is negative
  vertices: [
    { x: 55, y: 0, bulge: -Math.tan((270 / 4) * (Math.PI / 180)) },
    { x: 50, y: 5, bulge: 0 },
  ],
};

/** A stadium 100 by 20 with a hole, marks, a block edge and a scale bar, in no order of layers. */
export const PLATE: Drawing = {
  title: 'plate <1> & "more"',
  description: 'made up; kerf not included',
  strokes: [
    ...scaleBar([0, -25]),
    pathOn('STOCK', true, [-5, -15], [105, -15], [105, 15], [-5, 15]),
    { kind: 'path', layer: 'CUT_OUTSIDE', path: STADIUM },
    pathOn('MARK', false, [0, 0], [25, 0]),
    { kind: 'path', layer: 'MARK', path: WIDE_ARC },
    { kind: 'circle', layer: 'CUT_INSIDE', circle: { center: [30, 1], radius: 2.5 } },
  ],
};

export const withStrokes = (...strokes: readonly Stroke[]): Drawing => ({ ...PLATE, strokes });

/** Drawings that no writer may write, by what is wrong with them. */
export const DAMAGED: Readonly<Record<string, Drawing>> = {
  'no strokes': withStrokes(),
  'not a number': withStrokes(pathOn('MARK', false, [0, 0], [Number.NaN, 1])),
  'bulge not a number': withStrokes(pathOn('MARK', false, [0, 0, Number.NaN], [4, 1])),
  infinite: withStrokes(pathOn('MARK', false, [0, 0], [Infinity, 1])),
  'no length': withStrokes(pathOn('MARK', false, [0, 0], [0, 1], [0, 1.00004])),
  'last point repeated': withStrokes(pathOn('CUT_OUTSIDE', true, [0, 0], [9, 0], [9, 9], [0, 0])),
  'one point': withStrokes(pathOn('MARK', false, [0, 0])),
  'drawn twice': withStrokes(
    pathOn('MARK', false, [0, 0], [5, 0]),
    pathOn('CUT_INSIDE', false, [1, 9], [5, 0], [0, 0]),
  ),
  'arc drawn twice, there and back': withStrokes(
    pathOn('MARK', false, [0, 0, 0.4], [5, 0]),
    pathOn('MARK', false, [5, 0, -0.4], [0, 0]),
  ),
  'out and back': withStrokes(pathOn('CUT_OUTSIDE', true, [0, 0], [5, 0])),
  'circle twice': withStrokes(
    ...[1, 2].map(
      (): Stroke => ({
        kind: 'circle',
        layer: 'MARK',
        circle: { center: [1, 1], radius: 3 },
      }),
    ),
  ),
  'circle without radius': withStrokes({
    kind: 'circle',
    layer: 'MARK',
    circle: { center: [1, 1], radius: 0.00001 },
  }),
  'unknown layer': withStrokes({
    ...pathOn('MARK', false, [0, 0], [5, 0]),
    layer: 'PAINT' as LayerName,
  }),
};
