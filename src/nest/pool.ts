/** The face layouts a plan can choose from. */
import { isFree } from './fill.js';
import { fitsBySize } from './fit.js';
import type { NestPart } from './nest.js';
import type { Packer } from './packer.js';
import type { Pile } from './pile.js';
import { countsOf, type Layout, topUp } from './place.js';
import { sizeKey } from './stack.js';

/** A layout and the piles (by index) on whose blocks it can be sawn. */
export type FaceLayout = {
  readonly layout: Layout;
  /** Outlines of each part. */
  readonly counts: readonly number[];
  readonly piles: readonly number[];
};

export type Pool = {
  readonly piles: readonly Pile[];
  readonly layouts: readonly FaceLayout[];
  /** Takes a layout made for a pile up, and gives its place; one of equal use is not taken twice. */
  readonly add: (pile: number, layout: Layout) => number;
  /** Packs what is wanted on a pile's face, then fills it up with whatever else it may carry; not taken up yet. */
  readonly pack: (pile: number, wanted: readonly number[]) => Layout;
  readonly countsOf: (layout: Layout) => readonly number[];
  /** True if the part has the pile's thickness and fits its face by size. */
  readonly fits: (part: number, pile: number) => boolean;
};

/** A pool without layouts. */
export function poolOf(packer: Packer, parts: readonly NestPart[], piles: readonly Pile[]): Pool {
  const layouts: FaceLayout[] = [];
  const known = new Map<string, number>();
  const sizes = piles.map((p) => sizeKey(p.like));
  const fit = piles.map(({ like }) =>
    parts.map((part, i) => fitsBySize(packer.kit.set, part, i, like)),
  );
  const fits = (part: number, pile: number): boolean => fit[pile][part];
  const add = (pile: number, layout: Layout): number => {
    const counts = countsOf(packer.kit, layout);
    const on = piles.flatMap(({ like }, other) => {
      if (sizes[other] !== sizes[pile]) return [];
      const clear = like.knots.length === 0 || other === pile;
      return clear || layout.spots.every((s) => isFree(packer.kit.empty(piles[other].like), s))
        ? [other]
        : [];
    });
    const key = `${sizes[pile]}|${counts.join(' ')}|${on.join(' ')}`;
    const place = known.get(key) ?? layouts.length;
    known.set(key, place);
    if (place === layouts.length) layouts.push({ layout, counts, piles: on });
    else if (layout.usedLengthMm < layouts[place].layout.usedLengthMm - SAME_MM) {
      layouts[place] = { layout, counts, piles: on };
    }
    return place;
  };
  const pack = (pile: number, wanted: readonly number[]): Layout => {
    const { like } = piles[pile];
    const layout = packer.pack(like, wanted);
    const open = parts.map((p, i) => (fits(i, pile) ? p.orderedCount : 0));
    return topUp(packer.kit, like, open, layout);
  };
  return { piles, layouts, add, pack, countsOf: (layout) => countsOf(packer.kit, layout), fits };
}

/** Lengths that differ by less are equal, mm. */
const SAME_MM = 1e-9;
