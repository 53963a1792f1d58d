/** The largest round-over bit that stays out of the finished body. */

import type { Blank } from '../blank/blank.js';
import { halves } from '../body/properties.js';
import { unitSection } from '../body/section.js';
import type { BodyShape } from '../body/shape.js';
import { type ArcPath, arcOf, segmentsOf } from '../geometry/arcpath.js';
import { cross, distance, distanceToPiece, type Point2, sub } from '../geometry/vec.js';
import type { Materials } from '../tables/materials.js';

export type RoundOver = {
  /** Largest radius that does not bite into the finished body anywhere; at most half the thickness. */
  readonly limitMm: number;
  /** Largest bit that is no larger; 0 when none of them is small enough. */
  readonly bitMm: number;
  /** Where along the body the limit is reached: there the router comes closest. */
  readonly stationMm: number;
};

const STATIONS = 72; // looked at along the body, closer together toward the ends
const AROUND = 48; // and round half a section
const LOOSE = 0.9; // of the least distance seen: between two stations looked at it may be a little less
const FINEST = 1e-7; // of a turn, at which the refinement stops

/**
 * A quarter round of radius R takes what is less than R from the sawn outline and from the flat face,
 * and outside its circle. A point of the finished surface, u inside the outline (seen from the side)
 * and g under the face, lies on that circle when (R − u)² + (R − g)² = R²; it is bitten into by any
 * larger radius than R = u + g + √(2ug), the far root (the near one is a circle that has passed it).
 */
export const clearRadius = (inside: number, under: number): number =>
  inside + under + Math.sqrt(2 * inside * under);

/** The least clear radius over the surface is the limit: by a grid, then refined to about 1e-6 mm. */
export function roundOver(
  shape: BodyShape,
  { profile, thicknessMm }: Pick<Blank, 'profile' | 'thicknessMm'>,
  { bits }: Pick<Materials, 'bits'>,
): RoundOver {
  const toOutline = distanceTo(profile.path);
  const L = shape.lengthMm;
  const stationAt = (turn: number) => (L / 2) * (1 - Math.cos(turn));
  // No point of the surface is nearer to the outline than the side view itself.
  const nearest = Math.min(
    ...Array.from({ length: STATIONS - 1 }, (_, i) =>
      stationAt((Math.PI * (i + 1)) / STATIONS),
    ).flatMap((x) => halves(shape, x).map(({ h }, half) => toOutline([x, half === 0 ? h : -h]))),
  );
  const radiusAt = (turn: number, around: number, most: number): number => {
    const { x, y, z } = surfacePoint(shape, stationAt(turn), around);
    const under = Math.max(0, thicknessMm / 2 - y);
    if (clearRadius(LOOSE * nearest, under) >= most) return Number.POSITIVE_INFINITY;
    return clearRadius(toOutline([x, z]), under);
  };
  let best = { radius: Number.POSITIVE_INFINITY, turn: 0, around: 0 };
  const look = (turn: number, around: number): boolean => {
    const radius = radiusAt(turn, around, best.radius);
    if (!(radius < best.radius)) return false;
    best = { radius, turn, around };
    return true;
  };
  for (let i = 1; i < STATIONS; i++)
    for (let j = 0; j <= AROUND; j++) look((Math.PI * i) / STATIONS, halfTurn(j / AROUND));
  for (let step = Math.PI / STATIONS; step > FINEST; ) {
    const { turn, around } = best;
    const moved = [
      [turn - step, around],
      [turn + step, around],
      [turn, around - step],
      [turn, around + step],
    ].some(([t, a]) => t > 0 && t < Math.PI && look(t, a));
    if (!moved) step /= 2;
  }
  const limitMm = Math.min(best.radius, thicknessMm / 2);
  const small = bits.roundOverMm.filter((r) => r <= limitMm + 1e-9);
  return { limitMm, bitMm: Math.max(0, ...small), stationMm: stationAt(best.turn) };
}

/** From belly (−90°) over the side to back (90°). */
const halfTurn = (share: number): number => Math.PI * (share - 0.5);

function surfacePoint(shape: BodyShape, x: number, around: number) {
  const { b, h, n } = halves(shape, x)[Math.sin(around) >= 0 ? 0 : 1];
  const [y, z] = unitSection(around, n);
  return { x, y: Math.abs(b * y), z: h * z };
}

/** Distance of a point to a path, exact for its lines and arcs. */
export function distanceTo(path: ArcPath): (p: Point2) => number {
  const pieces = segmentsOf(path).map((s) => ({
    ...s,
    arc: s.bulge === 0 ? null : arcOf(s),
    chord: sub(s.to, s.from),
  }));
  return (p) => {
    let least = Number.POSITIVE_INFINITY;
    for (const { from, to, bulge, arc, chord } of pieces) {
      if (!arc) {
        least = Math.min(least, distanceToPiece(p, from, to));
        continue;
      }
      const out = sub(p, arc.center);
      const far = Math.hypot(out[0], out[1]);
      const off = Math.abs(far - arc.radius);
      if (off >= least) continue;
      // The foot on the circle is on the arc when it lies on the arc's side of the chord.
      const k = far > 0 ? arc.radius / far : 0;
      const foot: Point2 = [arc.center[0] + k * out[0], arc.center[1] + k * out[1]];
      const on = cross(chord, sub(foot, from)) * bulge <= 0;
      least = Math.min(least, on ? off : Math.min(distance(p, from), distance(p, to)));
    }
    return least;
  };
}
