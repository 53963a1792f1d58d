/** What is made once for an order and used for every face of it. */

import { convexHull } from '../geometry/convex.js';
import { type Ring, ringArea } from '../geometry/ring.js';
import { goodLattices } from '../lattice/densest.js';
import { type DoubleLattice, densityOf } from '../lattice/double.js';
import type { Grown } from '../lattice/frame.js';
import { withGap } from '../lattice/grow.js';
import { densestDoubleLattice, hullDoubleLattices } from '../lattice/hull.js';
import { type Outline, polygonStore, type Table, tableOf } from '../pack/table.js';
import { type EmptyFace, emptyFace, type Spot } from './fill.js';
import { roundFlaw, splitFlaw } from './flaw.js';
import type { FaceSize, Flaws, NestPart } from './nest.js';
import { type ShapeSet, shapeSet } from './nofit.js';
import type { Keep } from './shape.js';
import { faceKey, flawKey } from './stack.js';

export type Kit = {
  readonly gapMm: number;
  readonly parts: number;
  readonly set: ShapeSet;
  /** The parts wanted on a face, and then its flaws, as the search sees them. */
  readonly ground: (flaws: Flaws, wanted: readonly number[]) => Ground;
  /** A part with the gap grown into it, and its good double lattices, densest first. */
  readonly grown: (part: number) => Grown;
  readonly lattices: (part: number) => readonly DoubleLattice[];
  /** Density of the densest double lattice of a part’s hull, gap and all, 0..1. */
  readonly hullDensity: (part: number) => number;
  /** A face with nothing but its flaws; made once. */
  readonly empty: (face: FaceSize) => EmptyFace;
  /** Rows and lattices of a part on a face, most copies first; made once a face. */
  readonly rows: (face: FaceSize, part: number, make: () => Spot[][]) => readonly Spot[][];
  /** Share of an endless plane that copies of a part can take, with the gap, 0..1. */
  readonly limitRatio: (part: number) => number;
};

/** Outlines, parts first, and their no-fit polygons. */
export type Ground = { readonly outlines: readonly Outline[]; readonly table: Table };

/** Lattices of a part’s hull beside its own: less dense, but of other directions, which may suit a face. */
const HULL_LATTICES = 24;

/** Grounds kept; where many blocks have flaws of their own, older ones are made anew. */
const GROUNDS_KEPT = 8;

export function kitFor(parts: readonly NestPart[], keep: Keep): Kit {
  const set = shapeSet(parts, keep);
  const grown = once((part: number) => withGap(parts[part].outline, keep.gapMm));
  const lattices = once((part: number) => {
    const outline = grown(part).grown;
    return [...goodLattices(outline), ...hullDoubleLattices(outline).slice(0, HULL_LATTICES)];
  });
  const outlines = parts.map((part, i): Outline => {
    const { ring, noseRing } = set.shapes[2 * i];
    const turnsDeg = set.shapes.filter((s) => s.partIndex === i).map((s) => s.turnDeg);
    return { ring: part.outline, grown: ring, turnsDeg, nose: noseRing };
  });
  const hullDensity = once((part: number) => {
    const hull = convexHull(set.shapes[2 * part].ring);
    return densityOf(densestDoubleLattice(hull), ringArea(hull));
  });
  const polygons = polygonStore();
  const empties = new Map<string, EmptyFace>();
  const rows = new Map<string, Spot[][]>();
  const grounds = new Map<string, Ground>();
  const ground = (flaws: Flaws, wanted: readonly number[]): Ground => {
    const key = [flawKey(flaws), ...wanted.map((n) => n > 0)].join('|');
    const known = grounds.get(key);
    if (known) return known;
    // A part nobody wants has no turns here, so that no polygons are made for it.
    const open = outlines.map((o, part) => (wanted[part] > 0 ? o : { ...o, turnsDeg: [] }));
    const all = [...open, ...keepOuts(flaws)];
    const made = { outlines: all, table: tableOf(all, polygons) };
    const [oldest] = grounds.keys();
    if (grounds.size === GROUNDS_KEPT) grounds.delete(oldest);
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
    hullDensity,
    empty: (face) => onceFor(empties, faceKey(face), () => emptyFace(face, set)),
    rows: (face, part, make) => onceFor(rows, `${faceKey(face)}|${part}`, make),
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
  return (key) => onceFor(known, key, () => make(key));
}

function onceFor<K, T>(known: Map<K, T>, key: K, make: () => T): T {
  const value = known.get(key) ?? make();
  known.set(key, value);
  return value;
}
