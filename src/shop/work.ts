/** What the shop's values are computed from: a run or a single pattern, made. */
import type { Floating } from '../afloat/floating.js';
import type { Blank } from '../blank/blank.js';
import type { Body } from '../body/body.js';
import type { ReadyJig } from '../jig/set.js';
import type { Nest } from '../nest/nest.js';
import type { Pattern } from '../pattern/pattern.js';
import type { RunFile } from '../pattern/run-schema.js';
import type { Materials } from '../tables/materials.js';
import type { BentWire } from '../wire/bent.js';
import type { ShopWish } from './shop.js';

/** One line of the order with what was made for it. */
export type ShopLine = {
  readonly pattern: Pattern;
  readonly count: number;
  readonly body: Body;
  readonly blank: Blank;
  readonly floating: Floating;
  readonly jigs: readonly Pick<ReadyJig, 'jig'>[];
  /** Null without a through-wire. */
  readonly wire: BentWire | null;
  /** Null without gauges. */
  readonly gauged: {
    readonly gauges: {
      readonly sections: readonly { readonly number: number; readonly stationMm: number }[];
    };
  } | null;
};

export type ShopWork = {
  readonly wish: ShopWish;
  readonly materials: Materials;
  readonly lines: readonly ShopLine[];
  /** Null for a single pattern. */
  readonly nest: Pick<Nest, 'faces' | 'made'> | null;
  readonly blocks: readonly Pick<
    RunFile['blocks'][number],
    'name' | 'timber' | 'lengthMm' | 'widthMm' | 'thicknessMm'
  >[];
  /** The saw that makes the outlines cuts the lip slots too. */
  readonly slotIsCut: boolean;
};
