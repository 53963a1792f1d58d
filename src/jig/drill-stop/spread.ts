/**
 * What becomes of a hole drilled through a guide: from the errors of bit, guide, printer, collar and
 * seat to the error of station, depth and angle.
 *
 * Across the axis (station fore and aft; sideways it is the same), at a place `e` beyond the guide's
 * end, a guide of length L with play c about the bit:
 * - the middle of the bit lies anywhere in a disc of diameter c at either end of the guide, and so
 *   does the middle of the printed bore about where it shall be: each opposite pair of walls averages
 *   to σₚ/√2. A line through both ends is u(e) = u₁(1 + e/L) − u₀ e/L, so its variance is
 *   ((1 + e/L)² + (e/L)²)(c²/16 + σₚ²/2), and its greatest value by play alone (c/2)(1 + 2e/L);
 * - run-out R puts the tip on a circle of diameter R: variance R²/8, greatest R/2;
 * - the seat's wall is a printed face: σₚ²; in the seat's gap s the blank lies anywhere: s²/12,
 *   greatest s.
 * Angle: (u₁ − u₀)/L, variance 2(c²/16 + σₚ²/2)/L², greatest by play c/L.
 * Depth: the collar's setting σc, the stop face and the seat (2σₚ²), the gap of the seat (s²/12); a
 * pilot from the nose pushes the blank into its play q: q²/12, greatest q.
 *
 * Assumed: contributions are independent; the blank is sawn as drawn and pressed to the nose wall and
 * the base; the jig does not bend. A greatest value is all play one way and three standard deviations
 * of what has no bound.
 */

export type Spread = {
  /** One standard deviation. */
  readonly sd: number;
  readonly greatest: number;
};

export type HoleSpread = {
  /** Along the blank (for tow eye and tail eye: up and down), where the hole begins. */
  readonly placeMm: Spread;
  /** The same at the hole's floor. */
  readonly floorMm: Spread;
  readonly depthMm: Spread;
  readonly angleDeg: Spread;
};

export type SpreadSources = {
  readonly guideLengthMm: number;
  /** Difference of the diameters of guide and bit. */
  readonly playMm: number;
  /** From the guide's end to the wood. */
  readonly gapMm: number;
  readonly depthMm: number;
  readonly runOutMm: number;
  readonly collarErrorMm: number;
  /** One standard deviation of a printed face. */
  readonly printerErrorMm: number;
  /** Gap the seat leaves. */
  readonly seatMm: number;
  /** How far the bit can push the blank away. */
  readonly pushedMm: number;
};

const SIGMAS = 3; // of what has no bound, in a greatest value

/** Standard deviations and greatest errors of one hole. */
export function holeSpread(given: SpreadSources): HoleSpread {
  const { guideLengthMm: L, playMm: c, printerErrorMm: p, gapMm, depthMm, seatMm: s } = given;
  const angle = {
    sd: Math.sqrt(2 * endVariance(given)) / L,
    greatest: c / L + (SIGMAS * p) / L,
  };
  return {
    placeMm: across(given, gapMm),
    floorMm: across(given, gapMm + depthMm),
    depthMm: {
      sd: Math.hypot(
        given.collarErrorMm,
        Math.SQRT2 * p,
        s / Math.sqrt(12),
        given.pushedMm / Math.sqrt(12),
      ),
      greatest: s + given.pushedMm + SIGMAS * Math.hypot(given.collarErrorMm, Math.SQRT2 * p),
    },
    angleDeg: {
      sd: (Math.atan(angle.sd) * 180) / Math.PI,
      greatest: (Math.atan(angle.greatest) * 180) / Math.PI,
    },
  };
}

/** Of the bit's middle at one end of the guide, along one direction. */
const endVariance = ({ playMm, printerErrorMm }: SpreadSources): number =>
  playMm ** 2 / 16 + printerErrorMm ** 2 / 2;

function across(given: SpreadSources, beyondMm: number): Spread {
  const { guideLengthMm, playMm, printerErrorMm: p, runOutMm, seatMm } = given;
  const lever = beyondMm / guideLengthMm;
  const gain = (1 + lever) ** 2 + lever ** 2;
  const variance = gain * endVariance(given) + runOutMm ** 2 / 8 + p ** 2 + seatMm ** 2 / 12;
  const bounded = (playMm / 2) * (1 + 2 * lever) + runOutMm / 2 + seatMm;
  return {
    sd: Math.sqrt(variance),
    greatest: bounded + SIGMAS * p * Math.sqrt(gain / 2 + 1),
  };
}
