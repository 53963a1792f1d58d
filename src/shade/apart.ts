/** Bodies drawn apart, to show how they go together. */
import type { Point3 } from '../geometry/vec.js';
import { along3, cross3, dot3, times3, unit3 } from '../geometry/vec3.js';
import { Fault } from '../problem.js';
import { type Body, placed, type Scene } from './scene.js';

/**
 * A scene of what stays and what comes out: the movers drawn `gapMm` clear of the rest along the free
 * direction, and dashed the ways of the two of their corners that lie outermost to both sides of it
 * for a viewer in the direction `toward`. Directions of any length, in the frame of the scene.
 */
export function drawnApart(
  staying: readonly Body[],
  moving: readonly Body[],
  { free, toward, gapMm }: { free: Point3; toward: Point3; gapMm: number },
): Scene {
  const out = unit3(free);
  const near = dot3(outermost(moving, [times3(out, -1)]), out);
  const far = dot3(outermost(staying, [out]), out);
  const way = Math.max(0, far - near) + gapMm;
  const aside = unit3(cross3(out, toward));
  const isAlong = !aside.every(Number.isFinite);
  const sides = isAlong ? [] : [aside, times3(aside, -1)];
  return {
    bodies: [...staying, ...moving.map((body) => movedAlong(body, out, way))],
    ways: sides.map((side) => {
      const from = outermost(moving, [side, unit3(toward)]);
      return { from, to: along3(from, way, out) };
    }),
  };
}

/** Corners this close along a direction are equally far out, mm. */
const EQUAL_MM = 1e-3;

/** The corner of the bodies that is farthest along the first direction; among equals along the next. */
function outermost(bodies: readonly Body[], along: readonly Point3[]): Point3 {
  let best: Point3 | null = null;
  for (const { mesh, matrix: m } of bodies) {
    for (let i = 0; i < mesh.positions.length; i += 3) {
      const p = placed(m, mesh.positions.subarray(i, i + 3));
      const gains = best === null ? [1] : along.map((d) => dot3(d, p) - dot3(d, best as Point3));
      if ((gains.find((gain) => Math.abs(gain) > EQUAL_MM) ?? 0) > 0) best = p;
    }
  }
  if (best === null) throw new Fault('nothing to draw apart');
  return best;
}

function movedAlong(body: Body, free: Point3, way: number): Body {
  const matrix = body.matrix.map((value, i) =>
    i === 12 || i === 13 || i === 14 ? value + way * free[i - 12] : value,
  );
  return { ...body, matrix };
}
