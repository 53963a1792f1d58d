/** Which part of a lure keeps how much water out at an attitude. */
import type { Attitude } from '../float/attitude.js';
import { immerse } from '../float/immerse.js';
import { type Immersible, immersible } from '../float/immersible.js';
import type { Point3 } from '../geometry/vec.js';
import type { Floating } from './floating.js';

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
