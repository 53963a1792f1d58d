/** Bodies drawn apart, to show how they go together. */
import type { Point3 } from '../geometry/vec.js';
import { along3, cross3, dot3, length3, unit3 } from '../geometry/vec3.js';
import { Fault } from '../problem.js';
import { type Body, placed, type Scene } from './scene.js';

/**
 * A scene of what stays and what comes out: the movers drawn `gapMm` clear of the rest along the free
 * direction, and dashed the ways of two of their corners: for a viewer in the direction `toward` the
 * outermost to either side that come out of the rest, not past it. Directions of any length, in the
 * frame of the scene.
 * @throws Fault when nothing stays or nothing moves.
 */
export function drawnApart(
  staying: readonly Body[],
  moving: readonly Body[],
  { free, toward, gapMm }: { free: Point3; toward: Point3; gapMm: number },
): Scene {
  const out = unit3(free);
  const [rest, movers] = [cornersOf(staying), cornersOf(moving)];
  const [, far] = reach(rest, out);
  const [near] = reach(movers, out);
  const way = Math.max(0, far - near) + gapMm;
  return {
    bodies: [...staying, ...moving.map((body) => movedAlong(body, out, way))],
    ways: sideCorners(rest, movers, out, unit3(toward)).map((from) => ({
      from,
      to: along3(from, way, out),
    })),
  };
}

/** Corners this close along a direction are equally far out, mm. */
const EQUAL_MM = 1e-3;

/** Of equals the nearest to the viewer. None when the way runs straight toward them. */
function sideCorners(
  rest: readonly Point3[],
  movers: readonly Point3[],
  out: Point3,
  toward: Point3,
): Point3[] {
  const across = cross3(out, toward);
  if (length3(across) < 1e-6) return [];
  const aside = unit3(across);
  const [low, high] = reach(rest, aside);
  const inside = movers.filter((p) => dot3(p, aside) >= low && dot3(p, aside) <= high);
  if (inside.length === 0) return [];
  const [left, right] = reach(inside, aside);
  return [left, right].map((end) =>
    inside
      .filter((p) => Math.abs(dot3(p, aside) - end) <= EQUAL_MM)
      .reduce((a, b) => (dot3(b, toward) > dot3(a, toward) + EQUAL_MM ? b : a)),
  );
}

const cornersOf = (bodies: readonly Body[]): Point3[] =>
  bodies.flatMap(({ mesh: { positions }, matrix }) =>
    Array.from({ length: positions.length / 3 }, (_, v) =>
      placed(matrix, positions.subarray(3 * v, 3 * v + 3)),
    ),
  );

/** Least and greatest along a unit vector. */
function reach(points: readonly Point3[], along: Point3): readonly [number, number] {
  let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const p of points) {
    least = Math.min(least, dot3(p, along));
    greatest = Math.max(greatest, dot3(p, along));
  }
  if (!(least <= greatest)) throw new Fault('nothing to draw apart');
  return [least, greatest];
}

function movedAlong(body: Body, free: Point3, way: number): Body {
  const matrix = body.matrix.map((value, i) =>
    i === 12 || i === 13 || i === 14 ? value + way * free[i - 12] : value,
  );
  return { ...body, matrix };
}
