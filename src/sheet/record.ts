/** What the sheet reads of the record, in the shape of build.json. */
import type { Shop } from '../shop/shop.js';

export type SheetRecord = {
  readonly tool: string;
  readonly kind: 'run' | 'pattern';
  readonly name: string;
  readonly note: string;
  readonly patterns: readonly RecordedPattern[];
  /** Null for a single pattern. */
  readonly nest: RecordedNest | null;
  readonly sheets: readonly RecordedSheet[];
  readonly jigs: readonly { readonly pattern: string; readonly kind: string }[];
  readonly shop: Shop;
  /** What true-scale pages are printed on. */
  readonly paper: { readonly size: string };
};

export type RecordedPattern = {
  readonly name: string;
  readonly version: string;
  readonly note: string;
  readonly lengthMm: number;
  readonly orderedCount: number;
  readonly timber: string;
  readonly blockThicknessMm: number;
  readonly sandingAllowanceMm: number;
  readonly float: {
    /** Null where the pattern wishes nothing. */
    readonly wish: { readonly met: boolean } | null;
  };
};

export type RecordedNest = {
  readonly saw: {
    readonly guidance: 'steered' | 'follows';
    readonly kerfMm: number;
    /** The outline has the slot cut in. */
    readonly cutsLipSlot: boolean;
  };
  readonly faces: readonly RecordedFace[];
};

export type RecordedFace = {
  readonly id: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  readonly layers: number;
  readonly copies: number;
  readonly stackHeightMm: number;
  readonly stacks: readonly {
    readonly copies: number;
    readonly blocks: readonly { readonly block: string; readonly count: number }[];
  }[];
  readonly placements: readonly { readonly pattern: string }[];
  /** Indices of the placements. */
  readonly cutOrder: readonly number[];
  readonly partingCuts: readonly unknown[];
  readonly reliefCuts: readonly unknown[];
  readonly pieces: readonly { readonly lengthMm: number }[];
};

export type RecordedSheet = {
  readonly kind: 'template-sheet' | 'lip-sheet';
  readonly id: number;
  readonly material: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  readonly copies: number;
  readonly placements: readonly { readonly pattern: string }[];
};
