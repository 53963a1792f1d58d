/** Overlaps judged by polyclip-ts, which shares no code with the search, its checker or clipper. */
import * as polyclip from 'polyclip-ts';
import { movedRing, type Ring, signedArea } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import type { Places } from '../../src/pack/crowd.js';
import type { Table } from '../../src/pack/table.js';

const polygon = (points: readonly Point2[]): [number, number][][] => [
  points.map(([x, y]): [number, number] => [x, y]),
];

/** Area that two polygons have in common. */
export const commonArea = (a: readonly Point2[], b: readonly Point2[]): number =>
  polyclip
    .intersection(polygon(a), polygon(b))
    .flatMap((rings) => rings.map((r, i) => (i === 0 ? 1 : -1) * Math.abs(signedArea(r))))
    .reduce((sum, area) => sum + area, 0);

/** Items where they lie, from the true rings by outline of the table. */
export const laidOut = (
  { turned }: Table,
  rings: readonly Ring[],
  { turned: kinds, x, y }: Places,
): Ring[] =>
  [...kinds].map((k, i) =>
    movedRing({ turnDeg: turned[k].turnDeg, move: [x[i], y[i]] }, rings[turned[k].outline]),
  );

/** Greatest area that two of the polygons have in common. */
export function greatestCommonArea(laid: readonly (readonly Point2[])[]): number {
  let greatest = 0;
  laid.forEach((a, i) => {
    for (const b of laid.slice(i + 1)) greatest = Math.max(greatest, commonArea(a, b));
  });
  return greatest;
}
