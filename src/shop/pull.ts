/** How a lure at rest answers to a little more weight at a place, and how that is told. */
import type { Floating } from '../afloat/floating.js';
import { type Sensitivity, sensitivity } from '../ballast/sensitivity.js';
import { isUnder } from '../float/rest.js';
import type { Point2 } from '../geometry/vec.js';
import type { Lie } from './shop.js';

/** A lure at a stable rest, and its rates for a gram that pulls straight down in its center plane. */
export type Pulled = {
  readonly lure: Floating;
  /** Of a gram at the center of gravity. */
  readonly gram: Sensitivity;
  /** What 1 mm farther aft adds to them, and 1 mm higher up. */
  readonly aft: Sensitivity;
  readonly up: Sensitivity;
  /** It has no waterplane, and so no heights over the water. */
  readonly under: boolean;
};

/** Null without a stable rest. */
export function pulled(lure: Floating): Pulled | null {
  const { solid, load, attitudes } = lure;
  const [attitude] = attitudes;
  if (!attitude.stable) return null;
  const { massG, cgMm } = load;
  const rates = (byG: number, [x, y, z]: Floating['load']['cgMm']) =>
    sensitivity(
      { solid, load, attitude },
      {
        before: load,
        after: { massG: massG + byG, cgMm: [cgMm[0] + x, cgMm[1] + y, cgMm[2] + z] },
        step: 1,
      },
    );
  return {
    lure,
    gram: rates(1, [0, 0, 0]),
    aft: rates(0, [1 / massG, 0, 0]),
    up: rates(0, [0, 0, 1 / massG]),
    under: isUnder(solid, load),
  };
}

/**
 * Rates for each gram at a place of the center plane (station, height), exact: mass m there adds m to
 * the whole and moves its center of gravity by m times the way to it over the whole mass, in first
 * order. Of something hung in the water that is what it weighs there: the water carries the rest.
 */
export function perGramAt({ lure, gram, aft, up }: Pulled, [x, z]: Point2): Sensitivity {
  const [dx, , dz] = [x - lure.load.cgMm[0], 0, z - lure.load.cgMm[2]];
  const at = (of: (s: Sensitivity) => number): number => of(gram) + dx * of(aft) + dz * of(up);
  return {
    massG: 1,
    trimDeg: gram.trimDeg === null ? null : at((s) => s.trimDeg ?? 0),
    freeboardNoseMm: at((s) => s.freeboardNoseMm),
    freeboardTailMm: at((s) => s.freeboardTailMm),
    freeboardMm: at((s) => s.freeboardMm),
  };
}

/** So many times a rate, as nose, tail and trim tell it. */
export function lieOf({ under }: Pick<Pulled, 'under'>, rate: Sensitivity, times: number): Lie {
  const height = (mm: number): number | null => (under ? null : times * mm + 0);
  return {
    noseMm: height(rate.freeboardNoseMm),
    tailMm: height(rate.freeboardTailMm),
    trimDeg: rate.trimDeg === null ? null : times * rate.trimDeg + 0,
  };
}
