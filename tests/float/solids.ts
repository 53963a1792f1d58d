/** Closed meshes of known solids. Corners lie on the true surface unless said otherwise. */
import { type Mesh, mesh, meshVolume } from '../../src/geometry/mesh.js';
import type { Point3 } from '../../src/geometry/vec.js';

/** Triangles given by their corners, equal corners made one; triangles with a corner twice are left out. */
export function joined(soup: readonly (readonly Point3[])[]): Mesh {
  const index = new Map<string, number>();
  const positions: number[] = [];
  const triangles: number[] = [];
  for (const corners of soup) {
    const at = corners.map((p) => {
      const key = p.map((value) => value + 0).join();
      const known = index.get(key);
      if (known !== undefined) return known;
      index.set(key, index.size);
      positions.push(...p);
      return index.size - 1;
    });
    if (new Set(at).size === 3) triangles.push(...at);
  }
  return mesh(Float64Array.from(positions), Uint32Array.from(triangles));
}

/** Rings of equally many points between two poles, counter-clockwise seen from the second pole. */
export function lofted(first: Point3, rings: readonly (readonly Point3[])[], last: Point3): Mesh {
  const around = rings[0].length;
  const points = [first, ...rings.flat(), last];
  const at = (i: number, j: number) => 1 + i * around + (j % around);
  const triangles: number[] = [];
  for (let j = 0; j < around; j++) {
    triangles.push(0, at(0, j + 1), at(0, j));
    for (let i = 1; i < rings.length; i++) {
      triangles.push(at(i - 1, j), at(i - 1, j + 1), at(i, j + 1));
      triangles.push(at(i - 1, j), at(i, j + 1), at(i, j));
    }
    triangles.push(points.length - 1, at(rings.length - 1, j), at(rings.length - 1, j + 1));
  }
  return mesh(Float64Array.from(points.flat()), Uint32Array.from(triangles));
}

/** A prism along x over a polygon of (y, z), counter-clockwise seen from +x. */
export function prism(section: readonly (readonly [number, number])[], fromX: number, toX: number) {
  const ring = (x: number) => section.map(([y, z]): Point3 => [x, y, z]);
  const middle = [0, 1].map((k) => section.reduce((sum, p) => sum + p[k], 0) / section.length);
  const pole = (x: number): Point3 => [x, middle[0], middle[1]];
  return lofted(pole(fromX), [ring(fromX), ring(toX)], pole(toX));
}

/** Length along x, breadth along y, height along z; middle at `at`. */
export const box = (l: number, b: number, h: number, at: Point3 = [0, 0, 0]): Mesh =>
  prism(
    [
      [at[1] + b / 2, at[2] - h / 2],
      [at[1] + b / 2, at[2] + h / 2],
      [at[1] - b / 2, at[2] + h / 2],
      [at[1] - b / 2, at[2] - h / 2],
    ],
    at[0] - l / 2,
    at[0] + l / 2,
  );

/** A regular polygon with the area of the ellipse of these half-axes; counter-clockwise, first corner on the y axis. */
export function ellipse(b: number, h: number, sides: number): (readonly [number, number])[] {
  const grow = Math.sqrt((2 * Math.PI) / (sides * Math.sin((2 * Math.PI) / sides)));
  return Array.from({ length: sides }, (_, j) => {
    const turn = (2 * Math.PI * j) / sides;
    return [grow * b * Math.cos(turn), grow * h * Math.sin(turn)] as const;
  });
}

/** Half-axes along x, y, z; poles on the x axis. */
export function ellipsoid(
  a: number,
  b: number,
  c: number,
  fine: number,
  middle: Point3 = [0, 0, 0],
) {
  const around = 2 * fine;
  const place = (p: number, q: number): Point3 => [
    middle[0] - a * Math.cos((Math.PI * p) / fine),
    middle[1] + b * Math.sin((Math.PI * p) / fine) * Math.cos((2 * Math.PI * q) / around),
    middle[2] + c * Math.sin((Math.PI * p) / fine) * Math.sin((2 * Math.PI * q) / around),
  ];
  const rings = Array.from({ length: fine - 1 }, (_, i) =>
    Array.from({ length: around }, (_, j) => place(i + 1, j)),
  );
  return lofted([middle[0] - a, middle[1], middle[2]], rings, [
    middle[0] + a,
    middle[1],
    middle[2],
  ]);
}

/** The same, grown about its middle until its volume is that of the true ellipsoid. */
export function trueEllipsoid(a: number, b: number, c: number, fine: number): Mesh {
  const inside = ellipsoid(a, b, c, fine);
  const grow = Math.cbrt((4 * Math.PI * a * b * c) / 3 / meshVolume(inside));
  return mapped(inside, ([x, y, z]) => [grow * x, grow * y, grow * z]);
}

/** A solid of revolution about the z axis, apex down at the origin, flat above: radii at heights. */
export function spindle(
  rings: readonly (readonly [radius: number, z: number])[],
  sides: number,
): Mesh {
  const circles = rings.map(([r, z]) => ellipse(r, r, sides).map(([x, y]): Point3 => [x, y, z]));
  return lofted([0, 0, 0], circles, [0, 0, rings[rings.length - 1][1]]);
}

/**
 * The hull y = (B/2)(1 − (2x/L)²)(1 − (z/T)²) below z = 0 (W. C. S. Wigley) with upright sides above
 * it to half the draft; corners on the surface at n × m places a side.
 */
export function wigleyHull(L: number, B: number, T: number, n: number, m: number): Mesh {
  const top = T / 2;
  const point = (i: number, j: number, side: number): Point3 => {
    const [x, z] = [(i / n - 0.5) * L, j > m ? top : (j / m - 1) * T];
    const y = (B / 2) * (1 - ((2 * i) / n - 1) ** 2) * (1 - (Math.min(z, 0) / T) ** 2);
    return [x, side * y, z];
  };
  const soup: Point3[][] = [];
  // Diagonals rise toward the ends, so that no triangle lies in the middle plane at stem and stern.
  const face = (a: Point3, b: Point3, c: Point3, d: Point3, fore: boolean) =>
    soup.push(
      ...(fore
        ? [
            [a, b, c],
            [a, c, d],
          ]
        : [
            [a, b, d],
            [b, c, d],
          ]),
    );
  for (let i = 0; i < n; i++) {
    const fore = 2 * i < n;
    const quad = (j: number, side: number) =>
      [
        point(i, j, side),
        point(i + 1, j, side),
        point(i + 1, j + 1, side),
        point(i, j + 1, side),
      ] as const;
    for (let j = 0; j <= m; j++) {
      face(...quad(j, -1), fore);
      const [a, b, c, d] = quad(j, 1);
      face(a, d, c, b, fore);
    }
    face(
      point(i, m + 1, -1),
      point(i + 1, m + 1, -1),
      point(i + 1, m + 1, 1),
      point(i, m + 1, 1),
      fore,
    );
  }
  return joined(soup);
}

/** Every corner through a map that keeps handedness. */
export function mapped(of: Mesh, map: (p: Point3) => Point3): Mesh {
  const positions = new Float64Array(of.positions.length);
  for (let v = 0; v < positions.length; v += 3) {
    positions.set(map([of.positions[v], of.positions[v + 1], of.positions[v + 2]]), v);
  }
  return mesh(positions, of.triangles);
}

/** Port and starboard changed, triangles turned so that they still wind outward. */
export function mirrored(of: Mesh): Mesh {
  const positions = of.positions.map((value, i) => (i % 3 === 1 ? -value : value));
  const triangles = of.triangles.map(
    (_, i, all) => all[i % 3 === 1 ? i + 1 : i % 3 === 2 ? i - 1 : i],
  );
  return mesh(positions, triangles);
}

/** Numbers 0..1 that are the same in every run. */
export function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A lure-like body: egg-shaped along x from 0 to its length, superellipse sections, back and belly of their own. */
export function lureLike(roll: () => number, fine = 24): { mesh: Mesh; lengthMm: number } {
  const lengthMm = 60 + 80 * roll();
  const [back, belly, half] = [6 + 10 * roll(), 6 + 10 * roll(), 5 + 9 * roll()];
  const [lean, n] = [0.35 * (roll() - 0.5), 2 + 1.5 * roll()];
  const around = 2 * fine;
  const rings = Array.from({ length: fine - 1 }, (_, i) => {
    const t = (1 - Math.cos((Math.PI * (i + 1)) / fine)) / 2;
    const r = Math.sqrt(4 * t * (1 - t)) * (1 + lean * (1 - 2 * t));
    return Array.from({ length: around }, (_, j): Point3 => {
      const [c, s] = [Math.cos((2 * Math.PI * j) / around), Math.sin((2 * Math.PI * j) / around)];
      const q = (Math.abs(c) ** n + Math.abs(s) ** n) ** (-1 / n);
      return [t * lengthMm, r * half * q * c, r * (s > 0 ? back : belly) * q * s];
    });
  });
  return { mesh: lofted([0, 0, 0], rings, [lengthMm, 0, 0]), lengthMm };
}
