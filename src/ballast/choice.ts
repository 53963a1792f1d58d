/** A set of holes looked at closely: how the lure really lies with it, and how near that is to the wish. */
import type { Attitude } from '../float/attitude.js';
import type { LetGo } from '../float/let-go.js';
import { type Load, restAttitudes } from '../float/rest.js';
import { angleBetween } from '../float/tilt.js';
import type { Point3 } from '../geometry/vec.js';
import { type Draft, gmRefusal } from './draft.js';
import { farthest, type Missed, missOf, type Wanted } from './miss.js';
import type { Refusal } from './refuse.js';
import { type Scored, scored } from './score.js';
import {
  type HoleSensitivity,
  holeSensitivity,
  type TimberSensitivity,
  timberSensitivity,
} from './sensitivities.js';
import { type Target, waterG } from './wish.js';
import { type Hole, plugIn, type Workpiece, withHoles } from './workpiece.js';

export type ChosenHole = Hole & {
  /** Height of the metal on the axis once the belly is shaped. */
  readonly plugMm: number;
  readonly plugMassG: number;
};

export type Choice = Scored & {
  readonly holes: readonly ChosenHole[];
  readonly massG: number;
  readonly cgMm: Point3;
  /** The rest that the wish asks for; for a lure that is meant under water, how it hangs there. */
  readonly attitude: Attitude;
  /** Every rest of the lure when it is left alone, as `restAttitudes` tells them. */
  readonly attitudes: readonly Attitude[];
  /** For rises and sinks. */
  readonly speed: LetGo | null;
  readonly missed: Missed;
  /** Between the nearest hole and the back. */
  readonly woodMm: number;
  /** One entry a hole. */
  readonly perHole: readonly HoleSensitivity[];
  readonly perTimber: TimberSensitivity;
};

/** Beyond this a lure heels: rounding and the mesh's own asymmetry are far less. */
const UPRIGHT_DEG = 1;

/** A choice, or why the water refuses the holes. That the wood allows them is taken for granted. */
export function judged(piece: Workpiece, wanted: Wanted, draft: Draft): Choice | Refusal {
  const { holes, woodMm } = draft;
  const mass = withHoles(piece, holes);
  const alone = loadOf(piece, mass);
  const attitudes = restAttitudes(piece.afloat.solid, alone);
  const submerged = wanted.goal.kind === 'suspends' || wanted.goal.kind === 'drifts';
  const load = submerged ? underWater(piece, alone) : alone;
  const rests = submerged ? restAttitudes(piece.afloat.solid, load) : attitudes;
  const attitude = nearestRest(rests, draft.target);
  if ('rolls' in attitude) return { why: 'rolls-over', facts: attitude.rolls, holes, short: 0 };
  if (attitude.gmAcrossMm < wanted.leastGmMm) {
    return gmRefusal(holes, attitude.gmAcrossMm, wanted.leastGmMm);
  }
  const { missed, speed } = missOf(piece.afloat, wanted, mass.massG, attitude);
  const far = farthest(wanted, missed, mass.massG);
  if (far.ratio > 1) return { why: 'misses-wish', facts: far.facts, holes, short: far.ratio };
  const perHole = holes.map((_, i) => holeSensitivity(piece, holes, i, { attitude, load }));
  return {
    holes: holes.map((hole) => {
      const { plugMm, metal } = plugIn(piece, hole);
      return { ...hole, plugMm, plugMassG: metal.amount };
    }),
    massG: mass.massG,
    cgMm: mass.cgMm,
    attitude,
    attitudes,
    speed,
    missed,
    woodMm,
    perHole,
    perTimber: timberSensitivity(piece, holes, { attitude, load }),
    ...scored({ attitude, missed, perHole, woodMm, wanted, massG: mass.massG }),
  };
}

/** The stable rest nearest to the target; or where the lure ends instead, if that one is heeled, or belly up costs less energy. */
function nearestRest(
  rests: readonly Attitude[],
  { up }: Target,
): Attitude | { readonly rolls: Refusal['facts'] } {
  const stable = rests.filter((a) => a.stable);
  const nearest = stable
    .map((rest) => ({ rest, far: angleBetween(rest.upInBody, up) }))
    .sort((a, b) => a.far - b.far)[0]?.rest;
  if (!nearest) return { rolls: {} };
  const bellyUp = stable.find(
    (a) => Math.abs(a.heelDeg) > 90 && a.cgAboveCbMm < nearest.cgAboveCbMm,
  );
  const end = Math.abs(nearest.heelDeg) > UPRIGHT_DEG ? nearest : bellyUp;
  return end ? { rolls: { heelDeg: end.heelDeg, trimDeg: end.trimDeg } } : nearest;
}

export const loadOf = (piece: Workpiece, { massG, cgMm }: Pick<Load, 'massG' | 'cgMm'>): Load => ({
  massG,
  cgMm,
  waterDensityKgM3: piece.afloat.waterDensityKgM3,
  lengthMm: piece.design.body.shape.lengthMm,
});

/** The load held under water, where it hangs by its center of gravity whether it is a little light or heavy. */
function underWater({ afloat }: Workpiece, load: Load): Load {
  const wholeG = waterG(afloat.solid.volumeMm3, afloat.waterDensityKgM3);
  return { ...load, massG: Math.max(load.massG, wholeG) };
}
