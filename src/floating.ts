/**
 * A lure in its water, as one sentence: pattern, body, blank and materials give the budget; budget
 * and water give how it lies, how stiffly, how fast it sinks or rises, and what a slip would change.
 */
import type { HoleSensitivity, TimberSensitivity } from './ballast/sensitivities.js';
import { holeSensitivity, timberSensitivity } from './ballast/sensitivities.js';
import { type Sensitivity, sensitivity } from './ballast/sensitivity.js';
import { type Workpiece, withBelly, workpiece } from './ballast/workpiece.js';
import type { BallastHole, Blank } from './blank/blank.js';
import type { TimberDensity } from './blank/timber-density.js';
import type { Body } from './body/body.js';
import type { Attitude } from './float/attitude.js';
import { immerse } from './float/immerse.js';
import { type Immersible, immersible } from './float/immersible.js';
import { type Load, restAttitudes } from './float/rest.js';
import { type RightingPoint, rightingCurve } from './float/righting.js';
import { dragArea, freeSpeed, type Speed } from './float/speed.js';
import { angleBetween } from './float/tilt.js';
import { type Verdict, verdictOf } from './float/verdict.js';
import { waterDensityKgM3 } from './float/water.js';
import type { Point3 } from './geometry/vec.js';
import { sub3, unit3 } from './geometry/vec3.js';
import { checkLure, coated, type LureDesign, makeLure, outsideOf } from './mass/budget.js';
import type { Lure } from './mass/item.js';
import { bellyTakenMm, plugOf } from './mass/plug.js';
import { type RoundOver, roundOver } from './mass/round-over.js';
import { type Stage, stagesOf } from './mass/stages.js';
import type { Pattern } from './pattern/pattern.js';
import type { WaterFile } from './pattern/water-schema.js';
import type { Materials } from './tables/materials.js';

/** A hole as drilled, and what is in it when the belly is shaped. */
export type FloatingHole = {
  readonly stationMm: number;
  readonly diameterMm: number;
  readonly drilledMm: number;
  /** Belly that shaping takes off on the axis. */
  readonly sandedMm: number;
  /** Height of the metal on the axis. */
  readonly plugMm: number;
  readonly plugVolumeMm3: number;
  readonly plugMassG: number;
  readonly metal: string;
};

export type Sensitivities = {
  /** One entry a hole. */
  readonly perHole: readonly HoleSensitivity[];
  readonly perTimber: TimberSensitivity;
  /** Per °C warmer. */
  readonly perC: Sensitivity;
  /** The whole change from fresh to sea water of 35 at the temperature it is for, solved in both; null where it has no like attitude there. */
  readonly freshToSalt: Sensitivity | null;
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
  readonly speed: Speed;
  /** Null where no attitude is stable. */
  readonly sensitivities: Sensitivities | null;
};

/** Fresh, 15 °C: where neither run nor pattern says. */
export const USUAL_WATER: WaterFile = { temperatureC: 15, salinityPsu: 0 };

const SEA_PSU = 35; // the open sea

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
  return immersible([hull, ...rest], [coated(design, design.body.sketch), ...rest]);
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
  const fullG = solid.volumeMm3 * densityKgM3 * 1e-6;
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
    speed: freeSpeed(
      lure.massG - fullG,
      densityKgM3,
      dragArea(piece.afloat.drag, hangingUp(solid, load)),
    ),
    sensitivities: attitudes[0].stable
      ? sensitivitiesOf(piece, blank, load, attitudes[0], water)
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
  const belly = piece.belly(hole.stationMm, hole.diameterMm);
  const plug = plugOf(belly, hole, piece.materials);
  return {
    stationMm: hole.stationMm,
    diameterMm: hole.diameterMm,
    drilledMm: hole.depthMm,
    sandedMm: bellyTakenMm(belly, hole.bellyMm),
    plugMm: plug.plugMm,
    plugVolumeMm3: plug.metalMm3,
    plugMassG: plug.metal.amount,
    metal: hole.metal,
  };
}

/** The way up of a lure that hangs in the water by its weight. */
function hangingUp({ centroidMm }: Immersible, { cgMm }: Load) {
  const lever = sub3(centroidMm, cgMm);
  return Math.hypot(...lever) > 0 ? unit3(lever) : ([0, 0, 1] as const);
}

function sensitivitiesOf(
  piece: Workpiece,
  { holes }: Blank,
  load: Load,
  attitude: Attitude,
  { temperatureC: t, salinityPsu: s }: WaterFile,
): Sensitivities {
  const at = { attitude, load };
  const inWater = (kgM3: number) => ({
    massG: load.massG,
    cgMm: load.cgMm,
    waterDensityKgM3: kgM3,
  });
  const rate = (before: number, after: number, step: number) =>
    sensitivity(
      { solid: piece.afloat.solid, ...at },
      { before: inWater(before), after: inWater(after), step },
    );
  // The equation ends at 0 and 40 °C: a step of one degree that stays inside.
  const low = Math.min(39, Math.max(0, t - 0.5));
  return {
    perHole: holes.map((_, i) => holeSensitivity(piece, holes, i, at)),
    perTimber: timberSensitivity(piece, holes, at),
    perC: rate(waterDensityKgM3(low, s), waterDensityKgM3(low + 1, s), 1),
    freshToSalt: waterChange(piece.afloat.solid, at, [
      waterDensityKgM3(t, 0),
      waterDensityKgM3(t, SEA_PSU),
    ]),
  };
}

/** Farther than this an attitude in other water is another attitude, degrees. */
const SAME_DEG = 30;

function waterChange(
  solid: Immersible,
  { attitude, load }: { readonly attitude: Attitude; readonly load: Load },
  densities: readonly [number, number],
): Sensitivity | null {
  const [a, b] = densities.map((waterDensityKgM3) => {
    const near = restAttitudes(solid, { ...load, waterDensityKgM3 })
      .filter((rest) => rest.stable)
      .map((rest) => ({ rest, far: angleBetween(rest.upInBody, attitude.upInBody) }))
      .sort((p, q) => p.far - q.far)[0];
    return near && near.far * (180 / Math.PI) < SAME_DEG ? near.rest : null;
  });
  return a && b
    ? {
        massG: 0,
        trimDeg: b.trimDeg - a.trimDeg,
        freeboardNoseMm: b.freeboardNoseMm - a.freeboardNoseMm,
        freeboardTailMm: b.freeboardTailMm - a.freeboardTailMm,
        freeboardMm: b.freeboardMm - a.freeboardMm,
      }
    : null;
}

/** What a lure afloat must hold, by means its making does not use. */
export function checkFloating({
  lure,
  load,
  solid,
  attitudes,
  verdict,
  piece,
}: Floating): string[] {
  const fullG = solid.volumeMm3 * load.waterDensityKgM3 * 1e-6;
  const afloat = load.massG < fullG * (1 - 1e-9);
  return [
    ...checkLure(lure, piece.design.body),
    ...attitudes.flatMap((a, i) => {
      const name = `${verdict}, attitude ${i + 1}`;
      const [x, y, z] = sub3(load.cgMm, a.cbMm);
      const [ux, uy, uz] = a.upInBody;
      const height = x * ux + y * uy + z * uz;
      const off = Math.hypot(x - height * ux, y - height * uy, z - height * uz);
      return [
        ...(Math.abs(Math.hypot(ux, uy, uz) - 1) <= 1e-9 ? [] : [`${name}: up is no unit vector`]),
        ...(off <= 1e-2 ? [] : [`${name}: CB is ${off} mm beside the vertical through CG`]),
        ...(!afloat || Math.abs(a.displacedG - load.massG) <= 1e-6 * load.massG
          ? []
          : [`${name}: ${a.displacedG} g displaced by ${load.massG} g`]),
      ];
    }),
  ];
}

export type ImmersedPart = {
  readonly name: string;
  readonly volumeMm3: number;
  readonly cbMm: Point3;
};

/**
 * How much of each part that keeps water out is under at an attitude, and where that pulls up: `body`
 * is the wood alone, the mesh that is written out; `coats` is what lies over it.
 */
export function immersedParts({ lure, piece }: Floating): (at: Attitude) => ImmersedPart[] {
  const wood = immersible([piece.design.body.mesh]);
  const parts = lure.displacing.map(({ name, mesh }) => ({ name, solid: immersible([mesh]) }));
  return ({ upInBody, planeOffsetMm }) => {
    const cut = (solid: Immersible) => immerse(solid, upInBody, planeOffsetMm);
    const bare = cut(wood);
    return parts
      .flatMap(({ name, solid }): ImmersedPart[] => {
        const { volumeMm3, cbMm } = cut(solid);
        if (name !== 'body') return [{ name, volumeMm3, cbMm }];
        const coatMm3 = volumeMm3 - bare.volumeMm3;
        const of = (k: 0 | 1 | 2) =>
          (volumeMm3 * cbMm[k] - bare.volumeMm3 * bare.cbMm[k]) / coatMm3;
        return [
          { name, volumeMm3: bare.volumeMm3, cbMm: bare.cbMm },
          { name: 'coats', volumeMm3: coatMm3, cbMm: [of(0), of(1), of(2)] },
        ];
      })
      .filter((part) => part.volumeMm3 > 1e-9 * parts[0].solid.volumeMm3);
  };
}
