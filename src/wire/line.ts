/** The straight run of a wire between its ends, and the bends that lead into it. */
import { add, cross, dot, type Point2, quarterLeft, sub, times } from '../geometry/vec.js';
import type { WirePiece } from './piece.js';

/** An end of the run: where the wire has to lie level, and the radius it may leave that with (0: any way). */
export type RunEnd = { readonly at: Point2; readonly radiusMm: number };

export type Run = {
  /** Unit direction aft. */
  readonly way: Point2;
  readonly from: Point2;
  readonly to: Point2;
};

/**
 * The line that touches a circle at either end: each passes level through its end, the fore one turns
 * the wire toward the height of the aft one, the aft one turns it level again. Null when the ends are
 * so near that there is no such line.
 */
export function runBetween(fore: RunEnd, aft: RunEnd): Run | null {
  const side = Math.sign(aft.at[1] - fore.at[1]);
  const a = add(fore.at, [0, side * fore.radiusMm]);
  const b = sub(aft.at, [0, side * aft.radiusMm]);
  const [dx, dz] = sub(b, a);
  const sine = (fore.radiusMm + aft.radiusMm) / Math.hypot(dx, dz);
  if (side !== 0 && !(sine < 1)) return null;
  const angle = Math.atan2(dz, dx) + (side === 0 ? 0 : side * Math.asin(sine));
  const way: Point2 = [Math.cos(angle), Math.sin(angle)];
  const down = times(quarterLeft(way), -side);
  const run: Run = {
    way,
    from: add(a, times(down, fore.radiusMm)),
    to: sub(b, times(down, aft.radiusMm)),
  };
  return way[0] > 0 && dot(sub(run.to, run.from), way) > 0 ? run : null;
}

/** Height of the run at a station. */
export const heightAt = ({ from, way }: Run, stationMm: number): number =>
  from[1] + ((stationMm - from[0]) * way[1]) / way[0];

/** An arc of the wire from one direction into another; nothing where they are the same. */
export function arcPiece(
  from: Point2,
  to: Point2,
  [u, w]: readonly [Point2, Point2],
  more: Pick<WirePiece, 'role' | 'eye'>,
): WirePiece[] {
  const turn = Math.atan2(cross(u, w), dot(u, w));
  return Math.abs(turn) < 1e-9 ? [] : [{ ...more, from, to, bulge: Math.tan(turn / 4) }];
}
