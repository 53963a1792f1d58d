/**
 * Whether a saddle really finds the angle: the blank is turned a little both ways and pressed in
 * again. If it then stands higher than at the true angle, pressing brings it back.
 */
import type { Region, Ring } from '../../geometry/ring.js';
import { moved, type Point2 } from '../../geometry/vec.js';

/** The saddle's section and the blank's profile in one side view, the blank coming in from above. */
export type Saddle = {
  readonly section: readonly Region[];
  readonly profile: Ring;
  /** Where the hand presses, and about which the blank is turned. */
  readonly press: Point2;
};

/**
 * Ways to push tried: straight along the slot, and more and more toward the nose wall (to the left),
 * as sideways over down. Where the blank's edge slopes away under the saddle, only a push that also
 * goes toward the nose wall keeps it there.
 */
const PUSHES = [0, 0.25, 0.5, 0.75, 1];
const REACH = 1.5; // mm tried to either side
const STEP = 0.1; // mm between the first tries; the best is then closed in on
const HALVINGS = 14; // narrows 2 × STEP to 0.2 µm: a tight saddle is steep in the shift

/** Least rise at one degree out of the angle that counts as held, mm: what a finger feels rock. */
export const LEAST_RISE = 0.05;

export type Hold = {
  /** How much the blank rises along the push when it is turned and pressed in again, mm: the lesser of the two ways. Not positive: it turns by itself. */
  readonly riseMm: number;
  /** The push that holds best: 0 straight along the slot, 45 as much toward the nose wall. */
  readonly pushDeg: number;
};

/** How well the saddle holds the blank's angle against a turn of `turnDeg` either way. */
export function holdOf(saddle: Saddle, turnDeg = 1): Hold {
  const tops = saddle.section.flatMap(({ outer }) => edgesFacing('up', outer));
  const roof = Math.max(...tops.map((e) => Math.max(e.y0, e.y1)));
  const [back, still, ahead] = [-turnDeg, 0, turnDeg].map((deg) => {
    const bottoms = edgesFacing('down', turnedAbout(saddle, deg));
    // What is well above the whole saddle cannot touch it.
    return restHeights(
      tops,
      bottoms.filter((e) => Math.min(e.y0, e.y1) < roof + STEP),
    );
  });
  return PUSHES.map((push, i) => ({
    riseMm: Math.min(back[i], ahead[i]) - still[i],
    pushDeg: (Math.atan(push) * 180) / Math.PI,
  })).reduce((a, b) => (b.riseMm > a.riseMm ? b : a));
}

function turnedAbout({ profile, press: [px, py] }: Saddle, turnDeg: number): readonly Point2[] {
  const about = profile.map(([x, y]): Point2 => [x - px, y - py]);
  return about.map((p) => moved({ turnDeg, move: [px, py] }, p));
}

/** For each push: how deep the outline goes in, the shift sideways counted with the push's share. */
function restHeights(tops: readonly Edge[], bottoms: readonly Edge[]): number[] {
  const lift = (shift: number) => liftAt(tops, bottoms, shift);
  const tries = Array.from({ length: Math.round((2 * REACH) / STEP) + 1 }, (_, i) => {
    const shift = i * STEP - REACH;
    return { shift, lift: lift(shift) };
  });
  return PUSHES.map((push) => {
    const of = (t: { shift: number; lift: number }) => t.lift + push * t.shift;
    const { shift } = tries.reduce((a, b) => (of(b) < of(a) ? b : a));
    return closedIn((s) => lift(s) + push * s, shift);
  });
}

/** Least value of a function with one valley within a step of `near`. */
function closedIn(height: (shift: number) => number, near: number): number {
  let [at, least, step] = [near, height(near), STEP];
  for (let i = 0; i < HALVINGS; i++) {
    step /= 2;
    for (const s of [at - step, at + step]) {
      const h = height(s);
      if (h < least) [at, least] = [s, h];
    }
  }
  return least;
}

/** How far the outline, shifted sideways, must be lifted so that it is nowhere below the saddle's top. */
function liftAt(tops: readonly Edge[], bottoms: readonly Edge[], shift: number): number {
  let lift = -Infinity;
  for (const top of tops) {
    for (const bottom of bottoms) {
      const from = Math.max(top.x0, bottom.x0 + shift);
      const to = Math.min(top.x1, bottom.x1 + shift);
      if (from > to) continue;
      const over = (x: number) => heightOf(top, x) - heightOf(bottom, x - shift);
      lift = Math.max(lift, over(from), over(to));
    }
  }
  return lift;
}

/** An edge from its left end to its right end. */
type Edge = {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
};

/** Edges of a counter-clockwise outline with the material under them (`up`) or over them (`down`). */
function edgesFacing(way: 'up' | 'down', outline: readonly Point2[]): Edge[] {
  return outline.flatMap(([px, py], i) => {
    const [qx, qy] = outline[(i + 1) % outline.length];
    if (way === 'up') return qx < px ? [{ x0: qx, y0: qy, x1: px, y1: py }] : [];
    return qx > px ? [{ x0: px, y0: py, x1: qx, y1: qy }] : [];
  });
}

const heightOf = ({ x0, y0, x1, y1 }: Edge, x: number): number =>
  y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
