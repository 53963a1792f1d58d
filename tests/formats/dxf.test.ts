import { readFileSync } from 'node:fs';
import dxfParser, { type ICircleEntity, type IEntity, type IPolylineEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { LAYERS } from '../../src/drawing/drawing.js';
import { dxf } from '../../src/formats/dxf.js';
import { Fault } from '../../src/problem.js';
import { DAMAGED, PLATE, pathOn, withStrokes } from './plate.js';

// The package's types describe an ES module; what Node loads is the class itself.
const DxfParser = dxfParser as unknown as typeof dxfParser.default;

const read = (text: string) => {
  const found = new DxfParser().parseSync(text);
  if (!found) throw new Error('not read');
  return found;
};
const polylines = (entities: readonly IEntity[]) =>
  entities.filter((e): e is IPolylineEntity => e.type === 'POLYLINE');

describe('DXF, read back by a reader that shares nothing with the writer', () => {
  const file = read(dxf(PLATE));

  it('declares version, millimeters, metric and every layer', () => {
    expect(file.header).toMatchObject({ $ACADVER: 'AC1009', $INSUNITS: 4, $MEASUREMENT: 1 });
    expect(Object.keys(file.tables.layer.layers)).toEqual([...LAYERS]);
    expect(Object.keys(file.tables.lineType.lineTypes)).toEqual(['CONTINUOUS']);
  });

  it('writes one entity a stroke, insides before outsides, layers together', () => {
    expect(file.entities).toHaveLength(PLATE.strokes.length);
    const order = file.entities.map((e) => LAYERS.indexOf(e.layer as (typeof LAYERS)[number]));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(Math.min(...order)).toBe(0);
    expect(LAYERS.indexOf('CUT_INSIDE')).toBeLessThan(LAYERS.indexOf('CUT_OUTSIDE'));
    expect(file.entities.filter((e) => e.layer === 'CUT_OUTSIDE')).toHaveLength(1);
  });

  it('keeps the outline closed, with arcs as arcs', () => {
    const outline = polylines(file.entities).find((e) => e.layer === 'CUT_OUTSIDE');
    expect(outline?.shape).toBe(true);
    // the reader leaves out a bulge of 0
    expect(outline?.vertices.map((v) => [v.x, v.y, v.bulge ?? 0])).toEqual([
      [10, -10, 0],
      [90, -10, 1],
      [90, 10, 0],
      [10, 10, 1],
    ]);
  });

  it('keeps open lines open and bulges of more than half a turn', () => {
    const [line, arc] = polylines(file.entities).filter((e) => e.layer === 'MARK');
    expect([line.shape, arc.shape]).toEqual([false, false]);
    // tan 67.5 degrees = 1 + √2, to the 8 decimals written
    expect(arc.vertices[0].bulge).toBeCloseTo(-(1 + Math.SQRT2), 8);
    const chord = Math.hypot(5, 5);
    const b = arc.vertices[0].bulge;
    // chord c(1 + b²)/(4|b|), DXF Reference; 8 decimals of b leave 1e-8 relative
    expect((chord * (1 + b * b)) / (4 * Math.abs(b))).toBeCloseTo(5, 6);
  });

  it('writes a circle as a circle', () => {
    const [circle] = file.entities.filter((e): e is ICircleEntity => e.type === 'CIRCLE');
    expect([circle.center.x, circle.center.y, circle.radius]).toEqual([30, 1, 2.5]);
    expect(circle.layer).toBe('CUT_INSIDE');
  });

  it('states extents that are true to the strokes, bulges included', () => {
    // the block edge is widest, the scale bar's ticks are lowest
    expect(file.header.$EXTMIN).toEqual({ x: -5, y: -27, z: 0 });
    expect(file.header.$EXTMAX).toEqual({ x: 105, y: 15, z: 0 });
    const arcs = PLATE.strokes.filter((s) => s.layer === 'CUT_OUTSIDE');
    const { header } = read(dxf(withStrokes(...arcs)));
    expect(header.$EXTMIN).toEqual({ x: 0, y: -10, z: 0 });
    expect(header.$EXTMAX).toEqual({ x: 100, y: 10, z: 0 });
  });

  it('has a scale bar of exactly 100 mm, outside the work', () => {
    const bars = polylines(file.entities).filter(
      (e) => e.layer === 'RULE' && e.vertices.length === 2 && e.vertices[0].y === e.vertices[1].y,
    );
    expect(bars.map((e) => e.vertices[1].x - e.vertices[0].x)).toContain(100);
    expect(bars[0].vertices[0].y).toBeLessThan(-15);
  });
});

describe('DXF as text', () => {
  it('is the golden file, byte for byte', () => {
    const square = pathOn('CUT_OUTSIDE', true, [0, 0], [20, 0], [20, 20], [0, 20]);
    // a quarter turn about (5, 5): tan(90°/4) = √2 − 1
    const arc = pathOn('CUT_OUTSIDE', false, [8, 5, Math.SQRT2 - 1], [5, 8]);
    const golden = readFileSync(new URL('../golden/square-and-arc.dxf', import.meta.url), 'utf8');
    expect(dxf(withStrokes(square, arc))).toBe(golden);
  });

  it('has the same bytes every time, ASCII, lines ended by LF', () => {
    expect(dxf(PLATE)).toBe(dxf(structuredClone(PLATE)));
    expect(dxf(PLATE)).toMatch(/^[\x20-\x7e\n]+\n$/);
  });

  it('writes an arc flatter than its last decimal as a line', () => {
    // a bulge of 1e-6 on a chord of 10 mm rises 5e-6 mm
    const text = dxf(withStrokes(pathOn('MARK', false, [0, 0, 1e-6], [10, 0])));
    expect(text).not.toContain('\n 42\n');
  });

  it.each(Object.entries(DAMAGED))('refuses a drawing with: %s', (_, drawing) => {
    expect(() => dxf(drawing)).toThrow(Fault);
  });

  it('knows thirteen kinds of damage', () => expect(Object.keys(DAMAGED)).toHaveLength(13));
});
