/**
 * Solids described as plain data: a tree of primitives and booleans, in mm. `evaluate.ts` turns a
 * tree into a mesh; nothing of a kernel is in it, so a tree can be printed, compared and given to a
 * second kernel.
 */

import { penned } from '../geometry/clip.js';
import type { Mesh } from '../geometry/mesh.js';
import type { Region } from '../geometry/ring.js';
import { thinned } from '../geometry/thin.js';
import type { Point2 } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import { type Matrix, placement } from './placement.js';

export type Csg =
  /** Prism of disjoint regions along z. */
  | {
      readonly kind: 'extrude';
      readonly regions: readonly Region[];
      readonly fromZ: number;
      readonly toZ: number;
    }
  /** Regular prism around the circle of this radius on the z axis: it contains the round cylinder, so a hole is never small. */
  | {
      readonly kind: 'cylinder';
      readonly radius: number;
      readonly fromZ: number;
      readonly toZ: number;
      readonly segments: number;
    }
  /** What a round pen covers when it follows the lines, as a prism along z: letters. */
  | {
      readonly kind: 'strokes';
      readonly lines: readonly (readonly Point2[])[];
      readonly width: number;
      readonly fromZ: number;
      readonly toZ: number;
    }
  | { readonly kind: 'mesh'; readonly mesh: Mesh }
  | { readonly kind: 'union'; readonly parts: readonly Csg[] }
  | { readonly kind: 'intersect'; readonly parts: readonly Csg[] }
  /** Each part must remove something of what the parts before it left. */
  | { readonly kind: 'subtract'; readonly from: Csg; readonly parts: readonly Csg[] }
  /** A rigid motion. */
  | { readonly kind: 'moved'; readonly matrix: Matrix; readonly part: Csg };

export const extruded = (regions: readonly Region[], fromZ: number, toZ: number): Csg => ({
  kind: 'extrude',
  regions,
  fromZ,
  toZ,
});

export const movedBy = (matrix: Matrix, part: Csg): Csg => ({ kind: 'moved', matrix, part });

/** How far the edge of a pen's line may be flattened, as a share of its width: under what a nozzle can draw. */
const PEN_CHORD = 0.1;

/** What a round pen covers when it follows the lines. */
export function strokeAreas(lines: readonly (readonly Point2[])[], width: number): Region[] {
  const flat = PEN_CHORD * width;
  return penned(lines, width, flat / 2).map(({ outer, holes }) => ({
    outer: thinned(outer, flat),
    holes: holes.map((hole) => thinned(hole, flat)),
  }));
}

/** From a drawing of the side view to the lure's frame: across is x, up is z, toward the reader is −y. */
const SIDE_VIEW = placement([1, 0, 0], [0, 0, 1], [0, -1, 0], [0, 0, 0]);

/** A side view (x, z) of the lure as a solid from one y to another, in the lure's frame. */
export const slab = (view: readonly Region[], fromY: number, toY: number): Csg =>
  movedBy(SIDE_VIEW, extruded(view, -toY, -fromY));

/** How far a cutter goes on in free air, mm, so that no skin stays. */
export const OVERSHOOT = 1;

/**
 * A round hole along z as what has to be cut away. The prism's corners stand outside the circle by
 * at most `tolerance`, its flats touch it.
 */
export function holeAlongZ(
  radius: number,
  { fromZ, toZ, tolerance }: { fromZ: number; toZ: number; tolerance: number },
): Csg {
  return { kind: 'cylinder', radius, fromZ, toZ, segments: segmentsAround(radius, tolerance) };
}

/** Least multiple of 4 for which a regular polygon around a circle stays within `tolerance` of it. */
export function segmentsAround(radius: number, tolerance: number): number {
  if (!(radius > 0 && tolerance > 0 && radius < Infinity)) {
    throw new Fault(`circle of radius ${radius} to ${tolerance}`);
  }
  return Math.max(8, 4 * Math.ceil(Math.PI / Math.acos(radius / (radius + tolerance)) / 4));
}
