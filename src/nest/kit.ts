/** What is made once for an order and used for every face of it. */
import { type Ring, ringArea } from '../geometry/ring.js';
import { goodLattices } from '../lattice/densest.js';
import type { DoubleLattice } from '../lattice/double.js';
import { densityOf } from '../lattice/double.js';
import type { Grown } from '../lattice/frame.js';
import { withGap } from '../lattice/grow.js';
import { type Outline, polygonStore, type Table, tableOf } from '../pack/table.js';
import { roundFlaw, splitFlaw } from './flaw.js';
import type { Flaws, NestPart } from './nest.js';
import { type ShapeSet, shapeSet } from './nofit.js';
import type { Keep } from './shape.js';
import { flawKey } from './stack.js';

export type Kit = {
  readonly gapMm: number;
  readonly parts: number;
  readonly set: ShapeSet;
  /** The parts, and then the flaws of a face, as the search sees them. */
  readonly ground: (flaws: Flaws) => Ground;
  /** A part with the gap grown into it, and its good double lattices, densest first. */
  readonly grown: (part: number) => Grown;
  readonly lattices: (part: number) => readonly DoubleLattice[];
  /** Share of an endless plane that copies of a part can take, with the gap, 0..1. */
  readonly limitRatio: (part: number) => number;
};

/** Outlines, parts first, and their no-fit polygons. */
export type Ground = { readonly outlines: readonly Outline[]; readonly table: Table };

export function kitFor(parts: readonly NestPart[], keep: Keep): Kit {
  const set = shapeSet(parts, keep);
  const grown = once((part: number) => withGap(parts[part].outline, keep.gapMm));
  const lattices = once((part: number) => goodLattices(grown(part).grown));
  const outlines = parts.map((part, i): Outline => {
    const { ring, noseRing } = set.shapes[2 * i];
    const turnsDeg = set.shapes.filter((s) => s.partIndex === i).map((s) => s.turnDeg);
    return { ring: part.outline, grown: ring, turnsDeg, nose: noseRing };
  });
  const polygons = polygonStore();
  const grounds = new Map<string, Ground>();
  const ground = (flaws: Flaws): Ground => {
    const key = flawKey(flaws);
    const known = grounds.get(key);
    if (known) return known;
    const all = [...outlines, ...keepOuts(flaws)];
    const made = { outlines: all, table: tableOf(all, polygons) };
    grounds.set(key, made);
    return made;
  };
  return {
    gapMm: keep.gapMm,
    parts: parts.length,
    set,
    ground,
    grown,
    lattices,
    limitRatio: (part) => densityOf(lattices(part)[0], ringArea(parts[part].outline)),
  };
}

function keepOuts({ knots, splits, poorZones }: Flaws): Outline[] {
  const keepOut = (ring: Ring, keepsOut: 'all' | 'nose'): Outline => ({
    ring,
    grown: ring,
    turnsDeg: [0],
    keepsOut,
  });
  return [
    ...knots.map((k) => keepOut(roundFlaw(k), 'all')),
    ...splits.map((s) => keepOut(splitFlaw(s), 'all')),
    ...poorZones.map((z) => keepOut(roundFlaw(z), 'nose')),
  ];
}

function once<T>(make: (key: number) => T): (key: number) => T {
  const known = new Map<number, T>();
  return (key) => {
    const value = known.get(key) ?? make(key);
    known.set(key, value);
    return value;
  };
}
