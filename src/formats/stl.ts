/**
 * Binary STL (80-byte header, count, 50 bytes a facet, little-endian; layout after M. Burns,
 * "Automated Fabrication", 1993, section 6.5). The format knows no unit; ours is always mm and the
 * header says so.
 */
import type { Mesh } from '../geometry/mesh.js';
import { roundedToFloat32 } from '../geometry/weld.js';
import { Fault } from '../problem.js';

const HEADER_BYTES = 80;
const FACET_BYTES = 50;

/**
 * The mesh as a binary STL file of 84 + 50 n bytes; normals are computed from the rounded corners.
 * A facet that rounding left without area has normal 0, as slicers expect.
 * @throws Fault if the mesh is no longer closed when its corners are rounded to 32-bit floats, or
 * the name is not printable ASCII.
 */
export function stl(mesh: Mesh, name: string): Uint8Array {
  const { positions, triangles } = roundedToFloat32(mesh.positions, mesh.triangles);
  const count = triangles.length / 3;
  const bytes = new Uint8Array(HEADER_BYTES + 4 + FACET_BYTES * count);
  bytes.set(header(name));
  const view = new DataView(bytes.buffer);
  view.setUint32(HEADER_BYTES, count, true);
  const facet = new Float64Array(12);
  for (let t = 0; t < count; t++) {
    for (let k = 0; k < 9; k++) {
      facet[3 + k] = positions[3 * triangles[3 * t + Math.floor(k / 3)] + (k % 3)];
    }
    setNormal(facet);
    const at = HEADER_BYTES + 4 + FACET_BYTES * t;
    for (let i = 0; i < 12; i++) view.setFloat32(at + 4 * i, facet[i], true);
  }
  return bytes;
}

/** Never begins with "solid": readers take that for the text form. */
function header(name: string): Uint8Array {
  if (!/^[\x20-\x7e]*$/.test(name)) throw new Fault(`STL name ${JSON.stringify(name)}`);
  const text = `blankwright, unit mm: ${name}`.slice(0, HEADER_BYTES).padEnd(HEADER_BYTES);
  return new TextEncoder().encode(text);
}

/** Puts the unit normal of the corners at 3 to 11 into 0 to 2. */
function setNormal(facet: Float64Array): void {
  const [, , , ax, ay, az, bx, by, bz, cx, cy, cz] = facet;
  const [ux, uy, uz, vx, vy, vz] = [bx - ax, by - ay, bz - az, cx - ax, cy - ay, cz - az];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.sqrt(nx * nx + ny * ny + nz * nz);
  // Adding 0 turns −0 into 0.
  facet[0] = size > 0 ? Math.fround(nx / size) + 0 : 0;
  facet[1] = size > 0 ? Math.fround(ny / size) + 0 : 0;
  facet[2] = size > 0 ? Math.fround(nz / size) + 0 : 0;
}
