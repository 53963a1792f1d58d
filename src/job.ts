/** What is to be built: everything the pipeline needs, read and checked, without a file in it. */
import type { JigSetups } from './jig/set-ups.js';
import type { Paper } from './pattern/paper.js';
import type { Pattern } from './pattern/pattern.js';
import type { Cutter } from './pattern/run.js';
import type { RunFile } from './pattern/run-schema.js';
import type { WaterFile } from './pattern/water-schema.js';
import type { Problem } from './problem.js';
import type { ShopWish } from './shop/shop.js';
import type { Materials } from './tables/materials.js';

export type Order = {
  readonly pattern: Pattern;
  readonly count: number;
  /** SHA-256 of the pattern's file, hexadecimal; left out for a pattern that has none. */
  readonly fileSha256?: string;
};

/** A sheet that lips are cut from. */
export type LipSheet = Omit<NonNullable<RunFile['lipSheets']>[number], 'cutter'> & {
  readonly cutter: Cutter;
};

/** Timber and tools of a run; a single pattern has none. */
export type Workshop = {
  readonly blocks: RunFile['blocks'];
  readonly timberLeast: RunFile['timberLeast'];
  readonly stack: RunFile['stack'];
  readonly saw: Cutter;
  readonly webMm: number;
  readonly clearNoseRatio: number;
  readonly largestTiltDeg: number;
  readonly sheet: Omit<RunFile['templateSheet'], 'cutter'>;
  readonly templateCutter: Cutter;
  /** Empty when the run lays out no lips. */
  readonly lipSheets: readonly LipSheet[];
};

export type Job = {
  readonly kind: 'run' | 'pattern';
  readonly name: string;
  /** What its file says beside all numbers. */
  readonly note: string;
  readonly orders: readonly Order[];
  readonly workshop: Workshop | null;
  readonly setups: JigSetups;
  /** What true-scale pages are laid out on. */
  readonly paper: Paper;
  /** The tables, a run’s own figures in them. */
  readonly materials: Materials;
  /** What a run says of the water; null: each pattern’s own. */
  readonly water: WaterFile | null;
  readonly shop: ShopWish;
};

/** Where no run says otherwise. */
export const USUAL_SHOP: ShopWish = { inches: false, benchHoursPerDay: 6 };

/** A problem and whose file it is about: an order's pattern (by index) or the job's own file. */
export type Finding = { readonly of: number | 'job'; readonly problem: Problem };

export const finding = (of: Finding['of'], problem: Problem): Finding => ({ of, problem });
