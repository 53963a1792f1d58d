/** What of a mesh lies under a plane, by the kernel's own cut: a second opinion, exact to the kernel's 32-bit coordinates. */
import type { Mesh } from '../geometry/mesh.js';
import type { Point3 } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import { build } from './build.js';
import { type KernelMesh, type SolidKernel, scoped, wasmOf } from './kernel.js';

/** The plane up · p = offset, in the mesh's frame. */
export type Plane = { readonly up: Point3; readonly offset: number };

export type Part = { readonly volumeMm3: number; readonly centerMm: Point3 };

/** The part below each plane; the solid is built once. Nothing below gives volume 0 and a center of NaN. */
export function partsBelow(kernel: SolidKernel, mesh: Mesh, planes: readonly Plane[]): Part[] {
  return scoped((keep) => {
    const solid = build(wasmOf(kernel), keep, { kind: 'mesh', mesh });
    return planes.map(({ up, offset }) =>
      scoped((keepPart) => {
        const part = keepPart(solid.trimByPlane([-up[0], -up[1], -up[2]], -offset));
        if (part.status() !== 'NoError') throw new Fault(`cut by a plane: ${part.status()}`);
        return partOf(part.getMesh());
      }),
    );
  });
}

function partOf({ numProp, vertProperties: p, triVerts }: KernelMesh): Part {
  let [volume, x, y, z] = [0, 0, 0, 0];
  for (let t = 0; t < triVerts.length; t += 3) {
    const a = numProp * triVerts[t];
    const b = numProp * triVerts[t + 1];
    const c = numProp * triVerts[t + 2];
    const v =
      (p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]) +
        p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]) +
        p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c])) /
      6;
    volume += v;
    x += (v * (p[a] + p[b] + p[c])) / 4;
    y += (v * (p[a + 1] + p[b + 1] + p[c + 1])) / 4;
    z += (v * (p[a + 2] + p[b + 2] + p[c + 2])) / 4;
  }
  return { volumeMm3: volume, centerMm: [x / volume, y / volume, z / volume] };
}
