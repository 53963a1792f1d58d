/**
 * From the tub back to the wood: the timber density and the weight of the metal that explain best
 * what was read, by least squares. What the plan says counts as a reading too, as sure as its own
 * spread, so that one number from the tub moves what it can tell of and leaves the rest.
 */
import type { Attitude } from '../float/attitude.js';
import type { Point3 } from '../geometry/vec.js';
import type { Reading } from './reading.js';

/** Mass and where it pulls. */
export type Weight = { readonly massG: number; readonly cgMm: Point3 };

export type TubLure = {
  readonly timberKgM3: number;
  readonly timberSpreadKgM3: number;
  /** The rigged lure with another timber, and with so much of the metal planned (1: as planned). */
  readonly weighing: (timberKgM3: number, metalShare: number) => Weight;
  /** How that lies in the tub, near how it is planned to lie; null when it goes under. */
  readonly lying: (weight: Weight) => Attitude | null;
  /** Where something hung under a station pulls. */
  readonly hungAtMm: (stationMm: number) => Point3;
  /** What a gram of lead weighs in the water. */
  readonly hungShare: number;
  readonly hasMetal: boolean;
};

type Read = 'trimDeg' | 'freeboardNoseMm' | 'freeboardTailMm' | 'massG';
const READ: readonly Read[] = ['trimDeg', 'freeboardNoseMm', 'freeboardTailMm', 'massG'];

/** How well each is read with rule and kitchen scale: one standard deviation. Common practice, no source. */
const READ_SPREAD: Readonly<Record<Read, number>> = {
  trimDeg: 0.5,
  freeboardNoseMm: 0.5,
  freeboardTailMm: 0.5,
  massG: 0.05,
};
/** What is seen shall outweigh what was planned: the plan holds only three of its spreads. */
const PLAN_WEIGHT = 1 / 3;
/** Of the metal's weight: half a millimeter of depth, and how a pour sets. Common practice, no source. */
const METAL_SPREAD = 0.08;

export type Explained = {
  readonly timberKgM3: number;
  /** No wider than before: a reading takes nothing away from what was known. */
  readonly timberSpreadKgM3: number;
  /** Metal there is, as a share of what was planned. */
  readonly metalShare: number;
  readonly metalSpread: number;
  /** Each thing read, as seen, as planned, and with what is found. Null: the lure would go under. */
  readonly readings: readonly {
    readonly what: Read;
    readonly reading: number;
    readonly seen: number;
    readonly planned: number | null;
    readonly explained: number | null;
  }[];
  /** Root mean square of what is left, in units of what can be read: about 1 or less fits. */
  readonly misfit: number;
  /** It fits, and neither timber nor metal is off by more than three of its own spreads: else something else differs. */
  readonly well: boolean;
};

const WELL_MISFIT = 1.5;
const WELL_SPREADS = 3;
/** Lightest balsa to the heaviest woods, and metal from nearly none to a half more than planned: beyond is no explanation. */
const TIMBER_KG_M3 = { least: 60, most: 1350 };
const METAL_SHARE = { least: 0.05, most: 1.5 };

type Unknowns = readonly [timber: number, metal: number];

export function explain(lure: TubLure, readings: readonly Reading[]): Explained {
  const residuals = (u: Unknowns) => residualsOf(lure, readings, u);
  let at: Unknowns = [0, 0];
  for (let round = 0; round < 30; round++) {
    const [step] = gaussNewton(residuals, at, lure.hasMetal);
    // Half a step at a time where the whole one leads uphill, as it may where the lure goes under.
    let share = 1;
    const before = sumOfSquares(residuals(at));
    const to = () => possible(lure, [at[0] + share * step[0], at[1] + share * step[1]]);
    while (share > 1e-3 && sumOfSquares(residuals(to())) > before) share /= 2;
    const next = to();
    const moved = Math.hypot(next[0] - at[0], next[1] - at[1]);
    at = next;
    if (moved < 1e-7) break;
  }
  const [, covariance] = gaussNewton(residuals, at, lure.hasMetal);
  const predicted = (u: Unknowns) => predictions(lure, readings, u);
  const [planned, explained] = [predicted([0, 0]), predicted(at)];
  const rows = readings.flatMap((reading, i) =>
    READ.flatMap((what) => {
      const seen = reading[what];
      return seen === undefined
        ? []
        : [
            {
              what,
              reading: i + 1,
              seen,
              planned: planned[i][what],
              explained: explained[i][what],
            },
          ];
    }),
  );
  const left = rows.map((r) =>
    r.explained === null ? UNREADABLE : (r.seen - r.explained) / READ_SPREAD[r.what],
  );
  const misfit = Math.sqrt(sumOfSquares(left) / left.length);
  return {
    timberKgM3: lure.timberKgM3 + at[0] * lure.timberSpreadKgM3,
    timberSpreadKgM3: Math.min(1, Math.sqrt(covariance[0])) * lure.timberSpreadKgM3,
    metalShare: 1 + at[1] * METAL_SPREAD,
    metalSpread: Math.min(1, Math.sqrt(covariance[1])) * METAL_SPREAD,
    readings: rows,
    misfit,
    well: misfit <= WELL_MISFIT && Math.max(Math.abs(at[0]), Math.abs(at[1])) <= WELL_SPREADS,
  };
}

/** The unknowns kept to timbers and metal there can be. */
function possible(lure: TubLure, [timber, metal]: Unknowns): Unknowns {
  const kgM3 = lure.timberKgM3 + timber * lure.timberSpreadKgM3;
  const share = 1 + metal * METAL_SPREAD;
  const kept = (value: number, { least, most }: { least: number; most: number }) =>
    Math.min(most, Math.max(least, value));
  return [
    (kept(kgM3, TIMBER_KG_M3) - lure.timberKgM3) / lure.timberSpreadKgM3,
    (kept(share, METAL_SHARE) - 1) / METAL_SPREAD,
  ];
}

/** What would be read of each reading's lure; under water only the scale. Unknowns in units of their spreads. */
function predictions(
  lure: TubLure,
  readings: readonly Reading[],
  [timber, metal]: Unknowns,
): Readonly<Record<Read, number | null>>[] {
  const own = lure.weighing(
    lure.timberKgM3 + timber * lure.timberSpreadKgM3,
    1 + metal * METAL_SPREAD,
  );
  return readings.map(({ hungG, hungStationMm }) => {
    const all =
      hungG === undefined || hungStationMm === undefined
        ? own
        : together(own, { massG: hungG * lure.hungShare, cgMm: lure.hungAtMm(hungStationMm) });
    const lies = lure.lying(all);
    return {
      trimDeg: lies?.trimDeg ?? null,
      freeboardNoseMm: lies?.freeboardNoseMm ?? null,
      freeboardTailMm: lies?.freeboardTailMm ?? null,
      massG: own.massG,
    };
  });
}

function together(a: Weight, b: Weight): Weight {
  const massG = a.massG + b.massG;
  const along = (k: 0 | 1 | 2) => (a.massG * a.cgMm[k] + b.massG * b.cgMm[k]) / massG;
  return { massG, cgMm: [along(0), along(1), along(2)] };
}

/** Counts for a reading of the water that the lure, gone under, would not give. */
const UNREADABLE = 100;

/** Readings less predictions in units of their spreads, then the plan's own: the unknowns themselves. */
function residualsOf(lure: TubLure, readings: readonly Reading[], u: Unknowns): number[] {
  const predicted = predictions(lure, readings, u);
  return [
    ...readings.flatMap((reading, i) =>
      READ.flatMap((what) => {
        const seen = reading[what];
        if (seen === undefined) return [];
        const said = predicted[i][what];
        // Less with less timber and metal, so that the way back to a lure afloat is downhill.
        const under = UNREADABLE * Math.exp((u[0] + u[1]) / 10);
        return [said === null ? under : (seen - said) / READ_SPREAD[what]];
      }),
    ),
    ...u.map((v) => PLAN_WEIGHT * v),
  ];
}

const sumOfSquares = (values: readonly number[]): number => values.reduce((s, v) => s + v * v, 0);

const STEP = 1e-3; // of the spreads, for differences either way

/** The step of least squares, and the variances it leaves. Without metal only the timber is unknown. */
function gaussNewton(
  residuals: (u: Unknowns) => number[],
  at: Unknowns,
  hasMetal: boolean,
): [step: Unknowns, variances: Unknowns] {
  const r = residuals(at);
  const slope = (du: Unknowns): number[] => {
    const [up, down] = [1, -1].map((s) =>
      residuals([at[0] + s * STEP * du[0], at[1] + s * STEP * du[1]]),
    );
    return up.map((v, i) => (v - down[i]) / (2 * STEP));
  };
  const [a, b] = [slope([1, 0]), slope([0, 1])];
  const dot = (p: readonly number[], q: readonly number[]) =>
    p.reduce((s, v, i) => s + v * q[i], 0);
  const [aa, ab, bb, ar, br] = [dot(a, a), dot(a, b), dot(b, b), dot(a, r), dot(b, r)];
  if (!hasMetal)
    return [
      [-ar / aa, -at[1]],
      [1 / aa, 0],
    ];
  const det = aa * bb - ab * ab;
  return [
    [(-bb * ar + ab * br) / det, (ab * ar - aa * br) / det],
    [bb / det, aa / det],
  ];
}
