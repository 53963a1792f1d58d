/** A lure as the tub knows it: what may be otherwise than planned, and how it then lies. */
import type { TimberDensity } from '../blank/timber-density.js';
import type { Attitude } from '../float/attitude.js';
import type { Immersible } from '../float/immersible.js';
import { type Load, restNear } from '../float/rest.js';
import type { Point3 } from '../geometry/vec.js';
import type { Item } from '../mass/item.js';
import type { TubLure, Weight } from './explain.js';

export type Planned = {
  readonly items: readonly Item[];
  readonly timber: TimberDensity;
  readonly solid: Immersible;
  readonly load: Load;
  readonly rest: Attitude;
  /** Height of the finished belly at a station. */
  readonly bellyMm: (stationMm: number) => number;
  /** Of the lead a trial weight is made of. */
  readonly leadKgM3: number;
};

/** The board a pattern tells of may not be the one in the tub: so much another of its pile differs. Common practice, no source. */
const LEAST_SPREAD = 0.05;

export function tubLure({ items, timber, solid, load, rest, bellyMm, leadKgM3 }: Planned): TubLure {
  // A ready-made weight came off the scale: only what was poured may be otherwise.
  const metal = items.filter(({ kind }) => kind === 'poured');
  const wood = items.filter(({ kind }) => kind === 'timber');
  const others = items.filter(({ kind }) => kind !== 'poured' && kind !== 'timber');
  return {
    timberKgM3: timber.densityKgM3,
    timberSpreadKgM3:
      timber.from === 'pattern'
        ? Math.max(timber.spreadKgM3, LEAST_SPREAD * timber.densityKgM3)
        : timber.spreadKgM3,
    hasMetal: metal.length > 0,
    weighing: (kgM3, share) =>
      weightOf([
        ...wood.map((i) => [kgM3 / timber.densityKgM3, i] as const),
        ...metal.map((i) => [share, i] as const),
        ...others.map((i) => [1, i] as const),
      ]),
    lying: (weight) => {
      const near = restNear(solid, { ...load, ...weight }, rest.upInBody);
      return near && near.dryRatio > 0 ? near : null;
    },
    hungAtMm: (stationMm) => [stationMm, 0, bellyMm(stationMm)],
    hungShare: 1 - load.waterDensityKgM3 / leadKgM3,
  };
}

function weightOf(parts: readonly (readonly [factor: number, item: Item])[]): Weight {
  const massG = parts.reduce((sum, [k, i]) => sum + k * i.massG, 0);
  const along = (axis: 0 | 1 | 2) =>
    parts.reduce((sum, [k, i]) => sum + k * i.massG * i.cgMm[axis], 0) / massG;
  const cgMm: Point3 = [along(0), along(1), along(2)];
  return { massG, cgMm };
}
