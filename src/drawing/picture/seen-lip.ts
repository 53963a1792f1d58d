/** The lip plate in a view: the outline of a slab, and the hole in it. */
import { asRegion, union } from '../../geometry/clip.js';
import { ring, ringArea, signedArea } from '../../geometry/ring.js';
import { distance, mix, type Point2, type Point3 } from '../../geometry/vec.js';
import type { DrawnLip } from './input.js';
import { hull, LEAST_AREA_MM2, seen, type View } from './view.js';

export type SeenLip = {
  readonly outline: readonly Point2[];
  /** Empty without one, and where the plate is seen on its edge. */
  readonly hole: readonly Point2[];
};

/** A rectangle, or any plate on its edge, is seen as the hull of its corners; else its two faces and what joins them are put together. */
export function seenLip(lip: DrawnLip, view: View): SeenLip {
  const { corners, widthMm, face } = lip;
  const box = hull(
    corners.flatMap(([x, z]) => [1, -1].map((side) => seen(view, [x, (side * widthMm) / 2, z]))),
  );
  const [under, over] = face ? bothFaces(lip, face.outline, view) : [[], []];
  if (!face || Math.abs(signedArea(under)) < LEAST_AREA_MM2) return { outline: box, hole: [] };
  const walls = under.map((p, i): Point2[] => {
    const next = (i + 1) % under.length;
    return [p, under[next], over[next], over[i]];
  });
  const outline = union(
    [under, over, ...walls]
      .filter((points) => Math.abs(signedArea(points)) > LEAST_AREA_MM2)
      .map((points) => asRegion(ring(points))),
  )
    .map(({ outer }) => outer)
    .reduce((most, outer) => (ringArea(outer) > ringArea(most) ? outer : most));
  return { outline, hole: bothFaces(lip, face.hole, view)[0] };
}

/** Points of a face, seen on the one side of the plate and on the other. */
function bothFaces(
  { corners: [end, tip, otherTip, otherEnd] }: DrawnLip,
  points: readonly Point2[],
  view: View,
): readonly [readonly Point2[], readonly Point2[]] {
  const long = distance(end, tip);
  const on = (from: Point2, to: Point2) =>
    points.map(([across, along]): Point2 => {
      const [x, z] = mix(from, to, along / long);
      const at: Point3 = [x, across, z];
      return seen(view, at);
    });
  return [on(end, tip), on(otherEnd, otherTip)];
}
