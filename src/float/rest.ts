/** How a lure can lie still in the water. */
import type { Point3 } from '../geometry/vec.js';
import { along3, cross3, dot3, length3, sub3, unit3 } from '../geometry/vec3.js';
import { Fault } from '../problem.js';
import type { Attitude } from './attitude.js';
import { ellipsoidDepth } from './heave.js';
import { crownTop, highestCorner } from './immerse.js';
import type { Immersible } from './immersible.js';
import { type Found, findRests, hollowFrom } from './search.js';
import type { Sought } from './settle.js';
import { form2, type Symmetric2, type Tangents } from './tilt.js';
import { waterG, waterMm3 } from './water.js';

/** What the water carries, and where the tail is. */
export type Load = {
  readonly massG: number;
  readonly cgMm: Point3;
  readonly waterDensityKgM3: number;
  /** Tail's station, for the freeboard there. */
  readonly lengthMm: number;
};

/** A lure this near its full displacement (relative) counts as wholly under: what is left dry has no waterplane to speak of. */
const UNDER = 1e-9;

/** Of the size, a thousandth of a mm for a lure: CG and CB so near each other leave a sunk lure in any attitude; it is what the mesh's center is off the true one. */
const TOGETHER = 5e-5;

/** Numbers below this, in a unit vector, are rounding: they are set to zero so that 0° and 180° are not −0° and −180°. */
const SNAP = 1e-11;

export const displacedMm3 = ({ massG, waterDensityKgM3 }: Load): number =>
  waterMm3(massG, waterDensityKgM3);

/** Whether the lure cannot float: it weighs as much as all the water it can displace, or more. */
export const isUnder = (solid: Immersible, load: Load): boolean =>
  displacedMm3(load) >= (1 - UNDER) * solid.volumeMm3;

/**
 * Every attitude in which the solid with this load lies still, stable and not: stable ones first,
 * then by energy, lowest first; of those with the same energy the most upright first, and of mirror
 * twins the one heeled port down.
 *
 * A lure that is wholly under hangs with its center of gravity below that of buoyancy, or stands,
 * not stable, with it above; if the two are together it stays as it is put, told as one attitude,
 * upright and not stable. Where the energy is level along a line of attitudes (a round log weighted
 * in its middle), one of them is told, not stable, and stands for all.
 *
 * Displaced and own mass agree to 1e-12, and CB stands on the vertical through CG to 1e-10 of the
 * size; to 1e-4 along a neutral direction.
 *
 * @throws Fault unless mass and water density are more than nothing and all is finite
 */
export function restAttitudes(solid: Immersible, load: Load): Attitude[] {
  assertLoad(load);
  if (isUnder(solid, load)) return hanging(solid, load);
  const sought = soughtFor(solid, load);
  return inOrder(
    findRests(sought).map((rest) => floating(sought, load, rest)),
    sought.sizeMm,
  );
}

/**
 * The stable attitude to which a lure turns when it is let go at a tilt; null when there is none near.
 * Quicker than all of them, for a lure that is only changed a little.
 *
 * @param up unit vector to the sky
 */
export function restNear(solid: Immersible, load: Load, up: Point3): Attitude | null {
  assertLoad(load);
  const near = isUnder(solid, load) ? hanging(solid, load)[0] : restFrom(solid, load, up);
  return near?.stable ? near : null;
}

function restFrom(solid: Immersible, load: Load, up: Point3): Attitude | null {
  const sought = soughtFor(solid, load);
  const rest = hollowFrom(sought, up);
  return rest && floating(sought, load, rest);
}

function assertLoad({ massG, cgMm, waterDensityKgM3, lengthMm }: Load): void {
  const finite = [massG, waterDensityKgM3, lengthMm, ...cgMm].every(Number.isFinite);
  if (!finite || massG <= 0 || waterDensityKgM3 <= 0) {
    throw new Fault(
      `lure of ${massG} g at ${cgMm.join(', ')} in water of ${waterDensityKgM3} kg/m³`,
    );
  }
}

function soughtFor(solid: Immersible, load: Load): Sought {
  const volumeMm3 = displacedMm3(load);
  return {
    solid,
    volumeMm3,
    cgMm: load.cgMm,
    depth: ellipsoidDepth(volumeMm3 / solid.volumeMm3),
    sizeMm: Math.cbrt(volumeMm3),
  };
}

function floating(sought: Sought, load: Load, rest: Found): Attitude {
  const { solid } = sought;
  const up = snapped(rest.up);
  const { immersion, stiffness, planeOffsetMm } = rest;
  return told(solid, load, {
    up,
    planeOffsetMm,
    stable: rest.eigen.low > 0 && !rest.neutral,
    neutral: rest.neutral,
    volumeMm3: immersion.volumeMm3,
    cbMm: immersion.cbMm,
    energyMm: dot3(up, sub3(load.cgMm, immersion.cbMm)),
    ...metacentric(stiffness, immersion.tangents, up),
  });
}

/** Wholly under: buoyancy acts in the center of the solid whatever the attitude. */
function hanging(solid: Immersible, load: Load): Attitude[] {
  const lever = sub3(load.cgMm, solid.centroidMm);
  const apart = length3(lever);
  const sizeMm = Math.cbrt(solid.volumeMm3);
  const together = apart <= TOGETHER * sizeMm;
  const down: Point3 = together ? [0, 0, -1] : unit3(lever);
  const ups: Point3[] = together ? [[0, 0, 1]] : [along3([0, 0, 0], -1, down), down];
  return ups.map((way, i) => {
    const up = snapped(way);
    const energyMm = together ? 0 : i === 0 ? -apart : apart;
    return told(solid, load, {
      up,
      planeOffsetMm: highestCorner(solid, up).height,
      stable: !together && i === 0,
      neutral: together,
      volumeMm3: solid.volumeMm3,
      cbMm: solid.centroidMm,
      energyMm,
      gmAcrossMm: 0 - energyMm,
      gmAlongMm: 0 - energyMm,
    });
  });
}

type Rest = Pick<
  Attitude,
  'stable' | 'neutral' | 'planeOffsetMm' | 'cbMm' | 'gmAcrossMm' | 'gmAlongMm'
> & {
  readonly up: Point3;
  readonly volumeMm3: number;
  readonly energyMm: number;
};

function told(solid: Immersible, load: Load, rest: Rest): Attitude {
  const { up, planeOffsetMm, volumeMm3 } = rest;
  return {
    stable: rest.stable,
    neutral: rest.neutral,
    upInBody: up,
    planeOffsetMm,
    displacedG: waterG(volumeMm3, load.waterDensityKgM3),
    displacedMm3: volumeMm3,
    cbMm: rest.cbMm,
    ...anglesOf(up),
    gmAcrossMm: rest.gmAcrossMm,
    gmAlongMm: rest.gmAlongMm,
    freeboardNoseMm: 0 - planeOffsetMm,
    freeboardTailMm: load.lengthMm * up[0] - planeOffsetMm,
    freeboardMm: crownTop(solid, up).height - planeOffsetMm,
    dryRatio: Math.max(0, 1 - volumeMm3 / solid.volumeMm3),
    cgAboveCbMm: rest.energyMm,
  };
}

const DEG = 180 / Math.PI;

/** Trim (nose up positive) and heel (port down positive, −180 < heel ≤ 180) of a direction to the sky. */
export function anglesOf([x, y, z]: Point3): Pick<Attitude, 'trimDeg' | 'heelDeg'> {
  return {
    trimDeg: 0 - Math.asin(Math.min(1, Math.max(-1, x))) * DEG,
    heelDeg: y === 0 && z === 0 ? 0 : Math.atan2(0 - y, z) * DEG,
  };
}

/** On end: the long axis within 0.1° of the vertical. */
const ON_END = Math.sin(0.1 / DEG);

export const isOnEnd = (up: Point3): boolean => Math.hypot(up[1], up[2]) < ON_END;

/** The lure's long axis (aft), or for a lure on end its port side, laid into the surface: the axis of heel. */
export function heelAxis(up: Point3): Point3 {
  const axis: Point3 = isOnEnd(up) ? [0, 1, 0] : [1, 0, 0];
  return unit3(along3(axis, -dot3(axis, up), up));
}

function metacentric(stiffness: Symmetric2, [u, v]: Tangents, up: Point3) {
  const along = heelAxis(up);
  const across = cross3(along, up);
  const height = (way: Point3) => form2(stiffness, [dot3(way, u), dot3(way, v)]);
  return { gmAcrossMm: height(across), gmAlongMm: height(along) };
}

function snapped(up: Point3): Point3 {
  const [x, y, z] = up.map((value) => (Math.abs(value) < SNAP ? 0 : value));
  return [x, y, z];
}

/** Energies that differ by rounding only are level, so that twins have a fixed order. */
function inOrder(attitudes: readonly Attitude[], sizeMm: number): Attitude[] {
  const key = (a: Attitude) => [
    a.stable ? 0 : 1,
    Math.round(a.cgAboveCbMm / (1e-8 * sizeMm)),
    Math.round(Math.abs(a.heelDeg) * 1e4),
    -Math.round(a.heelDeg * 1e4),
    -Math.round(a.trimDeg * 1e4),
  ];
  return attitudes
    .map((attitude) => ({ attitude, key: key(attitude) }))
    .sort((a, b) => a.key.map((k, i) => k - b.key[i]).find((d) => d !== 0) ?? 0)
    .map(({ attitude }) => attitude);
}
