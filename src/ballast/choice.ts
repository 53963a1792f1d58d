/** A set of holes looked at closely: how the lure really lies with it, and how near that is to the wish. */
import type { Attitude } from '../float/attitude.js';
import type { LetGo } from '../float/let-go.js';
import { type Load, restAttitudes } from '../float/rest.js';
import { angleBetween } from '../float/tilt.js';
import { waterG } from '../float/water.js';
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
  const load = loadMeant(piece, wanted, mass);
  const attitude = restMeant(piece, load, draft.target.up);
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
    speed,
    missed,
    woodMm,
    perHole,
    perTimber: timberSensitivity(piece, holes, { attitude, load }),
    ...scored({ attitude, missed, perHole, woodMm, wanted, massG: mass.massG }),
  };
}

/** The load as the wish means it: alone in the water, or held under. */
export function loadMeant(
  piece: Workpiece,
  { goal }: Wanted,
  mass: Pick<Load, 'massG' | 'cgMm'>,
): Load {
  const alone = loadOf(piece, mass);
  return goal.kind === 'suspends' || goal.kind === 'drifts' ? underWater(piece, alone) : alone;
}

/** The stable rest nearest to a direction to the sky; or where the lure ends instead, if that one is heeled, or belly up costs less energy. */
export function restMeant(
  { afloat }: Workpiece,
  load: Load,
  up: Point3,
): Attitude | { readonly rolls: Refusal['facts'] } {
  const stable = restAttitudes(afloat.solid, load).filter((a) => a.stable);
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
