/**
 * A lure in its water, as one sentence: pattern, body, blank and materials give the budget; budget
 * and water give how it lies, how stiffly, how fast it sinks or rises, and what a slip would change.
 */
import { bellyIn, type Workpiece, withBelly, workpiece } from '../ballast/workpiece.js';
import type { BallastHole, Blank } from '../blank/blank.js';
import { tipDepthMm } from '../blank/hole.js';
import type { TimberDensity } from '../blank/timber-density.js';
import type { Body } from '../body/body.js';
import type { Attitude } from '../float/attitude.js';
import { type Immersible, immersible } from '../float/immersible.js';
import { type Hanging, type LetGo, letGo } from '../float/let-go.js';
import { type Load, restAttitudes } from '../float/rest.js';
import { type RightingPoint, rightingCurve } from '../float/righting.js';
import { type Verdict, verdictOf } from '../float/verdict.js';
import { waterDensityKgM3, waterG } from '../float/water.js';
import { length3, sub3, unit3 } from '../geometry/vec3.js';
import { coated, type LureDesign, makeLure, outsideOf } from '../mass/budget.js';
import type { Lure } from '../mass/item.js';
import { bellyTakenMm, plugOf } from '../mass/plug.js';
import { type RoundOver, roundOver } from '../mass/round-over.js';
import { type Stage, stagesOf } from '../mass/stages.js';
import type { Pattern } from '../pattern/pattern.js';
import type { WaterFile } from '../pattern/water-schema.js';
import type { Materials } from '../tables/materials.js';
import { type Slips, slipsOf } from './slips.js';

/** A hole as drilled, and what is in it when the belly is shaped. */
export type FloatingHole = {
  readonly stationMm: number;
  readonly diameterMm: number;
  readonly tiltDeg: number;
  /** Full diameter, on the axis from the sawn belly. */
  readonly drilledMm: number;
  /** The same to the tip of the bit's point. */
  readonly tipDepthMm: number;
  /** Belly that shaping takes off on the axis. */
  readonly sandedMm: number;
  /** Height of the metal on the axis. */
  readonly plugMm: number;
  readonly plugVolumeMm3: number;
  readonly plugMassG: number;
  readonly metal: string;
};

export type Floating = {
  readonly pattern: Pattern;
  readonly blank: Blank;
  readonly water: WaterFile & { readonly densityKgM3: number };
  readonly timber: TimberDensity;
  readonly lure: Lure;
  readonly holes: readonly FloatingHole[];
  readonly stages: readonly Stage[];
  readonly roundOver: RoundOver;
  readonly solid: Immersible;
  readonly load: Load;
  readonly piece: Workpiece;
  readonly verdict: Verdict;
  /** Stable ones first, the one of least energy ahead. */
  readonly attitudes: readonly Attitude[];
  readonly righting: readonly RightingPoint[];
  /** Let go under water. */
  readonly speed: LetGo;
  /** Null where no attitude is stable. */
  readonly slips: Slips | null;
};

/** Fresh, 15 °C: where neither run nor pattern says. */
export const USUAL_WATER: WaterFile = { temperatureC: 15, salinityPsu: 0 };

export type Given = {
  readonly pattern: Pattern;
  readonly body: Body;
  readonly blank: Blank;
  readonly materials: Materials;
  readonly timber: TimberDensity;
  readonly water: WaterFile;
};

/** What of a lure no ballast hole, timber or water changes. */
type Outside = Pick<Floating, 'solid' | 'roundOver'> & Pick<Lure, 'displacing'>;

function outsideFor({ pattern, body, blank, materials }: Given): Outside {
  const design = { pattern, body, blank };
  const displacing = outsideOf(design, materials);
  return {
    displacing,
    solid: solidOf(design, displacing),
    roundOver: roundOver(body.shape, blank, materials),
  };
}

function solidOf(design: LureDesign, displacing: Lure['displacing']): Immersible {
  const [hull, ...rest] = displacing.map((d) => d.mesh);
  const sketch = [coated(design, design.body.sketch), ...rest];
  const crown = displacing.filter(({ name }) => name === 'body' || name === 'lip');
  return immersible(
    [hull, ...rest],
    sketch,
    crown.map((d) => d.mesh),
  );
}

/** The solid of a lure made ready to be cut once more; a bench times it. */
export const preparedSolid = ({ piece, lure }: Floating): Immersible =>
  solidOf(piece.design, lure.displacing);

export function floating(given: Given, outside: Outside = outsideFor(given)): Floating {
  const { pattern, body, blank, materials, timber, water } = given;
  const { displacing, solid } = outside;
  const lure = makeLure({ pattern, body, blank }, materials, timber, displacing);
  const densityKgM3 = waterDensityKgM3(water.temperatureC, water.salinityPsu);
  const load: Load = {
    massG: lure.massG,
    cgMm: lure.cgMm,
    waterDensityKgM3: densityKgM3,
    lengthMm: pattern.lengthMm,
  };
  const attitudes = restAttitudes(solid, load);
  const piece = workpiece(
    { pattern, body, blank },
    { materials, timber },
    { displacing, solid, waterDensityKgM3: densityKgM3 },
  );
  const fullG = waterG(solid.volumeMm3, densityKgM3);
  return {
    pattern,
    blank,
    water: { ...water, densityKgM3 },
    timber,
    lure,
    holes: blank.holes.map((hole) => floatingHole(piece, hole)),
    stages: stagesOf({ ...given, lure, roundOverMm: outside.roundOver.bitMm }),
    roundOver: outside.roundOver,
    solid,
    load,
    piece,
    verdict: verdictOf(lure.massG, fullG),
    attitudes,
    righting: rightingCurve(solid, load, attitudes[0]),
    speed: letGo(piece.afloat, hanging(solid, load)),
    slips: attitudes[0].stable
      ? slipsOf(piece, blank, { attitude: attitudes[0], load }, water)
      : null,
  };
}

/** The same lure in the same water with other ballast holes. */
export function reballasted(f: Floating, ballast: Pattern['ballast']): Floating {
  const { pattern, blank, piece, timber, water, solid, roundOver: rounded, lure } = f;
  const holes = ballast.map((hole) => withBelly(piece, hole));
  const given = {
    pattern: { ...pattern, ballast },
    blank: { ...blank, holes },
    body: piece.design.body,
    materials: piece.materials,
    timber,
    water,
  };
  return floating(given, { solid, roundOver: rounded, displacing: lure.displacing });
}

function floatingHole(piece: Workpiece, hole: BallastHole): FloatingHole {
  const belly = bellyIn(piece, hole);
  const plug = plugOf(belly, hole, piece.materials);
  return {
    stationMm: hole.stationMm,
    diameterMm: hole.diameterMm,
    tiltDeg: hole.tiltDeg,
    drilledMm: hole.depthMm,
    tipDepthMm: tipDepthMm(hole),
    sandedMm: bellyTakenMm(belly, hole),
    plugMm: plug.plugMm,
    plugVolumeMm3: plug.metalMm3,
    plugMassG: plug.metal.amount,
    metal: hole.metal,
  };
}

/** A lure that hangs in the water by its weight; upright where its centers fall together. */
function hanging({ centroidMm }: Immersible, { massG, cgMm }: Load): Hanging {
  const lever = sub3(centroidMm, cgMm);
  const cbAboveCgMm = length3(lever);
  return { massG, cbAboveCgMm, upInBody: cbAboveCgMm > 0 ? unit3(lever) : [0, 0, 1] };
}
