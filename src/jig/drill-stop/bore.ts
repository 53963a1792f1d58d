/** A round hole seen in a section: where its middle is, and how wide it is. */
import { type Region, type Ring, ringArea } from '../../geometry/ring.js';
import { cross, distance, distanceToEdge, type Point2, sub } from '../../geometry/vec.js';

export type Bore = { readonly center: Point2; readonly least: number; readonly mean: number };

/** The closed loop of air about a point; null where the material is not closed round it. */
export function boreNear(section: readonly Region[], near: Point2): Bore | null {
  const bores = section.flatMap((region) => region.holes).map(boreOf);
  const about = bores.filter((b) => distance(b.center, near) < b.mean / 2);
  return about.length === 1 ? about[0] : null;
}

function boreOf(loop: Ring): Bore {
  const center = centroid(loop);
  return {
    center,
    least: 2 * distanceToEdge(center, loop),
    mean: 2 * Math.sqrt(ringArea(loop) / Math.PI),
  };
}

function centroid(loop: Ring): Point2 {
  let [x, y] = [0, 0];
  const [ox, oy] = loop[0];
  loop.forEach((p, i) => {
    const q = loop[(i + 1) % loop.length];
    const w = cross(sub(p, [ox, oy]), sub(q, [ox, oy]));
    x += w * (p[0] + q[0] - 2 * ox);
    y += w * (p[1] + q[1] - 2 * oy);
  });
  const six = 6 * ringArea(loop);
  return [ox + x / six, oy + y / six];
}
