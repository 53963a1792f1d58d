/**
 * A contour as a tool follows it: begun where its lead-in comes in, and without the stretches that
 * an earlier contour has cut already.
 */
import {
  type ArcPath,
  arcOf,
  partOf,
  pathOf,
  pointOn,
  type Segment,
  segmentLength,
  segmentsOf,
} from '../geometry/arcpath.js';
import { add, distance, mix, type Point2, sub, times, unit } from '../geometry/vec.js';

/** Shorter remains of a segment are rounding, mm. */
const CRUMB_MM = 1e-6;

/** The same closed path, begun at the vertex nearest to a point. */
export function begunAt({ closed, vertices }: ArcPath, start: Point2): ArcPath {
  const far = ({ x, y }: { readonly x: number; readonly y: number }) => distance([x, y], start);
  const first = vertices.reduce((best, v, i) => (far(v) < far(vertices[best]) ? i : best), 0);
  return { closed, vertices: [...vertices.slice(first), ...vertices.slice(0, first)] };
}

/** What is left of a closed path, as open ones, when stretches of it (in its own direction) are taken out. */
export function without(path: ArcPath, stretches: readonly (readonly Point2[])[]): ArcPath[] {
  const segments = segmentsOf(path);
  const out = stretches
    .map((line) => ({
      from: placeOf(segments, line[0]),
      to: placeOf(segments, line[line.length - 1]),
    }))
    .sort((a, b) => a.from.index - b.from.index || a.from.alongMm - b.from.alongMm);
  return out.flatMap(({ to }, i) => {
    const next = out[(i + 1) % out.length].from;
    const kept = between(segments, to, next).filter((s) => segmentLength(s) > CRUMB_MM);
    return kept.length > 0 ? [pathOf(kept, false)] : [];
  });
}

/** A point of a path: on which segment, and how far along it. */
type Place = { readonly index: number; readonly at: Point2; readonly alongMm: number };

function placeOf(segments: readonly Segment[], p: Point2): Place {
  const feet = segments.map((s) => footOn(s, p));
  const index = feet.reduce(
    (best, f, i) => (distance(f, p) < distance(feet[best], p) ? i : best),
    0,
  );
  const at = feet[index];
  return { index, at, alongMm: segmentLength(partOf(segments[index], segments[index].from, at)) };
}

/** The point of a segment nearest to p. */
function footOn(s: Segment, p: Point2): Point2 {
  const ends = distance(s.from, p) <= distance(s.to, p) ? s.from : s.to;
  if (s.bulge === 0) {
    const [dx, dy] = sub(s.to, s.from);
    const share = ((p[0] - s.from[0]) * dx + (p[1] - s.from[1]) * dy) / (dx * dx + dy * dy);
    return share > 0 && share < 1 ? mix(s.from, s.to, share) : ends;
  }
  const { center, radius } = arcOf(s);
  const foot = add(center, times(unit(sub(p, center)), radius));
  const along = segmentLength(partOf(s, s.from, foot));
  const whole = segmentLength(s);
  return along < whole && distance(pointOn(s, along / whole), foot) < 1e-6 ? foot : ends;
}

function between(segments: readonly Segment[], from: Place, to: Place): Segment[] {
  const first = segments[from.index];
  if (from.index === to.index && from.alongMm <= to.alongMm) return [partOf(first, from.at, to.at)];
  const kept = [partOf(first, from.at, first.to)];
  for (let i = (from.index + 1) % segments.length; i !== to.index; i = (i + 1) % segments.length)
    kept.push(segments[i]);
  return [...kept, partOf(segments[to.index], segments[to.index].from, to.at)];
}
