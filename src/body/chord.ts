/**
 * Straight lines through a body, as a bit goes: where each enters it from the belly and where it
 * leaves it. The lines lie in planes along the center plane and lean by a tilt, positive when they run
 * aft on their way up.
 *
 * They are counted in the side view turned by the tilt about the nose, in which they stand upright:
 * `place` is across them, heights are along them. Without a tilt those are station and height.
 */
import { rootBetween } from '../geometry/root.js';
import { cosSinDeg } from '../geometry/vec.js';
import { halves } from './properties.js';
import type { HalfSection } from './section.js';
import { type BodyShape, offsetAt } from './shape.js';

/** Heights along the line, mm; the same twice for a line that misses the body. */
export type Chord = { readonly low: number; readonly high: number };

/** All lines of a place, by their distance from the center plane, mm. */
export type ChordsAt = (placeMm: number) => (yMm: number) => Chord;

/**
 * The first stretch inside the body, coming from under the belly: exact without a tilt (0 to 0 beside
 * the body), else to 1e-10 mm. A leaning line that is inside for less than a 24th of its way through the
 * body's height and length is found where the body is convex there.
 */
export const chordsOf = (shape: BodyShape, tiltDeg: number): ChordsAt =>
  tiltDeg === 0 ? upright(shape) : leaning(shape, tiltDeg);

/** Height of a half section over (or under) the datum plane at y ≥ 0; 0 beside the body. */
export function edgeOf({ b, h, n }: HalfSection, yMm: number): number {
  const rest = 1 - (b > 0 ? yMm / b : 1) ** n;
  return rest > 0 ? h * rest ** (1 / n) : 0;
}

const upright =
  (shape: BodyShape): ChordsAt =>
  (placeMm) => {
    const [upper, lower] = halves(shape, placeMm);
    return (yMm) => ({
      low: 0 - edgeOf(lower, Math.abs(yMm)),
      high: edgeOf(upper, Math.abs(yMm)),
    });
  };

const LOOKS = 24;
const TOLERANCE_MM = 1e-10;

/** A place on a line: its height along it, over the datum line, and the section there. */
type Look = {
  readonly s: number;
  readonly z: number;
  readonly sections: readonly [upper: HalfSection, lower: HalfSection];
};

/** How far inside the body a place is: straight up, down or to the side of its widest, whichever is nearest; negative outside. */
const depthIn = ({ z, sections: [upper, lower] }: Look, y: number): number =>
  Math.min(z + edgeOf(lower, y), edgeOf(upper, y) - z, upper.b - y);

function leaning(shape: BodyShape, tiltDeg: number): ChordsAt {
  const [c, n] = cosSinDeg(tiltDeg);
  const [deepest, highest] = [greatest(shape.bellySquared), greatest(shape.backSquared)];
  const L = shape.lengthMm;
  return (placeMm) => {
    const look = (s: number): Look => ({
      s,
      z: c * s - n * placeMm,
      sections: halves(shape, c * placeMm + n * s),
    });
    // Between belly and back, nose and tail: nothing is inside beyond.
    const ends = [-c * placeMm, L - c * placeMm].map((x) => x / n).sort((p, q) => p - q);
    const from = Math.max((n * placeMm - deepest) / c, ends[0]);
    const to = Math.min((n * placeMm + highest) / c, ends[1]);
    if (!(from < to)) return () => ({ low: (from + to) / 2, high: (from + to) / 2 });
    const looks = Array.from({ length: LOOKS + 1 }, (_, k) =>
      look(from + ((to - from) * k) / LOOKS),
    );
    return (yMm) => firstInside(looks, (s) => depthIn(look(s), Math.abs(yMm)), Math.abs(yMm));
  };
}

function firstInside(looks: readonly Look[], depth: (s: number) => number, y: number): Chord {
  const depths = looks.map((look) => depthIn(look, y));
  const first = depths.findIndex((d) => d > 0);
  if (first < 0) return grazed(looks, depth, depths);
  const after = depths.findIndex((d, k) => k > first && d <= 0);
  const root = (a: number, b: number) => rootBetween(depth, [looks[a].s, looks[b].s], TOLERANCE_MM);
  return {
    low: first === 0 ? looks[0].s : root(first - 1, first),
    high: after < 0 ? looks[LOOKS].s : root(after - 1, after),
  };
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Between two looks the line may still be inside for a little: looked for about the best of them. */
function grazed(
  looks: readonly Look[],
  depth: (s: number) => number,
  depths: readonly number[],
): Chord {
  const best = depths.reduce((b, d, k) => (d > depths[b] ? k : b), 0);
  const [low, high] = [looks[Math.max(0, best - 1)].s, looks[Math.min(LOOKS, best + 1)].s];
  let [a, b] = [low, high];
  for (let i = 0; i < 30; i++) {
    const [p, q] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
    if (depth(p) >= depth(q)) b = q;
    else a = p;
  }
  const top = (a + b) / 2;
  if (!(depth(top) > 0)) return { low: top, high: top };
  return {
    low: rootBetween(depth, [low, top], TOLERANCE_MM),
    high: rootBetween(depth, [top, high], TOLERANCE_MM),
  };
}

const greatest = (squared: BodyShape['backSquared']): number =>
  Math.max(...squared.knots.map((x) => offsetAt(squared, x)));
