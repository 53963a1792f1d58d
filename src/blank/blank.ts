/** The sawn blank: what is cut from the block, before drilling and shaping. Frame of the lure, mm. */
import type { Ring } from '../geometry/ring.js';
import type { Ballast } from '../pattern/pattern.js';
import type { Nominal } from './nominal.js';
import type { LipSlot } from './slot.js';

/** A ballast hole drilled from the belly at half thickness; `hole.ts` has its axis, its tip and its side view. */
export type BallastHole = Ballast & {
  /** Height of the sawn belly where the axis meets it, at `stationMm` (negative: below the datum line). */
  readonly bellyMm: number;
};

/** Length of a bit's point beyond full diameter: (D/2)/tan(A/2), plane geometry. */
export const pointBeyondMm = ({
  diameterMm,
  pointAngleDeg,
}: Pick<Ballast, 'diameterMm' | 'pointAngleDeg'>): number =>
  pointAngleDeg === 180 ? 0 : diameterMm / 2 / Math.tan((pointAngleDeg * Math.PI) / 360);

export type HangerMark = { readonly stationMm: number };

export type Blank = {
  /** The pattern's name in this run; names files, so it is unique in a run. */
  readonly name: string;
  readonly version: string;
  /** Length of the finished body, for the label. */
  readonly lengthMm: number;
  readonly thicknessMm: number;
  /** Outline with the lip-slot notch. */
  readonly outline: Nominal;
  /** Outline before the lip slot is sawn. */
  readonly profile: Nominal;
  /** `outline` and `profile` as points, chord error at most `CHORD_TOLERANCE_MM`. */
  readonly outlineRing: Ring;
  readonly profileRing: Ring;
  readonly slot: LipSlot | null;
  readonly holes: readonly BallastHole[];
  readonly hangers: readonly HangerMark[];
};

/** Greatest distance between a curve and the chords or arcs that stand for it in any output, mm. */
export const CHORD_TOLERANCE_MM = 0.02;

/** What stands on everything made for a blank: name, length of the finished body, version. */
export function labelOf({
  name,
  lengthMm,
  version,
}: Pick<Blank, 'name' | 'lengthMm' | 'version'>): string {
  const size = String(Math.round(lengthMm));
  // A size's own name may end in its length already.
  const family = name.endsWith(`-${size}`) ? name.slice(0, -size.length - 1) : name;
  return `${family} ${size} v${version}`.toUpperCase();
}
