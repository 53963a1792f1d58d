/**
 * The lines of a body as boatbuilders draw them, computed from its shape in closed form: what a plane
 * square to the body (section), a level one (waterline) and an upright one along it (buttock) cut out.
 * Points in mm; each line is a curve through points that lie on it.
 */
import { edgeOf } from '../../body/chord.js';
import { halves } from '../../body/properties.js';
import { unitSection } from '../../body/section.js';
import { type BodyShape, knotsOf, offsetAt } from '../../body/shape.js';
import type { Curve } from '../../geometry/monotone.js';
import { rootBetween } from '../../geometry/root.js';
import type { Point2 } from '../../geometry/vec.js';

/** Points of a curve along the whole body, closer together toward its ends: 0.01 mm from their chords at 250 mm. */
const ALONG = 120;
/** Points of a quarter of a section. */
const AROUND = 32;
/** How near the end of a line is found, mm. */
const END_MM = 1e-6;

/** The body seen from above: (station, half-breadth) from nose to tail. */
export const planCurve = (shape: BodyShape): readonly Point2[] =>
  stretch(0, shape.lengthMm, (x) => offsetAt(shape.halfBreadthSquared, x));

/** Back (+1) or belly (−1) in the center plane: (station, height) from nose to tail. */
export const sideCurve = (shape: BodyShape, side: 1 | -1): readonly Point2[] =>
  stretch(
    0,
    shape.lengthMm,
    (x) => side * offsetAt(side > 0 ? shape.backSquared : shape.bellySquared, x),
  );

/** Half a section, (distance from the center plane, height), from the belly round to the back. */
export function sectionCurve(shape: BodyShape, stationMm: number): readonly Point2[] {
  return Array.from({ length: 2 * AROUND + 1 }, (_, i) =>
    sectionPoint(shape, stationMm, (Math.PI / 2) * (i / AROUND - 1)),
  );
}

/**
 * The point of half a section that is seen from the middle of the datum line under an angle of the
 * section drawn to a square of one: 0 at its side, ±π/2 on back and belly.
 */
export function sectionPoint(shape: BodyShape, stationMm: number, angle: number): Point2 {
  const [upper, lower] = halves(shape, stationMm);
  const { b, h, n } = angle >= 0 ? upper : lower;
  const [y, z] = unitSection(angle, n);
  // A quarter turn is not exact in floating point.
  return [Math.abs(angle) === Math.PI / 2 ? 0 : b * y, h * z];
}

/**
 * A level line so high over the datum line (under it: negative), as (station, distance from the center
 * plane): one stretch for each part of the body that reaches it.
 */
export function waterlines(shape: BodyShape, heightMm: number): readonly (readonly Point2[])[] {
  const above = heightMm >= 0;
  const squared = above ? shape.backSquared : shape.bellySquared;
  return stretches(shape, squared, heightMm).map(([from, to]) =>
    stretch(from, to, (x, isEnd) => {
      const { b, h, n } = halves(shape, x)[above ? 0 : 1];
      return isEnd && heightMm !== 0 ? 0 : edgeOf({ b: h, h: b, n }, Math.abs(heightMm));
    }),
  );
}

/** The closed curve that an upright plane so far from the center plane cuts out, as (station, height): belly aft, back forward. */
export function buttocks(shape: BodyShape, besideMm: number): readonly (readonly Point2[])[] {
  return stretches(shape, shape.halfBreadthSquared, besideMm).map(([from, to]) => {
    const side = (half: 0 | 1) =>
      stretch(from, to, (x, isEnd) => (isEnd ? 0 : edgeOf(halves(shape, x)[half], besideMm)));
    const belly = side(1).map(([x, z]): Point2 => [x, -z]);
    return [...belly, ...[...side(0)].reverse().slice(1, -1)];
  });
}

/** Where along the body an offset is greater than a distance. */
function stretches(
  shape: BodyShape,
  squared: Curve,
  distanceMm: number,
): readonly (readonly [number, number])[] {
  const over = (x: number) => squared.value(x) - distanceMm ** 2;
  const looks = [...new Set([...spaced(0, shape.lengthMm), ...knotsOf(shape)])].sort(
    (a, b) => a - b,
  );
  const ends = looks.slice(1).flatMap((x, i) => {
    const before = looks[i];
    if (over(before) > 0 === over(x) > 0) return [];
    return [rootBetween(over, [before, x], END_MM)];
  });
  return Array.from(
    { length: Math.floor(ends.length / 2) },
    (_, i) => [ends[2 * i], ends[2 * i + 1]] as const,
  );
}

/** Stations from end to end, closer together toward both. */
const spaced = (from: number, to: number): number[] =>
  Array.from(
    { length: ALONG + 1 },
    (_, i) => from + ((to - from) / 2) * (1 - Math.cos((Math.PI * i) / ALONG)),
  );

const stretch = (
  from: number,
  to: number,
  at: (x: number, isEnd: boolean) => number,
): readonly Point2[] =>
  spaced(from, to).map((x, i): Point2 => [x, at(x, i === 0 || i === ALONG) + 0]);
