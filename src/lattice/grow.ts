/** Gaps grown into outlines, and the density that can be reached with a gap. */
import { asRegion, offset } from '../geometry/clip.js';
import { type Ring, ringArea } from '../geometry/ring.js';
import { thinned } from '../geometry/thin.js';
import { Fault } from '../problem.js';
import { densestLattice } from './densest.js';
import { densityOf } from './double.js';
import type { Grown } from './frame.js';

/** Chord error of round corners, and of the points left out after, mm. */
const ARC_MM = 0.002;
const THINNED_MM = 0.01;
/** Rounding of clipping (1e-6) and of touching (2e-6), several times over, mm. */
const ROUNDING_MM = 1e-5;

/**
 * The outline with itself grown by half the gap: copies whose grown outlines do not overlap are at
 * least the gap apart. It is grown by up to 0.024 mm more, so that chords do not take from the gap.
 */
export function withGap(outline: Ring, gapMm: number): Grown {
  const by = gapMm / 2 + ARC_MM + THINNED_MM + ROUNDING_MM;
  const regions = offset([asRegion(outline)], by, ARC_MM);
  if (regions.length !== 1) throw new Fault(`a grown outline fell into ${regions.length} pieces`);
  return { outline, grown: thinned(regions[0].outer, THINNED_MM) };
}

/** The share of wood that copies of the outline in their densest double lattice can take, 0..1. */
export const latticeLimitRatio = ({ outline, grown }: Grown): number =>
  densityOf(densestLattice(grown), ringArea(outline));
