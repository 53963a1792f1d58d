/** From the metal a hole shall keep once the belly is shaped, back to the depth to drill. */
import type { Floating } from '../afloat/floating.js';
import { DEPTH_STEP_MM, roundedTo } from '../ballast/drill.js';
import { type Refusal, woodRefusal } from '../ballast/refuse.js';
import { trimmed } from '../formats/number.js';
import { gPerMm3 } from '../mass/moments.js';
import { drilledForMassMm, pointCone, setDensityKgM3 } from '../mass/plug.js';
import { rowOf } from '../mass/row.js';
import { refusalText } from './ballast-words.js';

export type PlugDepth = {
  readonly name: string;
  readonly stationMm: number;
  readonly plugMassG: number;
  /** Full diameter, in the sawn blank, in steps of a tenth; null when it cannot be had. */
  readonly drillMm: number | null;
  /** Why not; null when it can. */
  readonly why: string | null;
};

/** For every hole of the lures that is poured full. */
export const plugDepths = (lures: readonly Floating[], plugMassG: number): PlugDepth[] =>
  lures.flatMap((lure) =>
    lure.pattern.ballast.flatMap((hole, index) =>
      hole.weight === null && hole.fillMm === null ? [plugDepth(lure, index, plugMassG)] : [],
    ),
  );

function plugDepth(
  { pattern, blank, piece }: Floating,
  index: number,
  plugMassG: number,
): PlugDepth {
  const hole = blank.holes[index];
  const metal = rowOf(piece.materials.metals, hole.metal);
  const told = { name: pattern.name, stationMm: hole.stationMm, plugMassG };
  const pointG = pointCone(hole, 0).amount * gPerMm3(setDensityKgM3(metal, hole.pour));
  if (plugMassG <= pointG) {
    const why = `the point of the bit alone holds ${trimmed(pointG, 2)} g`;
    return { ...told, drillMm: null, why };
  }
  const belly = piece.belly(hole.stationMm, hole.diameterMm);
  const depthMm = drilledForMassMm(belly, hole, { massG: plugMassG, metal });
  if (depthMm === null) return { ...told, drillMm: null, why: 'the body is not deep enough' };
  const drillMm = roundedTo(DEPTH_STEP_MM, depthMm);
  const refusal = woodRefusal(piece, drilledTo(pattern.ballast, index, drillMm));
  return refusal
    ? { ...told, drillMm: null, why: refusalText(refusal) }
    : { ...told, drillMm, why: null };
}

const drilledTo = (
  ballast: Floating['pattern']['ballast'],
  index: number,
  depthMm: number,
): Refusal['holes'] => ballast.map((hole, i) => (i === index ? { ...hole, depthMm } : hole));

export const plugText = (depths: readonly PlugDepth[]): string =>
  depths.length === 0
    ? 'No hole is poured full: there is no depth to tell.'
    : depths
        .map(
          ({ name, stationMm, plugMassG, drillMm, why }) =>
            `${name}, hole at station ${trimmed(stationMm, 1)} mm: ${
              drillMm === null
                ? `no depth leaves ${trimmed(plugMassG, 2)} g; ${why}.`
                : `drill ${trimmed(drillMm, 1)} mm to keep ${trimmed(plugMassG, 2)} g after shaping.`
            }`,
        )
        .join('\n');
