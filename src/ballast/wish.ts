/** What the maker wishes, as a state of the water: how much lies under, and where the center of gravity must stand. */
import { heave } from '../float/heave.js';
import { crownTop, type Immersion, immerse } from '../float/immerse.js';
import type { Immersible } from '../float/immersible.js';
import { type DragForm, dragArea, netMassG, type Speed } from '../float/speed.js';
import { form2 } from '../float/tilt.js';
import { waterG } from '../float/water.js';
import type { Point3 } from '../geometry/vec.js';
import type { LureDesign } from '../mass/budget.js';
import type { Lure } from '../mass/item.js';
import type { WishFile } from '../pattern/wish-schema.js';
import { Fault } from '../problem.js';

/** A wish that says one thing about buoyancy. */
export type Goal =
  | { readonly kind: 'freeboard'; readonly freeboardMm: number }
  | {
      readonly kind: 'dry';
      readonly dryRatio: number;
      /** The wish did not say how high; this is our own choice, to be told. */
      readonly assumed: boolean;
    }
  | { readonly kind: 'suspends' }
  | { readonly kind: 'drifts'; readonly speed: Pick<Speed, 'kind' | 'cmS'> };

/** Taken where a wish says that the lure floats and not how high: enough to be seen and to rise again. Common practice, no source. */
const ASSUMED_DRY_RATIO = 0.1;

/** @throws Fault for a wish without its speed, which `wishProblems` tells of. */
export function goalOf({ buoyancy, freeboardMm, dryRatio, speedCmS }: WishFile): Goal {
  if (buoyancy === 'suspends') return { kind: 'suspends' };
  if (buoyancy !== 'floats') {
    if (speedCmS === undefined) throw new Fault(`a wish that ${buoyancy} without a speed`);
    return { kind: 'drifts', speed: { kind: buoyancy, cmS: speedCmS } };
  }
  if (freeboardMm !== undefined) return { kind: 'freeboard', freeboardMm };
  return dryRatio === undefined
    ? { kind: 'dry', dryRatio: ASSUMED_DRY_RATIO, assumed: true }
    : { kind: 'dry', dryRatio, assumed: false };
}

/** The lure's outside in the water; no hole changes it. */
export type Afloat = {
  readonly solid: Immersible;
  readonly drag: DragForm;
  readonly waterDensityKgM3: number;
};

/** The coated body and the lip that stands out of it. */
export function dragFormOf(
  { pattern, body }: Pick<LureDesign, 'pattern' | 'body'>,
  { displacing }: Pick<Lure, 'displacing'>,
): DragForm {
  const { lip } = pattern;
  return {
    mesh: displacing[0].mesh,
    lengthMm: body.shape.lengthMm,
    lip: lip && {
      areaMm2: lip.widthMm * Math.max(0, lip.lengthMm - lip.slotDepthMm),
      angleDeg: lip.angleDeg,
    },
  };
}

export type Target = {
  /** Positive nose up. */
  readonly trimDeg: number;
  readonly up: Point3;
  /** What the lure must weigh; a speed upward so great that no lure has it makes this negative. */
  readonly massG: number;
  /** CG must stand on the vertical through this. */
  readonly cbMm: Point3;
  /** Metacentric radii: GM is these less the height of CG over CB. 0 under water. */
  readonly bmAcrossMm: number;
  readonly bmAlongMm: number;
  /** Waterplane; without end under water, where weight does not change the depth. */
  readonly areaMm2: number;
  /** Station of the waterplane's center, about which a lure trims. */
  readonly flotationMm: number;
};

/** The way to the sky in the frame of a lure that does not heel. */
export function upAt(trimDeg: number): Point3 {
  const angle = (trimDeg * Math.PI) / 180;
  return [-Math.sin(angle), 0, Math.cos(angle)];
}

/**
 * The state of the water that fulfils the goal at a trim; null for a freeboard so high that nothing
 * is left under water. Drag is that of the lure as it hangs at this trim; under way it lies nearer to
 * level and is slower (`letGo`), which the search mends.
 */
export function targetAt(goal: Goal, trimDeg: number, afloat: Afloat): Target | null {
  const { solid, waterDensityKgM3: density } = afloat;
  const up = upAt(trimDeg);
  const submerged = {
    trimDeg,
    up,
    cbMm: solid.centroidMm,
    bmAcrossMm: 0,
    bmAlongMm: 0,
    areaMm2: Infinity,
    flotationMm: solid.centroidMm[0],
  };
  const wholeG = waterG(solid.volumeMm3, density);
  switch (goal.kind) {
    case 'suspends':
      return { ...submerged, massG: wholeG };
    case 'drifts': {
      const netG = netMassG(goal.speed, density, dragArea(afloat.drag, up));
      return { ...submerged, massG: wholeG + netG };
    }
    case 'dry': {
      const { immersion } = heave(solid, up, (1 - goal.dryRatio) * solid.volumeMm3);
      return { trimDeg, up, ...floating(immersion, density) };
    }
    case 'freeboard': {
      const immersion = immerse(solid, up, crownTop(solid, up).height - goal.freeboardMm);
      return immersion.volumeMm3 > 0 ? { trimDeg, up, ...floating(immersion, density) } : null;
    }
  }
}

function floating(
  { volumeMm3, cbMm, areaMm2, centroidMm, secondMm4, tangents }: Immersion,
  density: number,
) {
  const [u, v] = tangents;
  const acrossMm4 = form2(secondMm4, [u[1], v[1]]);
  return {
    massG: waterG(volumeMm3, density),
    cbMm,
    bmAcrossMm: acrossMm4 / volumeMm3,
    bmAlongMm: (secondMm4.uu + secondMm4.vv - acrossMm4) / volumeMm3,
    areaMm2,
    flotationMm: centroidMm[0],
  };
}

/** Trims that are tried when the wish leaves the trim open, in rounds from level on. */
const OPEN_TRIMS_DEG = [[0], [-5, 5], [-10, 10], [-15, 15]];

export const wishedTrims = ({
  noseDownDeg,
}: Pick<WishFile, 'noseDownDeg'>): readonly (readonly number[])[] =>
  noseDownDeg === undefined ? OPEN_TRIMS_DEG : [[0 - noseDownDeg]];
