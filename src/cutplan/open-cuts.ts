/** Ways in as they are sawn: from the last parting cut they cross, which is open by then. */
import { cross, mix, type Point2, sub } from '../geometry/vec.js';
import type { CutPlan } from './cutplan.js';

/** The plan's ways, by placement, without what lies beyond a parting cut. */
export const sawnWays = ({ entryPaths, partingCuts }: CutPlan): Point2[][] =>
  entryPaths.map((path) => fromLastCrossing(path, partingCuts));

function fromLastCrossing(path: readonly Point2[], cuts: readonly (readonly Point2[])[]): Point2[] {
  for (let i = path.length - 1; i > 0; i--) {
    const shares = cuts.flatMap((cut) =>
      cut.slice(1).flatMap((to, k) => crossing(path[i - 1], path[i], cut[k], to)),
    );
    if (shares.length > 0) {
      const start = mix(path[i - 1], path[i], Math.max(...shares));
      return [start, ...path.slice(i)];
    }
  }
  return [...path];
}

/** How far along the piece from a to b it crosses the piece from c to d, 0..1; none if it does not. */
function crossing(a: Point2, b: Point2, c: Point2, d: Point2): number[] {
  const [way, other] = [sub(b, a), sub(d, c)];
  const turn = cross(way, other);
  if (turn === 0) return [];
  const along = cross(sub(c, a), other) / turn;
  const on = cross(sub(c, a), way) / turn;
  return along >= 0 && along <= 1 && on >= 0 && on <= 1 ? [along] : [];
}
