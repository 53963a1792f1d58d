/** A face and a cutter → the plan of its cuts. */
import type { NestFace } from '../nest/nest.js';
import type { Cutter } from '../pattern/run.js';
import { type Problem, problem } from '../problem.js';
import type { Blades } from '../tables/blades.js';
import { type CutPlan, NO_CUTS, type SawnPart } from './cutplan.js';
import { followedCuts } from './follow.js';
import { hollowProblems } from './hollows.js';
import { steeredCuts } from './steer.js';

export type SawCutter = Pick<Cutter, 'guidance' | 'kerfMm' | 'wanderMm' | 'bladeWidthMm'>;

export type CutPlanResult = { readonly plan: CutPlan; readonly problems: readonly Problem[] };

/**
 * Plans how a face is cut. `parts` by name; placements' outlines as nested, at least a kerf apart.
 * A steered saw's outlines that no blade reaches have an empty way in and are told.
 * @throws Fault when a part is not among `parts`, or the face's gap is narrower than the kerf.
 */
export function planCuts(
  face: NestFace,
  parts: ReadonlyMap<string, SawnPart>,
  cutter: SawCutter,
  blades: Blades,
): CutPlanResult {
  if (face.placements.length === 0) return { plan: NO_CUTS, problems: [] };
  if (cutter.guidance === 'follows')
    return { plan: followedCuts(face, parts, cutter.kerfMm), problems: [] };
  return steeredCuts(face, parts, cutter, blades);
}

/** What a saw can not make of a part, wherever it lies: hollows too tight for its blade, closed openings. */
export function sawProblems(
  name: string,
  { profile, openings }: SawnPart,
  { guidance, bladeWidthMm }: SawCutter,
  blades: Blades,
): Problem[] {
  if (guidance === 'follows') return [];
  return [
    ...openings.map(({ center, radius }) =>
      problem('opening-needs-threading', ['saw'], {
        name,
        stationMm: center[0],
        diameterMm: 2 * radius,
      }),
    ),
    ...(bladeWidthMm === null ? [] : hollowProblems(name, profile, bladeWidthMm, blades)),
  ];
}
