/**
 * Paths of straight lines and circular arcs. A vertex holds the bulge of the segment that leaves it:
 * tan(θ/4) of the arc's included angle, positive counter-clockwise, 0 for a line (the convention of
 * DXF R12 polylines, DXF Reference, VERTEX group 42).
 */
import { type Ring, ring } from './ring.js';
import {
  add,
  type Box,
  boxOf,
  cosSinDeg,
  cross,
  distance,
  dot,
  type Motion,
  mix,
  moved,
  type Point2,
  quarterLeft,
  sub,
  times,
} from './vec.js';

export type PathVertex = { readonly x: number; readonly y: number; readonly bulge: number };

/** In an open path the last vertex's bulge is 0 and means nothing. */
export type ArcPath = { readonly closed: boolean; readonly vertices: readonly PathVertex[] };

export type Circle = { readonly center: Point2; readonly radius: number };

/** One line or arc of a path. */
export type Segment = { readonly from: Point2; readonly to: Point2; readonly bulge: number };

export function segmentsOf(path: ArcPath): Segment[] {
  const { vertices, closed } = path;
  const count = closed ? vertices.length : vertices.length - 1;
  return Array.from({ length: count }, (_, i) => {
    const a = vertices[i];
    const b = vertices[(i + 1) % vertices.length];
    return { from: [a.x, a.y], to: [b.x, b.y], bulge: a.bulge };
  });
}

/** The path through consecutive segments; each must start where the one before ends. */
export function pathOf(segments: readonly Segment[], closed: boolean): ArcPath {
  const vertices = segments.map(({ from, bulge }) => ({ x: from[0], y: from[1], bulge }));
  const last = segments[segments.length - 1].to;
  return {
    closed,
    vertices: closed ? vertices : [...vertices, { x: last[0], y: last[1], bulge: 0 }],
  };
}

export const polyline = (points: readonly Point2[], closed: boolean): ArcPath => ({
  closed,
  vertices: points.map(([x, y]) => ({ x, y, bulge: 0 })),
});

/** Included angle in radians, positive counter-clockwise. */
export const sweep = (bulge: number): number => 4 * Math.atan(bulge);

/** Center and radius of an arc segment. Not for lines. */
export function arcOf({ from, to, bulge }: Segment): Circle {
  const chord = sub(to, from);
  // The center lies on the chord's bisector, (1 − b²)/(4b) chords to the left of its middle.
  const center = add(
    mix(from, to, 0.5),
    times(quarterLeft(chord), (1 - bulge * bulge) / (4 * bulge)),
  );
  const radius = (Math.hypot(chord[0], chord[1]) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return { center, radius };
}

/** Unit direction of travel at the start and at the end of a segment. */
export function directions(s: Segment): readonly [start: Point2, end: Point2] {
  const chord = Math.atan2(s.to[1] - s.from[1], s.to[0] - s.from[0]);
  const half = sweep(s.bulge) / 2;
  const at = (a: number): Point2 => [Math.cos(a), Math.sin(a)];
  return [at(chord - half), at(chord + half)];
}

export function segmentLength(s: Segment): number {
  const chord = distance(s.from, s.to);
  if (s.bulge === 0) return chord;
  return arcOf(s).radius * Math.abs(sweep(s.bulge));
}

export const pathLength = (path: ArcPath): number =>
  segmentsOf(path).reduce((sum, s) => sum + segmentLength(s), 0);

/** Signed area of a closed path, positive counter-clockwise: chords plus circular segments. */
export function pathArea(path: ArcPath): number {
  let area = 0;
  for (const s of segmentsOf(path)) {
    area += (s.from[0] * s.to[1] - s.to[0] * s.from[1]) / 2;
    if (s.bulge !== 0) {
      const a = sweep(s.bulge);
      area += (arcOf(s).radius ** 2 * (a - Math.sin(a))) / 2;
    }
  }
  return area;
}

/** The point a share t (0 to 1) along a segment. */
export function pointOn(s: Segment, t: number): Point2 {
  if (s.bulge === 0) return mix(s.from, s.to, t);
  const { center } = arcOf(s);
  const a = sweep(s.bulge) * t;
  const [c, n] = [Math.cos(a), Math.sin(a)];
  const [dx, dy] = sub(s.from, center);
  return [center[0] + c * dx - n * dy, center[1] + n * dx + c * dy];
}

/** The part of a segment from one of its points to another, in the segment’s own direction of travel. */
export function partOf(s: Segment, from: Point2, to: Point2): Segment {
  if (s.bulge === 0) return { from, to, bulge: 0 };
  const { center } = arcOf(s);
  const [u, w] = [sub(from, center), sub(to, center)];
  const turn = Math.atan2(cross(u, w), dot(u, w));
  const whole = sweep(s.bulge);
  const angle =
    Math.sign(turn) === Math.sign(whole) || Math.abs(turn) < 1e-12
      ? turn
      : turn + Math.sign(whole) * 2 * Math.PI;
  return { from, to, bulge: Math.tan(angle / 4) };
}

/** Points along the path, every chord within `tolerance` of its arc. A closed path's first point is not repeated. */
export function pathPoints(path: ArcPath, tolerance: number): Point2[] {
  const out: Point2[] = [];
  for (const s of segmentsOf(path)) {
    out.push(s.from);
    if (s.bulge === 0) continue;
    const step = 2 * Math.acos(Math.max(0, 1 - tolerance / arcOf(s).radius));
    const pieces = Math.ceil(Math.abs(sweep(s.bulge)) / step);
    for (let k = 1; k < pieces; k++) out.push(pointOn(s, k / pieces));
  }
  if (!path.closed) {
    const last = path.vertices[path.vertices.length - 1];
    out.push([last.x, last.y]);
  }
  return out;
}

/** A closed path as a ring of chords. @throws Fault when the path crosses itself. */
export const flatten = (path: ArcPath, tolerance: number): Ring =>
  ring(pathPoints(path, tolerance));

/** Exact box of the path, arcs' bulges included. */
export function pathBox(path: ArcPath): Box {
  const points: Point2[] = path.vertices.map(({ x, y }) => [x, y]);
  for (const s of segmentsOf(path)) {
    if (s.bulge === 0) continue;
    const { center, radius } = arcOf(s);
    const start = Math.atan2(s.from[1] - center[1], s.from[0] - center[0]);
    const total = sweep(s.bulge);
    for (let q = 0; q < 4; q++) {
      const turn = q * (Math.PI / 2) - start;
      const along = total > 0 ? positiveTurn(turn) : -positiveTurn(-turn);
      if (Math.abs(along) <= Math.abs(total)) {
        const [c, n] = cosSinDeg(q * 90);
        points.push([center[0] + radius * c, center[1] + radius * n]);
      }
    }
  }
  return boxOf(points);
}

const positiveTurn = (a: number): number => {
  const full = 2 * Math.PI;
  return ((a % full) + full) % full;
};

export const movedPath = (motion: Motion, path: ArcPath): ArcPath => ({
  closed: path.closed,
  vertices: path.vertices.map(({ x, y, bulge }) => {
    const [px, py] = moved(motion, [x, y]);
    return { x: px, y: py, bulge };
  }),
});
