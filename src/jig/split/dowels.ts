/** Where dowels find room in a section. */
import { offset } from '../../geometry/clip.js';
import type { Region } from '../../geometry/ring.js';
import { distance, type Point2 } from '../../geometry/vec.js';
import { BORE_CHORD } from './across.js';
import { boreRadiusMm, type DowelSetup } from './split.js';

/** Halvings of the inset that finds the deepest place: 200 mm come down to 0.01. */
const HALVINGS = 14;

/**
 * The places of two dowels as far apart as the solid lets them be, so that they hold the pieces
 * against turning; of one, as deep inside as can be, where there is no room for two; or none.
 * @param sound what is solid all along the bores, in y and z
 */
export function dowelPlaces(sound: readonly Region[], dowel: DowelSetup): readonly Point2[] {
  const radius = boreRadiusMm(dowel) + BORE_CHORD;
  const room = offset(sound, -(radius + dowel.wallMm));
  if (room.length === 0) return [];
  const [a, b] = farthestApart(cornersOf(room));
  return distance(a, b) >= 2 * radius + dowel.wallMm ? [a, b] : [deepest(room)];
}

const cornersOf = (regions: readonly Region[]): Point2[] =>
  regions.flatMap(({ outer, holes }) => [outer, ...holes].flat());

/** The farthest two points of a plane area are corners of it; ties go to the first. */
function farthestApart(points: readonly Point2[]): readonly [Point2, Point2] {
  let best: readonly [Point2, Point2] = [points[0], points[0]];
  let most = 0;
  for (const [i, p] of points.entries()) {
    for (const q of points.slice(0, i)) {
      const apart = distance(p, q);
      if (apart > most + 1e-9) [best, most] = [[q, p], apart];
    }
  }
  return best;
}

function deepest(room: readonly Region[]): Point2 {
  let [inside, last] = [0, room];
  let step = 100;
  for (let i = 0; i < HALVINGS; i++, step /= 2) {
    const smaller = offset(room, -(inside + step));
    if (smaller.length > 0) [inside, last] = [inside + step, smaller];
  }
  return last[0].outer[0];
}
