/**
 * Rings: simple closed polygons without a repeated last point. One constructor makes them right
 * (finite, no repeats, area, no self-crossing, oriented), so nobody asks again.
 */
import { Fault } from '../problem.js';
import { type Box, boxOf, cross, type Motion, moved, type Point2, sub } from './vec.js';

declare const ringMark: unique symbol;
/** Counter-clockwise simple polygon. Only `ring()` makes one. */
export type Ring = readonly Point2[] & { readonly [ringMark]: true };

/** An area: one outer ring and the rings of its holes (also stored counter-clockwise). */
export type Region = { readonly outer: Ring; readonly holes: readonly Ring[] };

/** Signed area, positive counter-clockwise (shoelace). */
export function signedArea(points: readonly Point2[]): number {
  let twice = 0;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
    twice += points[j][0] * points[i][1] - points[i][0] * points[j][1];
  }
  return twice / 2;
}

/**
 * Makes a ring. Consecutive repeats closer than `mergeDistance` (default 1e-9) and a repeated last
 * point are merged; a clockwise ring is turned round.
 * @throws Fault on fewer than three points, a number that is not finite, no area, or a self-crossing.
 */
export function ring(points: readonly Point2[], mergeDistance = 1e-9): Ring {
  const merged = withoutRepeats(points, mergeDistance);
  if (merged.length < 3) throw new Fault(`ring of ${merged.length} distinct points`);
  const area = signedArea(merged);
  const [minX, minY, maxX, maxY] = boxOf(merged);
  if (Math.abs(area) <= 1e-12 * ((maxX - minX) ** 2 + (maxY - minY) ** 2)) {
    throw new Fault('ring without area');
  }
  const crossing = selfCrossing(merged);
  if (crossing) throw new Fault(`ring crosses itself at edges ${crossing[0]} and ${crossing[1]}`);
  return (area < 0 ? merged.reverse() : merged) as readonly Point2[] as Ring;
}

function withoutRepeats(points: readonly Point2[], mergeDistance: number): Point2[] {
  const out: Point2[] = [];
  const apart = (a: Point2, b: Point2) => Math.hypot(a[0] - b[0], a[1] - b[1]) > mergeDistance;
  for (const p of points) {
    if (!Number.isFinite(p[0]) || !Number.isFinite(p[1])) {
      throw new Fault(`ring point (${p[0]}, ${p[1]}) is not finite`);
    }
    if (out.length === 0 || apart(out[out.length - 1], p)) out.push(p);
  }
  while (out.length > 1 && !apart(out[out.length - 1], out[0])) out.pop();
  return out;
}

/** First pair of edges that properly cross, or null. Sweeps edges by least x. */
export function selfCrossing(points: readonly Point2[]): readonly [number, number] | null {
  const n = points.length;
  const edges = points.map((p, i) => {
    const q = points[(i + 1) % n];
    return { i, p, q, minX: Math.min(p[0], q[0]), maxX: Math.max(p[0], q[0]) };
  });
  const order = [...edges].sort((a, b) => a.minX - b.minX);
  let active: typeof edges = [];
  for (const e of order) {
    active = active.filter((f) => f.maxX >= e.minX);
    for (const f of active) {
      const gap = Math.abs(e.i - f.i);
      if (gap === 1 || gap === n - 1) continue;
      if (properlyCross(e.p, e.q, f.p, f.q)) return [Math.min(e.i, f.i), Math.max(e.i, f.i)];
    }
    active.push(e);
  }
  return null;
}

function properlyCross(a: Point2, b: Point2, c: Point2, d: Point2): boolean {
  const side = (p: Point2, q: Point2, r: Point2) => Math.sign(cross(sub(q, p), sub(r, p)));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

export const ringArea = (r: Ring): number => signedArea(r);
export const ringBox = (r: Ring): Box => boxOf(r);

export const regionArea = (region: Region): number =>
  ringArea(region.outer) - region.holes.reduce((sum, h) => sum + ringArea(h), 0);

export const areaOf = (regions: readonly Region[]): number =>
  regions.reduce((sum, region) => sum + regionArea(region), 0);

export const loopsOf = (regions: readonly Region[]): readonly Ring[] =>
  regions.flatMap(({ outer, holes }) => [outer, ...holes]);

/** True if the point is in one of the regions and in none of its holes. */
export const insideRegions = (p: Point2, regions: readonly Region[]): boolean =>
  regions.some(
    ({ outer, holes }) => insideRing(p, outer) && !holes.some((hole) => insideRing(p, hole)),
  );

/** Where loops cross the line on which one coordinate has a value: the other coordinate, rising. */
export function crossings(
  loops: readonly (readonly Point2[])[],
  axis: 0 | 1,
  value: number,
): number[] {
  const other = axis === 0 ? 1 : 0;
  return loops
    .flatMap((loop) =>
      loop.flatMap((p, i) => {
        const q = loop[(i + 1) % loop.length];
        if (p[axis] <= value === q[axis] <= value) return [];
        return [p[other] + ((q[other] - p[other]) * (value - p[axis])) / (q[axis] - p[axis])];
      }),
    )
    .sort((a, b) => a - b);
}

/** The ring turned and moved; a rigid motion keeps it a ring. */
export const movedRing = (motion: Motion, r: Ring): Ring =>
  r.map((p) => moved(motion, p)) as readonly Point2[] as Ring;

/** True if the point is inside (even-odd rule); a point on the edge may give either answer. */
export function insideRing([x, y]: Point2, r: readonly Point2[]): boolean {
  let inside = false;
  for (let i = 0, j = r.length - 1; i < r.length; j = i++) {
    const [xi, yi] = r[i];
    const [xj, yj] = r[j];
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}

/** A regular polygon around a circle: `circumscribed` contains the circle, else it lies inside. */
export function circleRing(
  center: Point2,
  radius: number,
  { segments, circumscribed = false }: { segments: number; circumscribed?: boolean },
): Ring {
  const r = circumscribed ? radius / Math.cos(Math.PI / segments) : radius;
  return ring(
    Array.from({ length: segments }, (_, i): Point2 => {
      const a = (2 * Math.PI * i) / segments;
      return [center[0] + r * Math.cos(a), center[1] + r * Math.sin(a)];
    }),
  );
}

export const rectRing = (minX: number, minY: number, maxX: number, maxY: number): Ring =>
  ring([
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ]);
