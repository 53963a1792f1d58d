/** Points and vectors as plain tuples. Numbers in `geometry/` are pure: the caller owns the unit (mm). */

export type Point2 = readonly [x: number, y: number];
export type Point3 = readonly [x: number, y: number, z: number];

export const add = (a: Point2, b: Point2): Point2 => [a[0] + b[0], a[1] + b[1]];
export const sub = (a: Point2, b: Point2): Point2 => [a[0] - b[0], a[1] - b[1]];
export const times = (a: Point2, k: number): Point2 => [a[0] * k, a[1] * k];
export const dot = (a: Point2, b: Point2): number => a[0] * b[0] + a[1] * b[1];
/** z of the cross product: positive when b lies counter-clockwise of a. */
export const cross = (a: Point2, b: Point2): number => a[0] * b[1] - a[1] * b[0];
export const length = (a: Point2): number => Math.hypot(a[0], a[1]);
export const distance = (a: Point2, b: Point2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
/** Unit vector along a; the zero vector has none and gives NaN. */
export const unit = (a: Point2): Point2 => times(a, 1 / length(a));
/** a turned a quarter counter-clockwise. */
export const quarterLeft = (a: Point2): Point2 => [-a[1], a[0]];
export const mix = (a: Point2, b: Point2, t: number): Point2 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
];

/** Distance from p to the straight piece between two points, which may be one. */
export function distanceToPiece(p: Point2, from: Point2, to: Point2): number {
  const way = sub(to, from);
  const square = dot(way, way);
  const share = square === 0 ? 0 : dot(sub(p, from), way) / square;
  return distance(p, mix(from, to, Math.min(1, Math.max(0, share))));
}

/** Distance from a point to the edge of a polygon. */
export const distanceToEdge = (p: Point2, polygon: readonly Point2[]): number =>
  Math.min(...polygon.map((a, k) => distanceToPiece(p, a, polygon[(k + 1) % polygon.length])));

/** Least distance between two polygons that do not cross, by their corners and edges. */
export const betweenEdges = (a: readonly Point2[], b: readonly Point2[]): number =>
  Math.min(...a.map((p) => distanceToEdge(p, b)), ...b.map((p) => distanceToEdge(p, a)));

/** Box around points: [least x, least y, greatest x, greatest y]. */
export type Box = readonly [minX: number, minY: number, maxX: number, maxY: number];

export function boxOf(points: Iterable<Point2>): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return [minX, minY, maxX, maxY];
}

/** A turn counter-clockwise about the origin, then a move. */
export type Motion = { readonly turnDeg: number; readonly move: Point2 };

/** Cosine and sine of an angle in degrees, exact at quarter turns. */
export function cosSinDeg(deg: number): Point2 {
  const quarters = deg / 90;
  if (Number.isInteger(quarters)) {
    const q = ((quarters % 4) + 4) % 4;
    return [q === 0 ? 1 : q === 2 ? -1 : 0, q === 1 ? 1 : q === 3 ? -1 : 0];
  }
  const a = (deg * Math.PI) / 180;
  return [Math.cos(a), Math.sin(a)];
}

export function moved({ turnDeg, move }: Motion, [x, y]: Point2): Point2 {
  const [c, s] = cosSinDeg(turnDeg);
  return [c * x - s * y + move[0], s * x + c * y + move[1]];
}

/** A point turned counter-clockwise about the origin. */
export const turned = (p: Point2, turnDeg: number): Point2 => moved({ turnDeg, move: [0, 0] }, p);
