import { describe, expect, it } from 'vitest';
import { checkDrawing } from '../../src/drawing/check.js';
import type { Drawing, Stroke } from '../../src/drawing/drawing.js';
import { lineStroke, scaleBar, textStrokes } from '../../src/drawing/strokes.js';
import { pathOn } from '../formats/plate.js';
import { STADIUM } from './sample.js';

const outline: Stroke = { kind: 'path', layer: 'CUT_OUTSIDE', path: STADIUM };
const label = textStrokes('LABEL', { text: 'HOLM', heightMm: 4, at: [40, 3] });
const GOOD: readonly Stroke[] = [
  outline,
  { kind: 'circle', layer: 'CUT_INSIDE', circle: { center: [20, 0], radius: 2 } },
  lineStroke('MARK', [0, 0], [18, 0]),
  ...label,
  ...scaleBar([0, -20]),
];
const kinds = (strokes: readonly Stroke[]) => {
  const drawing: Drawing = { title: 't', description: 'd', strokes };
  return [...new Set(checkDrawing(drawing).map((flaw) => flaw.kind))];
};

describe('checkDrawing', () => {
  it('finds nothing wrong with a good drawing', () => expect(kinds(GOOD)).toEqual([]));

  it('takes a cut that a neighbor closes, a way in beside the work, and a number in it', () => {
    const joined = {
      ...pathOn('CUT_OUTSIDE', false, [30, 10], [30, 30], [60, 30], [60, 10]),
      joined: true,
    } as Stroke;
    const way: Stroke = { ...lineStroke('SAW_ROUTE', [50, -14], [50, -11]), dashed: true };
    const number = textStrokes('SAW_ROUTE', { text: '8', heightMm: 3, at: [85, -5] });
    expect(kinds([...GOOD, joined, way, ...number])).toEqual([]);
  });

  const damaged: [string, readonly Stroke[], string[]][] = [
    ['no outline', GOOD.slice(1, 3).concat(scaleBar([0, -20])), ['no-outline', 'outside-the-wood']],
    ['no scale bar', GOOD.filter((s) => s.layer !== 'RULE'), ['no-scale-bar']],
    [
      'a scale bar shrunk to fit a page',
      [...GOOD.filter((s) => s.layer !== 'RULE'), lineStroke('RULE', [0, -20], [96.9, -20])],
      ['no-scale-bar'],
    ],
    ['an open cut', [...GOOD, pathOn('CUT_INSIDE', false, [30, -5], [40, -5])], ['open-cut']],
    [
      'a mark off the wood',
      [...GOOD, lineStroke('MARK', [110, 0], [120, 0])],
      ['outside-the-wood'],
    ],
    [
      'a hole off the wood',
      [...GOOD, pathOn('CUT_INSIDE', true, [-9, 0], [-5, 0], [-5, 5])],
      ['outside-the-wood'],
    ],
    ['a line through the label', [...GOOD, lineStroke('MARK', [30, 5], [70, 5])], ['label-meets']],
    [
      'a hole in the label',
      [...GOOD, { kind: 'circle', layer: 'CUT_INSIDE', circle: { center: [46, 5], radius: 3 } }],
      ['label-meets'],
    ],
    [
      'a label over the edge',
      [...GOOD, ...textStrokes('LABEL', { text: 'X', heightMm: 4, at: [60, -12] })],
      ['label-meets'],
    ],
    [
      'a label beside the work',
      [...GOOD, ...textStrokes('LABEL', { text: 'HI', heightMm: 4, at: [30, 20] })],
      ['outside-the-wood'],
    ],
    [
      'a joined cut that nothing joins',
      [
        ...GOOD,
        { ...pathOn('CUT_OUTSIDE', false, [200, 0], [210, 0], [205, 9]), joined: true } as Stroke,
      ],
      ['open-cut'],
    ],
    [
      'a way in through an outline',
      [...GOOD, { ...lineStroke('SAW_ROUTE', [50, -14], [50, -6]), dashed: true }],
      ['route-meets'],
    ],
    [
      'a number on a mark',
      [...GOOD, ...textStrokes('SAW_ROUTE', { text: '8', heightMm: 4, at: [8, -2] })],
      ['route-meets'],
    ],
    ['a note on the work', [...GOOD, ...scaleBar([0, -9])], ['rule-on-work']],
  ];

  it.each(damaged)('complains of %s', (_, strokes, expected) => {
    expect(kinds(strokes)).toEqual(expected);
  });

  it('knows every kind of flaw', () => {
    expect(new Set(damaged.flatMap(([, , expected]) => expected)).size).toBe(7);
  });
});
