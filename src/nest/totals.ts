/** What a nest comes to as a whole, as the record and the commands tell it. */
import type { Nest } from './nest.js';

export type NestTotals = Pick<
  Nest,
  | 'stacks'
  | 'blocksUsed'
  | 'usedRatio'
  | 'timberUsedMm3'
  | 'timberBoundMm3'
  | 'timberBoundKind'
  | 'timberAreaBoundMm3'
  | 'limitReached'
  | 'interrupted'
>;

/** The totals alone, in the order in which they are told. */
export const nestTotals = (nest: NestTotals): NestTotals => ({
  stacks: nest.stacks,
  blocksUsed: nest.blocksUsed,
  usedRatio: nest.usedRatio,
  timberUsedMm3: nest.timberUsedMm3,
  timberBoundMm3: nest.timberBoundMm3,
  timberBoundKind: nest.timberBoundKind,
  timberAreaBoundMm3: nest.timberAreaBoundMm3,
  limitReached: nest.limitReached,
  interrupted: nest.interrupted,
});
