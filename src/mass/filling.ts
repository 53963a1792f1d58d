/** What goes into a ballast hole at the bench, before the belly is shaped. */
import type { BallastHole, Blank } from '../blank/blank.js';
import type { Materials } from '../tables/materials.js';
import { gPerMm3 } from './moments.js';
import { added, type Sums, sawnHole, sawnUpTo } from './outline.js';
import { floorOf, type Plug } from './plug.js';

export type Filling = {
  /** In g. */
  readonly metal: Sums;
  /** In g; null in a hole that is filled with metal to the sawn belly. */
  readonly glue: Sums | null;
};

/**
 * Metal and glue of a hole in the sawn blank, flush with the sawn belly.
 *
 * @param plug what is in the finished hole: metal is as dense in the blank, and a ready-made weight the same
 */
export function sawnFilling(
  {
    profile,
    hole,
    plug,
  }: { readonly profile: Blank['profile']; readonly hole: BallastHole; readonly plug: Plug },
  materials: Materials,
): Filling {
  const glue = gPerMm3(materials.glue.densityKgM3);
  const bored = sawnHole(profile, hole);
  if (hole.weight !== null) {
    const slug = added([[plug.metalMm3 / plug.metal.amount, plug.metal]]);
    return {
      metal: plug.metal,
      glue: added([
        [glue, bored],
        [-glue, slug],
      ]),
    };
  }
  const density = plug.metal.amount / plug.metalMm3;
  if (hole.fillMm === null) return { metal: added([[density, bored]]), glue: null };
  const closed = sawnUpTo(profile, hole, floorOf(hole) - hole.fillMm);
  return {
    metal: added([
      [density, bored],
      [-density, closed],
    ]),
    glue: added([[glue, closed]]),
  };
}
