/** Single-stroke lines given a width, as areas to extrude: letters that can be sunk into a face. */
import geom2 from '@jscad/modeling/src/geometries/geom2/index.js';
import hulls from '@jscad/modeling/src/operations/hulls/index.js';
import primitives from '@jscad/modeling/src/primitives/index.js';
import { asRegion, union } from '../geometry/clip.js';
import { type Region, ring } from '../geometry/ring.js';
import { thinned } from '../geometry/thin.js';
import type { Point2 } from '../geometry/vec.js';
import { Fault } from '../problem.js';

const ROUND_SIDES = 8; // 0.03 mm chord error at a 0.4 mm radius: under what a nozzle can draw
const EDGE_CHORD = 0.1; // how far an edge may be flattened, as a share of the pen's width

type Area = ReturnType<typeof primitives.circle>;

/**
 * The area a round pen of this width covers when it follows the lines: chained hulls of circles,
 * united where lines meet. Disjoint regions; none for no lines.
 * @throws Fault on a width that is not positive or a point that is not finite.
 */
export function penned(lines: readonly (readonly Point2[])[], width: number): Region[] {
  if (!(width > 0 && width < Infinity)) throw new Fault(`line ${width} wide`);
  const capsules = lines.flatMap((line) =>
    segments(line).map((ends) => asRegion(ring(geom2.toPoints(capsule(ends, width))))),
  );
  return union(capsules).map(({ outer, holes }) => ({
    outer: thinned(outer, EDGE_CHORD * width),
    holes: holes.map((hole) => thinned(hole, EDGE_CHORD * width)),
  }));
}

/** The ends of each straight piece of a line; a dot is a piece with one end. */
export const segments = (line: readonly Point2[]): Point2[][] =>
  line.length === 1 ? [[line[0]]] : line.slice(1).map((p, i) => [line[i], p]);

/** What the pen covers on one straight piece. The library does not check the numbers, so it is done here. */
export function capsule(ends: readonly Point2[], width: number): Area {
  if (!ends.flat().every(Number.isFinite)) throw new Fault(`line through ${ends.join(' and ')}`);
  const dots = ends.map(([x, y]) =>
    primitives.circle({ center: [x, y], radius: width / 2, segments: ROUND_SIDES }),
  );
  return hulls.hull(dots);
}
