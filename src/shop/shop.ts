/**
 * What a maker needs at the bench beside drawings and jigs, as values: what to get out, what to weigh,
 * what to mix, how long it takes, and what the tub should show. The shop sheet prints them and
 * computes nothing. Lengths mm, masses g, angles degrees, in the frame of the lure.
 */

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

/** Both ratios of a two-part coat; by mass in parts to 100 of A. */
export type MixParts = {
  readonly aByMass: number;
  readonly bByMass: number;
  readonly aByVolume: number;
  readonly bByVolume: number;
  readonly densityAKgM3: number;
  readonly densityBKgM3: number;
};

/** Liquid as it is measured out; the four parts are null for a one-part coat. */
export type Measured = {
  /** To make ready, solvent and waste included. */
  readonly totalG: number;
  readonly totalMl: number;
  readonly partAG: number | null;
  readonly partBG: number | null;
  readonly partAMl: number | null;
  readonly partBMl: number | null;
};

/** So many lures of a pattern. */
export type LureCount = { readonly pattern: string; readonly count: number };

export type Pot = Measured & {
  readonly number: number;
  readonly lures: readonly LureCount[];
  readonly luresTotal: number;
  /** To put it on all of them, from when it is mixed. */
  readonly minutes: number;
};

/** One application of one coat to all lures that take it. */
export type Finish = Measured & {
  /** As the patterns call it. */
  readonly name: string;
  /** Which of the coats of that name, from 1, and of how many at most. */
  readonly coat: number;
  readonly of: number;
  /** The row of the table of coats it goes by. */
  readonly row: string;
  readonly lures: number;
  readonly perLure: readonly (LureCount & {
    readonly areaMm2: number;
    readonly thicknessMm: number;
    /** Cured film on one lure. */
    readonly filmG: number;
    /** Liquid to make ready for one, solvent and waste included. */
    readonly mixG: number;
  })[];
  readonly filmG: number;
  /** Share of the liquid that stays as film, by mass. */
  readonly solidsRatio: number;
  /** Liquid that stays in pot, brush and drips, as a share of what goes on. */
  readonly wasteRatio: number;
  /** Null for a one-part coat. */
  readonly parts: MixParts | null;
  /** For one coat on one lure; null for a one-part coat. */
  readonly perLurePartG:
    | readonly { readonly pattern: string; readonly partAG: number; readonly partBG: number }[]
    | null;
  /** Of a two-part coat; a one-part coat comes out of its tin as it is needed, and has no pots. */
  readonly potLifeMin: number | null;
  readonly largestPotG: number | null;
  readonly minutesPerLure: number;
  readonly pots: readonly Pot[];
  /** To the next coat. */
  readonly dryHours: number;
  /** Until it may be handled, rigged and put in water. */
  readonly cureHours: number;
};

/** What is done at the bench, in the order it is done; `glue` is that of lip and wire. */
export const STEPS = [
  'trace',
  'tape',
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

/** A change of how a lure lies: up is positive, nose up is positive. Null where the lure is under water, or on end. */
export type Lie = {
  readonly noseMm: number | null;
  readonly tailMm: number | null;
  readonly trimDeg: number | null;
};

/** What the sealed and rigged lure should show in the tub. */
export type TubTest = {
  readonly waterDensityKgM3: number;
  readonly temperatureC: number;
  readonly salinityPsu: number;
  readonly verdict: 'floats' | 'suspends' | 'sinks';
  readonly massG: number;
  /** Two standard deviations either way. */
  readonly lowG: number;
  readonly highG: number;
  /** What it weighs less the water it can displace: negative, it floats. */
  readonly netG: number;
  /** Nose and tail tip over the water, negative under it; heights are null for a lure that goes under. Null without a stable rest. */
  readonly rest: (Lie & { readonly freeboardMm: number | null; readonly dryRatio: number }) | null;
  /** Two standard deviations either way; null without a stable rest. */
  readonly band: Lie | null;
  /** What a weight hung at each eye does for each gram it weighs under water. */
  readonly hang: readonly {
    /** `tow`, `hanger 1`, `tail`. */
    readonly at: string;
    readonly stationMm: number;
    readonly heightMm: number;
    readonly perG: Lie & { readonly freeboardMm: number | null };
  }[];
  /** Share of its weight in air that lead has under water. */
  readonly leadShare: number;
  /** For a lure that rides so much higher than it should: the weight, as it weighs under water, and where to hang it under the belly. */
  readonly trial: readonly TrialWeight[];
  readonly says: readonly Says[];
};

export type TrialWeight = {
  readonly noseMm: number;
  readonly tailMm: number;
  /** Null where no weight on the lure does it, and `why` says why. */
  readonly massG: number | null;
  readonly stationMm: number | null;
  readonly why: 'needs-lift' | 'off-the-lure' | 'under-water' | 'no-stable-rest' | null;
};

/** A slip of the bench and what it does to the lure: what a difference in the tub points to. */
export type Says = Lie & {
  readonly cause:
    | 'timber-heavier'
    | 'timber-lighter'
    | 'hole-deeper'
    | 'hole-shallower'
    | 'hole-aft'
    | 'hole-forward'
    | 'plug-short';
  /** Which hole, from 1; null for the timber. */
  readonly number: number | null;
  readonly step: number;
  readonly unit: 'kg/m³' | 'mm';
  readonly massG: number;
};
