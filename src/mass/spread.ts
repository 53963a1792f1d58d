/** What a bench adds to the spread of a mass, as one standard deviation; common practice, no source. */

/** Depth of a drilled or poured hole. */
export const HOLE_DEPTH_SPREAD_MM = 0.5;
/** Share of a coat’s film, and of the glue that fills a gap. */
export const COAT_SPREAD_RATIO = 0.2;
/** Share of a fitting, a wire, a lip or a ready-made weight. */
export const FITTING_SPREAD_RATIO = 0.05;

/** Spreads that do not depend on each other add as squares. */
export const spreadOf = (parts: readonly { readonly spreadG: number }[]): number =>
  Math.hypot(...parts.map((p) => p.spreadG));
