/** A lure as the eye sees it from far off: level, from one side or from ahead. */
import { halves } from '../../body/properties.js';
import { unitSection } from '../../body/section.js';
import type { BodyShape } from '../../body/shape.js';
import { asRegion, union } from '../../geometry/clip.js';
import { type Ring, ring, signedArea } from '../../geometry/ring.js';
import { cross, type Point2, type Point3, sub } from '../../geometry/vec.js';
import { Fault } from '../../problem.js';

/** Unit vectors in the lure's frame that point right and up on the picture. */
export type View = { readonly right: Point3; readonly up: Point3 };

/** Square to the lure's long axis, nose to the left, the sky up: from port while the back is up. */
export function sideView(up: Point3): View {
  const [ux, uy, uz] = up;
  const size = Math.hypot(uy, uz);
  // Standing on its end: the limit of trimming further and further, without heel.
  if (size < 1e-6) return { right: [0, 0, -Math.sign(ux)], up };
  return { right: [size, (-ux * uy) / size, (-ux * uz) / size], up };
}

/** From ahead, the sky up: port is on the right while the back is up. */
export function frontView(up: Point3): View {
  const [ux, uy, uz] = up;
  const [ax, ay, az] = sideView(up).right;
  return { right: [uy * az - uz * ay, uz * ax - ux * az, ux * ay - uy * ax], up };
}

const dot3 = (a: Point3, b: Point3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Where a point is seen; heights are true heights, zero at the level of the nose. */
export const seen = (view: View, p: Point3): Point2 => [dot3(view.right, p), dot3(view.up, p)];

/** Stations and points around that show a body of 300 mm without a corner the eye finds. */
const STATIONS = 72;
const AROUND = 48;

/** Points around the section at a station. */
export function sectionPoints(shape: BodyShape, stationMm: number): Point3[] {
  const [upper, lower] = halves(shape, stationMm);
  return Array.from({ length: AROUND }, (_, i): Point3 => {
    const { b, h, n } = 2 * i < AROUND ? upper : lower;
    const [y, z] = unitSection((2 * Math.PI * i) / AROUND, n);
    return [stationMm, b * y, h * z];
  });
}

/**
 * The outline of the body in a view: every slice between two stations is seen as its convex hull.
 * Slices that only touched could fall apart along their edges on the grid of the union, so each
 * reaches a little into the next: a tenth of a step, far less than a chord's error and far more
 * than the grid at any size.
 */
export function silhouette(shape: BodyShape, view: View): Ring {
  const section = (step: number): Point2[] =>
    sectionPoints(
      shape,
      (shape.lengthMm / 2) * (1 - Math.cos((Math.PI * Math.min(step, STATIONS)) / STATIONS)),
    ).map((p) => seen(view, p));
  const slices = Array.from({ length: STATIONS }, (_, i) =>
    hull([...section(i), ...section(i + 1), ...section(i + 1 + OVERLAP)]),
  )
    .filter((points) => signedArea(points) > LEAST_AREA_MM2)
    .map((points) => asRegion(ring(points)));
  const pieces = union(slices);
  if (pieces.length !== 1) throw new Fault(`a body's outline fell into ${pieces.length} pieces`);
  return pieces[0].outer;
}

/** How far a slice reaches into the next, in steps from station to station. */
const OVERLAP = 0.1;

/** Less is not seen. */
export const LEAST_AREA_MM2 = 1e-3;

/** Convex hull, counter-clockwise (A. Andrew, 1979). Of points on a line, its two ends. */
export function hull(points: readonly Point2[]): Point2[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (list: readonly Point2[]): Point2[] => {
    const out: Point2[] = [];
    for (const p of list) {
      while (
        out.length > 1 &&
        cross(sub(out[out.length - 1], out[out.length - 2]), sub(p, out[out.length - 1])) <= 1e-12
      )
        out.pop();
      out.push(p);
    }
    return out.slice(0, -1);
  };
  return [...chain(sorted), ...chain([...sorted].reverse())];
}

/** Station of the greatest half-breadth, to a two-hundredth of the length. */
export function widestStationMm(shape: BodyShape): number {
  const stations = Array.from({ length: 199 }, (_, i) => (shape.lengthMm * (i + 1)) / 200);
  const breadth = (x: number) => shape.halfBreadthSquared.value(x);
  return stations.reduce((best, x) => (breadth(x) > breadth(best) ? x : best));
}
