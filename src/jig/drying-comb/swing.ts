/** How much room a lure takes that hangs by an eye and turns. */
import type { Mesh } from '../../geometry/mesh.js';
import type { Point3 } from '../../geometry/vec.js';
import { aside3, sub3, unit3 } from '../../geometry/vec3.js';

/**
 * Radius of the upright cylinder round a lure that hangs by one point: its center of gravity comes
 * to rest under the point, and the lure may turn about the line through both. The greatest distance
 * of any corner from that line.
 */
export function swingRadius(
  body: Mesh,
  more: readonly Point3[],
  hungAt: Point3,
  cg: Point3,
): number {
  const down = unit3(sub3(cg, hungAt));
  const { positions } = body;
  let most = 0;
  for (let v = 0; v < positions.length; v += 3) {
    const p: Point3 = [positions[v], positions[v + 1], positions[v + 2]];
    most = Math.max(most, aside3(sub3(p, hungAt), down));
  }
  return Math.max(most, ...more.map((p) => aside3(sub3(p, hungAt), down)));
}
