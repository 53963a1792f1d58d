/**
 * No-fit bands: where the second of two shapes must not be moved to while the first lies at the
 * origin. Each is made once, when first asked for, and kept with the set of shapes.
 */
import type { Ring } from '../geometry/ring.js';
import { type Band, bandAround } from './band.js';
import { bandSum, turnedBand } from './bandsum.js';
import { roundFlaw, splitFlaw } from './flaw.js';
import type { Flaws, NestPart } from './nest.js';
import { type Keep, type Shape, shapesOf } from './shape.js';

/** The shapes of an order and their no-fit bands. */
export type ShapeSet = {
  /** Part 0 at 0° and at 180°, part 1 at 0° and at 180°, …; then all that are tilted. */
  readonly shapes: readonly Shape[];
  readonly noFit: (fixed: number, moving: number) => Band;
};

export function shapeSet(parts: readonly NestPart[], keep: Keep): ShapeSet {
  const all = parts.flatMap((part, i) => shapesOf(part, i, keep));
  const shapes = [...all.filter((s) => !s.isTilted), ...all.filter((s) => s.isTilted)];
  const known = new Map<string, Band>();
  const once = (key: string, make: () => Band): Band => {
    const band = known.get(key) ?? make();
    known.set(key, band);
    return band;
  };
  const noFit = (fixed: number, moving: number): Band =>
    once(`${fixed} ${moving}`, () => {
      const [a, b] = [shapes[fixed], shapes[moving]];
      if (a.isTilted || b.isTilted) return bandSum(a.grown, turnedBand(b.grown));
      const alike = a.turnDeg === b.turnDeg;
      // Turning both, or exchanging two at the same turn, turns the sum: two sums serve eight pairs.
      const swap = a.partIndex > b.partIndex;
      const [p, q] = swap ? [b, a] : [a, b];
      const sum = once(`${p.part}/${q.part}/${alike}`, () => {
        const [first, second] = [shapes[2 * p.partIndex], shapes[2 * q.partIndex]];
        return bandSum(first.grown, alike ? turnedBand(second.grown) : second.grown);
      });
      const isTurned = (a.turnDeg === 180) !== (alike && swap);
      return isTurned ? turnedBand(sum) : sum;
    });
  return { shapes, noFit };
}

/**
 * Where a shape must not be moved to because of the flaws of a face: one band a flaw. Half the gap is
 * kept, being grown into the shape. A poor zone is in the way of the nose part alone.
 */
export function flawNoFits({ knots, splits, poorZones }: Flaws, { grown, nose }: Shape): Band[] {
  const keptOff = (flaw: Ring, band: Band): Band => bandSum(bandAround(flaw), turnedBand(band));
  return [
    ...knots.map((k) => keptOff(roundFlaw(k), grown)),
    ...splits.map((s) => keptOff(splitFlaw(s), grown)),
    ...(nose ? poorZones.map((z) => keptOff(roundFlaw(z), nose)) : []),
  ];
}
