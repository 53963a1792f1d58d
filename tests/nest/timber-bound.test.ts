import { describe, expect, it } from 'vitest';
import { asRegion } from '../../src/geometry/clip.js';
import { circleRing, rectRing, ringArea } from '../../src/geometry/ring.js';
import { chordArea, chordBands } from '../../src/nest/chords.js';
import type { Block, NestPart } from '../../src/nest/nest.js';
import { pilesOf, volumeMm3 } from '../../src/nest/pile.js';
import { leastTimberMm3 } from '../../src/nest/timber-bound.js';
import { block, lure, part, RULES, SEARCH } from './outlines.js';

/** The bound in blocks of the only kind there is. */
function leastBlocks(
  parts: readonly NestPart[],
  like: Block,
  gapMm: number,
  { missing = 0, mayTilt = false } = {},
): number {
  const order = {
    parts,
    wanted: parts.map((p) => p.orderedCount),
    missing,
    gapMm,
    mayTilt,
    piles: pilesOf([like], RULES),
    fits: () => true,
  };
  return leastTimberMm3(SEARCH.solver, order, 100) / volumeMm3(like);
}

describe('chords', () => {
  it('of a rectangle are its side, along and across', () => {
    const region = asRegion(rectRing(3, 4, 103, 24));
    expect(chordBands(region, 0)).toEqual([{ widthMm: 20, fromMm: 100, toMm: 100 }]);
    expect(chordBands(region, 1)).toEqual([{ widthMm: 100, fromMm: 20, toMm: 20 }]);
  });

  it('add up to the area, either way, with a hole taken off', () => {
    const outer = lure(120, 30, 6);
    const hole = circleRing([50, 2], 5, { segments: 40 });
    const area = ringArea(outer) - ringArea(hole);
    // Exact for polygons; only rounding is left.
    expect(chordArea(chordBands({ outer, holes: [hole] }, 0))).toBeCloseTo(area, 8);
    expect(chordArea(chordBands({ outer, holes: [hole] }, 1))).toBeCloseTo(area, 8);
  });
});

describe('the bound on any plan', () => {
  it('holds for bars that may tilt: two lie end to end where they would not along the grain', () => {
    const bars = [part('p', rectRing(0, 0, 50.1, 1), 150)];
    const face = block('b', [100, 100], 9, { marginMm: 0 });
    expect(leastBlocks(bars, face, 0)).toBe(2);
    // At 5° two bars take 2 × 50.1 cos 5° + sin 5° of a row; rows stand 1 / cos 5° apart.
    const [cos, sin] = [Math.cos(Math.PI / 36), Math.sin(Math.PI / 36)];
    expect(2 * 50.1 * cos + sin).toBeLessThan(100);
    const rows = Math.floor((100 - 2 * 50.1 * sin - cos) * cos) + 1;
    expect(2 * rows).toBeGreaterThan(150);
    expect(leastBlocks(bars, face, 0, { mayTilt: true })).toBe(1);
  });

  const face = block('b', [108, 58], 100); // clear: 100 × 50

  it('is the area where parts can cover the face', () => {
    // 25 × 25 eight to a face; nine need a second block.
    const square = rectRing(0, 0, 25, 25);
    expect(leastBlocks([part('p', square, 8)], face, 0)).toBe(1);
    expect(leastBlocks([part('p', square, 9)], face, 0)).toBe(2);
    expect(leastBlocks([part('p', square, 17)], face, 0)).toBe(3);
    expect(leastBlocks([part('p', square, 17)], face, 0, { missing: 1 })).toBe(2);
  });

  it('grows outlines and face by half the gap', () => {
    // Without a gap eight squares of 25 fill the face. With a gap of 5, two rows want 55 of 50 mm, so
    // there is one row, of three.
    const square = rectRing(0, 0, 25, 25);
    expect(leastBlocks([part('p', square, 3)], face, 5)).toBe(1);
    expect(leastBlocks([part('p', square, 4)], face, 5)).toBe(2);
  });

  it('knows that of parts longer than half the face only one fits on a line', () => {
    // 51 × 26 is 27 % of the face, so 3.77 of them by area. But each has its 26 of 50 lines to itself,
    // which leaves 1.92 a face: twelve need seven faces.
    expect(leastBlocks([part('p', rectRing(0, 0, 51, 26), 12)], face, 0)).toBe(7);
  });

  it('knows that of parts longer than a third only two fit on a line', () => {
    // 34 long, 10 high: by area 14.7 a face; two on a line and five lines make ten.
    expect(leastBlocks([part('p', rectRing(0, 0, 34, 10), 30)], face, 0)).toBe(3);
    expect(leastBlocks([part('p', rectRing(0, 0, 33, 10), 30)], face, 0)).toBe(2);
  });

  it('takes knots off the face', () => {
    const knots = [{ xMm: 54, yMm: 29, radiusMm: 20 }];
    const square = rectRing(0, 0, 25, 25);
    // 5000 − 1257 mm² hold 5.99 of 625 mm².
    expect(leastBlocks([part('p', square, 5)], { ...face, knots }, 0)).toBe(1);
    expect(leastBlocks([part('p', square, 6)], { ...face, knots }, 0)).toBe(2);
  });
});
