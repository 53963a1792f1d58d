/** The most of a face that its outlines could take if it had no edges. */
import { ringArea } from '../geometry/ring.js';
import type { Nest, NestFace } from './nest.js';

/**
 * Share of endless wood that outlines mixed as on this face take, each kind in its densest double
 * lattice with the gap: their area over the area those lattices need for them, 0..1. Mixed outlines
 * can interlock better than that; copies of one convex outline are not known to.
 * @throws RangeError on a face without outlines, which no nest has
 */
export function faceLimitRatio(
  { placements }: Pick<NestFace, 'placements'>,
  limitRatios: Nest['limitRatios'],
): number {
  if (placements.length === 0) throw new RangeError('a face without outlines has no limit');
  const areas = placements.map((p) => ringArea(p.outline));
  const needed = placements.map((p, i) => areas[i] / limitRatios[p.part]);
  return total(areas) / total(needed);
}

const total = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0);
