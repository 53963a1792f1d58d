/** How far a lure that is right may lie from what was planned. */
import type { Floating } from '../afloat/floating.js';
import type { Sensitivity } from '../ballast/sensitivity.js';
import { waterG } from '../float/water.js';
import type { Item } from '../mass/item.js';
import { gPerMm3 } from '../mass/moments.js';
import { rowOf } from '../mass/row.js';
import { HOLE_DEPTH_SPREAD_MM } from '../mass/spread.js';
import { lieOf, type Pulled, perGramAt } from './pull.js';
import type { Lie } from './shop.js';
import { BAND_SIGMAS } from './weights.js';

/** Of a hole along the body, one standard deviation; common practice, no source. */
const HOLE_STATION_SPREAD_MM = 0.5;

/**
 * Two standard deviations of nose, tail and trim, in first order, each source by itself: the board's
 * density, station, depth and metal of each hole, glue, coats and fittings. What keeps water out of
 * its own (a thicker coat, a larger hook) counts with its weight under water: the little of it that
 * is dry is left out of account.
 *
 * @param pull null without a stable rest: then there is none
 */
export function lieBandOf(pull: Pulled | null): Lie | null {
  const slips = pull?.lure.slips;
  if (!slips) return null;
  const { lure } = pull;
  const sources: Source[] = [
    ...slips.perHole.flatMap(({ perStationMm, perDepthMm }) => [
      { rate: perStationMm, times: HOLE_STATION_SPREAD_MM },
      { rate: perDepthMm, times: HOLE_DEPTH_SPREAD_MM },
    ]),
    ...metalSources(pull),
    ...lure.lure.items
      .filter(({ kind }) => kind !== 'poured')
      .map((item) => sourceAt(pull, item, item.spreadG * shareUnderWater(lure, item))),
  ];
  const lies = sources.map(({ rate, times }) => lieOf(pull, rate, BAND_SIGMAS * times));
  const together = (key: keyof Lie): number | null =>
    lies.some((l) => l[key] === null) ? null : Math.hypot(...lies.map((l) => l[key] ?? 0));
  return {
    noseMm: together('noseMm'),
    tailMm: together('tailMm'),
    trimDeg: together('trimDeg'),
  };
}

type Source = { readonly rate: Sensitivity; readonly times: number };

const sourceAt = (
  pull: Pulled,
  { cgMm: [x, , z] }: Pick<Item, 'cgMm'>,
  spreadG: number,
): Source => ({ rate: perGramAt(pull, [x, z]), times: spreadG });

/** How dense the metal of each poured hole is; how much there is, the hole's depth tells. */
function metalSources(pull: Pulled): Source[] {
  const { lure: whole, holes, blank, piece } = pull.lure;
  const poured = whole.items.filter(({ kind }) => kind === 'poured');
  const filled = holes.filter((h, i) => blank.holes[i].weight === null && h.plugMassG > 0);
  return poured.map((item, i) => {
    const { metal, plugVolumeMm3 } = filled[i];
    const { spreadKgM3 } = rowOf(piece.materials.metals, metal);
    return sourceAt(pull, item, gPerMm3(spreadKgM3) * plugVolumeMm3);
  });
}

/** The timber keeps out the water of the whole body, however heavy it is, and what is inside it none. */
function shareUnderWater({ load }: Floating, { kind, massG, displacedMm3 }: Item): number {
  return kind === 'coat' || kind === 'rig'
    ? 1 - waterG(displacedMm3, load.waterDensityKgM3) / massG
    : 1;
}
