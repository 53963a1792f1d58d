import { describe, expect, it } from 'vitest';
import { begunAt, without } from '../../src/drawing/contour.js';
import { type ArcPath, pathLength, polyline } from '../../src/geometry/arcpath.js';

const SQUARE = polyline(
  [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ],
  true,
);
const CIRCLE: ArcPath = {
  closed: true,
  vertices: [
    { x: -5, y: 0, bulge: 1 },
    { x: 5, y: 0, bulge: 1 },
  ],
};

describe('a contour', () => {
  it('begins where it is told to, and is the same line', () => {
    const turned = begunAt(SQUARE, [10.1, 9.9]);
    expect(turned.vertices[0]).toEqual({ x: 10, y: 10, bulge: 0 });
    expect(turned.vertices).toHaveLength(4);
    expect(pathLength(turned)).toBe(40);
  });

  it('without one side is the other three', () => {
    const [left, ...none] = without(SQUARE, [
      [
        [10, 0],
        [10, 10],
      ],
    ]);
    expect(none).toEqual([]);
    expect(left.closed).toBe(false);
    expect(left.vertices.map(({ x, y }) => [x, y])).toEqual([
      [10, 10],
      [0, 10],
      [0, 0],
      [10, 0],
    ]);
  });

  it('without two stretches falls in two, whatever order they are told in', () => {
    for (const order of [1, -1]) {
      const stretches = [
        [
          [2, 0],
          [4, 0],
        ],
        [
          [6, 10],
          [5, 10],
        ],
      ] as const;
      const parts = without(SQUARE, order === 1 ? stretches : [...stretches].reverse());
      expect(parts).toHaveLength(2);
      expect(parts.reduce((sum, p) => sum + pathLength(p), 0)).toBeCloseTo(40 - 3, 12);
    }
  });

  it('a stretch across the first corner, and one along an arc', () => {
    const [rest] = without(SQUARE, [
      [
        [0, 2],
        [0, 0],
        [3, 0],
      ],
    ]);
    expect(pathLength(rest)).toBeCloseTo(35, 12);
    const [arc] = without(CIRCLE, [
      [
        [5, 0],
        [0, 5],
      ],
    ]);
    expect(pathLength(arc)).toBeCloseTo(2 * Math.PI * 5 * 0.75, 9);
    for (const { x, y } of arc.vertices) expect(Math.hypot(x, y)).toBeCloseTo(5, 9);
  });

  it('wholly cut already leaves nothing', () => {
    expect(
      without(SQUARE, [
        [
          [0, 0],
          [10, 0],
          [10, 10],
          [0, 10],
          [0, 0],
        ],
      ]),
    ).toEqual([]);
  });
});
