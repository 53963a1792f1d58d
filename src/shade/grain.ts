/**
 * Lines on wood, so that it is told from plastic in black and white. Wood is thought of as cut by
 * parallel sheets along its grain; a line is drawn where one comes to the surface: along the grain on
 * faces that run with it, slanting on end grain.
 */
import type { Point3 } from '../geometry/vec.js';
import { along3, dot3 } from '../geometry/vec3.js';
import type { Seen } from './model.js';
import type { Body } from './scene.js';
import { asSeen } from './view.js';

/** True where a point that a facet is seen at lies on a line. */
export type Grain = (facet: number, x: number, y: number, z: number) => boolean;

/** Across the sheets, in the mesh's frame: square to x, and along no face of a sawn blank. */
const ACROSS: Point3 = [0, 0.6, 0.8];

/** Where sheets lie this flat to a facet (sine of the angle), their lines would run far apart: none are drawn. */
const LEAST_SLANT = 0.15;

/** Null when nothing is of wood. Sheets lie `apartMm` apart; a line is `lineMm` wide in the picture. */
export function grainOf(seen: Seen, apartMm: number, lineMm: number): Grain | null {
  const sheets = seen.bodies.map((body) => (body.tone === 'wood' ? sheetsOf(seen, body) : null));
  if (sheets.every((s) => s === null)) return null;
  const widths = facetWidths(seen, sheets, lineMm);
  const flat = sheets.map((s) => s ?? { across: ACROSS, offset: 0 });
  return (facet, x, y, z) => {
    const width = widths[facet];
    if (width === 0) return false;
    const { across, offset } = flat[seen.bodyOf[facet]];
    const sheet = (across[0] * x + across[1] * y + across[2] * z - offset) / apartMm;
    return (sheet - Math.floor(sheet)) * apartMm < width;
  };
}

/** Sheets are where across · p − offset is a whole number of their distances, as seen. */
type Sheets = { readonly across: Point3; readonly offset: number };

function sheetsOf({ axes }: Seen, { matrix: m }: Body): Sheets {
  const columns = [0, 4, 8, 12].map((i): Point3 => asSeen(axes, [m[i], m[i + 1], m[i + 2]]));
  const across = [0, 1, 2].reduce<Point3>((d, k) => along3(d, ACROSS[k], columns[k]), [0, 0, 0]);
  return { across, offset: dot3(across, columns[3]) };
}

/** How much of the way through the sheets a line takes on each facet; 0 where there are none. */
function facetWidths(
  { normals, bodyOf }: Seen,
  sheets: readonly (Sheets | null)[],
  lineMm: number,
) {
  const widths = new Float32Array(bodyOf.length);
  for (let f = 0; f < widths.length; f++) {
    const across = sheets[bodyOf[f]]?.across;
    if (!across || normals[3 * f + 2] <= 0) continue;
    widths[f] =
      lineMm * sheetsPerMm(across, normals[3 * f], normals[3 * f + 1], normals[3 * f + 2]);
  }
  return widths;
}

/** How much of the way through the sheets a mm of the picture is on a facet; 0 where they lie too flat to it. */
function sheetsPerMm([ax, ay, az]: Point3, nx: number, ny: number, nz: number): number {
  const facing = ax * nx + ay * ny + az * nz;
  if (1 - facing * facing < LEAST_SLANT * LEAST_SLANT) return 0;
  return Math.hypot(ax - (az * nx) / nz, ay - (az * ny) / nz);
}
