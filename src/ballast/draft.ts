/** Sets of holes that would fulfil a wish, by closed forms: what a search tries before it looks closely. */

import { LEAST_WOOD_MM } from '../blank/hole-neighbors.js';
import { dot3, sub3 } from '../geometry/vec3.js';
import type { Mass } from '../mass/item.js';
import { rowOf } from '../mass/row.js';
import type { Ballast } from '../pattern/pattern.js';
import { type Beyond, drilled, gainGMm3, type Tool } from './drill.js';
import { type Refusal, woodLeftMm, woodRefusal } from './refuse.js';
import { bored, nearestSets, slugsOf } from './weights.js';
import type { Target } from './wish.js';
import { type Hole, netOf, plugIn, type Workpiece, withHoles } from './workpiece.js';

/** What is at hand, the wish's own choices filled in. */
export type Drawer = {
  /** Small to large. */
  readonly bitsMm: readonly number[];
  readonly metals: readonly string[];
  readonly pointAngleDeg: number;
  readonly pour: Ballast['pour'];
  readonly weights: boolean;
  readonly mostHoles: number;
};

export type Draft = {
  readonly target: Target;
  readonly holes: readonly Hole[];
  readonly mass: Mass;
  /** What each hole adds to the lure, and changes of that with a mm of its depth. */
  readonly addedG: readonly number[];
  readonly gPerMm: readonly number[];
  /** Between the nearest hole and the back. */
  readonly woodMm: number;
};

export type Drafts = { readonly drafts: readonly Draft[]; readonly refusals: readonly Refusal[] };

/** Every set of holes worth trying for one state of the water that needs metal. */
export function draftsFor(
  piece: Workpiece,
  target: Target,
  { drawer, leastGmMm }: { readonly drawer: Drawer; readonly leastGmMm: number },
): Drafts {
  const sets = drawer.weights
    ? weightSets(piece, target, drawer)
    : pouredSets(piece, target, drawer);
  const drafts: Draft[] = [];
  const refusals: Refusal[] = [];
  for (const set of sets) {
    const made = 'why' in set ? set : draftOf(piece, target, set, leastGmMm);
    if ('why' in made) refusals.push(made);
    else drafts.push(made);
  }
  return { drafts, refusals };
}

function draftOf(
  piece: Workpiece,
  target: Target,
  set: readonly Hole[],
  leastGmMm: number,
): Draft | Refusal {
  const refusal = woodRefusal(piece, set);
  if (refusal) return refusal;
  const mass = withHoles(piece, set);
  const gmMm = target.bmAcrossMm - dot3(target.up, sub3(mass.cgMm, target.cbMm));
  if (gmMm < leastGmMm) return gmRefusal(set, gmMm, leastGmMm);
  const plugs = set.map((hole) => plugIn(piece, hole));
  return {
    target,
    holes: set,
    mass,
    addedG: plugs.map((plug) => netOf(piece, plug).amount),
    gPerMm: plugs.map(({ gPerMm }) => gPerMm),
    woodMm: woodLeftMm(piece, set),
  };
}

export const gmRefusal = (holes: readonly Hole[], gmMm: number, leastMm: number): Refusal => ({
  why: 'gm-too-low',
  facts: { gmMm, leastMm },
  holes,
  short: leastMm - gmMm,
});

type Tries = Iterable<readonly Hole[] | Refusal>;

/** The holes, or why the moment leaves no place for them. */
function placed(
  set: readonly Hole[] | Beyond,
  facts: Refusal['facts'],
  { trimDeg }: Target,
): readonly Hole[] | Refusal {
  if (!('beyond' in set)) return set;
  return {
    why: 'station-outside',
    facts: { ...facts, end: set.beyond, noseDownDeg: 0 - trimDeg },
    holes: [],
    short: 0,
  };
}

function* pouredSets(piece: Workpiece, target: Target, drawer: Drawer): Tries {
  for (const metal of drawer.metals) {
    const refusal = metalRefusal(piece, metal, drawer);
    if (refusal) yield refusal;
    else
      for (const diameterMm of drawer.bitsMm) {
        const { pointAngleDeg, pour } = drawer;
        yield* holesOf(piece, target, { diameterMm, pointAngleDeg, metal, pour }, drawer.mostHoles);
      }
  }
}

function* holesOf(piece: Workpiece, target: Target, tool: Tool, mostHoles: number): Tries {
  const refusal = widthRefusal(piece, tool.diameterMm);
  if (refusal) {
    yield refusal;
    return;
  }
  const gaps = mostHoles > 1 ? gapsMm(piece, tool.diameterMm) : [];
  for (const gap of [null, ...gaps]) {
    const { metal, diameterMm } = tool;
    yield placed(drilled(piece, target, tool, gap), { metal, diameterMm, gapMm: gap ?? 0 }, target);
  }
}

/** Gaps between the axes of two holes: as near as a drilling jig allows, and from there in even steps up to this share of the length. */
const WIDEST_GAP = 0.4;
const GAPS = 5;
const WEIGHT_GAPS = 3; // there are more sets of weights than of bits

/** Wood between two holes that leaves the drilling jig 2 mm of plastic between its guides: common practice, no source. */
const GUIDED_WOOD_MM = 3;

/** Whole mm. */
function gapsMm(piece: Workpiece, diameterMm: number, count = GAPS): number[] {
  const least = Math.ceil(diameterMm + GUIDED_WOOD_MM);
  const most = Math.floor(WIDEST_GAP * piece.design.body.shape.lengthMm);
  const gaps = Array.from({ length: count }, (_, k) =>
    Math.round(least + ((most - least) * k) / (count - 1)),
  );
  return most < least ? [] : [...new Set(gaps)];
}

function metalRefusal(piece: Workpiece, metal: string, drawer: Drawer): Refusal | null {
  const { densityKgM3, liquidKgM3 } = rowOf(piece.materials.metals, metal);
  if (liquidKgM3 === null) return { why: 'not-poured', facts: { metal }, holes: [], short: 0 };
  if (gainGMm3(piece, { metal, pour: drawer.pour }) > 0) return null;
  const facts = { metal, densityKgM3, timberKgM3: piece.timber.densityKgM3 };
  return { why: 'metal-too-light', facts, holes: [], short: 0 };
}

/** A bit wider than any place of the body needs no try. */
function widthRefusal(piece: Workpiece, diameterMm: number): Refusal | null {
  const { halfBreadthSquared } = piece.design.body.shape;
  const widest = Math.max(...halfBreadthSquared.knots.map((x) => halfBreadthSquared.value(x)));
  const breadthMm = 2 * Math.sqrt(Math.max(0, widest));
  const limitMm = Math.max(0, breadthMm - 2 * LEAST_WOOD_MM);
  if (diameterMm <= limitMm) return null;
  const facts = { diameterMm, breadthMm, limitMm, wallMm: LEAST_WOOD_MM };
  return { why: 'too-wide', facts, holes: [], short: diameterMm - limitMm };
}

function* weightSets(piece: Workpiece, target: Target, drawer: Drawer): Tries {
  const { bitsMm, pointAngleDeg, mostHoles } = drawer;
  const missingG = target.massG - piece.bare.massG;
  for (const metal of drawer.metals) {
    const { slugs, withoutBit } = slugsOf(piece, { metal, bitsMm, pointAngleDeg });
    if (slugs.length + withoutBit.length === 0)
      yield { why: 'no-weight', facts: { metal }, holes: [], short: 0 };
    for (const weight of withoutBit)
      yield { why: 'no-bit', facts: { weight }, holes: [], short: 0 };
    for (const set of nearestSets(piece, slugs, { missingG, mostHoles })) {
      const widest = Math.max(...set.map((slug) => slug.diameterMm));
      const gaps = set.length === 1 ? [0] : gapsMm(piece, widest, WEIGHT_GAPS);
      const weight = set.map(({ name }) => name).join(' and ');
      for (const gapMm of gaps)
        yield placed(bored(piece, target, set, gapMm), { weight, gapMm }, target);
    }
  }
}
