/**
 * The finished surface over the mouth of a ballast hole, as sums taken once. Everything that fills
 * the hole up to some height then follows in closed form, which is what makes a search over depths
 * quick.
 *
 * All of it is in the side view turned by the hole's tilt about the nose, where the hole stands
 * upright: x is the place across its axis, heights run along it. Without a tilt those are station
 * and height over the datum line.
 *
 * The disk is integrated with x = x₀ + r sin t and y = w(x) sin s, w the half chord, by Gauss points
 * in t and s, so that no root is left at the rim.
 */
import type { BallastHole } from '../blank/blank.js';
import { uprightMouth } from '../blank/hole.js';
import { type Chord, chordsOf } from '../body/chord.js';
import type { BodyShape } from '../body/shape.js';
import { UNIT_RULE } from '../geometry/quadrature.js';
import { type Moments, NOTHING } from './moments.js';

/** One point of the disk: its share of the area (both sides of the center plane), and the body from belly to back there. */
export type Column = Chord & {
  readonly weight: number;
  readonly x: number;
  readonly y: number;
};

export type BellyOver = {
  readonly shape: BodyShape;
  readonly tiltDeg: number;
  /** Of the axis. */
  readonly placeMm: number;
  readonly diameterMm: number;
  /** Height of the finished belly on the axis. */
  readonly axisMm: number;
  /** Height at which the axis would leave the finished body: at its back, unless it leans much. */
  readonly backMm: number;
  /** Highest place of the finished belly over the disk: on its rim, as a belly rises to the sides. */
  readonly highestMm: number;
  /** Lowest place of the back over the disk. A floor above it would break out at the shoulder. */
  readonly shoulderMm: number;
  /** Sums over the disk of 1, of the belly's height, of half its square, and of a third of its cube. */
  readonly disk: Sums;
  readonly height: Sums;
  readonly halfSquare: Sums;
  readonly thirdCube: Sums;
};

type Sums = { readonly one: number; readonly x: number; readonly xx: number; readonly yy: number };

export function bellyOver(
  shape: BodyShape,
  placeMm: number,
  diameterMm: number,
  tiltDeg = 0,
): BellyOver {
  const disk = { shape, placeMm, diameterMm, tiltDeg };
  const axis = chordsOf(shape, tiltDeg)(placeMm)(0);
  return {
    ...disk,
    axisMm: axis.low,
    backMm: axis.high,
    highestMm: highestBellyMm(shape, placeMm, diameterMm, tiltDeg),
    shoulderMm: lowestOnRim(disk, ({ high }) => high),
    ...sumsOver(columnsOver(disk, 1)),
  };
}

/** The same over a hole that is drilled. */
export const bellyOverHole = (shape: BodyShape, hole: BallastHole): BellyOver =>
  bellyOver(shape, uprightMouth(hole)[0], hole.diameterMm, hole.tiltDeg);

type Disk = Pick<BellyOver, 'shape' | 'placeMm' | 'diameterMm' | 'tiltDeg'>;

/** Columns over the disk: 20 Gauss points each way, in so many panels each way. */
function columnsOver({ shape, placeMm, diameterMm, tiltDeg }: Disk, panels: number): Column[] {
  const r = diameterMm / 2;
  const chordsAt = chordsOf(shape, tiltDeg);
  const rule = Array.from({ length: panels }, (_, k) =>
    UNIT_RULE.map(({ t, weight }) => ({ t: (k + t) / panels, weight: weight / panels })),
  ).flat();
  return rule.flatMap((across) => {
    const t = Math.PI * (across.t - 0.5);
    const x = placeMm + r * Math.sin(t);
    const halfChord = r * Math.cos(t);
    const bodyAt = chordsAt(x);
    return rule.map(({ t: u, weight }): Column => {
      const s = (Math.PI / 2) * u;
      // Both rates of the substitution, over half a turn in t and, for both sides, a quarter in s.
      const rate = Math.PI * halfChord * (Math.PI * halfChord * Math.cos(s));
      const y = halfChord * Math.sin(s);
      return { weight: across.weight * weight * rate, x, y, ...bodyAt(y) };
    });
  });
}

/** Height of the finished belly at a station, y from the center plane; 0 beside the body. */
export const bellyHeight = (shape: BodyShape, stationMm: number, yMm: number): number =>
  chordsOf(shape, 0)(stationMm)(yMm).low;

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

function sumsOver(
  columns: readonly Column[],
): Pick<BellyOver, 'disk' | 'height' | 'halfSquare' | 'thirdCube'> {
  const none = (): Mutable<Sums> => ({ one: 0, x: 0, xx: 0, yy: 0 });
  const [disk, height, halfSquare, thirdCube] = [none(), none(), none(), none()];
  const add = (sum: Mutable<Sums>, w: number, { x, y }: Column): void => {
    sum.one += w;
    sum.x += w * x;
    sum.xx += w * x * x;
    sum.yy += w * y * y;
  };
  for (const column of columns) {
    const { weight, low } = column;
    add(disk, weight, column);
    add(height, weight * low, column);
    add(halfSquare, (weight * low ** 2) / 2, column);
    add(thirdCube, (weight * low ** 3) / 3, column);
  }
  return { disk, height, halfSquare, thirdCube };
}

const RIM = 24; // places looked at round half a rim before the best is refined

/** Highest place of the finished belly over a disk. A belly rises to the sides, so it lies on the rim. */
export const highestBellyMm = (
  shape: BodyShape,
  placeMm: number,
  diameterMm: number,
  tiltDeg = 0,
): number => 0 - lowestOnRim({ shape, placeMm, diameterMm, tiltDeg }, ({ low }) => 0 - low);

/** Least of something over the rim of a disk. */
function lowestOnRim(
  { shape, placeMm, diameterMm, tiltDeg }: Disk,
  of: (chord: Chord) => number,
): number {
  const r = diameterMm / 2;
  const chordsAt = chordsOf(shape, tiltDeg);
  return least((a) => of(chordsAt(placeMm + r * Math.cos(a))(r * Math.abs(Math.sin(a)))));
}

/** Least value over half a turn: the best of evenly spaced places, then thirds of the gap beside it. */
function least(f: (angle: number) => number): number {
  const step = Math.PI / RIM;
  let best = 0;
  for (let k = 1; k <= RIM; k++) if (f(k * step) < f(best * step)) best = k;
  let [low, high] = [Math.max(0, best - 1) * step, Math.min(RIM, best + 1) * step];
  for (let i = 0; i < 26; i++) {
    const [p, q] = [low + (high - low) / 3, high - (high - low) / 3];
    if (f(p) <= f(q)) high = q;
    else low = p;
  }
  return Math.min(f(best * step), f((low + high) / 2));
}

/**
 * What lies in the hole between the finished belly and a flat top at a height, as moments per mm³.
 * Relative accuracy about 1e-9, or 1e-6 where a station of the table of offsets lies over the disk,
 * and 2e-5 for a hole as wide as the body. Where the top dips under the belly or over the back
 * within the disk, what sticks out is left off, by more points (slower), to about 5e-4.
 */
export const upTo = (belly: BellyOver, topMm: number): Moments =>
  isWhole(belly, topMm) ? closed(belly, topMm) : clipped(fineColumns(belly), topMm);

/** True when a flat top at this height meets neither belly nor back anywhere over the disk. */
export const isWhole = ({ highestMm, shoulderMm }: BellyOver, topMm: number): boolean =>
  topMm >= highestMm && topMm <= shoulderMm;

const FINE_PANELS = 6; // the error of an edge between points falls with its square

/** Points enough for tops that are not whole; taken once where many tops are tried. */
export const fineColumns = (belly: BellyOver): readonly Column[] => columnsOver(belly, FINE_PANELS);

function closed({ disk, height, halfSquare, thirdCube }: BellyOver, top: number): Moments {
  return {
    amount: top * disk.one - height.one,
    x: top * disk.x - height.x,
    xx: top * disk.xx - height.xx,
    yy: top * disk.yy - height.yy,
    z: (top ** 2 / 2) * disk.one - halfSquare.one,
    xz: (top ** 2 / 2) * disk.x - halfSquare.x,
    zz: (top ** 3 / 3) * disk.one - thirdCube.one,
  };
}

/** As `upTo`, column by column: for tops that are not whole. */
export function clipped(columns: readonly Column[], topMm: number): Moments {
  const sum = { ...NOTHING };
  for (const { weight, x, y, low, high } of columns) {
    const top = Math.min(topMm, high);
    if (top <= low) continue;
    const w = weight * (top - low);
    const square = (weight * (top ** 2 - low ** 2)) / 2;
    sum.amount += w;
    sum.x += w * x;
    sum.xx += w * x * x;
    sum.yy += w * y * y;
    sum.z += square;
    sum.xz += square * x;
    sum.zz += (weight * (top ** 3 - low ** 3)) / 3;
  }
  return sum;
}
