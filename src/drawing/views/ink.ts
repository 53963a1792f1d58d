/** Lines of a working drawing: black, told apart by weight and dash; no text may lie on any of them. */
import type { Box, Point2 } from '../../geometry/vec.js';
import type { Area, Line, Pen, Shape } from '../picture/picture.js';

type Kind = { readonly closed?: true; readonly dashed?: true; readonly chain?: true };

export const ink = (points: readonly Point2[], pen: Pen, kind: Kind = {}): Line => ({
  kind: 'line',
  points,
  role: 'ink',
  pen,
  ...kind,
  clear: true,
});

export const CLOSED = { closed: true } as const;
export const DASHED = { dashed: true } as const;
export const CHAIN = { chain: true } as const;

export const boxLine = ([minX, minY, maxX, maxY]: Box, pen: Pen): Line =>
  ink(
    [
      [minX, minY],
      [maxX, minY],
      [maxX, maxY],
      [minX, maxY],
    ],
    pen,
    CLOSED,
  );

const HEAD_MM = { long: 2.4, wide: 0.8 } as const;

/** A narrow filled arrowhead with its point at a place, pointing along a unit vector. */
export function arrowhead([x, y]: Point2, [dx, dy]: Point2): Area {
  const { long, wide } = HEAD_MM;
  const back = (side: number): Point2 => [
    x - long * dx - side * (wide / 2) * dy,
    y - long * dy + side * (wide / 2) * dx,
  ];
  return { kind: 'area', points: [[x, y], back(1), back(-1)], role: 'ink' };
}

/** What a leader ends in on what it names (ISO 128-2: a dot inside an outline). */
export const dot = (center: Point2): Shape => ({
  kind: 'disc',
  center,
  radiusMm: 0.45,
  role: 'ink',
  pen: null,
});
