/** The body as a closed triangle mesh: rings of points at stations, a pole at nose and tail. */
import { type Mesh, mesh, signedVolume, vertexNormals } from '../geometry/mesh.js';
import { halves } from './properties.js';
import { type HalfSection, unitSection } from './section.js';
import { type BodyShape, offsetAt } from './shape.js';

/** How fine: rings between nose and tail, and points round a section (a multiple of 4). */
export type MeshFineness = { readonly stations: readonly number[]; readonly around: number };

/**
 * Points lie outside the surface by as much as their triangles cut inside it, so that the mesh
 * encloses `volumeMm3`, and what is under a waterline is right to about 1e-6 at any draft and tilt;
 * with points on the surface it would be 1e-3 too little. Nose and tail stay where they are. The
 * mesh is its own mirror image in the center plane, bit for bit.
 */
export function bodyMesh(shape: BodyShape, fineness: MeshFineness, volumeMm3: number): Mesh {
  const triangles = ringTriangles(fineness);
  const onSurface = ringPoints(shape, fineness);
  const normals = vertexNormals(onSurface, triangles);
  const deficits = meanDeficits(onSurface, normals, fineness);
  let positions = shifted(onSurface, normals, (v) => deficits[v]);
  // What is left is of a higher order in the spacing; a step that is the same everywhere takes it up.
  const inner = deficits.length - 2;
  for (let round = 0; round < 2; round++) {
    const missing = volumeMm3 - signedVolume(positions, triangles);
    const gain = signedVolume(
      shifted(positions, normals, (v) => (v < inner ? 1e-3 : 0)),
      triangles,
    );
    const step = (1e-3 * missing) / (gain - volumeMm3 + missing);
    positions = shifted(positions, normals, (v) => (v < inner ? step : 0));
  }
  return mesh(mirrored(positions, fineness), triangles);
}

/** The starboard half made the mirror image of the port half, which rounding alone keeps it from. */
function mirrored(positions: Float64Array, { stations, around }: MeshFineness): Float64Array {
  const out = positions.slice();
  for (let v = 0; v < stations.length * around; v++) {
    const j = v % around;
    if (4 * j === around || 4 * j === 3 * around) out[3 * v + 1] = 0;
    if (4 * j <= around || 4 * j >= 3 * around) continue;
    const port = 3 * (v - j + (((3 * around) / 2 - j) % around));
    out.set([positions[port], -positions[port + 1], positions[port + 2]], 3 * v);
  }
  return out;
}

/** Points of the surface, ring after ring, then nose and tail. */
function ringPoints(shape: BodyShape, { stations, around }: MeshFineness): Float64Array {
  const positions = new Float64Array(3 * (stations.length * around + 2));
  positions[positions.length - 3] = shape.lengthMm;
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
  return positions;
}

/** Two triangles to each field between rings, their diagonals mirrored port and starboard. */
function ringTriangles({ stations, around }: MeshFineness): Uint32Array {
  const rings = stations.length;
  const [nose, tail] = [rings * around, rings * around + 1];
  const triangles: number[] = [];
  for (let j = 0; j < around; j++) {
    const next = (j + 1) % around;
    const port = 4 * j < around || 4 * j >= 3 * around;
    triangles.push(nose, next, j);
    for (let i = 1; i < rings; i++) {
      const [a, b, c, d] = [
        (i - 1) * around + j,
        (i - 1) * around + next,
        i * around + next,
        i * around + j,
      ];
      if (port) triangles.push(a, c, d, a, b, c);
      else triangles.push(a, b, d, b, c, d);
    }
    const last = (rings - 1) * around;
    triangles.push(tail, last + j, last + next);
  }
  return Uint32Array.from(triangles);
}

const shifted = (
  positions: Float64Array,
  normals: Float64Array,
  byMm: (vertex: number) => number,
): Float64Array => positions.map((p, i) => p + normals[i] * byMm(Math.floor(i / 3)));

/** Twice the sine of half the turn between two chords, about 30°: more is a corner, which stays where it is. */
const CORNER = 0.5;

/**
 * How far the triangles round each vertex lie inside the surface on average: a chord of length h
 * cuts h²/12 times the curvature, and the two directions of the rings' net add up. Zero at the ends.
 */
function meanDeficits(
  positions: Float64Array,
  normals: Float64Array,
  { stations, around }: MeshFineness,
): Float64Array {
  const rings = stations.length;
  const deficits = new Float64Array(rings * around + 2);
  const at = (v: number, k: number) => positions[3 * v + k];
  const reach = (v: number, w: number) =>
    Math.hypot(at(w, 0) - at(v, 0), at(w, 1) - at(v, 1), at(w, 2) - at(v, 2));
  const across = (v: number, before: number, after: number): number => {
    const [a, b] = [reach(v, before), reach(v, after)];
    let bend = 0;
    for (let k = 0; k < 3; k++) {
      const here = at(v, k);
      bend += ((at(after, k) - here) / b + (at(before, k) - here) / a) * normals[3 * v + k];
    }
    if (Math.abs(bend) > CORNER) return 0;
    return (-bend * (a * a + b * b)) / (12 * (a + b));
  };
  for (let i = 0; i < rings; i++) {
    for (let j = 0; j < around; j++) {
      const v = i * around + j;
      const fore = i === 0 ? rings * around : v - around;
      const aft = i === rings - 1 ? rings * around + 1 : v + around;
      const [left, right] = [
        i * around + ((j + around - 1) % around),
        i * around + ((j + 1) % around),
      ];
      deficits[v] = across(v, fore, aft) + across(v, left, right);
    }
  }
  return deficits;
}

/** Samples of the length for the spacing of the rings, and how far each is evened out with its neighbors. */
const SAMPLES = 256;
const EVENED = 16;
const FEWEST_RINGS = 24;

/**
 * A mesh whose chords stay within `toleranceMm` of the side view, the plan and the fullest section.
 * Rings lie where the curves bend, in steps that change gently: a sudden change of step would spoil
 * the balance of inside and outside.
 */
export function finenessFor(shape: BodyShape, toleranceMm: number): MeshFineness {
  const L = shape.lengthMm;
  const station = (angle: number) => (L / 2) * (1 - Math.cos(angle));
  const raw = Array.from({ length: SAMPLES }, (_, k) =>
    Math.sqrt(bendOf(shape, station, (Math.PI * (k + 0.5)) / SAMPLES) / (8 * toleranceMm)),
  );
  const density = raw.map((_, k) => {
    const near = raw.slice(Math.max(0, k - EVENED), k + EVENED + 1);
    return near.reduce((sum, d) => sum + d, 0) / near.length;
  });
  const passed = [0];
  for (const d of density) passed.push(passed[passed.length - 1] + (d * Math.PI) / SAMPLES);
  const steps = Math.max(FEWEST_RINGS, Math.ceil(passed[SAMPLES]));
  const stations: number[] = [];
  for (let i = 1, k = 0; i < steps; i++) {
    const wanted = (passed[SAMPLES] * i) / steps;
    while (passed[k + 1] < wanted) k++;
    const share = (wanted - passed[k]) / (passed[k + 1] - passed[k]);
    stations.push(station((Math.PI * (k + share)) / SAMPLES));
  }
  return { stations, around: pointsAround(shape, stations, toleranceMm) };
}

/** Greatest bend of side view and plan at an angle: a chord over a small angle h strays bend·h²/8. */
function bendOf(shape: BodyShape, station: (angle: number) => number, angle: number): number {
  const e = Math.PI / (2 * SAMPLES);
  const [x0, x1, x2] = [angle - e, angle, angle + e].map(station);
  return Math.max(
    ...[shape.backSquared, shape.bellySquared, shape.halfBreadthSquared].map((curve) => {
      const [p0, p1, p2] = [x0, x1, x2].map((x) => offsetAt(curve, x));
      const [dx, dp] = [x2 - x0, p2 - p0];
      const off = (x0 - 2 * x1 + x2) * dp - (p0 - 2 * p1 + p2) * dx;
      return Math.abs(off) / (Math.hypot(dx, dp) * e * e);
    }),
  );
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
