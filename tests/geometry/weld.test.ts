import { describe, expect, test } from 'vitest';
import { meshVolume } from '../../src/geometry/mesh.js';
import { roundedToFloat32 } from '../../src/geometry/weld.js';

/** Unit cube with corner 0 at `at`; corners numbered x + 2y + 4z. */
const CUBE = [
  [0, 2, 1],
  [1, 2, 3],
  [4, 5, 6],
  [5, 7, 6],
  [0, 1, 4],
  [1, 5, 4],
  [2, 6, 3],
  [3, 6, 7],
  [0, 4, 2],
  [2, 4, 6],
  [1, 3, 5],
  [3, 7, 5],
];
const corners = Array.from({ length: 8 }, (_, i) => [i & 1, (i >> 1) & 1, i >> 2]);

describe('a mesh rounded to 32-bit floats', () => {
  test('a clean mesh keeps its facets, and no coordinate is −0', () => {
    const moved = corners.flatMap(([x, y, z]) => [x - 1, y - 1, z]);
    const m = roundedToFloat32(
      moved.map((v) => (v === 0 ? -0 : v)),
      CUBE.flat(),
    );
    expect(m.triangles.length).toBe(36);
    expect(meshVolume(m)).toBe(1);
    expect([...m.positions].some((v) => Object.is(v, -0))).toBe(false);
  });

  test('corners that meet after rounding are joined and what collapses is dropped', () => {
    // Corner 3 stands twice, 1e-9 mm apart, with a sliver between the two.
    const positions = [...corners.flat(), 1, 1 - 1e-9, 0];
    const split = CUBE.map((t) => (t.join() === '3,7,5' ? [8, 7, 5] : t)).map((t) =>
      t.join() === '1,3,5' ? [1, 8, 5] : t,
    );
    const m = roundedToFloat32(positions, [...split, [1, 3, 8], [3, 7, 8]].flat());
    expect(m.positions.length / 3).toBe(8);
    expect(m.triangles.length / 3).toBe(12);
    expect(meshVolume(m)).toBe(1);
  });

  test('two facets back to back go, both ways round', () => {
    const flap = [
      [0, 1, 7],
      [7, 1, 0],
    ];
    const m = roundedToFloat32(corners.flat(), [...CUBE, ...flap].flat());
    expect(m.triangles.length / 3).toBe(12);
  });

  test('an open or inside-out mesh is refused', () => {
    expect(() => roundedToFloat32(corners.flat(), CUBE.slice(1).flat())).toThrow(/open edges/);
    const inside = CUBE.map(([a, b, c]) => [a, c, b]);
    expect(() => roundedToFloat32(corners.flat(), inside.flat())).toThrow(/volume -1/);
  });
});
