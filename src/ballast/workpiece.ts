/** The lure without its ballast, and what a hole in it does: what every try of a search shares. */
import type { BallastHole, Blank } from '../blank/blank.js';
import { uprightMouth } from '../blank/hole.js';
import { bellyAt } from '../blank/sawn-belly.js';
import type { Density } from '../blank/timber-density.js';
import type { Immersible } from '../float/immersible.js';
import { type BellyOver, bellyOver } from '../mass/belly.js';
import { type LureDesign, lureWithoutBallast } from '../mass/budget.js';
import type { Lure, Mass } from '../mass/item.js';
import { gPerMm3, type Moments, massOf, ofMass, summed } from '../mass/moments.js';
import { type Plug, plugOf } from '../mass/plug.js';
import type { Ballast } from '../pattern/pattern.js';
import type { Materials } from '../tables/materials.js';
import { type Afloat, dragFormOf } from './wish.js';

/** A hole the search proposes. */
export type Hole = Ballast;

export type Workpiece = {
  /** Holes in its blank do not count. */
  readonly design: LureDesign & { readonly blank: Pick<Blank, 'slot' | 'holes' | 'profile'> };
  readonly materials: Materials;
  readonly timber: Density;
  /** The rigged lure without ballast holes. */
  readonly bare: Lure;
  readonly afloat: Afloat;
  /** Height of the sawn belly at a station, mm. */
  readonly sawnBellyMm: (stationMm: number) => number;
  /** The finished belly over a hole's mouth; for a tilted hole by its place in the turned side view. */
  readonly belly: (placeMm: number, diameterMm: number, tiltDeg?: number) => BellyOver;
};

/**
 * Ready to be searched. The two look-ups keep what they found: a search asks for the same stations
 * again and again.
 *
 * @param water the lure's outside, which no hole changes, also as one solid, and the water it is meant for
 */
export function workpiece(
  design: Workpiece['design'],
  { materials, timber }: Pick<Workpiece, 'materials' | 'timber'>,
  {
    displacing,
    ...water
  }: Pick<Lure, 'displacing'> & {
    readonly solid: Immersible;
    readonly waterDensityKgM3: number;
  },
): Workpiece {
  const bare = lureWithoutBallast(design, materials, timber, displacing);
  const { shape } = design.body;
  const bellies = kept((tiltDeg) =>
    kept((diameterMm) => kept((placeMm) => bellyOver(shape, placeMm, diameterMm, tiltDeg))),
  );
  return {
    design,
    materials,
    timber,
    bare,
    afloat: { ...water, drag: dragFormOf(design, bare) },
    sawnBellyMm: kept((stationMm) => bellyAt(design.blank.profile.path, stationMm)),
    belly: (placeMm, diameterMm, tiltDeg = 0) => bellies(tiltDeg)(diameterMm)(placeMm),
  };
}

function kept<Result>(find: (key: number) => Result): (key: number) => Result {
  const found = new Map<number, Result>();
  return (key) => {
    let result = found.get(key);
    if (result === undefined) {
      result = find(key);
      found.set(key, result);
    }
    return result;
  };
}

export const withBelly = (piece: Workpiece, hole: Hole): BallastHole => ({
  ...hole,
  bellyMm: piece.sawnBellyMm(hole.stationMm),
});

/** The finished belly over the mouth of a hole. */
export const bellyIn = (piece: Workpiece, hole: Hole): BellyOver =>
  piece.belly(uprightMouth(withBelly(piece, hole))[0], hole.diameterMm, hole.tiltDeg);

export const plugIn = (piece: Workpiece, hole: Hole): Plug =>
  plugOf(bellyIn(piece, hole), withBelly(piece, hole), piece.materials);

/** What a hole with its metal and glue adds to the lure, less the timber it takes away; in g. */
export const netOf = ({ materials, timber }: Workpiece, { bored, metal, glue }: Plug): Moments =>
  summed([
    [1, metal],
    [gPerMm3(materials.glue.densityKgM3), glue],
    [-gPerMm3(timber.densityKgM3), bored],
  ]);

/** The lure with these holes. */
export const withHoles = (piece: Workpiece, holes: readonly Hole[]): Mass =>
  massOf(
    summed([
      [1, ofMass(piece.bare)],
      ...holes.map((hole) => [1, netOf(piece, plugIn(piece, hole))] as const),
    ]),
  );
