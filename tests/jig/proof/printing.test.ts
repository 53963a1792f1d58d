/** First layer, undersides and bridges against closed forms. */
import { describe, expect, test } from 'vitest';
import { asRegion } from '../../../src/geometry/clip.js';
import { ring } from '../../../src/geometry/ring.js';
import type { Point2 } from '../../../src/geometry/vec.js';
import { checkPrinting, printing } from '../../../src/jig/proof/printing.js';
import { type Csg, extruded, holeAlongZ, movedBy } from '../../../src/solid/csg.js';
import { evaluate } from '../../../src/solid/evaluate.js';
import { loadKernel } from '../../../src/solid/kernel.js';
import { placement } from '../../../src/solid/placement.js';
import { box } from '../../solid/shapes.js';
import { printer } from '../set-ups.js';

const kernel = await loadKernel();
const of = (csg: Csg) => printing(evaluate(kernel, csg), printer);
/** A view (x, z) 10 mm deep, standing on z = 0. */
const standing = (view: readonly Point2[]): Csg =>
  movedBy(
    placement([1, 0, 0], [0, 0, 1], [0, -1, 0], [0, 0, 0]),
    extruded([asRegion(ring(view))], -10, 0),
  );
const codes = (csg: Csg) => checkPrinting(of(csg)).flaws.map((f) => f.code);

test('a block: its base, its stand, its plastic, and nothing overhead', () => {
  const told = of(box(30, 20, 10));
  expect(told.firstLayerMm2).toBeCloseTo(600, 6);
  expect(told.standsByMm).toBeCloseTo(10, 6);
  expect(told.volumeMm3).toBeCloseTo(6000, 5);
  expect(told.massG).toBeCloseTo(6 * (printer.plasticDensityKgM3 / 1000), 8);
  expect(told.sizeMm).toEqual([30, 20, 10]);
  expect([told.overhangDeg, told.bridgeMm, told.supportAtMm]).toEqual([0, 0, null]);
});

describe('undersides', () => {
  test('a slope of 30° from upright, and one of 60° that needs support', () => {
    const leaning = (deg: number) =>
      standing([
        [0, 0],
        [20, 0],
        [20 + 10 * Math.tan((deg * Math.PI) / 180), 10],
        [0, 10],
      ]);
    expect(of(leaning(30)).overhangDeg).toBeCloseTo(30, 4);
    expect(of(leaning(30)).supportAtMm).toBeNull();
    expect(of(leaning(60)).overhangDeg).toBeCloseTo(60, 4);
    const [x, , z] = of(leaning(60)).supportAtMm ?? [0, 0, 0];
    expect(x).toBeGreaterThan(20);
    expect(z).toBeGreaterThan(0);
  });

  test('a gate is bridged from post to post, and no further than the printer can', () => {
    const gate = (span: number): Csg => ({
      kind: 'subtract',
      from: box(span + 10, 30, 12),
      parts: [box(span, 32, 8, [5, -1, -1])],
    });
    expect(of(gate(10)).bridgeMm).toBeCloseTo(10, 4);
    expect(of(gate(10)).supportAtMm).toBeNull();
    expect(of(gate(20)).bridgeMm).toBeCloseTo(20, 4);
    expect(of(gate(20)).supportAtMm).not.toBeNull();
  });

  test('a shelf on one wall is no bridge, except a ledge of two lines', () => {
    const shelf = (reach: number): Csg => ({
      kind: 'union',
      parts: [box(10, 20, 20), box(10 + reach, 20, 3, [0, 0, 12])],
    });
    expect(of(shelf(4)).supportAtMm).not.toBeNull();
    expect(of(shelf(4)).overhangDeg).toBeCloseTo(90, 6);
    expect(of(shelf(0.7)).supportAtMm).toBeNull();
  });

  test('the crown of a level bore: the chord over which it is too steep, d sin 45°', () => {
    const bored: Csg = {
      kind: 'subtract',
      from: box(30, 24, 20),
      parts: [
        movedBy(
          placement([1, 0, 0], [0, 0, -1], [0, 1, 0], [15, 0, 10]),
          holeAlongZ(4, { fromZ: -1, toZ: 25, tolerance: 0.01 }),
        ),
      ],
    };
    const told = of(bored);
    expect(told.supportAtMm).toBeNull();
    // Facets of a polygon of 36 sides: to a side's width.
    expect(Math.abs(told.bridgeMm - 8 * Math.SQRT1_2)).toBeLessThan(0.5);
  });
});

describe('the base', () => {
  test('too small, or on an edge', () => {
    expect(codes(box(30, 20, 10))).toEqual([]);
    expect(codes(box(5, 5, 10))).toEqual(['first-layer']);
    const keel = standing([
      [0, 10],
      [10, 0],
      [20, 10],
    ]);
    expect(codes(keel)).toContain('first-layer');
  });

  test('a part that tips over', () => {
    const crane: Csg = { kind: 'union', parts: [box(10, 10, 30), box(60, 10, 10, [0, 0, 30])] };
    expect(codes(crane)).toEqual(['tips-over']);
    // Middle of mass of two blocks: (5·3000 + 30·6000)/9000 = 21.667; the base ends at 10.
    expect(of(crane).standsByMm).toBeCloseTo(10 - 65 / 3, 4);
  });
});
