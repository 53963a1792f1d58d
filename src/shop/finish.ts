/** The values of sealer and coats: liquid, parts, pots. */

/** Both ratios of a two-part coat; by mass in parts to 100 of A. */
export type MixParts = {
  readonly aByMass: number;
  readonly bByMass: number;
  readonly aByVolume: number;
  readonly bByVolume: number;
  readonly densityAKgM3: number;
  readonly densityBKgM3: number;
  /** What each part is, as on its tin; null where nobody says. */
  readonly aName: string | null;
  readonly bName: string | null;
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
