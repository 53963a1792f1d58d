/** Judges a layout by the solids where they come to lie, corner by corner. */
import type { Mesh } from '../geometry/mesh.js';
import type { Matrix } from '../solid/placement.js';

export type BedFlaw = {
  readonly code: 'off-bed' | 'too-close' | 'not-laid-once';
  /** Numbers of the parts it is about. */
  readonly parts: readonly number[];
  readonly measured: number;
  readonly limit: number;
};

/** A part printed at a place of one of the beds. */
export type LaidPart = { readonly part: number; readonly at: Matrix };

export type LaidOut = {
  readonly meshes: readonly Mesh[];
  /** Bed by bed. */
  readonly beds: readonly (readonly LaidPart[])[];
  /** Parts said to fit no bed. */
  readonly tooLarge: readonly number[];
  readonly bed: { readonly xMm: number; readonly yMm: number };
  readonly gapMm: number;
};

const ROUNDING_MM = 2e-6; // the packer may reach out of the bed by a millionth

/** Everything wrong with a layout: a part left out, laid twice, off the bed (z = 0 included), or too near another. */
export function checkBedLayout({ meshes, beds, tooLarge, bed, gapMm }: LaidOut): BedFlaw[] {
  const flaws: BedFlaw[] = [];
  for (const part of meshes.keys()) {
    const times = beds.flat().filter((p) => p.part === part).length;
    const limit = tooLarge.includes(part) ? 0 : 1;
    if (times !== limit)
      flaws.push({ code: 'not-laid-once', parts: [part], measured: times, limit });
  }
  for (const printed of beds) {
    const boxes = printed.map(({ part, at }) => ({ part, ...reachOf(meshes[part], at) }));
    for (const [i, { part, low, high }] of boxes.entries()) {
      const off = Math.max(
        -low[0],
        -low[1],
        Math.abs(low[2]),
        high[0] - bed.xMm,
        high[1] - bed.yMm,
      );
      if (off > ROUNDING_MM)
        flaws.push({ code: 'off-bed', parts: [part], measured: off, limit: 0 });
      for (const other of boxes.slice(0, i)) {
        const apart = Math.max(
          ...[0, 1].map((k) => Math.max(low[k] - other.high[k], other.low[k] - high[k])),
        );
        if (apart < gapMm - ROUNDING_MM) {
          const parts = [other.part, part];
          flaws.push({ code: 'too-close', parts, measured: apart, limit: gapMm });
        }
      }
    }
  }
  return flaws;
}

function reachOf({ positions }: Mesh, m: Matrix) {
  const [low, high] = [
    [Infinity, Infinity, Infinity],
    [-Infinity, -Infinity, -Infinity],
  ];
  for (let v = 0; v < positions.length; v += 3) {
    for (let k = 0; k < 3; k++) {
      const at =
        m[k] * positions[v] + m[4 + k] * positions[v + 1] + m[8 + k] * positions[v + 2] + m[12 + k];
      low[k] = Math.min(low[k], at);
      high[k] = Math.max(high[k], at);
    }
  }
  return { low, high };
}
