/**
 * Lines that cross the block through the waste. Seen along a direction, each outline covers a
 * stretch of a level line; a cut in that direction goes where no stretch is. So nothing is tried
 * out: all cuts of a direction are found. A bent cut has one direction below a level and another
 * above it, and goes where the two leave the same place free.
 */
import type { Ring } from '../geometry/ring.js';
import type { Point2 } from '../geometry/vec.js';
import type { Waste } from './waste.js';

/** A cut from the lower edge to the upper one; `lean` is its steepest, along over across, `bend` how much that changes. */
export type Cut = {
  readonly line: readonly Point2[];
  readonly lean: number;
  readonly bend: number;
};

/** Steepest lean of a cut, along over across; a saw is led the more easily the straighter it goes over. */
const GREATEST_LEAN = 0.6;
const LEAN_STEP = 0.05;
/** Sharpest bend, as a change of lean: about 27 degrees, which a hand leads a saw round (common practice, no source). */
const GREATEST_BEND = 0.5;
/** Levels at which a cut may bend, as shares of the width. */
const BEND_LEVELS = [0.2, 0.35, 0.5, 0.65, 0.8];

/** The least and greatest x of a cut. */
export const leftOf = ({ line }: Cut): number => Math.min(...line.map(([x]) => x));
export const rightOf = ({ line }: Cut): number => Math.max(...line.map(([x]) => x));

/** Where a cut is at a height within the block's width. */
export function xAt({ line }: Cut, y: number): number {
  const above = line.findIndex((p, i) => i > 0 && p[1] >= y);
  const to = line[above > 0 ? above : line.length - 1];
  const from = line[(above > 0 ? above : line.length - 1) - 1];
  return from[0] + ((to[0] - from[0]) * (y - from[1])) / (to[1] - from[1]);
}

const leans = (): number[] => {
  const steps = Math.round(GREATEST_LEAN / LEAN_STEP);
  return Array.from({ length: 2 * steps + 1 }, (_, k) => (k - steps) * LEAN_STEP);
};

/** Through the middle of each gap, for every lean; after the last outline, close to it. */
export function straightCuts(waste: Waste): Cut[] {
  const { outlines, widthMm, kerfMm } = waste;
  const whole = strip(outlines, -Infinity, Infinity);
  return leans().flatMap((lean) =>
    gapsOf(whole, { lean, level: 0, kerfMm })
      .map(middleOf)
      .map(
        (low): Cut => ({
          line: [
            [low, 0],
            [low + lean * widthMm, widthMm],
          ],
          lean: Math.abs(lean),
          bend: 0,
        }),
      )
      .filter((cut) => liesOn(waste, cut)),
  );
}

/** With one bend, at one of five levels. */
export function bentCuts(waste: Waste): Cut[] {
  const { outlines, widthMm, kerfMm } = waste;
  return BEND_LEVELS.flatMap((share) => {
    const level = share * widthMm;
    // A little beyond the level on both sides, so that the bend itself has room.
    const below = strip(outlines, -Infinity, level + kerfMm / 2);
    const above = strip(outlines, level - kerfMm / 2, Infinity);
    const lower = leans().map((lean) => ({ lean, gaps: gapsOf(below, { lean, level, kerfMm }) }));
    const upper = leans().map((lean) => ({ lean, gaps: gapsOf(above, { lean, level, kerfMm }) }));
    return lower.flatMap((a) =>
      upper
        .filter((b) => a.lean !== b.lean && Math.abs(a.lean - b.lean) <= GREATEST_BEND)
        .flatMap((b) =>
          meet(a.gaps, b.gaps)
            .map(middleOf)
            .map(
              (x): Cut => ({
                line: [
                  [x - a.lean * level, 0],
                  [x, level],
                  [x + b.lean * (widthMm - level), widthMm],
                ],
                lean: Math.max(Math.abs(a.lean), Math.abs(b.lean)),
                bend: Math.abs(a.lean - b.lean),
              }),
            )
            .filter((cut) => liesOn(waste, cut)),
        ),
    );
  });
}

const liesOn = ({ lengthMm, kerfMm }: Waste, cut: Cut): boolean =>
  leftOf(cut) > kerfMm && rightOf(cut) < lengthMm - kerfMm;

type Gap = readonly [from: number, to: number];

/** Between two outlines the middle; after the last one, close to it. */
const middleOf = ([from, to]: Gap): number => (to === Infinity ? from : (from + to) / 2);

/** What of each outline lies between two heights: x and y in turn, of its corners and where it is cut off. */
const strip = (outlines: readonly Ring[], from: number, to: number): (readonly number[])[] =>
  outlines.map((outline) => {
    const out: number[] = [];
    outline.forEach(([x, y], i) => {
      if (y >= from && y <= to) out.push(x, y);
      const [u, v] = outline[(i + 1) % outline.length];
      for (const edge of [from, to])
        if (y > edge !== v > edge) out.push(x + ((u - x) * (edge - y)) / (v - y), edge);
    });
    return out;
  });

/** The free stretches of a level line behind the first outline, seen along a lean past what lies in a strip. */
function gapsOf(
  parts: readonly (readonly number[])[],
  {
    lean,
    level,
    kerfMm,
  }: { readonly lean: number; readonly level: number; readonly kerfMm: number },
): Gap[] {
  const room = (kerfMm / 2) * Math.hypot(1, lean);
  const covered = parts
    .filter((points) => points.length > 0)
    .map((points): Gap => {
      let [low, high] = [Infinity, -Infinity];
      for (let i = 0; i < points.length; i += 2) {
        const u = points[i] - lean * (points[i + 1] - level);
        if (u < low) low = u;
        if (u > high) high = u;
      }
      return [low - room, high + room];
    })
    .sort((a, b) => a[0] - b[0]);
  const gaps: Gap[] = [];
  let reached = covered.length > 0 ? covered[0][0] : -Infinity;
  for (const [low, high] of covered) {
    if (low > reached) gaps.push([reached, low]);
    reached = Math.max(reached, high);
  }
  return reached > -Infinity ? [...gaps, [reached, Infinity]] : gaps;
}

/** What two lists of gaps have in common. */
const meet = (a: readonly Gap[], b: readonly Gap[]): Gap[] =>
  a.flatMap((p) =>
    b
      .map((q): Gap => [Math.max(p[0], q[0]), Math.min(p[1], q[1])])
      .filter(([from, to]) => to > from),
  );
