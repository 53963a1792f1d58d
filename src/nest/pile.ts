/** The stock as a plan sees it: piles of blocks that can stand in for each other. */
import type { Block, NestRules } from './nest.js';
import { flawKey, groupedBy, layersUnderGuide, sizeKey } from './stack.js';

export type Pile = {
  /** Any block of it: all have its size, margin, flaws and cost. */
  readonly like: Block;
  /** The entries of the order it is made of, in their order. */
  readonly entries: readonly Block[];
  readonly count: number;
  /** Layers of a stack of them that pass under the guide, at most the rules' own limit. */
  readonly layers: number;
  /** Of one block. */
  readonly volumeMm3: number;
  /** Of one block, in whatever the plan spends least of. */
  readonly cost: number;
};

export const volumeMm3 = (b: Block): number => b.lengthMm * b.widthMm * b.thicknessMm;

/** What one block costs in whatever the plan spends least of: its own figure, else its volume. */
export const costOf = (b: Block): number => b.costEach ?? volumeMm3(b);

/** All blocks that can be sawn, in the order of their entries. */
export const pilesOf = (blocks: readonly Block[], rules: NestRules): readonly Pile[] =>
  groupedBy(
    blocks.filter((b) => b.count > 0 && layersUnderGuide(b.thicknessMm, rules) > 0),
    (b) => `${sizeKey(b)}|${flawKey(b)}|${costOf(b)}`,
  ).map((entries) => ({
    like: entries[0],
    entries,
    count: entries.reduce((sum, b) => sum + b.count, 0),
    layers: layersUnderGuide(entries[0].thicknessMm, rules),
    volumeMm3: volumeMm3(entries[0]),
    cost: costOf(entries[0]),
  }));
