/** Simple bodies and views for the tests of pictures. */
import { type Mesh, mesh } from '../../src/geometry/mesh.js';
import { rectRing } from '../../src/geometry/ring.js';
import type { Point3 } from '../../src/geometry/vec.js';
import { cross3, unit3 } from '../../src/geometry/vec3.js';
import { modelOf, seenFrom } from '../../src/shade/model.js';
import { type Body, type Scene, type Tone, UNMOVED } from '../../src/shade/scene.js';
import { axesOf, type View } from '../../src/shade/view.js';
import { prism } from '../geometry/prism.js';

export const ISOMETRIC: View = { toward: [1, 1, 1], up: [0, 0, 1] };
export const TOP: View = { toward: [0, 0, 1], up: [0, 1, 0] };

/** With one corner in the origin. */
export const box = (x: number, y: number, z: number): Mesh => prism(rectRing(0, 0, x, y), 0, z);

export const body = (of: Mesh, tone: Tone = 'plastic', matrix = UNMOVED): Body => ({
  mesh: of,
  matrix,
  tone,
});

export const movedTo = (x: number, y: number, z: number): readonly number[] => [
  ...UNMOVED.slice(0, 12),
  x,
  y,
  z,
  1,
];

/** x axis along `along`, anything square to it for the others. */
export function turnedTo(along: Point3, aside: Point3, at: Point3): readonly number[] {
  const x = unit3(along);
  const z = unit3(cross3(x, aside));
  return [...x, 0, ...cross3(z, x), 0, ...z, 0, ...at, 1];
}

export const scene = (...bodies: Body[]): Scene => ({ bodies, ways: [] });
export const seen = (of: Scene, view: View) => seenFrom(modelOf(of), axesOf(view));

/** A sphere of rings: all corners on it. */
export function sphere(radius: number, rings: number): Mesh {
  const around = 2 * rings;
  const positions: number[] = [];
  for (let i = 1; i < rings; i++) {
    for (let k = 0; k < around; k++) {
      const [a, b] = [(Math.PI * i) / rings, (2 * Math.PI * k) / around];
      positions.push(
        radius * Math.sin(a) * Math.cos(b),
        radius * Math.sin(a) * Math.sin(b),
        -radius * Math.cos(a),
      );
    }
  }
  const [low, high] = [(rings - 1) * around, (rings - 1) * around + 1];
  positions.push(0, 0, -radius, 0, 0, radius);
  const triangles: number[] = [];
  for (let k = 0; k < around; k++) {
    const l = (k + 1) % around;
    triangles.push(low, l, k, high, (rings - 2) * around + k, (rings - 2) * around + l);
    for (let i = 0; i + 2 < rings; i++) {
      const [a, b] = [i * around, (i + 1) * around];
      triangles.push(a + k, a + l, b + l, a + k, b + l, b + k);
    }
  }
  return mesh(Float64Array.from(positions), Uint32Array.from(triangles));
}
