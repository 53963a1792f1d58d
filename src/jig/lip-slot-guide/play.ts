/** How far a workpiece can turn between cheeks before it touches. */
import type { Point3 } from '../../geometry/vec.js';

/** A place on the port side of a workpiece that is its own mirror image, and the room left there. */
export type Contact = {
  readonly at: Point3;
  /** Out of the workpiece, unit. */
  readonly normal: Point3;
  /** How far it may move along the normal, mm. */
  readonly gapMm: number;
};

/**
 * Greatest turns, in degrees, about X and about Z, whatever the workpiece does at the same time by
 * shifting sideways and turning about the other of the two. Small turns: a place p moves by t + ω × p,
 * with t along Y and ω in the plane of X and Z, and its mirror image the other way, so that each
 * place allows |n · (t + ω × p)| up to its gap: a linear program in three unknowns. With one turn set
 * to 1 it is a fit in the greatest norm: the least, over the other two, of the greatest ratio of
 * movement to gap, and the turn is its inverse.
 *
 * Two flat sides of length E in a gap that is wider by 2s turn by 2s/E, the closed form it is held
 * against; a round body turns as it likes, which gives a great number.
 */
export function playOf(contacts: readonly Contact[]): {
  readonly aboutXDeg: number;
  readonly aboutZDeg: number;
} {
  const middle = [0, 2].map((k) => mean(contacts.map(({ at }) => at[k])));
  const rows = contacts.map(({ at, normal: [nx, ny, nz], gapMm }) => {
    const [x, y, z] = [at[0] - middle[0], at[1], at[2] - middle[1]];
    return {
      shift: ny / gapMm,
      aboutX: (y * nz - z * ny) / gapMm,
      aboutZ: (x * ny - y * nx) / gapMm,
    };
  });
  const most = (turn: 'aboutX' | 'aboutZ', other: 'aboutX' | 'aboutZ') =>
    degrees(1 / leastGreatest(rows.map((r) => [r[turn], r.shift, r[other]])));
  return { aboutXDeg: most('aboutX', 'aboutZ'), aboutZDeg: most('aboutZ', 'aboutX') };
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, v) => sum + v, 0) / values.length;

/** Of a turn by its small angle in radians; never infinite. */
const degrees = (turn: number): number => Math.min(90, (turn * 180) / Math.PI);

const SHIFT = 200; // mm, the shift to one unit of turn: the workpiece's length, about
const TURN = 50; // most of the other turn to one of this: within 1.1° of the axis asked for
const STEPS = 40; // each narrows by 0.618: to 1e-6 of the range

/** Least over u and v of the greatest |a + u b + v c|; convex, so one valley in each of both. */
function leastGreatest(rows: readonly (readonly [number, number, number])[]): number {
  const greatest = (u: number, v: number) => {
    let most = 0;
    for (const [a, b, c] of rows) most = Math.max(most, Math.abs(a + u * b + v * c));
    return most;
  };
  return valley((v) => valley((u) => greatest(u, v), SHIFT), TURN);
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Least value between −reach and reach of a function with one valley (golden section, J. Kiefer, 1953). */
function valley(height: (x: number) => number, reach: number): number {
  let [low, high] = [-reach, reach];
  let [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atA, atB] = [height(a), height(b)];
  for (let i = 0; i < STEPS; i++) {
    if (atA < atB) {
      [high, b, atB] = [b, a, atA];
      a = high - GOLDEN * (high - low);
      atA = height(a);
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + GOLDEN * (high - low);
      atB = height(b);
    }
  }
  return Math.min(atA, atB);
}
