/** What would fill an order for which the timber ran out. */
import { draft, type Order } from './draft.js';
import { fitsBySize } from './fit.js';
import type { Block, MoreBlocks, NestObstacle } from './nest.js';
import { flawsOf, groupedBy, layersUnderGuide, sizeKey, THICKNESS_TOLERANCE_MM } from './stack.js';

/**
 * One obstacle per thickness in which blanks are missing that further blocks could give.
 * @param missing blanks not made, by part
 */
export function shortages(order: Order, missing: readonly number[]): NestObstacle[] {
  const { packer, parts, blocks, rules } = order;
  const usable = blocks.filter((b) => layersUnderGuide(b.thicknessMm, rules) > 0);
  const short = parts.flatMap((part, i) =>
    missing[i] > 0 && usable.some((b) => fitsBySize(packer.kit.set, part, i, b)) ? [i] : [],
  );
  const thickness = (i: number): string =>
    String(Math.round(parts[i].thicknessMm / THICKNESS_TOLERANCE_MM));
  return groupedBy(short, thickness).map((group) => ({
    kind: 'short',
    thicknessMm: parts[group[0]].thicknessMm,
    missing: Object.fromEntries(group.map((i) => [parts[i].id, missing[i]])),
    moreBlocks: groupedBy(usable, sizeKey)
      .map((alike) => moreOf(order, alike[0], group, missing))
      .filter((more) => more.parts.length > 0)
      .sort(byUse(blocks)),
  }));
}

/** Blocks like `block`, clear of flaws, that hold what is missing of the parts it fits. */
function moreOf(
  order: Order,
  block: Block,
  group: readonly number[],
  missing: readonly number[],
): MoreBlocks {
  const { packer, parts, rules } = order;
  const fit = group.filter((i) => fitsBySize(packer.kit.set, parts[i], i, block));
  const wanted = parts.map((_, i) => (fit.includes(i) ? missing[i] : 0));
  const count = wanted.reduce((sum, n) => sum + n, 0);
  // A block each is enough for any blank that fits, so this draft never runs out.
  const blocks = [{ ...block, ...flawsOf([]), count }];
  const { steps } = draft({ ...order, blocks }, wanted, { layers: rules.layers, first: [] });
  return {
    block: block.name,
    count: steps.reduce((sum, s) => sum + s.layers * s.copies, 0),
    parts: fit.map((i) => parts[i].id),
  };
}

/** Most parts first, then least timber, then by name. */
const byUse =
  (blocks: readonly Block[]) =>
  (a: MoreBlocks, b: MoreBlocks): number => {
    const volume = ({ block, count }: MoreBlocks): number => {
      const like = blocks.find((x) => x.name === block);
      return like ? count * like.lengthMm * like.widthMm * like.thicknessMm : Infinity;
    };
    return b.parts.length - a.parts.length || volume(a) - volume(b) || (a.block < b.block ? -1 : 1);
  };
