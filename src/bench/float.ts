/** How fast and how exactly lures are floated: ratios and errors of one run. */
import { makeBody } from '../body/body.js';
import { type BodyShape, offsetSquared } from '../body/shape.js';
import { immerse } from '../float/immerse.js';
import { type Immersible, immersible, TRIANGLE } from '../float/immersible.js';
import { type Load, restAttitudes } from '../float/rest.js';
import { eigen2, spiral } from '../float/tilt.js';
import type { Mesh } from '../geometry/mesh.js';
import { monotoneCurve } from '../geometry/monotone.js';
import type { Point3 } from '../geometry/vec.js';
import { dot3 } from '../geometry/vec3.js';
import type { SolidKernel } from '../solid/kernel.js';
import { type Plane, partsBelow } from '../solid/split.js';
import { medianMs } from './median.js';

const RUNS = { warm: 20, rests: 101, cuts: 9 };

export type RestRow = {
  readonly lure: string;
  readonly triangles: number;
  /** Of the sketch that rests are looked for with. */
  readonly sketchTriangles: number;
  readonly attitudes: number;
  readonly stable: number;
  /** Median, from the meshes to a solid that is ready to be cut. */
  readonly prepareMs: number;
  /** Median, from that solid to all rest attitudes. */
  readonly allRestsMs: number;
};

/** All rest attitudes of a lure; `prepare` makes the solid that keeps water out ready to be cut. */
export function benchRests(lure: string, prepare: () => Immersible, load: Load): RestRow {
  const solid = prepare();
  for (let i = 0; i < RUNS.warm; i++) restAttitudes(solid, load);
  const rests = restAttitudes(solid, load);
  return {
    lure,
    triangles: solid.triangles.length / TRIANGLE,
    sketchTriangles: (solid.sketch?.triangles.length ?? 0) / TRIANGLE,
    attitudes: rests.length,
    stable: rests.filter((a) => a.stable).length,
    prepareMs: medianMs(RUNS.cuts, prepare),
    allRestsMs: medianMs(RUNS.rests, () => restAttitudes(solid, load)),
  };
}

export type CutRow = {
  readonly lure: string;
  readonly triangles: number;
  readonly cuts: number;
  /** Medians for one cut: volume and center of what is under, waterplane included in ours. */
  readonly ourUs: number;
  readonly kernelUs: number;
  /** How many times faster ours is. */
  readonly ratio: number;
  /** Greatest difference of the volumes over the whole volume; the kernel's corners are 32-bit. */
  readonly volumeDifference: string;
};

/** Displaced volume and center through our own cut and through the mesh kernel's, on the same mesh and planes. */
export function benchCuts(kernel: SolidKernel, lure: string, mesh: Mesh): CutRow {
  const solid = immersible([mesh]);
  const planes = spiral(60).map(
    (up, i): Plane => ({ up, offset: dot3(up, solid.centroidMm) + ((i % 5) - 2) * 1.5 }),
  );
  const ours = () => planes.map(({ up, offset }) => immerse(solid, up, offset));
  const theirs = () => partsBelow(kernel, mesh, planes);
  for (let i = 0; i < RUNS.warm; i++) ours();
  const [a, b] = [ours(), theirs()];
  const ourUs = (1e3 * medianMs(RUNS.rests, ours)) / planes.length;
  const kernelUs = (1e3 * medianMs(RUNS.cuts, theirs)) / planes.length;
  const off = Math.max(...a.map((cut, i) => Math.abs(cut.volumeMm3 - b[i].volumeMm3)));
  return {
    lure,
    triangles: mesh.triangles.length / 3,
    cuts: planes.length,
    ourUs,
    kernelUs,
    ratio: kernelUs / ourUs,
    volumeDifference: (off / solid.volumeMm3).toExponential(1),
  };
}

export type ErrorRow = {
  readonly solid: string;
  readonly triangles: number;
  readonly cuts: number;
  readonly microsecondsACut: number;
  /** Greatest over all drafts and attitudes, relative; the center's relative to the length. */
  readonly volume: string;
  readonly center: string;
  readonly lesserBm: string;
  readonly greaterBm: string;
};

/** Half-axes of the ellipsoid, mm, and how many drafts and attitudes of it. */
const AXES = { a: 50, b: 12, c: 8 };
const DRAFTS = 20;
const ATTITUDES = 20;

/** The program's own body in the shape of an ellipsoid against the closed forms of its hydrostatics. */
export function benchEllipsoid(): ErrorRow {
  const { mesh } = makeBody(ellipsoidShape());
  const solid = immersible([mesh]);
  const cases = spiral(ATTITUDES).flatMap((up) =>
    Array.from({ length: DRAFTS }, (_, i) => ellipsoidCut(up, (2 * (i + 1)) / (DRAFTS + 1))),
  );
  const worst = { volume: 0, center: 0, lesserBm: 0, greaterBm: 0 };
  for (const { up, offset, volume, center, lesserBm, greaterBm } of cases) {
    const cut = immerse(solid, up, offset);
    const { low, high } = eigen2(cut.secondMm4);
    const off = Math.hypot(...center.map((value, k) => value - cut.cbMm[k]));
    const errors = {
      volume: cut.volumeMm3 / volume - 1,
      center: off / (2 * AXES.a),
      lesserBm: low / cut.volumeMm3 / lesserBm - 1,
      greaterBm: high / cut.volumeMm3 / greaterBm - 1,
    };
    for (const key of ['volume', 'center', 'lesserBm', 'greaterBm'] as const) {
      worst[key] = Math.max(worst[key], Math.abs(errors[key]));
    }
  }
  const us = medianCutUs(solid, cases);
  return {
    solid: `ellipsoid ${2 * AXES.a} × ${2 * AXES.b} × ${2 * AXES.c}`,
    triangles: mesh.triangles.length / 3,
    cuts: cases.length,
    microsecondsACut: us,
    volume: worst.volume.toExponential(1),
    center: worst.center.toExponential(1),
    lesserBm: worst.lesserBm.toExponential(1),
    greaterBm: worst.greaterBm.toExponential(1),
  };
}

const medianCutUs = (solid: Immersible, planes: readonly Plane[]): number =>
  (1e3 * medianMs(RUNS.rests, () => planes.map(({ up, offset }) => immerse(solid, up, offset)))) /
  planes.length;

/** A body whose squared offsets are parabolas with their peak amidships. */
function ellipsoidShape(): BodyShape {
  const { a, b, c } = AXES;
  const squared = (offsetMm: number) => {
    const endRadius = offsetMm ** 2 / a;
    return offsetSquared(2 * a, [{ stationMm: a, offsetMm }], {
      noseRadiusMm: endRadius,
      tailRadiusMm: endRadius,
    });
  };
  const round = monotoneCurve([0], [2]);
  return {
    lengthMm: 2 * a,
    backSquared: squared(c),
    bellySquared: squared(c),
    halfBreadthSquared: squared(b),
    upperExponent: round,
    lowerExponent: round,
  };
}

/**
 * An ellipsoid cut so deep (0..2 of its half-height along up) by a plane: it is the image of a cut
 * sphere. Share under h²(3 − h)/4, center 3(2 − h)²/(4(3 − h)) of the way to the lowest point; the
 * waterplane is the image of a disk, second moments h(2 − h)/4 of its area times squared half-axes.
 */
function ellipsoidCut(up: Point3, depth: number) {
  const { a, b, c } = AXES;
  const [x, y, z] = up;
  const height = Math.hypot(a * x, b * y, c * z);
  const way = (3 * (2 - depth) ** 2) / (4 * (3 - depth));
  const center: Point3 = [
    a - (way * a * a * x) / height,
    (-way * b * b * y) / height,
    (-way * c * c * z) / height,
  ];
  // Squared half-axes p ≥ q of the section through the middle, from the invariants of the tensor
  // D²/… restricted to the plane: their sum and product.
  const squares = [a * a, b * b, c * c];
  const trace = squares.reduce((sum, s) => sum + s, 0);
  const normal = [x, y, z].reduce((sum, u, k) => sum + (u * squares[k]) ** 2, 0);
  const sum = trace - normal / height ** 2;
  const product = ((a * b * c) / height) ** 2;
  const root = Math.sqrt(Math.max(0, sum * sum - 4 * product));
  const volume = ((depth * depth * (3 - depth)) / 4) * ((4 * Math.PI * a * b * c) / 3);
  const area = (Math.PI * depth * (2 - depth) * a * b * c) / height;
  const second = (area * depth * (2 - depth)) / 4 / volume;
  return {
    up,
    offset: a * x + (depth - 1) * height,
    volume,
    center,
    lesserBm: (second * (sum - root)) / 2,
    greaterBm: (second * (sum + root)) / 2,
  };
}
