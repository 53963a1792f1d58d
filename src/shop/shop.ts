/**
 * What a maker needs at the bench beside drawings and jigs, as values: what to get out, what to weigh,
 * what to mix, how long it takes, and what the tub should show. The shop sheet prints them and
 * computes nothing. Lengths mm, masses g, angles degrees, in the frame of the lure.
 */
import type { Finish } from './finish.js';
import type { TubTest } from './tub-test.js';

export type { Finish, LureCount, Measured, MixParts, Pot } from './finish.js';
export type { Lie, Says, TrialWeight, TubTest } from './tub-test.js';

/** How the sheet is wished for: a display choice, and the bench's working day. */
export type ShopWish = {
  /** Show inches and fractions beside the millimeters; nothing is computed in them. */
  readonly inches: boolean;
  readonly benchHoursPerDay: number;
};

export type Shop = ShopWish & {
  /** Blocks to get out of the pile, in the run's order of blocks; empty for a single pattern. */
  readonly timber: readonly TimberToGet[];
  /** Double-sided tape between the blocks of stacks; null where nothing is taped. */
  readonly tape: Tape | null;
  /** In the order of the run. */
  readonly patterns: readonly ShopPattern[];
  /** Metals to melt, one row a metal; empty where nothing is poured. */
  readonly melt: readonly Melt[];
  readonly weightsToBuy: readonly WeightToBuy[];
  /** Totals over the run. */
  readonly hardware: readonly HardwareTotal[];
  /** One an application, in the order they go on. */
  readonly finishes: readonly Finish[];
  readonly timeline: readonly BenchSpan[];
};

/** Blocks of one entry that go into stacks of one height: a block in stacks of two heights has two rows. */
export type TimberToGet = {
  /** Name of the entry in the run file. */
  readonly block: string;
  /** A row of the table of timbers. */
  readonly timber: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  readonly count: number;
  readonly layersPerStack: number;
  /** Ids of the faces sawn in them. */
  readonly faces: readonly number[];
};

export type Tape = {
  /** Pairs of blocks that are taped face to face, over all stacks. */
  readonly joints: number;
  /** Along the blocks, one strip a joint. */
  readonly lengthMm: number;
  /** Of the faces so joined. */
  readonly areaMm2: number;
};

export type ShopPattern = {
  readonly name: string;
  /** Ordered: drilled, filled, coated and rigged. */
  readonly count: number;
  /** Blanks the saw makes: more than ordered where a whole stack gives more. */
  readonly sawnCount: number;
  readonly drilling: readonly Drilling[];
  readonly ballast: readonly BallastFill[];
  readonly weights: readonly StageWeight[];
  readonly roundOver: {
    /** 0: no bit is small enough. */
    readonly bitMm: number;
    readonly limitMm: number;
    readonly stationMm: number;
  };
  /** Empty without gauges. */
  readonly gauges: readonly { readonly number: number; readonly stationMm: number }[];
  /** Null without a lip. */
  readonly slot: {
    readonly angleDeg: number;
    readonly depthMm: number;
    readonly widthMm: number;
    /** Where its middle meets the finished belly. */
    readonly stationMm: number;
  } | null;
  /** Null without a through-wire. */
  readonly wire: { readonly lengthToCutMm: number; readonly diameterMm: number } | null;
  readonly hardware: readonly Hardware[];
  readonly tub: TubTest;
};

/** A hole a bit makes: ballast holes first, then hangers, tow eye and tail eye. */
export type Drilling = {
  readonly what: 'ballast' | 'hanger' | 'tow eye' | 'tail eye';
  /** Counts from 1 within its kind. */
  readonly number: number;
  readonly bitMm: number;
  /** Where the axis enters the sawn blank. */
  readonly stationMm: number;
  readonly heightMm: number;
  /** How far aft it leans against the perpendicular to the datum line. */
  readonly tiltDeg: number;
  /** Full-diameter depth on the axis; null for a bore that goes right through and is begun by hand. */
  readonly depthMm: number | null;
  readonly tipDepthMm: number | null;
  /** From the bit's shoulder, where it is full, to the collar, as the drill-stop jig's letters say; null without a guide for it. */
  readonly collarMm: number | null;
  /** The same from the tip of its point. */
  readonly collarFromTipMm: number | null;
  readonly from: 'belly' | 'nose' | 'tail';
  /** True for the bore of a through-wire: begun so deep, then right through to the other end. */
  readonly through: boolean;
};

/** What goes into a ballast hole. */
export type BallastFill = {
  readonly number: number;
  readonly metal: string;
  /** Null where nothing is poured: a ready-made weight, or a piece of rod. */
  readonly pour: 'topped-up' | 'single' | null;
  /** Name of a ready-made weight, or null. */
  readonly weight: string | null;
  readonly stationMm: number;
  /** Metal that goes into the hole at the bench: to the sawn belly, or to fillMm. */
  readonly filledG: number;
  /** What stays in the lure once the belly is shaped. */
  readonly afterShapingG: number;
  /** Height of the metal over the full-diameter floor; null: to the sawn belly. */
  readonly fillMm: number | null;
  /** Null where nothing is poured, or the table does not say. */
  readonly meltsAtC: number | null;
};

/** What to do about a lure that is lighter than its band; the words are the sheet's. */
export type LightCode =
  | 'lighter-timber'
  | 'hole-deep'
  | 'plug-short'
  | 'weight-light'
  | 'rounded-much'
  | 'sanded-much'
  | 'coat-thin'
  | 'fittings-light';

/** The same for one that is heavier. */
export type HeavyCode =
  | 'heavier-timber'
  | 'hole-shallow'
  | 'plug-long'
  | 'weight-heavy'
  | 'rounded-little'
  | 'sanded-little'
  | 'coat-thick'
  | 'fittings-heavy';

/** A stage of `float.stages`, by the same name and in the same order. */
export type StageWeight = {
  readonly stage: string;
  readonly massG: number;
  /** One standard deviation. */
  readonly spreadG: number;
  /** Two standard deviations either way: 19 lures of 20 are inside. */
  readonly lowG: number;
  readonly highG: number;
  /** Against the stage before, of the same lure: in it the board's density hardly counts. Null for the first. */
  readonly changeG: number | null;
  readonly changeLowG: number | null;
  readonly changeHighG: number | null;
  readonly light: LightCode;
  readonly heavy: HeavyCode;
};

export type HardwareKind = 'screw-eye' | 'ring' | 'treble' | 'lip' | 'wire' | 'weight' | 'rod';

export type Hardware = {
  readonly what: HardwareKind;
  /** A row of its table; of a lip the pattern's name, of a wire `through-wire`, of a rod its metal. */
  readonly name: string;
  /** Thickness of a lip, diameter of a wire, weight or rod; else null. */
  readonly sizeMm: number | null;
  /** What one piece of wire is cut to; else null. */
  readonly lengthMm: number | null;
  readonly perLure: number;
  readonly total: number;
  readonly massEachG: number;
};

export type HardwareTotal = Pick<Hardware, 'what' | 'name' | 'sizeMm'> & {
  readonly count: number;
  /** Of all pieces of wire; else null. */
  readonly lengthMm: number | null;
};

/** A metal that is poured, over the run. */
export type Melt = {
  readonly metal: string;
  readonly holes: number;
  /** What goes into the holes. */
  readonly netG: number;
  /** On top of it, as a share: dross, and what stays in ladle and pot. */
  readonly allowanceRatio: number;
  readonly totalG: number;
  readonly meltsAtC: number | null;
};

export type WeightToBuy = {
  readonly name: string;
  readonly metal: string;
  readonly massG: number;
  readonly diameterMm: number;
  readonly lengthMm: number;
  readonly count: number;
};

/** What is done at the bench, in the order it is done; `glue` is that of lip and wire. */
export const STEPS = [
  'tape',
  'trace',
  'saw',
  'slot',
  'drill',
  'pour',
  'weights',
  'round-over',
  'sand',
  'coat',
  'wire',
  'glue',
  'rig',
  'tub',
] as const;

export type StepName = (typeof STEPS)[number];

/** A stretch of work within one bench day, or a wait, which may run over nights. */
export type BenchSpan = {
  /** Of a wait: what is waited for. */
  readonly step: StepName;
  /** Place in `finishes` (from 0) for the step `coat`; else null. */
  readonly finish: number | null;
  readonly kind: 'work' | 'wait';
  /** Hours from the start of the first bench day; the next day starts at 24. */
  readonly startH: number;
  readonly endH: number;
  readonly handsOnMin: number;
  readonly waitH: number;
  /** On which it starts, from 1. */
  readonly day: number;
};
