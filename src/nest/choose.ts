/** Which stack to saw next, with which layout, and how often: the choice between what is possible. */
import type { Packer } from './packer.js';
import { countsOf, type Layout, topUp } from './place.js';
import type { StackOption } from './stack.js';

/** A stack option with a layout, sawn `copies` times. */
export type Sawing = {
  readonly option: StackOption;
  readonly layout: Layout;
  /** Outlines of each part on the face. */
  readonly counts: readonly number[];
  /** At most the option's; fewer where fewer give all that is wanted. */
  readonly layers: number;
  readonly copies: number;
};

/**
 * A further layout has to be traced, a further stack taped and set up: worth so much of one block's
 * face. Common practice, no source.
 */
const LAYOUT_COST_BLOCKS = 0.2;

/** The best sawing of one stack option; null if no outline that is wanted finds room. */
export function bestSawing(
  packer: Packer,
  option: StackOption,
  wanted: Wanted,
): { readonly sawing: Sawing; readonly worth: number } | null {
  let best: { sawing: Sawing; worth: number } | null = null;
  for (const layout of layouts(packer, option, wanted)) {
    if (layout.spots.length === 0) continue;
    const sawing = sawingOf(packer, option, layout, wanted.blanks);
    const worth = worthOf(packer, sawing, wanted);
    if (!best || worth > best.worth + 1e-9) best = { sawing, worth };
  }
  return best;
}

/** Blanks still to be made, by part; 0 for those that can not be made from this stack. */
export type Wanted = {
  readonly blanks: readonly number[];
  /** Parts that go before all others, because they were left short otherwise. */
  readonly first: readonly number[];
};

/**
 * Layouts worth comparing: everything together; an even share of everything, to be sawn several
 * times; each part alone, and then filled up with the others.
 */
function layouts(packer: Packer, option: StackOption, { blanks, first }: Wanted): Layout[] {
  const face = { ...option.like, ...option.flaws };
  const outlines = blanks.map((n) => Math.ceil(n / option.layers));
  const pack = (count: (n: number, part: number) => number): Layout =>
    packer.pack(face, outlines.map(count));
  const filledUp = (layout: Layout): Layout => topUp(packer.kit, face, outlines, layout);
  if (first.some((part) => outlines[part] > 0)) {
    const pressing = pack((n, part) => (first.includes(part) ? n : 0));
    if (pressing.spots.length > 0) return [filledUp(pressing)];
  }
  const together = pack((n) => n);
  const parts = outlines.flatMap((n, part) => (n > 0 ? [part] : []));
  if (parts.length < 2 || together.spots.length === 0) return [together];
  const areaMm2 = outlines.reduce((sum, n, part) => sum + n * packer.areaMm2(part), 0);
  const faces = Math.ceil(areaMm2 / together.areaMm2 - 1e-9);
  const shares = faces > 1 ? [pack((n) => Math.ceil(n / faces))] : [];
  const alone = parts.map((only) => pack((n, part) => (part === only ? n : 0)));
  return [together, ...shares, ...alone.flatMap((layout) => [layout, filledUp(layout)])];
}

function sawingOf(
  packer: Packer,
  option: StackOption,
  layout: Layout,
  blanks: readonly number[],
): Sawing {
  const counts = countsOf(packer.kit, layout);
  const laid = counts.flatMap((n, part) => (n > 0 ? [{ n, blanks: blanks[part] }] : []));
  const layers = Math.min(option.layers, Math.max(...laid.map((p) => Math.ceil(p.blanks / p.n))));
  const copies = Math.min(
    option.most,
    ...laid.map((p) => Math.max(1, Math.floor(Math.ceil(p.blanks / layers) / p.n))),
  );
  return { option, layout, counts, layers, copies };
}

/**
 * Share of the timber that becomes blanks somebody wants, less what a layout costs. The offcut
 * counts as timber used, unless this sawing fills the order: then it stays on the shelf.
 */
function worthOf(
  packer: Packer,
  { option, layout, counts, layers, copies }: Sawing,
  { blanks }: Wanted,
): number {
  const { lengthMm, widthMm } = option.like;
  const useful = counts.reduce(
    (sum, n, part) => sum + Math.min(blanks[part], n * layers * copies) * packer.areaMm2(part),
    0,
  );
  const isLast = blanks.every((n, part) => n <= counts[part] * layers * copies);
  const takenMm = isLast ? Math.min(lengthMm, layout.usedLengthMm) : lengthMm;
  const faces = layers * copies;
  return useful / (faces * takenMm * widthMm) - LAYOUT_COST_BLOCKS / faces;
}
