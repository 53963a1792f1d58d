/** What is wrong with a ballast hole’s filling once the belly is shaped. */
import type { BallastHole } from '../blank/blank.js';
import type { BodyShape } from '../body/shape.js';
import { PATHS } from '../pattern/pattern.js';
import { type Problem, problem } from '../problem.js';
import type { Materials } from '../tables/materials.js';
import { bellyOverHole } from './belly.js';
import { floorOf, plugOf } from './plug.js';

/**
 * A ready-made weight too wide for its hole; metal that shall end inside the wood (filled to a height, or a ready-made weight) but sticks out of
 * the finished belly somewhere. Every name must be a row of its table.
 */
export const ballastProblems = (
  holes: readonly BallastHole[],
  shape: BodyShape,
  materials: Materials,
): Problem[] =>
  holes.flatMap((hole, i) => {
    const weight = hole.weight === null ? null : materials.weights[hole.weight];
    if (weight && weight.diameterMm > hole.diameterMm) {
      const { diameterMm } = hole;
      const facts = { weight: hole.weight ?? '', weightMm: weight.diameterMm, diameterMm };
      return [problem('weight-too-wide', PATHS.ballast(i), facts)];
    }
    const belly = bellyOverHole(shape, hole);
    const { coverMm } = plugOf(belly, hole, materials);
    if (coverMm >= 0) return [];
    const lengthMm =
      hole.weight === null ? (hole.fillMm ?? 0) : materials.weights[hole.weight].lengthMm;
    // To the last tenth that is still covered; none where the floor itself is not.
    const limitMm = Math.max(0, Math.floor((lengthMm + coverMm) * 10) / 10);
    const facts = {
      stationMm: hole.stationMm,
      what: hole.weight === null ? 'metal' : `weight ${hole.weight}`,
      coverMm,
      limitMm,
      floorMm: floorOf(hole),
    };
    return [problem('metal-sanded-into', PATHS.ballast(i), facts)];
  });
