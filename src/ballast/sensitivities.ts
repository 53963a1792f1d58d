/** What a slip at the bench, or another board, does to a lure with these holes. */
import type { Attitude } from '../float/attitude.js';
import type { Load } from '../float/rest.js';
import type { Mass } from '../mass/item.js';
import { gPerMm3, massOf, ofMass, summed } from '../mass/moments.js';
import { type Sensitivity, sensitivity } from './sensitivity.js';
import { type Hole, plugIn, type Workpiece, withHoles } from './workpiece.js';

export type HoleSensitivity = {
  /** Per mm farther aft. */
  readonly perStationMm: Sensitivity;
  /** Per mm deeper. */
  readonly perDepthMm: Sensitivity;
};

export type TimberSensitivity = {
  /** Per 10 kg/m³ heavier. */
  readonly per10KgM3: Sensitivity;
};

type At = { readonly attitude: Attitude; readonly load: Load };

const STEP_MM = 0.1; // small against a hole, large against rounding

export function holeSensitivity(
  piece: Workpiece,
  holes: readonly Hole[],
  index: number,
  at: At,
): HoleSensitivity {
  const moved = (key: 'stationMm' | 'depthMm', byMm: number): Mass =>
    withHoles(
      piece,
      holes.map((hole, i) => (i === index ? { ...hole, [key]: hole[key] + byMm } : hole)),
    );
  const rate = (key: 'stationMm' | 'depthMm') =>
    sensitivity(
      { solid: piece.afloat.solid, ...at },
      { before: moved(key, -STEP_MM / 2), after: moved(key, STEP_MM / 2), step: STEP_MM },
    );
  return { perStationMm: rate('stationMm'), perDepthMm: rate('depthMm') };
}

const STEP_KG_M3 = 2; // small against any timber

export function timberSensitivity(
  piece: Workpiece,
  holes: readonly Hole[],
  at: At,
): TimberSensitivity {
  const timber = piece.bare.items.filter(({ kind }) => kind === 'timber');
  const whole = withHoles(piece, holes);
  const lost = holes.map((hole) => plugIn(piece, hole).bored);
  const heavier = (byKgM3: number): Mass =>
    massOf(
      summed([
        [1, ofMass(whole)],
        ...timber.map((item) => [byKgM3 / piece.timber.densityKgM3, ofMass(item)] as const),
        ...lost.map((bored) => [-gPerMm3(byKgM3), bored] as const),
      ]),
    );
  return {
    per10KgM3: sensitivity(
      { solid: piece.afloat.solid, ...at },
      {
        before: heavier(-STEP_KG_M3 / 2),
        after: heavier(STEP_KG_M3 / 2),
        step: STEP_KG_M3 / 10,
      },
    ),
  };
}
