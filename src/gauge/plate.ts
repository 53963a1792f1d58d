/** What every gauge is: a flat plate, what is scored on it, and where there is room for what. */
import type { Nominal } from '../blank/nominal.js';
import type { Segment } from '../geometry/arcpath.js';
import type { Box, Point2 } from '../geometry/vec.js';

/** A text with the ways to break it into lines, and an empty rectangle of the plate for it. */
export type PlateText = {
  readonly breaks: readonly (readonly string[])[];
  /** What is written where no way fits. */
  readonly instead?: readonly (readonly string[])[];
  readonly room: Box;
};

/** Name and version, as they stand on plates. */
export type PlateName = { readonly name: string; readonly version: string };

/** Words of a plate's title; a name too long for its plate gives way to its initials. */
export function titleWords({ name, version }: PlateName): {
  readonly full: readonly string[];
  readonly initials: readonly string[];
} {
  const words = name.toUpperCase().split('-');
  const end = `V${version}`.toUpperCase();
  return { full: [...words, end], initials: [words.map((w) => w[0]).join(''), end] };
}

/** Words on one line, on two in every way, and each on its own. */
export function broken(words: readonly string[]): readonly (readonly string[])[] {
  const two = words.slice(1).map((_, i) => [words.slice(0, i + 1), words.slice(i + 1)]);
  return [
    [words.join(' ')],
    ...two.map((pair) => pair.map((w) => w.join(' '))),
    ...(words.length > 2 ? [words] : []),
  ];
}

/** Mm, y of the plate up as the lure’s z, seen on the lettered face. It carries no kerf. */
export type Plate = {
  readonly outline: Nominal;
  /** Lines to score, from the gauging edge inward. */
  readonly ticks: readonly (readonly [Point2, Point2])[];
  readonly texts: readonly PlateText[];
};

/** Sizes of plates, from the set-up. */
export type PlateSizes = {
  /** From the deepest back and belly of the section gauges to their edges. */
  readonly rimMm: number;
  /** Of a section gauge beside the widest section: what the hand holds, with the letters. */
  readonly spineMm: number;
  /** Of a profile gauge over the highest place of its edge. */
  readonly profileRimMm: number;
  /** Of a profile gauge beyond nose and tail. */
  readonly endMm: number;
};

export const NOTCH_MM = 2; // depth of a datum notch, and half its width
export const TICK_MM = 4; // length of a scored tick

/** Straight lines through the points. */
export const lines = (points: readonly Point2[]): Segment[] =>
  points.slice(1).map((to, i) => ({ from: points[i], to, bulge: 0 }));
