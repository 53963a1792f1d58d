/** Straight lines kept to the wood: which parts of a line lie inside an outline and outside its openings. */
import { insideRing } from '../geometry/ring.js';
import { cross, distance, dot, mix, type Point2, sub } from '../geometry/vec.js';

/** Shorter crumbs of a line are not drawn, mm. */
const CRUMB_MM = 0.2;

export type Part = readonly [from: Point2, to: Point2];

/**
 * The parts of the line from `from` to `to` inside `outline` and outside every opening, in their
 * order along the line. Parts shorter than 0.2 mm are left out.
 */
export function partsInside(
  [from, to]: Part,
  outline: readonly Point2[],
  openings: readonly (readonly Point2[])[] = [],
): Part[] {
  const shares = [outline, ...openings].flatMap((ring) => crossings([from, to], ring));
  const stops = [0, ...shares.filter((t) => t > 0 && t < 1).sort((a, b) => a - b), 1];
  const inWood = (t: number) => {
    const p = mix(from, to, t);
    return insideRing(p, outline) && !openings.some((o) => insideRing(p, o));
  };
  const kept: [number, number][] = [];
  for (let i = 1; i < stops.length; i++) {
    const [start, end] = [stops[i - 1], stops[i]];
    if (end === start || !inWood((start + end) / 2)) continue;
    const before = kept[kept.length - 1];
    if (before && before[1] === start) before[1] = end;
    else kept.push([start, end]);
  }
  return kept
    .map(([start, end]): Part => [mix(from, to, start), mix(from, to, end)])
    .filter(([a, b]) => distance(a, b) >= CRUMB_MM);
}

/** Where the line meets the ring's edges, as shares of its length; touching counts. */
function crossings([from, to]: Part, ring: readonly Point2[]): number[] {
  const along = sub(to, from);
  const share = (p: Point2) => dot(sub(p, from), along) / dot(along, along);
  return ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length];
    const sideP = cross(along, sub(p, from));
    const sideQ = cross(along, sub(q, from));
    if (sideP * sideQ > 0) return [];
    // An edge on the line itself: both its ends are places where inside may begin.
    return sideP === sideQ ? [share(p), share(q)] : [share(mix(p, q, sideP / (sideP - sideQ)))];
  });
}
