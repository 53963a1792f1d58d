/** Ready-made weights for a wanted mass: which, in what hole, and where. */
import { bellyHeight, highestBellyMm } from '../mass/belly.js';
import { gPerMm3 } from '../mass/moments.js';
import type { Ballast } from '../pattern/pattern.js';
import type { Weight } from '../tables/materials.js';
import {
  type Beyond,
  DEPTH_STEP_MM,
  momentOf,
  momentOfMass,
  roundedTo,
  STATION_STEP_MM,
  stationFor,
} from './drill.js';
import { LEAST_METAL_MM } from './refuse.js';
import type { Target } from './wish.js';
import { type Hole, type Workpiece, withHoles } from './workpiece.js';

/** A weight, and the bit that bores its hole. */
export type Slug = Pick<Ballast, 'diameterMm' | 'pointAngleDeg' | 'metal'> & {
  readonly name: string;
  readonly weight: Weight;
};

/** How many of the sets nearest in mass are tried, of each number of weights and each metal. */
const NEAREST_SETS = 3;

/** Weights of a metal, each with the next bit that takes it; those too wide for every bit are left out. */
export function slugsOf(
  { materials }: Pick<Workpiece, 'materials'>,
  {
    metal,
    bitsMm,
    pointAngleDeg,
  }: { readonly metal: string; readonly bitsMm: readonly number[]; readonly pointAngleDeg: number },
): { readonly slugs: Slug[]; readonly withoutBit: string[] } {
  const rows = Object.entries(materials.weights).filter(([, weight]) => weight.metal === metal);
  const slugs: Slug[] = [];
  const withoutBit: string[] = [];
  for (const [name, weight] of rows) {
    const diameterMm = bitsMm.find((bit) => bit >= weight.diameterMm - 1e-9);
    if (diameterMm === undefined) withoutBit.push(name);
    else slugs.push({ name, weight, diameterMm, pointAngleDeg, metal });
  }
  return { slugs, withoutBit };
}

/** Sets of one or two weights, nearest to the mass that is missing first; two are put fore and aft in both orders. */
export function nearestSets(
  piece: Workpiece,
  slugs: readonly Slug[],
  { missingG, mostHoles }: { readonly missingG: number; readonly mostHoles: number },
): Slug[][] {
  const miss = (set: readonly Slug[]) =>
    Math.abs(set.reduce((sum, slug) => sum + gainG(piece, slug), 0) - missingG);
  const nearest = (sets: readonly Slug[][]) =>
    sets
      .map((set) => ({ set, miss: miss(set) }))
      .sort((a, b) => a.miss - b.miss)
      .slice(0, NEAREST_SETS)
      .map(({ set }) => set);
  const pairs = mostHoles > 1 ? slugs.flatMap((a, i) => slugs.slice(i).map((b) => [a, b])) : [];
  return [
    ...nearest(slugs.map((slug) => [slug])),
    ...nearest(pairs).flatMap(([a, b]) =>
      a === b
        ? [[a, b]]
        : [
            [a, b],
            [b, a],
          ],
    ),
  ];
}

/** What a weight adds to the lure, its hole as deep as need be and closed with glue. */
function gainG({ materials, timber }: Workpiece, { weight, diameterMm }: Slug): number {
  const area = (Math.PI / 4) * diameterMm ** 2;
  const slugMm3 = (Math.PI / 4) * weight.diameterMm ** 2 * weight.lengthMm;
  const bored = area * (weight.lengthMm + LEAST_METAL_MM);
  return (
    weight.massG +
    gPerMm3(materials.glue.densityKgM3) * (bored - slugMm3) -
    gPerMm3(timber.densityKgM3) * bored
  );
}

/** The holes for a set of weights, each just deep enough to cover its weight, at the station the moment asks for. */
export function bored(
  piece: Workpiece,
  target: Target,
  set: readonly Slug[],
  gapMm: number,
): readonly Hole[] | Beyond {
  const offsets = set.length === 1 ? [0] : [-gapMm / 2, gapMm / 2];
  const reachMm = Math.max(...set.map((slug, i) => slug.diameterMm / 2 + Math.abs(offsets[i])));
  const holesAt = (stationMm: number) =>
    set.map((slug, i) => holeFor(piece, slug, stationMm + offsets[i]));
  const gains = set.map((slug) => gainG(piece, slug));
  const addedG = gains.reduce((sum, gain) => sum + gain, 0);
  const { shape } = piece.design.body;
  // Where the weights are, near enough: the rim of a hole is a little higher than its axis.
  const roughly = (stationMm: number) =>
    set.reduce(
      (sum, { weight }, i) => {
        const x = stationMm + offsets[i];
        const z = bellyHeight(shape, x, 0) + LEAST_METAL_MM + weight.lengthMm / 2;
        return sum + momentOf(target, gains[i], gains[i] * x, gains[i] * z);
      },
      momentOfMass(target, piece.bare),
    );
  const found = stationFor(piece, target, { reachMm, addedG, moment: roughly });
  if (typeof found !== 'number') return found;
  const exact = momentOfMass(target, withHoles(piece, holesAt(found)));
  const off = exact / (addedG * target.up[2]);
  const mended = found - roundedTo(STATION_STEP_MM, off);
  return holesAt(Math.min(shape.lengthMm - reachMm, Math.max(reachMm, mended)));
}

/** Just deep enough to cover the weight. */
export function holeFor(piece: Workpiece, slug: Slug, stationMm: number): Hole {
  const { name, weight, diameterMm, pointAngleDeg, metal } = slug;
  const { shape } = piece.design.body;
  const highestMm = highestBellyMm(shape, stationMm, weight.diameterMm);
  const needed = highestMm + LEAST_METAL_MM + weight.lengthMm - piece.sawnBellyMm(stationMm);
  return {
    stationMm,
    tiltDeg: 0,
    diameterMm,
    pointAngleDeg,
    metal,
    depthMm: Math.ceil(needed / DEPTH_STEP_MM - 1e-9) / Math.round(1 / DEPTH_STEP_MM),
    pour: 'topped-up',
    fillMm: null,
    weight: name,
  };
}
