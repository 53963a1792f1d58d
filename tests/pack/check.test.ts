/** The judge of packings: it complains of damaged layouts, and is content with touching ones. */
import { describe, expect, test } from 'vitest';
import { seededDraws } from '../../src/geometry/random.js';
import { movedRing, type Ring, rectRing, ring } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import { depthOfOverlap, outside } from '../../src/pack/check.js';
import { commonArea } from './second-opinion.js';
import { GRID_SHAPES, star } from './stars.js';

const draw = seededDraws(21);
const shifted = (r: Ring, x: number, y: number): Ring => movedRing({ turnDeg: 0, move: [x, y] }, r);
const square = rectRing(0, 0, 4, 4);
/** Both ways round. */
const depths = (a: Ring, b: Ring): number[] => [depthOfOverlap(a, b), depthOfOverlap(b, a)];

describe('depth of overlap', () => {
  test('of the same outline twice is felt although no edge lies inside', () => {
    // The inner point of the square is its middle, 2 from the edge.
    expect(depths(square, square)).toEqual([2, 2]);
    for (const r of GRID_SHAPES) for (const d of depths(r, r)) expect(d).toBeGreaterThan(0.4);
    for (let n = 0; n < 20; n++) {
      const r = star(draw, 5 + n);
      // The same outline from another corner, and a hair beside itself.
      const from = ring([...r.slice(2), ...r.slice(0, 2)]);
      for (const d of depths(r, from)) expect(d).toBeGreaterThan(0.1);
      for (const d of depths(r, shifted(r, 1e-13, 0))) expect(d).toBeGreaterThan(0.1);
    }
  });

  test('of one inside another', () => {
    const [one, other] = depths(square, rectRing(1, 1, 2, 2));
    expect([one, other]).toEqual([1.5, 1.5]);
    // With all edges but one in common.
    for (const d of depths(square, rectRing(0, 0, 4, 3))) expect(d).toBeGreaterThanOrEqual(1);
  });

  test('of bars that cross without a corner of one in the other', () => {
    expect(depths(rectRing(-5, 1, 9, 2), rectRing(1, -5, 2, 9))).toEqual([0.5, 0.5]);
  });

  test('of outlines that touch is 0: edges, parts of edges, corners', () => {
    for (const b of [
      shifted(square, 4, 0),
      shifted(square, 4, 1.3),
      shifted(square, -4, 4),
      rectRing(4, 1, 5, 2),
      rectRing(1, -1, 2, 0),
    ]) {
      expect(depths(square, b)).toEqual([0, 0]);
    }
    const u = GRID_SHAPES[1];
    // The bar fills the groove of the U.
    expect(depths(u, rectRing(1, 1, 3, 3))).toEqual([0, 0]);
    expect(depths(u, rectRing(1, 1, 3, 7))).toEqual([0, 0]);
    expect(depths(u, shifted(square, 40, 40))).toEqual([0, 0]);
  });

  test('of 1e-3 is told as that, in every direction', () => {
    for (const [x, y] of [
      [3.999, 0],
      [0, 3.999],
      [-3.999, 0],
      [3.999, 2],
    ]) {
      for (const d of depths(square, shifted(square, x, y))) expect(d).toBeCloseTo(1e-3, 9);
    }
    const [groove, bar] = depths(GRID_SHAPES[1], rectRing(1, 0.999, 3, 3));
    expect(Math.max(groove, bar)).toBeCloseTo(1e-3, 9);
  });

  test('is above 0 just where polyclip finds common area', () => {
    let [met, apart] = [0, 0];
    for (let n = 0; n < 150; n++) {
      const a = star(draw, 3 + (n % 9));
      const b = shifted(star(draw, 4 + (n % 7)), 26 * draw() - 13, 26 * draw() - 13);
      const area = commonArea(a, b);
      const depth = depthOfOverlap(a, b);
      expect(depth > 1e-9).toBe(area > 1e-9);
      if (area > 0) met++;
      else apart++;
      // A disk as deep lies in both: no more than their common area, but for the edge it stands on.
      expect((Math.PI * depth ** 2) / 4).toBeLessThanOrEqual(area + 1e-9);
    }
    expect([met > 50, apart > 20]).toEqual([true, true]);
  });
});

test('outside tells the greatest reach over any side', () => {
  const box = [0, 0, 10, 5] as const;
  const at = (x: number, y: number): number => outside(shifted(square, x, y), box);
  expect(at(0, 0)).toBe(0);
  expect(at(6, 1)).toBe(0);
  const places: readonly (readonly [Point2, number])[] = [
    [[-0.5, 0], 0.5],
    [[6.25, 0], 0.25],
    [[3, -2], 2],
    [[3, 1.5], 0.5],
    [[-1, 4], 3],
  ];
  for (const [[x, y], reach] of places) expect(at(x, y)).toBe(reach);
});
