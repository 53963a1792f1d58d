import { describe, expect, test } from 'vitest';
import { stl } from '../../src/formats/stl.js';
import { asRegion } from '../../src/geometry/clip.js';
import { type Mesh, meshVolume } from '../../src/geometry/mesh.js';
import { circleRing } from '../../src/geometry/ring.js';
import { extruded } from '../../src/solid/csg.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { readBackStl } from '../../src/solid/readback.js';

const kernel = await loadKernel();
const prism = evaluate(
  kernel,
  extruded([asRegion(circleRing([-3, 50], 20, { segments: 60 }))], -5, 7),
);
const bytes = stl(prism, 'solid test piece');
const view = new DataView(bytes.buffer);
const facets = prism.triangles.length / 3;
const numbers = (t: number) =>
  Array.from({ length: 12 }, (_, i) => view.getFloat32(84 + 50 * t + 4 * i, true));

describe('binary STL', () => {
  test('size, header, count, attribute bytes', () => {
    expect(bytes.length).toBe(84 + 50 * facets);
    const header = new TextDecoder().decode(bytes.slice(0, 80));
    expect(header).toMatch(/^blankwright, unit mm: solid test piece *$/);
    expect(header.startsWith('solid')).toBe(false);
    expect(view.getUint32(80, true)).toBe(facets);
    for (let t = 0; t < facets; t++) expect(view.getUint16(84 + 50 * t + 48, true)).toBe(0);
  });

  test('normals are unit and follow the corners', () => {
    expect(facets).toBeGreaterThan(200);
    for (let t = 0; t < facets; t++) {
      const [nx, ny, nz, ax, ay, az, bx, by, bz, cx, cy, cz] = numbers(t);
      const [ux, uy, uz, vx, vy, vz] = [bx - ax, by - ay, bz - az, cx - ax, cy - ay, cz - az];
      const cross = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
      const size = Math.hypot(...cross);
      // Rounding a unit normal to float32 turns it by 1e-7.
      expect(Math.hypot(nx, ny, nz)).toBeCloseTo(1, 6);
      expect((nx * cross[0] + ny * cross[1] + nz * cross[2]) / size).toBeCloseTo(1, 6);
    }
  });

  test('no −0 and no number that is not one', () => {
    for (let t = 0; t < facets; t++) {
      expect(numbers(t).every((v) => Number.isFinite(v) && !Object.is(v, -0))).toBe(true);
    }
  });

  test('another reader finds the same solid', () => {
    const { triangles, volumeMm3 } = readBackStl(bytes);
    expect(triangles).toBe(facets);
    // Both sum the same float32 corners in doubles.
    expect(volumeMm3 / meshVolume(prism)).toBeCloseTo(1, 12);
  });

  test('a mesh in doubles is welded as written', () => {
    const fine = { ...prism, positions: prism.positions.map((v) => v * (1 + 1e-12)) } as Mesh;
    expect(stl(fine, 'solid test piece')).toEqual(bytes);
  });

  test('an open mesh and a name it cannot spell are refused', () => {
    const open = { ...prism, triangles: prism.triangles.slice(3) } as Mesh;
    expect(() => stl(open, 'open')).toThrow(/3 open edges/);
    expect(() => stl(prism, 'skjær')).toThrow(/STL name/);
  });

  test('the reader complains about a file without a solid', () => {
    const empty = bytes.slice(0, 84);
    new DataView(empty.buffer).setUint32(80, 0, true);
    expect(() => readBackStl(empty)).toThrow(/three or more points/);
  });
});
