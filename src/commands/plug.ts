/** From the metal a hole shall keep once the belly is shaped, back to the depth to drill. */
import type { Floating } from '../afloat/floating.js';
import { trimmed } from '../formats/number.js';
import { drilledForMassMm } from '../mass/plug.js';
import { rowOf } from '../mass/row.js';

export type PlugDepth = {
  readonly stationMm: number;
  readonly plugMassG: number;
  /** Full diameter, in the sawn blank; null when the body is not deep enough there. */
  readonly drillMm: number | null;
};

/** For every hole of the lures that is poured full. */
export const plugDepths = (lures: readonly Floating[], plugMassG: number): PlugDepth[] =>
  lures.flatMap(({ blank, piece }) =>
    blank.holes
      .filter(({ weight, fillMm }) => weight === null && fillMm === null)
      .map((hole) => {
        const metal = rowOf(piece.materials.metals, hole.metal);
        const belly = piece.belly(hole.stationMm, hole.diameterMm);
        const drillMm = drilledForMassMm(belly, hole, { massG: plugMassG, metal });
        return { stationMm: hole.stationMm, plugMassG, drillMm };
      }),
  );

export const plugText = (depths: readonly PlugDepth[]): string =>
  depths.length === 0
    ? 'No hole is poured full: there is no depth to tell.'
    : depths
        .map(({ stationMm, plugMassG, drillMm }) =>
          drillMm === null
            ? `At station ${trimmed(stationMm, 1)} mm the body is not deep enough for a plug of ${trimmed(plugMassG, 2)} g.`
            : `For a plug of ${trimmed(plugMassG, 2)} g after shaping, drill ${trimmed(drillMm, 1)} mm at station ${trimmed(stationMm, 1)} mm.`,
        )
        .join('\n');
