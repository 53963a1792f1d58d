/** The body as a closed triangle mesh: rings of points at stations, a pole at nose and tail. */
import { type Mesh, mesh } from '../geometry/mesh.js';
import { halves } from './properties.js';
import { type HalfSection, unitSection } from './section.js';
import { type BodyShape, knotsOf, offsetAt } from './shape.js';

/** How fine: rings between nose and tail, and points round a section (a multiple of 4). */
export type MeshFineness = { readonly stations: readonly number[]; readonly around: number };

/**
 * Points lie on the surface, so the mesh is a little small: its volume converges to the integral
 * with the square of the spacing.
 */
export function bodyMesh(shape: BodyShape, { stations, around }: MeshFineness): Mesh {
  const rings = stations.length;
  const positions = new Float64Array(3 * (rings * around + 2));
  const nose = rings * around;
  const tail = nose + 1;
  positions[3 * tail] = shape.lengthMm;
  stations.forEach((x, i) => {
    const [upper, lower] = halves(shape, x);
    for (let j = 0; j < around; j++) {
      const { b, h, n } = 2 * j <= around ? upper : lower;
      const [y, z] = unitSection((2 * Math.PI * j) / around, n);
      // Quarter points are set to be exact; + 0 turns −0 into 0.
      positions.set(
        [
          x,
          j % (around / 2) === around / 4 ? 0 : b * y + 0,
          j % (around / 2) === 0 ? 0 : h * z + 0,
        ],
        3 * (i * around + j),
      );
    }
  });
  const triangles: number[] = [];
  for (let j = 0; j < around; j++) {
    const next = (j + 1) % around;
    triangles.push(nose, next, j);
    for (let i = 1; i < rings; i++) {
      const [a, b, c, d] = [
        (i - 1) * around + j,
        (i - 1) * around + next,
        i * around + next,
        i * around + j,
      ];
      triangles.push(a, c, d, a, b, c);
    }
    const last = (rings - 1) * around;
    triangles.push(tail, last + j, last + next);
  }
  return mesh(positions, Uint32Array.from(triangles));
}

/** A mesh whose chords stay within `toleranceMm` of the side view, the plan and the fullest section. */
export function finenessFor(shape: BodyShape, toleranceMm: number): MeshFineness {
  const curves = [shape.backSquared, shape.bellySquared, shape.halfBreadthSquared];
  const L = shape.lengthMm;
  const at = (angle: number) => {
    const x = (L / 2) * (1 - Math.cos(angle));
    return { x, offsets: curves.map((c) => offsetAt(c, x)) };
  };
  const angles: number[] = [];
  const halve = (a: number, b: number): void => {
    const [p, m, q] = [at(a), at((a + b) / 2), at(b)];
    const flat = curves.every((_, k) => {
      const [dx, dh] = [q.x - p.x, q.offsets[k] - p.offsets[k]];
      const off = dx * (m.offsets[k] - p.offsets[k]) - dh * (m.x - p.x);
      return Math.abs(off) <= toleranceMm * Math.hypot(dx, dh);
    });
    if (flat && b - a < Math.PI / 8) return;
    halve(a, (a + b) / 2);
    angles.push((a + b) / 2);
    halve((a + b) / 2, b);
  };
  const knots = knotsOf(shape).map((x) => Math.acos(1 - (2 * x) / L));
  for (let i = 1; i < knots.length; i++) {
    if (i > 1) angles.push(knots[i - 1]);
    halve(knots[i - 1], knots[i]);
  }
  const stations = angles.map((a) => at(a).x);
  return { stations, around: pointsAround(shape, stations, toleranceMm) };
}

const FEWEST_AROUND = 16;
const MOST_AROUND = 512;

/** Least multiple of 8 for which no section's chord strays further; the error falls with its square. */
function pointsAround(shape: BodyShape, stations: readonly number[], toleranceMm: number): number {
  const every = Math.ceil(stations.length / 16);
  const sections = stations.filter((_, i) => i % every === 0).flatMap((x) => halves(shape, x));
  let around = FEWEST_AROUND;
  while (around < MOST_AROUND) {
    const worst = Math.max(...sections.map((s) => chordError(s, around)));
    if (worst <= toleranceMm) break;
    const wanted = around * Math.sqrt(worst / toleranceMm);
    around = Math.min(MOST_AROUND, Math.max(around + 8, 8 * Math.ceil(wanted / 8)));
  }
  return around;
}

/** Greatest distance of a quarter section from its chords, measured at the middle of each. */
function chordError({ b, h, n }: HalfSection, around: number): number {
  const step = (2 * Math.PI) / around;
  let most = 0;
  for (let a = 0; a < Math.PI / 2 - 1e-9; a += step) {
    const [p, m, q] = [a, a + step / 2, a + step].map((angle) => unitSection(angle, n));
    const [dy, dz] = [b * (q[0] - p[0]), h * (q[1] - p[1])];
    const off = Math.abs(dy * h * (m[1] - p[1]) - dz * b * (m[0] - p[0]));
    most = Math.max(most, off / (Math.hypot(dy, dz) || 1));
  }
  return most;
}
