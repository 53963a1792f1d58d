/** Where a hole of a given bit and metal must go, and how deep, for a wanted state of the water. */

import { pointBeyondMm } from '../blank/blank.js';
import type { Mass } from '../mass/item.js';
import { gPerMm3 } from '../mass/moments.js';
import { pointCone, setDensityKgM3 } from '../mass/plug.js';
import { rowOf } from '../mass/row.js';
import type { Ballast } from '../pattern/pattern.js';
import type { Target } from './wish.js';
import type { Hole, Workpiece } from './workpiece.js';

/** A bit, and what is poured into its hole. */
export type Tool = Pick<Ballast, 'diameterMm' | 'pointAngleDeg' | 'metal' | 'pour'>;

/** Steps in which a maker can set out a station and a depth stop. */
export const STATION_STEP_MM = 0.5;
export const DEPTH_STEP_MM = 0.1;

/** The moment has the same sign wherever the holes are: they would have to go beyond the nose or tail. */
export type Beyond = { readonly beyond: 'nose' | 'tail' };

/**
 * One hole, or two of the same depth `gapMm` apart (a whole number of mm): the depth by the mass,
 * which is linear in it, and the station by the moment about the target's vertical, which rises with
 * it; station and depth rounded to what can be set out. Whether the wood allows it is asked later.
 */
export function drilled(
  piece: Workpiece,
  target: Target,
  tool: Tool,
  gapMm: number | null,
): readonly Hole[] | Beyond {
  const offsets = gapMm === null ? [0] : [-gapMm / 2, gapMm / 2];
  const reachMm = tool.diameterMm / 2 - offsets[0];
  const placedAt = (stationMm: number) => {
    const stations = offsets.map((o) => stationMm + o);
    return { stations, depthMm: depthByMass(piece, target, tool, stations) };
  };
  const found = stationFor(piece, target, {
    reachMm,
    addedG: target.massG - piece.bare.massG,
    moment: (at) => momentAbout(piece, target, tool, placedAt(at)),
  });
  if (typeof found !== 'number') return found;
  const { stations, depthMm } = placedAt(found);
  const rounded = roundedTo(DEPTH_STEP_MM, depthMm);
  return stations.map(
    (stationMm): Hole => ({
      ...tool,
      stationMm,
      tiltDeg: 0,
      depthMm: rounded,
      fillMm: null,
      weight: null,
    }),
  );
}

/** To the nearest whole step, without the dust of binary fractions. */
export const roundedTo = (step: number, value: number): number =>
  Math.round(value / step) / Math.round(1 / step);

const MOST_TRIES = 8; // two or three do: the moment is nearly straight in the station

/**
 * The station (of a hole, or of the middle of two) at which the lure's moment about the target's
 * vertical is nearest to zero, in whole steps. Its slope is close to the mass that is added there, so
 * that a first guess and one look usually find it.
 *
 * @param moment in g mm, rising with the station
 * @param reachMm how near to nose or tail the station may be
 */
export function stationFor(
  { design, bare }: Workpiece,
  target: Target,
  {
    reachMm,
    addedG,
    moment,
  }: {
    readonly reachMm: number;
    readonly addedG: number;
    readonly moment: (atMm: number) => number;
  },
): number | Beyond {
  const least = Math.ceil(reachMm / STATION_STEP_MM);
  const most = Math.floor((design.body.shape.lengthMm - reachMm) / STATION_STEP_MM);
  if (least > most) return { beyond: 'nose' };
  const inside = (step: number) => Math.min(most, Math.max(least, Math.round(step)));
  const slope = addedG * target.up[2] * STATION_STEP_MM;
  const lever = momentOfMass(target, bare);
  let step = inside(target.cbMm[0] / STATION_STEP_MM - lever / slope);
  let best = { step, off: Infinity };
  for (let i = 0; i < MOST_TRIES; i++) {
    const off = moment(step * STATION_STEP_MM) / slope;
    if (Math.abs(off) >= Math.abs(best.off)) break;
    best = { step, off };
    step = inside(step - off);
    if (step === best.step) break;
  }
  if (best.step === least && best.off > 0.5) return { beyond: 'nose' };
  if (best.step === most && best.off < -0.5) return { beyond: 'tail' };
  return best.step * STATION_STEP_MM;
}

/** What a mm³ of hole adds to the lure: metal for timber, g. */
export const gainGMm3 = (piece: Workpiece, { metal, pour }: Pick<Tool, 'metal' | 'pour'>): number =>
  gPerMm3(setDensityKgM3(rowOf(piece.materials.metals, metal), pour) - piece.timber.densityKgM3);

/** The depth of all the holes at which the lure weighs what it must, as if the wood went on for ever. */
function depthByMass(
  piece: Workpiece,
  target: Target,
  tool: Tool,
  stations: readonly number[],
): number {
  let area = 0;
  let atZero = 0;
  for (const stationMm of stations) {
    const { disk, height } = piece.belly(stationMm, tool.diameterMm);
    const cone = (disk.one * pointBeyondMm(tool)) / 3;
    area += disk.one;
    atZero += piece.sawnBellyMm(stationMm) * disk.one - height.one + cone;
  }
  return ((target.massG - piece.bare.massG) / gainGMm3(piece, tool) - atZero) / area;
}

/** m (p − B) · t from an amount and its first moments. */
export const momentOf = ({ up, cbMm }: Target, amount: number, x: number, z: number): number =>
  (x - cbMm[0] * amount) * up[2] - (z - cbMm[2] * amount) * up[0];

/** The same of a mass in its center. */
export const momentOfMass = (
  target: Target,
  { massG, cgMm }: Pick<Mass, 'massG' | 'cgMm'>,
): number => momentOf(target, massG, massG * cgMm[0], massG * cgMm[2]);

/** Σ m (p − B) · t about the target's center of buoyancy, t in the surface and aft: 0 where CG stands on its vertical. */
function momentAbout(
  piece: Workpiece,
  target: Target,
  tool: Tool,
  { stations, depthMm }: { readonly stations: readonly number[]; readonly depthMm: number },
): number {
  let sum = momentOfMass(target, piece.bare);
  const gain = gainGMm3(piece, tool);
  for (const stationMm of stations) {
    const floorMm = piece.sawnBellyMm(stationMm) + depthMm;
    const { disk, height, halfSquare } = piece.belly(stationMm, tool.diameterMm);
    const cone = pointCone({ ...tool, stationMm }, floorMm);
    const amount = floorMm * disk.one - height.one + cone.amount;
    const x = floorMm * disk.x - height.x + cone.x;
    const z = (floorMm ** 2 / 2) * disk.one - halfSquare.one + cone.z;
    sum += gain * momentOf(target, amount, x, z);
  }
  return sum;
}
