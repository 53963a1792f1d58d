/** How far a printer has to bridge to close a ceiling. */
import { cosSinDeg, distanceToPiece, type Point2, sub } from '../../geometry/vec.js';
import type { CeilingEdge } from './undersides.js';

const DIRECTIONS_DEG = [0, 22.5, 45, 67.5, 90, 112.5, 135, 157.5];
const LEAST_EDGE = 0.3; // mm: shorter free edges give no direction of their own

type Outline = {
  /** Places all over the ceiling, seen from above. */
  readonly points: readonly Point2[];
  readonly edges: readonly CeilingEdge[];
};

/**
 * For each place of a ceiling the shortest line through it that ends on a wall at both ends, level,
 * in the directions tried; the greatest of these. Places within `ledge` of a wall hold to it, and the
 * `line` laid along a free edge holds to the one beside it. Infinity where a place has nothing.
 */
export function spanMm(
  { points, edges }: Outline,
  { ledge, line }: { ledge: number; line: number },
): number {
  const directions = directionsOf(edges);
  return points.reduce((span, p) => {
    const isHeld = edges.some(
      ({ from, to, wall }) => distanceToPiece(p, from, to) <= (wall ? ledge : line),
    );
    if (isHeld) return span;
    const lines = directions.map((direction) => lineThrough(p, direction, edges));
    return Math.max(span, Math.min(...lines));
  }, 0);
}

/** Eight all round, and along every free edge: lines that end on it would hang. */
function directionsOf(edges: readonly CeilingEdge[]): Point2[] {
  const free = edges
    .filter((e) => !e.wall)
    .map(({ from, to }) => sub(to, from))
    .map((d): [Point2, number] => [d, Math.hypot(...d)])
    .filter(([, length]) => length > LEAST_EDGE)
    .map(([[x, y], length]): Point2 => [x / length, y / length]);
  return [...DIRECTIONS_DEG.map(cosSinDeg), ...free];
}

/** Length of the line through a place from edge to edge; Infinity if it hangs free at an end. */
function lineThrough([px, py]: Point2, [dx, dy]: Point2, edges: readonly CeilingEdge[]): number {
  let [ahead, behind] = [Infinity, Infinity];
  let [wallAhead, wallBehind] = [false, false];
  for (const { from, to, wall } of edges) {
    const [a, b] = [
      dx * (from[1] - py) - dy * (from[0] - px),
      dx * (to[1] - py) - dy * (to[0] - px),
    ];
    if (a <= 0 === b <= 0) continue;
    const share = a / (a - b);
    const [x, y] = [
      from[0] + share * (to[0] - from[0]) - px,
      from[1] + share * (to[1] - from[1]) - py,
    ];
    const along = dx * x + dy * y;
    if (along >= 0 && along < ahead) [ahead, wallAhead] = [along, wall];
    if (along < 0 && -along < behind) [behind, wallBehind] = [-along, wall];
  }
  return wallAhead && wallBehind ? ahead + behind : Infinity;
}

/** How wide the ceiling is where it is measured narrowest. */
export const widthMm = (edges: readonly CeilingEdge[]): number =>
  Math.min(
    ...DIRECTIONS_DEG.map((deg) => {
      const [c, s] = cosSinDeg(deg);
      const across = edges.flatMap(({ from, to }) => [from, to].map(([x, y]) => c * y - s * x));
      return Math.max(...across) - Math.min(...across);
    }),
  );
