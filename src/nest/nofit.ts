/**
 * No-fit bands: where the second of two shapes must not be moved to while the first lies at the
 * origin. Each is made once, when first asked for, and kept with the set of shapes.
 */
import { circleRing } from '../geometry/ring.js';
import { type Band, bandAround } from './band.js';
import { bandSum, turnedBand } from './bandsum.js';
import type { Knot, NestPart } from './nest.js';
import { type Shape, shapesOf } from './shape.js';

/** The shapes of an order and their no-fit bands. */
export type ShapeSet = {
  /** Part 0 at 0° and at 180°, part 1 at 0° and at 180°, … */
  readonly shapes: readonly Shape[];
  readonly noFit: (fixed: number, moving: number) => Band;
};

export function shapeSet(parts: readonly NestPart[], gapMm: number): ShapeSet {
  const shapes = parts.flatMap((part, i) => shapesOf(part, i, gapMm));
  const known = new Map<string, Band>();
  const once = (key: string, make: () => Band): Band => {
    const band = known.get(key) ?? make();
    known.set(key, band);
    return band;
  };
  const noFit = (fixed: number, moving: number): Band =>
    once(`${fixed} ${moving}`, () => {
      const [a, b] = [shapes[fixed], shapes[moving]];
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

/** Where a shape must not be moved to because of a knot: half the gap is kept, being grown into the shape. */
export function knotNoFit({ xMm, yMm, radiusMm }: Knot, shape: Shape): Band {
  const circle = circleRing([xMm, yMm], radiusMm, { segments: 32, circumscribed: true });
  return bandSum(bandAround(circle), turnedBand(shape.grown));
}
