/** Parallel straight lines across an area. */
import type { Point2 } from './vec.js';

export type Hatching = {
  /** Direction of the lines, degrees counter-clockwise from x. */
  readonly slantDeg: number;
  readonly step: number;
  /** One of the lines passes so far to the left of the origin, looking along them. Left out: through it. */
  readonly shift?: number;
};

/** The pieces of the lines that lie inside a polygon (even-odd, so any polygon will do). */
export function hatchLines(
  polygon: readonly Point2[],
  { slantDeg, step, shift = 0 }: Hatching,
): readonly (readonly [Point2, Point2])[] {
  const angle = (slantDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  // In a frame turned with the lines: along them, and to the left of them.
  const turned = polygon.map(([x, y]): Point2 => [c * x + s * y, c * y - s * x]);
  const lefts = turned.map(([, left]) => left);
  const first = Math.ceil((Math.min(...lefts) - shift) / step);
  const last = Math.floor((Math.max(...lefts) - shift) / step);
  const back = (along: number, left: number): Point2 => [
    c * along - s * left,
    s * along + c * left,
  ];
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => {
    const left = shift + (first + k) * step;
    const crossings = crossingsAt(turned, left);
    return Array.from(
      { length: Math.floor(crossings.length / 2) },
      (_, i) => [back(crossings[2 * i], left), back(crossings[2 * i + 1], left)] as const,
    );
  }).flat();
}

/** Where a polygon's edges pass a height, rising; a corner on it counts with the edge above it only. */
function crossingsAt(polygon: readonly Point2[], height: number): number[] {
  return polygon
    .flatMap(([x, y], i) => {
      const [toX, toY] = polygon[(i + 1) % polygon.length];
      return y <= height !== toY <= height ? [x + ((height - y) / (toY - y)) * (toX - x)] : [];
    })
    .sort((a, b) => a - b);
}
