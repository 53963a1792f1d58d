/** A set of holes looked at closely: how the lure really lies with it, and how near that is to the wish. */
import type { Attitude } from '../float/attitude.js';
import { type Load, restAttitudes } from '../float/rest.js';
import type { Speed } from '../float/speed.js';
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
import { waterG } from './wish.js';
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
  readonly speed: Speed | null;
  readonly missed: Missed;
  /** Between the nearest hole and the back. */
  readonly woodMm: number;
  /** One entry a hole. */
  readonly perHole: readonly HoleSensitivity[];
  readonly perTimber: TimberSensitivity;
};

/** Beyond this a lure heels: rounding and the mesh's own asymmetry are far less. */
const UPRIGHT_DEG = 1;

export function judged(piece: Workpiece, wanted: Wanted, draft: Draft): Choice | Refusal {
  const { holes, target } = draft;
  const mass = withHoles(piece, holes);
  const load = loadOf(piece, mass);
  const attitudes = restAttitudes(piece.afloat.solid, load);
  const submerged = wanted.goal.kind === 'suspends' || wanted.goal.kind === 'drifts';
  const meant = submerged ? underWater(piece, load) : load;
  const rests = submerged ? restAttitudes(piece.afloat.solid, meant) : attitudes;
  const stable = rests.filter((a) => a.stable);
  const attitude = stable
    .map((a) => ({ a, far: angleBetween(a.upInBody, target.up) }))
    .sort((a, b) => a.far - b.far)[0]?.a;
  const rolls = attitude === undefined ? { heelDeg: 180 } : rollsOver(attitude, stable);
  if (attitude === undefined || rolls !== null) {
    return { why: 'rolls-over', facts: rolls ?? {}, holes, short: 0 };
  }
  if (attitude.gmAcrossMm < wanted.leastGmMm) {
    return gmRefusal(holes, attitude.gmAcrossMm, wanted.leastGmMm);
  }
  const { missed, speed } = missOf(piece.afloat, wanted, load.massG, attitude);
  const far = farthest(wanted, missed, load.massG);
  if (far.ratio > 1) return { why: 'misses-wish', facts: far.facts, holes, short: far.ratio };
  const sense = { attitude, load: meant };
  const perHole = holes.map((_, i) => holeSensitivity(piece, holes, i, sense));
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
    woodMm: draft.woodMm,
    perHole,
    perTimber: timberSensitivity(piece, holes, sense),
    ...scored({ attitude, missed, perHole, woodMm: draft.woodMm, wanted, massG: load.massG }),
  };
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

/** Where it ends instead, if the rest that is wished is heeled, or belly up costs less energy. */
function rollsOver(attitude: Attitude, stable: readonly Attitude[]): Refusal['facts'] | null {
  const bellyUp = stable.find(
    (a) => Math.abs(a.heelDeg) > 90 && a.cgAboveCbMm < attitude.cgAboveCbMm,
  );
  const end = Math.abs(attitude.heelDeg) > UPRIGHT_DEG ? attitude : bellyUp;
  return end ? { heelDeg: end.heelDeg, trimDeg: end.trimDeg } : null;
}
