/** What a ballast hole does to a lure: metal and glue come, wood goes. */
import type { BallastHole } from '../blank/blank.js';
import type { Density } from '../blank/timber-density.js';
import type { Materials } from '../tables/materials.js';
import type { BellyOver } from './belly.js';
import type { Item } from './item.js';
import { gPerMm3, type Moments, massOf, summed } from './moments.js';
import { type Plug, plugOf } from './plug.js';
import { rowOf } from './row.js';
import { COAT_SPREAD_RATIO, FITTING_SPREAD_RATIO, HOLE_DEPTH_SPREAD_MM } from './spread.js';

/** An item from its sums in g. */
export const itemOf = (
  name: string,
  moments: Moments,
  {
    kind,
    displacedMm3 = 0,
    spreadG,
  }: Pick<Item, 'kind' | 'spreadG'> & { readonly displacedMm3?: number },
): Item => ({ kind, name, ...massOf(moments), displacedMm3, spreadG });

/** Anything that weighs less is nothing, g: it would have no center to speak of. */
export const NOTHING_G = 1e-9;

/** The metal of a hole: a plug that was poured, or a ready-made weight. */
export function metalItem(name: string, plug: Plug, hole: BallastHole, materials: Materials): Item {
  const spreadG =
    hole.weight === null
      ? Math.hypot(
          plug.gPerMm * HOLE_DEPTH_SPREAD_MM,
          gPerMm3(rowOf(materials.metals, hole.metal).spreadKgM3) * plug.metalMm3,
        )
      : plug.metal.amount * FITTING_SPREAD_RATIO;
  return itemOf(name, plug.metal, { kind: hole.weight === null ? 'poured' : 'weight', spreadG });
}

export const metalName = (hole: Pick<BallastHole, 'weight'>, index: number): string =>
  `${hole.weight === null ? 'plug' : 'weight'} ${index + 1}`;

/** Glue by its volume; its film is as uncertain as a coat's. */
export const glueItem = (volume: Moments, materials: Materials): Item => {
  const moments = summed([[gPerMm3(materials.glue.densityKgM3), volume]]);
  return itemOf('glue', moments, { kind: 'glue', spreadG: moments.amount * COAT_SPREAD_RATIO });
};

/**
 * What one hole adds to a lure without it: its metal, its glue if any, and the timber it takes away,
 * whose mass, inertia and spread are negative. A lure with holes is the one without, and these.
 */
export function ballastItems(
  belly: BellyOver,
  hole: BallastHole,
  {
    index,
    materials,
    timber,
  }: {
    /** Place of the hole in the pattern's list, for the names. */
    readonly index: number;
    readonly materials: Materials;
    readonly timber: Density;
  },
): Item[] {
  const plug = plugOf(belly, hole, materials);
  const wood = summed([[-gPerMm3(timber.densityKgM3), plug.bored]]);
  const items = [
    itemOf('timber', wood, {
      kind: 'timber',
      spreadG: -gPerMm3(timber.spreadKgM3) * plug.bored.amount,
    }),
    ...(plug.metal.amount > NOTHING_G
      ? [metalItem(metalName(hole, index), plug, hole, materials)]
      : []),
    ...(plug.glue.amount > 0 ? [glueItem(plug.glue, materials)] : []),
  ];
  return items.filter((item) => Math.abs(item.massG) > NOTHING_G);
}
