/** What printing a part takes: its first layer, its undersides, plastic and room. */
import { convexHull } from '../../geometry/convex.js';
import { cornersOf } from '../../geometry/facet-tree.js';
import { type Mesh, meshBox } from '../../geometry/mesh.js';
import { insideRing } from '../../geometry/ring.js';
import { facetArea } from '../../geometry/surface-samples.js';
import { distanceToEdge, type Point2, type Point3 } from '../../geometry/vec.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import type { Printer } from '../printer.js';
import { spanMm, widthMm } from './span.js';
import { undersidesOf } from './undersides.js';

export type Printing = {
  /** Steepest underside that is no bridge, from the vertical. */
  readonly overhangDeg: number;
  /** Longest ceiling between walls, mm. */
  readonly bridgeMm: number;
  /** Where it needs support, printed frame; null where it prints without. */
  readonly supportAtMm: Point3 | null;
  readonly firstLayerMm2: number;
  /** From the foot of the middle of mass to the edge of the base, mm; negative: it tips over. */
  readonly standsByMm: number;
  readonly volumeMm3: number;
  readonly massG: number;
  /** Room it takes on the printer. */
  readonly sizeMm: Point3;
};

/** Lines a nozzle can lay beside the edge of a wall with nothing under them (common practice, no source). */
const LEDGE_LINES = 2;

/** @param mesh resting on z = 0 */
export function printing(mesh: Mesh, printer: Printer): Printing {
  const { ceilings, steepestDeg } = undersidesOf(mesh, printer.overhangDeg);
  const [line, ledge] = [printer.nozzleMm, LEDGE_LINES * printer.nozzleMm];
  const told = ceilings
    .filter(({ edges }) => widthMm(edges) > ledge)
    .map((ceiling) => ({ ...ceiling, bridgeMm: spanMm(ceiling, { ledge, line }) }));
  const free = told.filter((c) => c.bridgeMm === Infinity);
  const bridged = told.filter((c) => c.bridgeMm < Infinity);
  const bridgeMm = Math.max(0, ...bridged.map((c) => c.bridgeMm));
  const unheld = [...free, ...bridged.filter((c) => c.bridgeMm > printer.bridgeMm)];
  const worst = unheld.reduce((a, b) => (b.areaMm2 > a.areaMm2 ? b : a), unheld[0]);
  const { volumeMm3, centerMm } = massOf(mesh);
  const [, sizeMm] = meshBox(mesh);
  return {
    overhangDeg: Math.max(steepestDeg, ...free.map((c) => c.steepestDeg)),
    bridgeMm,
    supportAtMm: worst?.at ?? null,
    ...baseOf(mesh, centerMm),
    volumeMm3,
    massG: volumeMm3 * printer.plasticDensityKgM3 * 1e-6,
    sizeMm,
  };
}

/** A base smaller than this does not stay on the bed (common practice, no source). */
const LEAST_FIRST_LAYER = 40; // mm²

/** Flat at the bottom, enough of it, and standing by itself. */
export function checkPrinting({ firstLayerMm2, standsByMm }: Printing): JigCheck {
  return {
    flaws: flawsOf([
      [firstLayerMm2 < LEAST_FIRST_LAYER, 'first-layer', firstLayerMm2, LEAST_FIRST_LAYER],
      [!(standsByMm > 0), 'tips-over', standsByMm, 0],
    ]),
    measured: {},
  };
}

const FLAT = 1e-3; // mm

function baseOf(mesh: Mesh, [x, y]: Point3): Pick<Printing, 'firstLayerMm2' | 'standsByMm'> {
  const corners = cornersOf(mesh);
  const feet: Point2[] = [];
  let firstLayerMm2 = 0;
  for (let o = 0; o < corners.length; o += 9) {
    if (Math.max(corners[o + 2], corners[o + 5], corners[o + 8]) > FLAT) continue;
    firstLayerMm2 += facetArea(corners, o);
    for (let k = 0; k < 9; k += 3) feet.push([corners[o + k], corners[o + k + 1]]);
  }
  if (feet.length === 0) return { firstLayerMm2, standsByMm: Number.NEGATIVE_INFINITY };
  const hull = convexHull(feet);
  const toEdge = distanceToEdge([x, y], hull);
  return { firstLayerMm2, standsByMm: insideRing([x, y], hull) ? toEdge : -toEdge };
}

/** Volume and its middle, by tetrahedra from the origin. */
function massOf(mesh: Mesh): { readonly volumeMm3: number; readonly centerMm: Point3 } {
  const c = cornersOf(mesh);
  let [volume, x, y, z] = [0, 0, 0, 0];
  for (let o = 0; o < c.length; o += 9) {
    const v =
      (c[o] * (c[o + 4] * c[o + 8] - c[o + 5] * c[o + 7]) +
        c[o + 1] * (c[o + 5] * c[o + 6] - c[o + 3] * c[o + 8]) +
        c[o + 2] * (c[o + 3] * c[o + 7] - c[o + 4] * c[o + 6])) /
      6;
    volume += v;
    x += (v * (c[o] + c[o + 3] + c[o + 6])) / 4;
    y += (v * (c[o + 1] + c[o + 4] + c[o + 7])) / 4;
    z += (v * (c[o + 2] + c[o + 5] + c[o + 8])) / 4;
  }
  return { volumeMm3: volume, centerMm: [x / volume, y / volume, z / volume] };
}
