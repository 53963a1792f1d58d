/** What goes into the ballast holes: per hole, to melt, and to buy. */
import { plugIn } from '../ballast/workpiece.js';
import type { BallastHole } from '../blank/blank.js';
import { sawnFilling } from '../mass/filling.js';
import { rowOf } from '../mass/row.js';
import type { Materials } from '../tables/materials.js';
import type { BallastFill, Melt, WeightToBuy } from './shop.js';
import type { ShopLine } from './work.js';

/** Metals that no home shop pours are glued in: a ready-made weight, or a piece of rod. */
export const isPoured = ({ metal, weight }: BallastHole, { metals }: Materials): boolean =>
  weight === null && rowOf(metals, metal).liquidKgM3 !== null;

export function fillsOf({ blank, floating }: ShopLine): BallastFill[] {
  const { piece, holes } = floating;
  const { materials } = piece;
  return blank.holes.map((hole, i) => {
    const filling = sawnFilling(
      { profile: blank.profile, hole, plug: plugIn(piece, hole) },
      materials,
    );
    const poured = isPoured(hole, materials);
    return {
      number: i + 1,
      metal: hole.metal,
      pour: poured ? hole.pour : null,
      weight: hole.weight,
      stationMm: hole.stationMm,
      filledG: filling.metal.amount,
      afterShapingG: holes[i].plugMassG,
      fillMm: hole.fillMm,
      meltsAtC: poured ? (rowOf(materials.metals, hole.metal).meltsAtC ?? null) : null,
    };
  });
}

/** Lures of a line, and what goes into one of them. */
export type Filled = { readonly count: number; readonly ballast: readonly BallastFill[] };

/** One row a metal that is poured, in the order they first come up. */
export function meltFor(filled: readonly Filled[], { metals }: Materials): Melt[] {
  const poured = filled.flatMap(({ count, ballast }) =>
    ballast.filter((b) => b.pour !== null).map((b) => ({ ...b, count })),
  );
  return [...new Set(poured.map((b) => b.metal))].map((metal) => {
    const like = poured.filter((b) => b.metal === metal);
    const netG = like.reduce((sum, b) => sum + b.count * b.filledG, 0);
    const { meltExtraRatio: allowanceRatio, meltsAtC = null } = rowOf(metals, metal);
    return {
      metal,
      holes: like.reduce((sum, b) => sum + b.count, 0),
      netG,
      allowanceRatio,
      totalG: netG * (1 + allowanceRatio),
      meltsAtC,
    };
  });
}

/** One row a name, in the order they first come up. */
export function weightsFor(filled: readonly Filled[], { weights }: Materials): WeightToBuy[] {
  const glued = filled.flatMap(({ count, ballast }) =>
    ballast.flatMap(({ weight }) => (weight === null ? [] : [{ weight, count }])),
  );
  return [...new Set(glued.map((g) => g.weight))].map((name) => {
    const { metal, massG, diameterMm, lengthMm } = rowOf(weights, name);
    const count = glued.reduce((sum, g) => sum + (g.weight === name ? g.count : 0), 0);
    return { name, metal, massG, diameterMm, lengthMm, count };
  });
}
