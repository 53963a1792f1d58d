/** Simple solids as meshes, without a kernel: prisms, and what is turned on a lathe. */

import { Fault } from '../problem.js';
import { type Mesh, mesh } from './mesh.js';
import { triangulated } from './pieces.js';
import type { Region } from './ring.js';
import type { Point2 } from './vec.js';

/** The prism of a region along z. @throws Fault unless it has height and no ring of it touches another. */
export function prism({ outer, holes }: Region, fromZ: number, toZ: number): Mesh {
  const loops = [outer, ...holes.map((hole) => [...hole].reverse())];
  const corners = loops.flat();
  const n = corners.length;
  const cap = triangulated(loops);
  const bottom = cap.map((_, i) => cap[3 * Math.floor(i / 3) + 2 - (i % 3)]);
  const top = cap.map((corner) => corner + n);
  const first = loops.map((_, i) => loops.slice(0, i).reduce((sum, l) => sum + l.length, 0));
  const walls = loops.flatMap((loop, i) =>
    loop.flatMap((_, k) => {
      const [a, b] = [first[i] + k, first[i] + ((k + 1) % loop.length)];
      return [a, b, b + n, a, b + n, a + n];
    }),
  );
  const at = (z: number) => corners.flatMap(([x, y]) => [x, y, z]);
  return mesh(
    Float64Array.from([...at(fromZ), ...at(toZ)]),
    Uint32Array.from([...bottom, ...top, ...walls]),
  );
}

/**
 * What a lathe turns about the z axis: the profile [radius, z] from pole to pole, with the solid on
 * its left, so that it rises along the outside; first and last radius are 0, no other is. The facets'
 * corners lie on the round surface.
 * @throws Fault on a profile that does not begin and end on the axis, or touches it between.
 */
export function turned(profile: readonly Point2[], segments: number): Mesh {
  const inner = profile.slice(1, -1);
  const poles = [profile[0], profile[profile.length - 1]];
  if (inner.length < 1 || poles.some(([r]) => r !== 0) || !inner.every(([r]) => r > 0))
    throw new Fault(`lathe profile ${JSON.stringify(profile)}`);
  const positions = inner.flatMap(([r, z]) =>
    Array.from({ length: segments }, (_, k) => (2 * Math.PI * k) / segments).flatMap((a) => [
      r * Math.cos(a),
      r * Math.sin(a),
      z,
    ]),
  );
  const [low, high] = [inner.length * segments, inner.length * segments + 1];
  const last = (inner.length - 1) * segments;
  const triangles = Array.from({ length: segments }, (_, k) => [k, (k + 1) % segments]).flatMap(
    ([k, l]) => [
      ...[low, l, k],
      ...inner.slice(1).flatMap((_, i) => {
        const [a, b] = [i * segments, (i + 1) * segments];
        return [a + k, a + l, b + l, a + k, b + l, b + k];
      }),
      ...[high, last + k, last + l],
    ],
  );
  const tips = poles.flatMap(([, z]) => [0, 0, z]);
  return mesh(Float64Array.from([...positions, ...tips]), Uint32Array.from(triangles));
}
