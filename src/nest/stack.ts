/** Which blocks can be taped to a stack, how high it may be, and what it is made of. */
import type { Block, FaceSize, Flaws, NestRules, StackMix, StackShare } from './nest.js';

/** A kind of stack that can be built from what is left, several times over. */
export type StackOption = {
  /** Any block of it: all have its size and margin. */
  readonly like: Block;
  readonly layers: number;
  /** Flaws of all layers together. */
  readonly flaws: Flaws;
  /** Stacks of this kind the blocks left allow. */
  readonly most: number;
  /** The entries to take from, in this order. */
  readonly from: readonly Block[];
};

/** Blocks left of each entry, by name. */
export type Stock = ReadonlyMap<string, number>;

/** Part and block thickness agree if they differ by no more than this, mm (a planer's pass). */
export const THICKNESS_TOLERANCE_MM = 0.2;

export const isThick = (thicknessMm: number, block: Block): boolean =>
  Math.abs(thicknessMm - block.thicknessMm) <= THICKNESS_TOLERANCE_MM;

/** Height of a stack: its blocks and the tape between them. */
export const stackHeightMm = (layers: number, thicknessMm: number, tapeMm: number): number =>
  layers * thicknessMm + (layers - 1) * tapeMm;

/** Layers that pass under the guide, at most the rules' own limit; 0 if not even one does. */
export function layersUnderGuide(thicknessMm: number, rules: NestRules): number {
  let layers = 0;
  while (
    layers < rules.layers &&
    stackHeightMm(layers + 1, thicknessMm, rules.tapeThicknessMm) <= rules.largestHeightMm + 1e-9
  ) {
    layers++;
  }
  return layers;
}

/**
 * The stacks that can be built now from these entries, all of one size and margin. Blocks with the
 * same flaws go together, so that a flaw is in the way of as few others as can be; only when no such
 * stack reaches `layers` are different ones taped together, too, clear ones first.
 */
export function stackOptions(
  entries: readonly Block[],
  stock: Stock,
  layers: number,
): StackOption[] {
  const left = (blocks: readonly Block[]): number =>
    blocks.reduce((sum, b) => sum + (stock.get(b.name) ?? 0), 0);
  const open = entries.filter((b) => left([b]) > 0);
  const alike = groupedBy(open, flawKey).sort((a, b) => flawCount(a[0]) - flawCount(b[0]));
  const options = alike.map((from): StackOption => {
    const height = Math.min(layers, left(from));
    const most = Math.floor(left(from) / height);
    return { like: from[0], layers: height, flaws: flawsOf([from[0]]), most, from };
  });
  const highest = Math.max(0, ...options.map((o) => o.layers));
  const mixed = alike.length > 1 && highest < layers;
  return mixed ? [mixedOption(alike.flat(), stock, layers), ...options] : options;
}

function mixedOption(from: readonly Block[], stock: Stock, layers: number): StackOption {
  const taken = takeStack(from, new Map(stock), layers);
  const used = from.filter((b) => taken.some((t) => t.block === b.name));
  const unlike = groupedBy(used, flawKey).map((g) => g[0]);
  return {
    like: from[0],
    layers: taken.reduce((sum, t) => sum + t.count, 0),
    flaws: flawsOf(unlike),
    most: 1,
    from,
  };
}

/** Takes up to `layers` blocks out of `stock`, entry after entry. */
function takeStack(
  from: readonly Block[],
  stock: Map<string, number>,
  layers: number,
): StackShare[] {
  const shares: StackShare[] = [];
  let open = layers;
  for (const { name } of from) {
    const count = Math.min(open, stock.get(name) ?? 0);
    if (count === 0) continue;
    shares.push({ block: name, count });
    stock.set(name, (stock.get(name) ?? 0) - count);
    open -= count;
  }
  return shares;
}

/** What `copies` stacks of an option are made of, stacks alike counted together, and what is left. */
export function takeStacks(
  option: StackOption,
  stock: Stock,
  copies: number,
): { readonly stacks: readonly StackMix[]; readonly left: Stock } {
  const left = new Map(stock);
  const stacks: StackMix[] = [];
  for (let open = copies; open > 0; ) {
    const blocks = takeStack(option.from, left, option.layers);
    // While the same entry holds out, the next stacks are made of it alone, too.
    const [{ block, count }] = blocks;
    const again = blocks.length > 1 ? 0 : Math.floor((left.get(block) ?? 0) / count);
    const alike = Math.min(open, 1 + again);
    left.set(block, (left.get(block) ?? 0) - (alike - 1) * count);
    stacks.push({ copies: alike, blocks });
    open -= alike;
  }
  return { stacks, left };
}

/** Items with equal keys together, in order of first appearance. */
export function groupedBy<T>(items: readonly T[], key: (item: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const known = groups.get(key(item));
    if (known) known.push(item);
    else groups.set(key(item), [item]);
  }
  return [...groups.values()];
}

/** Entries that may share a stack. */
export const sizeKey = (b: Block): string =>
  [b.lengthMm, b.widthMm, b.thicknessMm, b.marginMm].join(' ');

/** All flaws of several faces. */
export const flawsOf = (faces: readonly Flaws[]): Flaws => ({
  knots: faces.flatMap((f) => f.knots),
  splits: faces.flatMap((f) => f.splits),
  poorZones: faces.flatMap((f) => f.poorZones),
});

const flawCount = ({ knots, splits, poorZones }: Flaws): number =>
  knots.length + splits.length + poorZones.length;

/** Equal for faces with the same flaws, in whatever order they are listed. */
export const flawKey = ({ knots, splits, poorZones }: Flaws): string =>
  [
    knots.map((k) => [k.xMm, k.yMm, k.radiusMm]),
    splits.map((s) => [...s.fromMm, ...s.toMm, s.widthMm]),
    poorZones.map((z) => [z.xMm, z.yMm, z.radiusMm]),
  ]
    .map((rows) =>
      rows
        .map((row) => row.join(' '))
        .sort()
        .join(', '),
    )
    .join('; ');

/** Equal for faces on which the same layouts have room. */
export const faceKey = (face: FaceSize): string =>
  [face.lengthMm, face.widthMm, face.marginMm, flawKey(face)].join('|');
