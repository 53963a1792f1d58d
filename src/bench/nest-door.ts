/** Every call of the nest that soaks and ratios make: they know the engine by nothing else. */
import { latticeLimitRatio as latticeLimit, withGap } from '../lattice/grow.js';
import { loadSolver } from '../linear/solver.js';
import { kitFor } from '../nest/kit.js';
import type { Block, FaceSize, Nest, NestPart, NestRules } from '../nest/nest.js';
import { countsOf, packFace } from '../nest/place.js';
import { planNest } from '../nest/plan.js';

const SEARCH = { solver: await loadSolver() };

export const nestOf = (
  parts: readonly NestPart[],
  blocks: readonly Block[],
  rules: NestRules,
): Nest => planNest(parts, blocks, rules, SEARCH);

/** Outlines of each part on one face, at most as many as are wanted. */
export function packedCounts(
  parts: readonly NestPart[],
  face: FaceSize,
  { gapMm, tries, seed }: Pick<NestRules, 'gapMm' | 'tries' | 'seed'>,
): readonly number[] {
  const kit = kitFor(parts, { gapMm, clearNoseRatio: 0, largestTiltDeg: 0 });
  const wanted = parts.map((p) => p.orderedCount);
  return countsOf(kit, packFace(kit, { face, wanted, tries, seed }));
}

/**
 * Share of an endless plane that copies of the outline at 0° and 180° cover with this gap between
 * them, in the densest double lattice known, 0..1.
 */
export const latticeLimitRatio = (part: NestPart, gapMm: number): number =>
  latticeLimit(withGap(part.outline, gapMm));
