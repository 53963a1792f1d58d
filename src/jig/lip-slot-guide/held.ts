/**
 * What a lip-slot guide holds, seen from the side, and how broad it is there: the sawn blank, as
 * thick everywhere, or the finished body, which is taken as layers from its center plane outward.
 */
import { halves } from '../../body/properties.js';
import { type BodyShape, knotsOf, offsetAt } from '../../body/shape.js';
import { type Ring, ring } from '../../geometry/ring.js';
import type { Point2 } from '../../geometry/vec.js';
import type { JigBlank } from '../jig.js';

export type Held = {
  /** Side view in the lure's frame: what rests in the saddle. */
  readonly outline: Ring;
  /** Added to the seat's gap: how far chords of this outline, or of the mesh it is held against, may stray, mm. */
  readonly strayMm: number;
} & (
  | { readonly kind: 'sawn'; readonly halfMm: number }
  | { readonly kind: 'shaped'; readonly shape: BodyShape }
);

export const heldBlank = ({ profileRing, thicknessMm }: JigBlank): Held => ({
  kind: 'sawn',
  outline: profileRing,
  strayMm: 0,
  halfMm: thicknessMm / 2,
});

/** Chords of the body's mesh and of the level lines here stay within this. */
const STRAY_MM = 0.02;

export const heldBody = (shape: BodyShape): Held => ({
  kind: 'shaped',
  outline: levelsAt(shape, 0)[0],
  strayMm: STRAY_MM,
  shape,
});

const LEVEL_POINTS = 120; // a side of one level line, closer toward its ends
const SCAN = 512; // stations looked at for where the body is broad enough

/**
 * Side views of what of the body is at least `halfMm` to each side of its center plane: one ring for
 * each run of stations that broad, none beyond the greatest breadth. Ends are squared off outward.
 */
export function levelsAt(shape: BodyShape, halfMm: number): Ring[] {
  return broadRuns(shape, halfMm).map(([from, to]) => {
    const inner = Array.from({ length: LEVEL_POINTS - 1 }, (_, k) => {
      const share = (1 - Math.cos((Math.PI * (k + 1)) / LEVEL_POINTS)) / 2;
      return from + (to - from) * share;
    });
    const [lower, upper] = ([1, 0] as const).map((half) =>
      inner.map((x) => heightAt(shape, x, halfMm, half)),
    );
    const closed = (heights: readonly number[]): Point2[] => [
      [from, heights[0]],
      ...inner.map((x, k): Point2 => [x, heights[k]]),
      [to, heights[heights.length - 1]],
    ];
    return ring([...closed(lower.map((z) => -z)), ...closed(upper).reverse()]);
  });
}

/** How far the surface is above (0) or below (1) the datum line where it is `halfMm` off the center plane. */
function heightAt(shape: BodyShape, stationMm: number, halfMm: number, half: 0 | 1): number {
  const { b, h, n } = halves(shape, stationMm)[half];
  return b > halfMm ? h * (1 - (halfMm / b) ** n) ** (1 / n) : 0;
}

function broadRuns(shape: BodyShape, halfMm: number): (readonly [number, number])[] {
  if (halfMm === 0) return [[0, shape.lengthMm]];
  const over = (x: number) => offsetAt(shape.halfBreadthSquared, x) - halfMm;
  const even = Array.from({ length: SCAN + 1 }, (_, k) => (shape.lengthMm * k) / SCAN);
  const stations = [...even, ...knotsOf(shape)].sort((a, b) => a - b);
  const last = stations[stations.length - 1];
  // A body cut square at an end is broad from there on.
  const runs: [number, number][] = over(stations[0]) > 0 ? [[stations[0], last]] : [];
  for (let k = 1; k < stations.length; k++) {
    const [a, b] = [stations[k - 1], stations[k]];
    if (over(a) <= 0 && over(b) > 0) runs.push([crossing(over, a, b), last]);
    if (over(a) > 0 && over(b) <= 0) runs[runs.length - 1][1] = crossing(over, b, a);
  }
  return runs;
}

const HALVINGS = 40;

/** Where a function goes through zero, from the side where it is not positive. */
function crossing(over: (x: number) => number, outside: number, inside: number): number {
  let [out, within] = [outside, inside];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (out + within) / 2;
    if (over(middle) > 0) within = middle;
    else out = middle;
  }
  return out;
}
