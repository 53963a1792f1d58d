/** The trial weight that brings a lure down which rides too high, and where to hang it. */
import { offsetAt } from '../body/shape.js';
import { waterG } from '../float/water.js';
import { type Pulled, perGramAt } from './pull.js';
import type { TrialWeight } from './shop.js';

/** Nose and tail higher than they should be by so much; a maker scales them. */
const HIGH = [
  { noseMm: 1, tailMm: 1 },
  { noseMm: 1, tailMm: 0 },
  { noseMm: 0, tailMm: 1 },
] as const;

type High = (typeof HIGH)[number];
type Found = Pick<TrialWeight, 'massG' | 'stationMm' | 'why'>;

/** @param pull null without a stable rest */
export const trialsOf = (pull: Pulled | null): TrialWeight[] =>
  HIGH.map((high) => ({ ...high, ...trialFor(pull, high) }));

const none = (why: TrialWeight['why']): Found => ({ massG: null, stationMm: null, why });

/**
 * On a thread from the finished belly of a lure that lacks so much there, it makes the lure lie as
 * planned. None where it would have to pull up, or hang beyond nose or tail; nor where so little of
 * the lure is dry that the water of 1 mm is more than that: rates of so small a waterplane say nothing
 * of a millimeter.
 */
function trialFor(pull: Pulled | null, high: High): Found {
  if (!pull) return none('no-stable-rest');
  if (pull.under) return none('under-water');
  const { load, solid, pattern } = pull.lure;
  const { massG, stationMm } = solved(pull, high);
  if (!(massG > 0)) return none('needs-lift');
  if (!(stationMm >= 0 && stationMm <= pattern.lengthMm)) return none('off-the-lure');
  const carriesG = waterG(solid.volumeMm3, load.waterDensityKgM3) - load.massG;
  return massG < carriesG ? { massG, stationMm, why: null } : none('hardly-afloat');
}

const ROUNDS = 30; // the height of the belly hardly matters to the answer: a few are enough

/**
 * At a given height nose and tail answer to m and to m times the way aft of the center of gravity, two
 * linear equations; the height is that of the belly at the station found.
 */
function solved(pull: Pulled, { noseMm, tailMm }: High): { massG: number; stationMm: number } {
  const { load, pattern, piece } = pull.lure;
  const [x] = load.cgMm;
  const { bellySquared } = piece.design.body.shape;
  let found = { massG: Number.NaN, stationMm: x };
  for (let round = 0; round < ROUNDS; round++) {
    const station = Math.min(pattern.lengthMm, Math.max(0, found.stationMm));
    const { freeboardNoseMm: a, freeboardTailMm: c } = perGramAt(pull, [
      x,
      0 - offsetAt(bellySquared, station),
    ]);
    const { freeboardNoseMm: b, freeboardTailMm: d } = pull.aft;
    const determinant = a * d - b * c;
    const massG = (tailMm * b - noseMm * d) / determinant;
    const moment = (noseMm * c - tailMm * a) / determinant;
    found = { massG, stationMm: x + moment / massG };
  }
  return found;
}
