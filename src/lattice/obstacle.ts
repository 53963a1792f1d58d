/**
 * A polygon that a point must stay out of, with signed distances. In a lattice, points touch the
 * polygon or lie level with its corners as a rule, so both ends of each edge are kept as they are.
 */
import { type Ring, ringBox } from '../geometry/ring.js';
import type { Box, Point2 } from '../geometry/vec.js';

/** Corners in order, counter-clockwise, the first one repeated at the end; its box; its edges' outward units. */
export type Obstacle = {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly outX: Float64Array;
  readonly outY: Float64Array;
  /** 1 where the corner before edge i is hollow, seen from inside. */
  readonly hollow: Uint8Array;
  readonly box: Box;
  /** No point of it lies further from the origin. */
  readonly reach: number;
};

export function obstacleOf(r: Ring): Obstacle {
  const closed = [...r, r[0]];
  const edges = r.map((p, i) => [closed[i + 1][0] - p[0], closed[i + 1][1] - p[1]] as const);
  const sizes = edges.map(([x, y]) => Math.hypot(x, y));
  return {
    count: r.length,
    x: Float64Array.from(closed, (p) => p[0]),
    y: Float64Array.from(closed, (p) => p[1]),
    outX: Float64Array.from(edges, (e, i) => e[1] / sizes[i]),
    outY: Float64Array.from(edges, (e, i) => -e[0] / sizes[i]),
    hollow: Uint8Array.from(edges, (e, i) => {
      const before = edges[(i + r.length - 1) % r.length];
      return before[0] * e[1] - before[1] * e[0] < 0 ? 1 : 0;
    }),
    box: ringBox(r),
    reach: Math.max(...r.map(([x, y]) => Math.hypot(x, y))),
  };
}

/** Distance of a point to the box: it is no nearer to the polygon. */
export const distanceToBox = ({ box }: Obstacle, [px, py]: Point2): number =>
  Math.hypot(Math.max(box[0] - px, 0, px - box[2]), Math.max(box[1] - py, 0, py - box[3]));

/** Squared distance of a point to edge i. */
function squareToEdge({ x, y, outX, outY }: Obstacle, i: number, px: number, py: number): number {
  const [dx, dy] = [px - x[i], py - y[i]];
  // The unit along a counter-clockwise edge is the outward one turned left.
  const along = dy * outX[i] - dx * outY[i];
  if (along < 0) return dx * dx + dy * dy;
  const [ex, ey] = [px - x[i + 1], py - y[i + 1]];
  if (ey * outX[i] - ex * outY[i] > 0) return ex * ex + ey * ey;
  const off = dx * outX[i] + dy * outY[i];
  return off * off;
}

/** Is the point inside? On the edge either answer may come. */
export function isWithin({ count, x, y }: Obstacle, px: number, py: number): boolean {
  let inside = false;
  for (let i = 0; i < count; i++) {
    if (y[i] > py === y[i + 1] > py) continue;
    if (px < x[i] + ((x[i + 1] - x[i]) * (py - y[i])) / (y[i + 1] - y[i])) inside = !inside;
  }
  return inside;
}

/** Distance of a point to the polygon, negative inside. */
export function distanceTo(obstacle: Obstacle, px: number, py: number): number {
  let least = Infinity;
  for (let i = 0; i < obstacle.count; i++) {
    least = Math.min(least, squareToEdge(obstacle, i, px, py));
  }
  return isWithin(obstacle, px, py) ? -Math.sqrt(least) : Math.sqrt(least);
}

/** The line of an edge, which a point stays beyond: out · (p + move) ≥ out · corner; `slack` is what is left now. */
export type Barrier = { readonly out: Point2; readonly slack: number };

/** Which of the edges that would each do keeps a point out. */
export type Pick = 'farthest' | 'first' | 'last' | ((choices: number) => number);

/**
 * Lines that keep a point out of the polygon while it moves no further than `within`: one for each
 * run of near edges without a hollow corner, since beyond any one line of such a run is outside.
 */
export function barriers(
  obstacle: Obstacle,
  [px, py]: Point2,
  { within, pick }: { readonly within: number; readonly pick: Pick },
): Barrier[] {
  const { count, x, y, outX, outY } = obstacle;
  const near: number[] = [];
  for (let i = 0; i < count; i++) {
    if (squareToEdge(obstacle, i, px, py) <= within * within) near.push(i);
  }
  const slack = (i: number): number => (px - x[i]) * outX[i] + (py - y[i]) * outY[i];
  return runsOf(near, obstacle).map((run) => {
    const i = picked(run, slack, pick);
    return { out: [outX[i], outY[i]], slack: slack(i) };
  });
}

function picked(run: readonly number[], slack: (edge: number) => number, pick: Pick): number {
  const farthest = run.reduce((best, i) => (slack(i) > slack(best) ? i : best));
  if (pick === 'farthest') return farthest;
  const fit = run.filter((i) => slack(i) >= 0);
  if (fit.length === 0) return farthest;
  if (pick === 'first') return fit[0];
  if (pick === 'last') return fit[fit.length - 1];
  return fit[pick(fit.length)];
}

/** Neighboring edges joined into runs that no hollow corner parts. */
function runsOf(near: readonly number[], { count, hollow }: Obstacle): number[][] {
  const runs: number[][] = [];
  for (const i of near) {
    const run = runs[runs.length - 1];
    if (run && run[run.length - 1] === i - 1 && !hollow[i]) run.push(i);
    else runs.push([i]);
  }
  const [first, last] = [runs[0], runs[runs.length - 1]];
  if (runs.length > 1 && first[0] === 0 && last[last.length - 1] === count - 1 && !hollow[0]) {
    runs.splice(0, 1);
    last.push(...first);
  }
  return runs;
}
