import { describe, expect, it } from 'vitest';
import { partsInside } from '../../src/drawing/parts.js';
import { circleRing, rectRing, ring } from '../../src/geometry/ring.js';

describe('lines kept to the wood', () => {
  const board = rectRing(0, 0, 100, 20);

  it('are clipped to the outline', () => {
    const line = [
      [-28, 10],
      [228, 10],
    ] as const;
    const [[from, to], ...others] = partsInside(line, board);
    expect(others).toEqual([]);
    [...from, ...to].forEach((value, i) => {
      expect(value).toBeCloseTo([0, 10, 100, 10][i], 12);
    });
  });

  it('are broken by openings, in order along the line', () => {
    const hole = circleRing([50, 10], 5, { segments: 64, circumscribed: true });
    const parts = partsInside(
      [
        [100, 10],
        [0, 10],
      ],
      board,
      [hole, rectRing(20, -5, 30, 12)],
    );
    // the polygon of 64 sides stands off its circle of radius 5 by at most 0.12 %
    const ends = [100, 55, 45, 30, 20, 0];
    expect(parts.flat()).toHaveLength(ends.length);
    parts.flat().forEach(([x], i) => {
      expect(Math.abs(x - ends[i])).toBeLessThan(0.007);
    });
  });

  it('may pass through corners and along edges', () => {
    const diamond = ring([
      [0, 0],
      [10, -5],
      [20, 0],
      [10, 5],
    ]);
    expect(
      partsInside(
        [
          [-1, 0],
          [21, 0],
        ],
        diamond,
      ),
    ).toEqual([
      [
        [0, 0],
        [20, 0],
      ],
    ]);
    const step = ring([
      [0, 0],
      [20, 0],
      [20, 5],
      [10, 5],
      [10, 10],
      [0, 10],
    ]);
    const [[from, to]] = partsInside(
      [
        [-1, 5],
        [9.5, 5],
      ],
      step,
    );
    expect([from[0], to[0]]).toEqual([0, 9.5]);
  });

  it('leave nothing of a line that misses or only grazes', () => {
    const line = [
      [0, 25],
      [100, 25],
    ] as const;
    expect(partsInside(line, board)).toEqual([]);
    const graze = [
      [-0.1, 10],
      [0.1, 10],
    ] as const;
    expect(partsInside(graze, board)).toEqual([]);
  });
});
