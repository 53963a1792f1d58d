/** The values of the tub test: how the sealed and rigged lure lies, and what a difference says. */

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
  readonly why:
    | 'needs-lift'
    | 'off-the-lure'
    | 'hardly-afloat'
    | 'under-water'
    | 'no-stable-rest'
    | null;
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
