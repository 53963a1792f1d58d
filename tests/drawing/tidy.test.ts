import { describe, expect, it } from 'vitest';
import type { Drawing, Stroke } from '../../src/drawing/drawing.js';
import { tidied } from '../../src/drawing/tidy.js';
import { dxf } from '../../src/formats/dxf.js';
import { Fault } from '../../src/problem.js';
import { pathOn } from '../formats/plate.js';

const drawing = (...strokes: Stroke[]): Drawing => ({ title: 't', description: 'd', strokes });

describe('a tidy drawing', () => {
  it('merges crumbs, keeping the bulge that goes on', () => {
    const crumbs = pathOn(
      'CUT_OUTSIDE',
      true,
      [0, 0],
      [0.0004, 0],
      [10, 0, 1],
      [10, 10],
      [10, 10.0003, -0.5],
      [0, 10],
      [0, 0.0002],
    );
    expect(() => dxf(drawing(pathOn('MARK', false, [0, 0], [0, 0.00001])))).toThrow(Fault);
    expect(tidied(drawing(crumbs)).strokes).toEqual([
      pathOn('CUT_OUTSIDE', true, [0, 0], [10, 0, 1], [10, 10, -0.5], [0, 10]),
    ]);
  });

  it('turns a path round a whole circle into the circle', () => {
    const halves = pathOn('CUT_INSIDE', true, [7, 1, 1], [3, 1, 1]);
    const quarter = Math.SQRT2 - 1;
    const quarters = pathOn(
      'CUT_INSIDE',
      true,
      [7, 1, -quarter],
      [5, -1, -quarter],
      [3, 1, -quarter],
      [5, 3, -quarter],
    );
    for (const path of [halves, quarters]) {
      const [stroke] = tidied(drawing(path)).strokes;
      if (stroke.kind !== 'circle') throw new Error('not a circle');
      expect(stroke.layer).toBe('CUT_INSIDE');
      expect(stroke.circle.center[0]).toBeCloseTo(5, 9);
      expect(stroke.circle.center[1]).toBeCloseTo(1, 9);
      expect(stroke.circle.radius).toBeCloseTo(2, 9);
      expect(dxf(drawing(stroke))).not.toContain('POLYLINE');
    }
  });

  it('leaves a lens and an open turn as paths', () => {
    const lens = pathOn('CUT_INSIDE', true, [7, 1, 0.5], [3, 1, 0.5]);
    const open = pathOn('MARK', false, [7, 1, 1], [3, 1, 1], [7, 1.5]);
    expect(tidied(drawing(lens, open)).strokes).toEqual([lens, open]);
  });

  it('draws what was given twice once', () => {
    const knot: Stroke = { kind: 'circle', layer: 'STOCK', circle: { center: [9, 9], radius: 4 } };
    const mark = pathOn('MARK', false, [1, 1], [1, 5]);
    expect(tidied(drawing(knot, mark, knot, mark)).strokes).toEqual([knot, mark]);
  });

  it('refuses a path of no length', () => {
    expect(() => tidied(drawing(pathOn('MARK', false, [1, 1], [1, 1.0005])))).toThrow(Fault);
  });
});
