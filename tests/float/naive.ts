/** Hydrostatics the slow way, sharing nothing with the engine: every triangle clipped, depth by halving, tilt by trying. */
import type { Mesh } from '../../src/geometry/mesh.js';
import type { Point3 } from '../../src/geometry/vec.js';

const dot = (a: Point3, b: Point3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const mix = (a: Point3, b: Point3, t: number): Point3 => [
  a[0] + t * (b[0] - a[0]),
  a[1] + t * (b[1] - a[1]),
  a[2] + t * (b[2] - a[2]),
];

/** Volume and center of what is below, as tetrahedra from a point of the surface, to which the waterplane adds nothing. */
export function naiveImmersion(of: Mesh, up: Point3, offset: number) {
  const apex: Point3 = [up[0] * offset, up[1] * offset, up[2] * offset];
  let volume = 0;
  const moment = [0, 0, 0];
  const corner = (v: number): Point3 => [
    of.positions[3 * v],
    of.positions[3 * v + 1],
    of.positions[3 * v + 2],
  ];
  for (let t = 0; t < of.triangles.length; t += 3) {
    const ring = [0, 1, 2].map((k) => corner(of.triangles[t + k]));
    const wet: Point3[] = [];
    ring.forEach((p, k) => {
      const q = ring[(k + 1) % 3];
      const [hp, hq] = [dot(up, p) - offset, dot(up, q) - offset];
      if (hp <= 0) wet.push(p);
      if (hp < 0 !== hq < 0 && hp !== 0 && hq !== 0) wet.push(mix(p, q, hp / (hp - hq)));
    });
    for (let k = 2; k < wet.length; k++) {
      const [a, b, c] = [wet[0], wet[k - 1], wet[k]].map((p) => [
        p[0] - apex[0],
        p[1] - apex[1],
        p[2] - apex[2],
      ]);
      const six =
        a[0] * (b[1] * c[2] - b[2] * c[1]) +
        a[1] * (b[2] * c[0] - b[0] * c[2]) +
        a[2] * (b[0] * c[1] - b[1] * c[0]);
      volume += six / 6;
      for (let i = 0; i < 3; i++) moment[i] += (six / 24) * (a[i] + b[i] + c[i]);
    }
  }
  const cb = apex.map((p, i) => p + moment[i] / volume) as unknown as Point3;
  return { volume, cb };
}

/** up · (G − B) with the volume held, depth by halving. */
export function naiveEnergy(of: Mesh, up: Point3, volume: number, cg: Point3): number {
  const heights = Array.from({ length: of.positions.length / 3 }, (_, v) =>
    dot(up, [of.positions[3 * v], of.positions[3 * v + 1], of.positions[3 * v + 2]]),
  );
  let [low, high] = [Math.min(...heights), Math.max(...heights)];
  for (let i = 0; i < 36; i++) {
    const middle = (low + high) / 2;
    if (naiveImmersion(of, up, middle).volume < volume) low = middle;
    else high = middle;
  }
  const { cb } = naiveImmersion(of, up, (low + high) / 2);
  return dot(up, [cg[0] - cb[0], cg[1] - cb[1], cg[2] - cb[2]]);
}

const unit = (p: Point3): Point3 => {
  const size = Math.hypot(...p);
  return [p[0] / size, p[1] / size, p[2] / size];
};

/** Downhill by steps along two directions that are halved where none of them helps. */
export function naiveDescent(
  energy: (up: Point3) => number,
  from: Point3,
  start: number,
  least: number,
) {
  let [up, best, step] = [from, energy(from), start];
  while (step > least) {
    const aside = unit(Math.abs(up[0]) < 0.8 ? [0, up[2], -up[1]] : [-up[1], up[0], 0]);
    const other: Point3 = [
      up[1] * aside[2] - up[2] * aside[1],
      up[2] * aside[0] - up[0] * aside[2],
      up[0] * aside[1] - up[1] * aside[0],
    ];
    const tries = [aside, other].flatMap((way) =>
      [step, -step].map((k) => unit([up[0] + k * way[0], up[1] + k * way[1], up[2] + k * way[2]])),
    );
    const energies = tries.map(energy);
    const lowest = Math.min(...energies);
    if (lowest < best) [up, best] = [tries[energies.indexOf(lowest)], lowest];
    else step /= 2;
  }
  return { up, energy: best };
}
