/** Simple solids as meshes, without a kernel: prisms, and what is turned on a lathe. */

import { type Mesh, mesh } from '../../src/geometry/mesh.js';
import { type Ring, signedArea } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import { Fault } from '../../src/problem.js';

/** The prism of a ring along z. @throws Fault unless it has height. */
export function prism(outline: Ring, fromZ: number, toZ: number): Mesh {
  const n = outline.length;
  const cap = earsOf(outline);
  const bottom = cap.flatMap(([a, b, c]) => [c, b, a]);
  const top = cap.flat().map((corner) => corner + n);
  const walls = outline.flatMap((_, a) => {
    const b = (a + 1) % n;
    return [a, b, b + n, a, b + n, a + n];
  });
  const at = (z: number) => outline.flatMap(([x, y]) => [x, y, z]);
  return mesh(
    Float64Array.from([...at(fromZ), ...at(toZ)]),
    Uint32Array.from([...bottom, ...top, ...walls]),
  );
}

/**
 * Triangles of a ring, by cutting ears (G. Meisters, 1975). Unlike what is quicker it keeps every
 * corner, straight ones too, so that walls fit the caps.
 */
function earsOf(outline: Ring): (readonly [number, number, number])[] {
  const left = outline.map((_, i) => i);
  const ears: (readonly [number, number, number])[] = [];
  while (left.length > 2) {
    const k = left.findIndex((_, i) => isEar(outline, left, i));
    if (k < 0) throw new Fault(`no ear among ${left.length} corners`);
    ears.push(around(left, k));
    left.splice(k, 1);
  }
  return ears;
}

const around = (left: readonly number[], i: number): readonly [number, number, number] => [
  left[(i + left.length - 1) % left.length],
  left[i],
  left[(i + 1) % left.length],
];

function isEar(outline: Ring, left: readonly number[], i: number): boolean {
  const ear = around(left, i);
  const [a, b, c] = ear.map((k) => outline[k]);
  const isOn = (p: Point2) =>
    signedArea([a, b, p]) >= 0 && signedArea([b, c, p]) >= 0 && signedArea([c, a, p]) >= 0;
  return signedArea([a, b, c]) > 0 && left.every((k) => ear.includes(k) || !isOn(outline[k]));
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
