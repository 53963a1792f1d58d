/** What can be measured on a solid: volume, pieces, holes, sections, overlap. */
import {
  insideRing,
  type Region,
  type Ring,
  ring,
  ringArea,
  signedArea,
} from '../geometry/ring.js';
import type { Point2 } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import { build } from './build.js';
import type { Csg } from './csg.js';
import { type Keep, type KernelSolid, type SolidKernel, scoped, wasmOf } from './kernel.js';
import { assertRigid, type Matrix } from './placement.js';

export type Measures = {
  readonly volumeMm3: number;
  /** Pieces that do not touch. */
  readonly pieces: number;
  /** Openings right through, as a ring has one; summed over the pieces. */
  readonly genus: number;
};

export function measure(kernel: SolidKernel, csg: Csg): Measures {
  return scoped((keep) => {
    const solid = build(wasmOf(kernel), keep, csg);
    const pieces = solid.decompose().map((piece) => keep(piece));
    return {
      volumeMm3: solid.volume(),
      pieces: pieces.length,
      genus: pieces.reduce((sum, piece) => sum + piece.genus(), 0),
    };
  });
}

/** Volume two solids share, mm³; 0 when they do not meet (solids that only touch share 0 to rounding). */
export function sharedVolume(kernel: SolidKernel, a: Csg, b: Csg): number {
  return scoped((keep) => {
    const wasm = wasmOf(kernel);
    const [one, other] = [build(wasm, keep, a), build(wasm, keep, b)];
    const common = keep(one.intersect(other));
    // Here an empty solid is an answer; both parts were proved sound, and a failure still has a status.
    if (common.status() !== 'NoError') throw new Fault('overlap failed');
    return Math.max(0, common.volume());
  });
}

/** Distance between two solids by the kernel's own search; `upTo` if they are not nearer, 0 if they meet. */
export function gapBetween(kernel: SolidKernel, a: Csg, b: Csg, upTo: number): number {
  return scoped((keep) => {
    const wasm = wasmOf(kernel);
    return build(wasm, keep, a).minGap(build(wasm, keep, b), upTo);
  });
}

/** Mm: the kernel's corners are 32-bit, and a slice through two that are one zigzags by rounding. */
const TOGETHER = 1e-5;
const SLIVER = 1e-9; // mm²: loops under this are rounding, not section

/** The sections of a solid at some heights z, as regions in x and y; none where there is no material. */
export function sectionsAt(
  kernel: SolidKernel,
  csg: Csg,
  heights: readonly number[],
): readonly (readonly Region[])[] {
  if (!heights.every(Number.isFinite)) throw new Fault(`section at ${heights.join(', ')}`);
  return scoped((keep) => {
    const solid = build(wasmOf(kernel), keep, csg);
    return heights.map((z) => regionsOf(loopsAt(keep, solid, z)));
  });
}

/** Sections of a solid that is moved first, for several motions of the one solid; heights as for `sectionsAt`. */
export function sectionsMoved(
  kernel: SolidKernel,
  csg: Csg,
  cuts: readonly { readonly matrix: Matrix; readonly heights: readonly number[] }[],
): readonly (readonly (readonly Region[])[])[] {
  if (!cuts.every(({ heights }) => heights.every(Number.isFinite)))
    throw new Fault('section at NaN');
  return scoped((keep) => {
    const solid = build(wasmOf(kernel), keep, csg);
    return cuts.map(({ matrix, heights }) => {
      assertRigid(matrix);
      const moved = keep(solid.transform(matrix));
      return heights.map((z) => regionsOf(loopsAt(keep, moved, z)));
    });
  });
}

/**
 * What a solid covers of the plane z = 0, seen along z. The kernel unites it, not `clip.ts`: outlines
 * straight from facets run back on themselves, at which clipper2-ts 2.0.1 does not end.
 */
export function shadow(kernel: SolidKernel, csg: Csg): readonly Region[] {
  return scoped((keep) => {
    const outlines = keep(build(wasmOf(kernel), keep, csg).project());
    return regionsOf(outlines.toPolygons());
  });
}

function loopsAt(keep: Keep, solid: KernelSolid, z: number): Point2[][] {
  const polygons = keep(solid._Slice(z));
  return Array.from({ length: polygons.size() }, (_, i) => {
    const polygon = keep(polygons.get(i));
    return Array.from({ length: polygon.size() }, (_, k): Point2 => {
      const { x, y } = polygon.get(k);
      return [x, y];
    });
  });
}

/** The kernel gives outer loops counter-clockwise and holes clockwise, in no order. */
function regionsOf(loops: readonly (readonly Point2[])[]): Region[] {
  const sized = loops.filter((l) => l.length >= 3 && Math.abs(signedArea(l)) > SLIVER);
  const outers = sized.filter((l) => signedArea(l) > 0).map((l) => ring(l, TOGETHER));
  const holes = sized.filter((l) => signedArea(l) < 0).map((l) => ring(l, TOGETHER));
  const owner = (hole: Ring): Ring => {
    const around = outers.filter((o) => insideRing(hole[0], o));
    if (around.length === 0) throw new Fault('section has a hole in nothing');
    return around.reduce((a, b) => (ringArea(b) < ringArea(a) ? b : a));
  };
  const owners = holes.map(owner);
  return outers.map((outer) => ({ outer, holes: holes.filter((_, i) => owners[i] === outer) }));
}
