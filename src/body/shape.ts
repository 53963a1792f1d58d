/**
 * The one smooth definition of a body, from which everything about it is computed.
 *
 * Back, belly and half-breadth are held as squares of their offsets over the station. A square
 * starts at the nose with the slope 2R of a round of radius R, so the ends are truly round, the
 * squares are tame everywhere, and an ellipse is a parabola.
 */
import { type Curve, monotoneCurve } from '../geometry/monotone.js';
import type { OffsetPoint } from '../pattern/pattern.js';

export type BodyShape = {
  readonly lengthMm: number;
  /** Squares of the offsets, mm², over the station in mm; all zero at nose (0) and tail (lengthMm). */
  readonly backSquared: Curve;
  readonly bellySquared: Curve;
  readonly halfBreadthSquared: Curve;
  /** Superellipse exponents of the upper and the lower half. */
  readonly upperExponent: Curve;
  readonly lowerExponent: Curve;
};

export type EndRadii = { readonly noseRadiusMm?: number; readonly tailRadiusMm?: number };

/**
 * The square of an offset curve through the points, zero at both ends, with the given end radii
 * (absent: as the points suggest). All-zero offsets give a flat side, whatever the radii.
 */
export function offsetSquared(
  lengthMm: number,
  points: readonly OffsetPoint[],
  radii: EndRadii,
): Curve {
  const xs = [0, ...points.map((p) => p.stationMm), lengthMm];
  const ys = [0, ...points.map((p) => p.offsetMm ** 2), 0];
  const { noseRadiusMm, tailRadiusMm } = radii;
  return monotoneCurve(xs, ys, {
    ...(noseRadiusMm === undefined ? {} : { start: 2 * noseRadiusMm }),
    ...(tailRadiusMm === undefined ? {} : { end: -2 * tailRadiusMm }),
  });
}

/** Offset in mm at a station, never NaN: a square that rounding made negative counts as zero. */
export const offsetAt = (squared: Curve, stationMm: number): number =>
  Math.sqrt(Math.max(0, squared.value(stationMm)));

/** Knots nearer than this are one: the same station written as mm and as a share differs in its last bit. */
const SAME_STATION_MM = 1e-6;

/** Stations at which any curve of the shape changes its formula, nose and tail included, rising. */
export function knotsOf(shape: BodyShape): number[] {
  const curves = [
    shape.backSquared,
    shape.bellySquared,
    shape.halfBreadthSquared,
    shape.upperExponent,
    shape.lowerExponent,
  ];
  const L = shape.lengthMm;
  const inside = curves
    .flatMap((c) => c.knots)
    .filter((x) => x > SAME_STATION_MM && x < L - SAME_STATION_MM)
    .sort((a, b) => a - b);
  return [0, ...inside.filter((x, i) => i === 0 || x - inside[i - 1] > SAME_STATION_MM), L];
}
