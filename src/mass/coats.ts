/** Sealer and coats: what their film weighs, and where. */
import type { Body } from '../body/body.js';
import type { Mesh } from '../geometry/mesh.js';
import type { Pattern } from '../pattern/pattern.js';
import type { CoatMaterial, Materials } from '../tables/materials.js';
import { type Moments, NOTHING, summed } from './moments.js';
import { rowOf } from './row.js';

type CoatLine = Pattern['coats'][number];

/** The row for a coat none of whose words is the name of another. */
const OTHER_COAT = 'other';

/**
 * The row of the table a coat goes by: the one whose name is a word of the coat's; of two the last,
 * as in English the last word says what a thing is (`epoxy primer` is a primer).
 */
export function coatRowOf(name: string, materials: Materials): string {
  const words = name.toLowerCase().split(/[^a-z0-9]+/);
  const known = words.filter((w) => w !== '' && Object.hasOwn(materials.coats, w));
  return known[known.length - 1] ?? OTHER_COAT;
}

/** Density and its spread: the file's own, which counts as weighed, or the table's. */
export function coatMaterial(
  coat: CoatLine,
  materials: Materials,
): Pick<CoatMaterial, 'densityKgM3' | 'spreadKgM3'> {
  if (coat.densityKgM3 !== undefined) return { densityKgM3: coat.densityKgM3, spreadKgM3: 0 };
  return rowOf(materials.coats, coatRowOf(coat.name, materials));
}

/** Volume of one application: the bare body's surface times the film. A true shell is a little larger: 0.8 % at 0.15 mm on a 100 mm lure. */
export const filmMm3 = (body: Body, coat: CoatLine): number =>
  body.properties.areaMm2 * coat.thicknessMm;

/** The body's surface as moments per mm²: area of the smooth surface, spread as over the mesh. */
export function surfaceOf(body: Body): Moments {
  const skin = meshSurface(body.mesh);
  return summed([[body.properties.areaMm2 / skin.amount, skin]]);
}

/** Exact for the mesh's facets: ∫x² over a triangle is its area/12 times (Σxᵢ² + (Σxᵢ)²). */
export function meshSurface({ positions, triangles }: Mesh): Moments {
  const sum = { ...NOTHING };
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t], 3 * triangles[t + 1], 3 * triangles[t + 2]];
    const [ax, ay, az] = [positions[a], positions[a + 1], positions[a + 2]];
    const [bx, by, bz] = [positions[b], positions[b + 1], positions[b + 2]];
    const [cx, cy, cz] = [positions[c], positions[c + 1], positions[c + 2]];
    const [ux, uy, uz] = [bx - ax, by - ay, bz - az];
    const [wx, wy, wz] = [cx - ax, cy - ay, cz - az];
    const area = Math.hypot(uy * wz - uz * wy, uz * wx - ux * wz, ux * wy - uy * wx) / 2;
    const [sx, sy, sz] = [ax + bx + cx, ay + by + cy, az + bz + cz];
    sum.amount += area;
    sum.x += (area * sx) / 3;
    sum.z += (area * sz) / 3;
    sum.xx += (area * (ax * ax + bx * bx + cx * cx + sx * sx)) / 12;
    sum.yy += (area * (ay * ay + by * by + cy * cy + sy * sy)) / 12;
    sum.zz += (area * (az * az + bz * bz + cz * cz + sz * sz)) / 12;
    sum.xz += (area * (ax * az + bx * bz + cx * cz + sx * sz)) / 12;
  }
  return sum;
}
