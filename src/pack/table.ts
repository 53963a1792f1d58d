/**
 * The no-fit polygons of all ordered pairs of outlines at their turns, laid out flat for the search:
 * "how deep does this outline overlap that one, and which way is out?" in some ten nanoseconds.
 *
 * Turning both outlines of a pair turns their no-fit polygon, and exchanging them turns it by half a
 * turn. So one polygon serves many pairs: a place is turned before it is looked up.
 */
import { movedRing, type Region, type Ring, ringBox } from '../geometry/ring.js';
import { type Box, cosSinDeg } from '../geometry/vec.js';
import { type Cells, cellsOf, EDGE_STRIDE } from './cells.js';
import { noFit, type Pieces, piecesOf } from './nofit.js';

/** An outline to be placed, or a place on the face that keeps outlines out. */
export type Outline = {
  /** What must stay inside the container. */
  readonly ring: Ring;
  /** What must not overlap others: the ring grown by half the gap. */
  readonly grown: Ring;
  readonly turnsDeg: readonly number[];
  /** The part of `grown` that poor zones keep out; null where poor wood does no harm. */
  readonly nose?: Ring | null;
  /** 'all' keeps whole outlines out, 'nose' their noses; such an outline is never moved. */
  readonly keepsOut?: 'all' | 'nose';
};

/** An outline at one of its turns. */
export type Turned = {
  readonly outline: number;
  readonly turnDeg: number;
  /** Box of the ring so turned. */
  readonly box: Box;
};

export type Table = {
  readonly turned: readonly Turned[];
  /** By pair (moving × count + fixed): the box of moves that may overlap, 4 numbers; empty for none. */
  readonly boxes: Float64Array;
  /** By pair: which polygon. */
  readonly polygon: Int32Array;
  /** By pair: cosine and sine of the turn that a polygon needs to lie right. */
  readonly turning: Float64Array;
  /** By polygon: lower left corner, and cells a unit of length along x and y, 4 numbers. */
  readonly origin: Float64Array;
  /** By polygon: cells a side, number of its first cell. */
  readonly grid: Int32Array;
  /** By cell: where its list in `near` begins; one more at the end. */
  readonly start: Int32Array;
  readonly near: Int32Array;
  readonly edges: Float64Array;
};

export type Polygon = { readonly regions: readonly Region[]; readonly cells: Cells };

/** Makes no-fit polygons, each once; a store serves many tables that share outlines. */
export type PolygonStore = (fixed: Outline, moving: Outline, byDeg: number) => Polygon | null;

/**
 * @param store where polygons come from; share one among tables with the same outline objects
 */
export function tableOf(outlines: readonly Outline[], store: PolygonStore = polygonStore()): Table {
  const turned = outlines.flatMap(({ ring, turnsDeg }, outline) =>
    turnsDeg.map((turnDeg): Turned => {
      const box = ringBox(movedRing({ turnDeg, move: [0, 0] }, ring));
      return { outline, turnDeg, box };
    }),
  );
  const used = new Map<Polygon, number>();
  const numberOf = (polygon: Polygon): number => {
    const index = used.get(polygon) ?? used.size;
    used.set(polygon, index);
    return index;
  };
  const count = turned.length;
  const boxes = new Float64Array(4 * count * count).fill(Number.NaN);
  const polygon = new Int32Array(count * count).fill(-1);
  const turning = new Float64Array(2 * count * count);
  turned.forEach((fixed, a) => {
    turned.forEach((moving, b) => {
      const pair = b * count + a;
      const obstacle = outlines[fixed.outline].keepsOut !== undefined;
      if (outlines[moving.outline].keepsOut) return;
      const swap = !obstacle && fixed.outline > moving.outline;
      const [p, q] = swap ? [moving, fixed] : [fixed, moving];
      const found = store(outlines[p.outline], outlines[q.outline], q.turnDeg - p.turnDeg);
      if (!found) return;
      const [cos, sin] = cosSinDeg(p.turnDeg + (swap ? 180 : 0));
      polygon[pair] = numberOf(found);
      turning.set([cos, sin], 2 * pair);
      boxes.set(turnedBox(found.regions, cos, sin), 4 * pair);
    });
  });
  return { turned, boxes, polygon, turning, ...flattened([...used.keys()].map((p) => p.cells)) };
}

export function polygonStore(): PolygonStore {
  const numbers = new Map<Outline, number>();
  const numberOf = (outline: Outline): number => {
    const known = numbers.get(outline) ?? numbers.size;
    numbers.set(outline, known);
    return known;
  };
  const polygons = new Map<string, Polygon | null>();
  const pieces = new Map<string, Pieces>();
  const once = <T>(known: Map<string, T>, key: string, make: () => T): T => {
    if (!known.has(key)) known.set(key, make());
    return known.get(key) as T;
  };
  const piecesAt = (outline: Outline, turnDeg: number, onlyNose: boolean): Pieces | null => {
    const shape = onlyNose ? outline.nose : outline.grown;
    if (!shape) return null;
    const key = `${numberOf(outline)} ${turnDeg} ${onlyNose}`;
    return once(pieces, key, () => piecesOf(movedRing({ turnDeg, move: [0, 0] }, shape)));
  };
  const make = (fixed: Outline, moving: Outline, turnDeg: number): Polygon | null => {
    const one = piecesAt(fixed, 0, false);
    const other = piecesAt(moving, turnDeg, fixed.keepsOut === 'nose');
    if (!one || !other) return null;
    const regions = noFit(one, other);
    return { regions, cells: cellsOf(regions) };
  };
  return (fixed, moving, byDeg) => {
    const turnDeg = ((byDeg % 360) + 360) % 360;
    const key = `${numberOf(fixed)} ${numberOf(moving)} ${turnDeg}`;
    return once(polygons, key, () => make(fixed, moving, turnDeg));
  };
}

function turnedBox(regions: readonly Region[], cos: number, sin: number): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { outer } of regions) {
    for (const [x, y] of outer) {
      const [px, py] = [cos * x - sin * y, sin * x + cos * y];
      minX = Math.min(minX, px);
      maxX = Math.max(maxX, px);
      minY = Math.min(minY, py);
      maxY = Math.max(maxY, py);
    }
  }
  return [minX, minY, maxX, maxY];
}

type Flat = Pick<Table, 'origin' | 'grid' | 'start' | 'near' | 'edges'>;

function flattened(all: readonly Cells[]): Flat {
  const origin: number[] = [];
  const grid: number[] = [];
  const start: number[] = [];
  const near: number[] = [];
  const edges: number[] = [];
  for (const cells of all) {
    const { box, side } = cells;
    origin.push(box[0], box[1], side / (box[2] - box[0]), side / (box[3] - box[1]));
    grid.push(side, start.length);
    for (const list of cells.near) {
      start.push(near.length);
      for (const e of list) near.push(edges.length + e * EDGE_STRIDE);
    }
    for (const v of cells.edges) edges.push(v);
  }
  start.push(near.length);
  return {
    origin: Float64Array.from(origin),
    grid: Int32Array.from(grid),
    start: Int32Array.from(start),
    near: Int32Array.from(near),
    edges: Float64Array.from(edges),
  };
}
