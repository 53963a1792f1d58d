/** How thin a printed solid gets, measured on its facets: straight in from one, out through another. */
import type { FacetTree } from '../geometry/facet-tree.js';
import { facing, firstHit } from '../geometry/ray.js';
import { surfaceSamples } from '../geometry/surface-samples.js';
import type { Point3 } from '../geometry/vec.js';
import { dot3, sub3 } from '../geometry/vec3.js';
import type { Face, Sunk } from './letters.js';

/** Facets that face away from each other within this are two sides of a wall; else it is an edge. */
const OPPOSITE = Math.cos((14 * Math.PI) / 180);
const LEAST_AREA = 0.02; // mm²: smaller facets are not sampled
const STEP = 4; // mm between the places measured on large facets
const FLAT = 1e-4; // mm: corners this near a face lie in it

/**
 * Thickness at the thinnest place under `upTo`, which is returned if nothing is thinner. It is
 * measured from the middle of every facet and from places all over large ones; the bottoms of
 * letters count, their sides do not.
 */
export function thinnestWall(tree: FacetTree, letters: readonly Sunk[], upTo: number): number {
  const faces = [...new Map(letters.map((s) => [s.face.name, s])).values()];
  const grooved = Uint8Array.from({ length: tree.order.length }, (_, f) =>
    faces.some((sunk) => inGroove(tree.corners, 9 * f, sunk)) ? 1 : 0,
  );
  return surfaceSamples(tree, STEP, LEAST_AREA).reduce(
    (least, { at, normal, facet }) =>
      grooved[facet] ? least : thicknessAt(tree, grooved, at, normal, least),
    upTo,
  );
}

function thicknessAt(
  tree: FacetTree,
  grooved: Uint8Array,
  start: Point3,
  [x, y, z]: Point3,
  upTo: number,
): number {
  const way: Point3 = [-x, -y, -z];
  const hit = firstHit(tree, start, way, { from: FLAT, upTo, sides: 'out' });
  if (!hit || grooved[hit.facet] || facing(tree, hit.facet, way) <= OPPOSITE) return upTo;
  return hit.distance;
}

/** Corners both in the face and at the bottom of its letters. */
function inGroove(c: Float64Array, o: number, sunk: { face: Face; depthMm: number }): boolean {
  const { face, depthMm } = sunk;
  let [top, bottom] = [0, 0];
  for (let k = o; k < o + 9; k += 3) {
    const depth = dot3(sub3(face.origin, [c[k], c[k + 1], c[k + 2]]), face.out);
    if (Math.abs(depth) < FLAT) top++;
    else if (Math.abs(depth - depthMm) < FLAT) bottom++;
    else return false;
  }
  return top > 0 && bottom > 0;
}
