/** Of all the places where a jig bears on its workpiece the few that say as much: the outermost of each direction. */
import type { Point3 } from '../../geometry/vec.js';
import { dot3 } from '../../geometry/vec3.js';
import type { Faced } from './clearance.js';

/** Normals as equal as this are one face. */
const EVEN = 0.02;
const OUTWARD: readonly Point3[] = [-1, 0, 1].flatMap((x) =>
  [-1, 0, 1].flatMap((y) =>
    [-1, 0, 1].filter((z) => x !== 0 || y !== 0 || z !== 0).map((z): Point3 => [x, y, z]),
  ),
);

/**
 * Pushes of one direction on a face can be made of those at its corners, so of the places with one
 * normal only those furthest out in 26 directions stay. What they can hold all can hold.
 */
export function outermost(faced: readonly Faced[]): Faced[] {
  const faces = new Map<string, Faced[]>();
  for (const place of faced) {
    const kind = place.afterPlayMm > 0 ? 'play' : 'seat';
    const key = [kind, ...place.normal.map((n) => Math.round(n / EVEN))].join(' ');
    const face = faces.get(key);
    if (face) face.push(place);
    else faces.set(key, [place]);
  }
  return [...faces.values()].flatMap((places) => {
    if (places.length <= 2) return places;
    const out = OUTWARD.map((way) =>
      places.reduce((a, b) => (dot3(b.at, way) > dot3(a.at, way) ? b : a)),
    );
    return [...new Set(out)];
  });
}
