import { describe, expect, test } from 'vitest';
import { checkDrawing } from '../../src/drawing/check.js';
import type { Drawing, Stroke } from '../../src/drawing/drawing.js';
import { strokeBox } from '../../src/drawing/drawing.js';
import { gaugeDrawing } from '../../src/drawing/gauge.js';
import { roundOverDrawing } from '../../src/drawing/round-over-strip.js';
import { rowsOf } from '../../src/drawing/rows.js';
import { makeGauges } from '../../src/gauge/gauges.js';
import { roundOverMap } from '../../src/gauge/round-over-map.js';
import { pathArea, pathLength } from '../../src/geometry/arcpath.js';
import type { Cutter } from '../../src/pattern/run.js';
import { gaugesSetup } from '../jig/set-ups.js';
import { designOf, patternOf } from '../mass/lures.js';

const { pattern, body, blank } = designOf(patternOf('diver'));
const { gauges } = makeGauges(body.shape, blank, gaugesSetup);
if (!gauges) throw new Error('no gauges');
const sheet = {
  material: 'birch plywood',
  lengthMm: 300,
  widthMm: 200,
  thicknessMm: 3,
  hangHoleMm: 5,
  pencilHoleMm: 2.5,
  leastWallMm: 2,
  marginMm: 5,
};
const laser = (kerfMm: number): Cutter => ({
  guidance: 'follows',
  kerfMm,
  wanderMm: 0,
  bladeWidthMm: null,
  cutsLipSlot: true,
});
const cutsOf = ({ strokes }: Drawing) =>
  strokes.flatMap((s) => (s.layer === 'CUT_OUTSIDE' && s.kind === 'path' ? [s.path] : []));
const drawnWith = (kerfMm: number, size = {}) =>
  gaugeDrawing(blank, gauges, { sheet: { ...sheet, ...size }, cutter: laser(kerfMm) });

describe('gauges to cut', () => {
  // Steiner: an outline moved out by d grows by d times its length and, at its corners, by less than π·d².
  test('each cut is its outline moved out by half the kerf', () => {
    const nominal = [...gauges.profiles, ...gauges.sections].map((g) => g.outline.path);
    const cuts = cutsOf(drawnWith(0.2).drawn!.drawing);
    expect(cuts).toHaveLength(7);
    cuts.forEach((cut, i) => {
      const grown = pathArea(cut) - pathArea(nominal[i]);
      expect(Math.abs(grown - 0.1 * pathLength(nominal[i]))).toBeLessThan(0.3);
    });
  });

  test('no two cuts overlap, all lie inside the margin', () => {
    const { drawing } = drawnWith(0.2).drawn!;
    const boxes = drawing.strokes.filter((s) => s.layer === 'CUT_OUTSIDE').map(strokeBox);
    boxes.forEach(([x0, y0, x1, y1], i) => {
      expect(Math.min(x0, 300 - x1, -y1, y0 + 200)).toBeGreaterThan(4.8); // half the kerf goes into the margin
      for (const [a0, b0, a1, b1] of boxes.slice(i + 1))
        expect(Math.max(a0 - x1, x0 - a1, b0 - y1, y0 - b1)).toBeGreaterThan(2.9);
    });
    expect(checkDrawing(drawing)).toEqual([]);
  });

  test('on smaller sheets they go on to the next; on one too small the largest is told', () => {
    const { drawn } = drawnWith(0.2, { lengthMm: 145, widthMm: 60 });
    expect(drawn!.drawing.strokes.filter((s) => s.layer === 'STOCK').length).toBeGreaterThan(2);
    expect(checkDrawing(drawn!.drawing)).toEqual([]);
    // Turned, the sheet of 100 by 200 mm is long enough.
    expect(drawnWith(0.2, { lengthMm: 100 }).problems).toEqual([]);
    const small = drawnWith(0.2, { lengthMm: 100, widthMm: 90 });
    expect(small.drawn).toBeNull();
    expect(small.problems.map((p) => [p.code, p.facts.gauge])).toEqual([
      ['gauge-larger-than-sheet', 'belly profile gauge'],
    ]);
  });

  test('a cutter fatter than a hollow goes in as far as it can, and says how much it leaves', () => {
    const { drawn, problems } = drawnWith(5);
    expect(problems.map((p) => p.code)).toEqual(['gauge-corner-left']);
    // A corner of 90° keeps r(√2 − 1) from a round of radius r: the notches, plane geometry.
    expect(problems[0].facts.leftMm).toBeGreaterThan(2.5 * (Math.SQRT2 - 1) - 0.01);
    expect(cutsOf(drawn!.drawing)).toHaveLength(7);
  });
});

test('rows: left to right, then down, then the next sheet', () => {
  const sizes = Array.from({ length: 5 }, () => [40, 20] as const);
  const { corners, sheets } = rowsOf(sizes, { lengthMm: 100, widthMm: 60, marginMm: 5 }, 4);
  expect(corners).toEqual([
    [5, -25],
    [49, -25],
    [5, -49],
    [49, -49],
    [5, -100],
  ]);
  expect(sheets).toHaveLength(2);
});

describe('strips', () => {
  const marked = { ...pattern, ...blank, sections: gauges.sections };
  const map = roundOverMap(body.shape, blank, pattern.sandingAllowanceMm, marked);
  const { drawing } = roundOverDrawing(blank, map);

  test('one a side, as long as the edge and sound', () => {
    expect(checkDrawing(drawing)).toEqual([]);
    const strips = drawing.strokes.filter((s) => s.layer === 'CUT_OUTSIDE').map(strokeBox);
    expect(strips).toHaveLength(2);
    strips.forEach(([x0, , x1], i) => {
      const edge = i === 0 ? map.back : map.belly;
      expect(x0).toBeLessThan(0);
      expect(x1).toBeGreaterThan(edge.lengthMm);
    });
    const lines = drawing.strokes.filter((s) => s.layer === 'MARK').map(strokeBox);
    for (const { lengthMm } of [map.back, map.belly])
      expect(lines.filter(([x0, , x1]) => x0 === 0 && x1 === lengthMm).length).toBeGreaterThan(1);
  });

  test('what stands on the belly', () => {
    expect(map.belly.marks.map((m) => m.text)).toEqual(
      expect.arrayContaining(['1', '5', 'LIP', 'BALLAST', 'HANGER']),
    );
    expect(map.back.marks.map((m) => m.text)).toEqual([
      'TOW EYE',
      '1',
      '2',
      '3',
      '4',
      '5',
      'TAIL EYE',
    ]);
  });

  test('a name on a mark’s line is found', () => {
    const label = drawing.strokes.find((s) => s.layer === 'LABEL') as Stroke;
    const [x0, y0, x1, y1] = strokeBox(label);
    const path = {
      closed: false,
      vertices: [
        { x: x0 - 1, y: (y0 + y1) / 2, bulge: 0 },
        { x: x1 + 1, y: (y0 + y1) / 2, bulge: 0 },
      ],
    };
    const crossed: Stroke = { kind: 'path', layer: 'MARK', path };
    const flaws = checkDrawing({ ...drawing, strokes: [...drawing.strokes, crossed] });
    expect(flaws.map((f) => f.kind)).toContain('label-meets');
  });
});
