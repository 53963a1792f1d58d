/**
 * The densest double lattice of an outline that may be hollow, by direct search on no-fit polygons:
 * the densest of many rough lattices are polished, and the exact lattice of the hull with them, so
 * that the result is never less dense than that.
 */
import { convexHull } from '../geometry/convex.js';
import { noFitRegion, turnedHalf } from '../geometry/nofit.js';
import { type Ring, ringArea } from '../geometry/ring.js';
import { distance } from '../geometry/vec.js';
import type { DoubleLattice } from './double.js';
import { hullDoubleLattices } from './hull.js';
import { obstacleOf } from './obstacle.js';
import { type Apart, leastClearance, polished } from './polish.js';
import { roughLattices } from './rough.js';

/** Rough lattices polished. */
const STARTS = 8;
/** Lattices whose steps differ by less than this share of the outline's reach are one start. */
const SAME_START = 0.04;
/** Depth of overlap a rough lattice may have, as a share of the outline's reach: polishing parts its copies. */
const OVERLAP = 0.01;
/** A hull larger by less than this share is the outline's own. */
const CONVEX = 1e-9;

/**
 * The densest double lattice found of an outline with its hollows; exact for a convex outline, else
 * a local optimum. Copies may touch; they do not overlap.
 */
export function densestLattice(outline: Ring): DoubleLattice {
  const [best] = goodLattices(outline);
  return best;
}

/** Local optima of an outline that differ, densest first; of a hollow one those found. */
export function goodLattices(outline: Ring): DoubleLattice[] {
  const ofHull = hullDoubleLattices(outline);
  const hull = convexHull(outline);
  if (ringArea(hull) - ringArea(outline) <= CONVEX * ringArea(hull)) return distinct(ofHull, hull);
  const same = noFitRegion(outline, outline).outer;
  const turned = noFitRegion(outline, turnedHalf(outline)).outer;
  // Holes of the no-fit regions are not used: nothing gets into them by sliding.
  const apart = { same: obstacleOf(same), turned: obstacleOf(turned) };
  const leastMm2 = 2 * (1 - OVERLAP) * ringArea(outline);
  const rough = roughLattices(same, turned, leastMm2).sort((a, b) => a.cellMm2 - b.cellMm2);
  const found = [...distinct(ofHull, hull).slice(0, 2), ...starts(rough, apart)];
  return distinct(
    [...found.flatMap((start) => polished(start, apart) ?? []), ofHull[0]].sort(
      (a, b) => a.cellMm2 - b.cellMm2,
    ),
    hull,
  );
}

/** Rough lattices to polish: the densest that overlap little and differ. */
function starts(rough: readonly DoubleLattice[], apart: Apart): DoubleLattice[] {
  const out: DoubleLattice[] = [];
  for (const lattice of rough) {
    if (out.length === STARTS) break;
    if (out.some((other) => isLike(lattice, other, SAME_START * apart.same.reach))) continue;
    if (leastClearance(lattice, apart) > -OVERLAP * apart.same.reach) out.push(lattice);
  }
  return out;
}

function distinct(lattices: readonly DoubleLattice[], outline: Ring): DoubleLattice[] {
  const [first] = outline;
  const reach = Math.max(...outline.map((p) => distance(p, first)));
  const out: DoubleLattice[] = [];
  for (const lattice of lattices) {
    if (!out.some((other) => isLike(lattice, other, SAME_START * reach))) out.push(lattice);
  }
  return out;
}

/** Do two lattices, told by their shortest steps, differ little? */
const isLike = (a: DoubleLattice, b: DoubleLattice, within: number): boolean =>
  [
    [a.u, b.u],
    [a.v, b.v],
    [a.w, b.w],
  ].every(([p, q]) => Math.min(distance(p, q), distance(p, [-q[0], -q[1]])) < within);
