/**
 * A crowd: outlines in a container that may overlap each other, never the container's edges. For each
 * pair it holds how deep they overlap and the pair's weight, which grows where an overlap persists.
 */
import type { Box } from '../geometry/vec.js';
import { type Overlap, overlapOf } from './overlap.js';
import type { Table } from './table.js';

/** Outlines at their places: number of the turned outline in the table, and its move. */
export type Places = {
  readonly turned: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
};

export const copyOfPlaces = ({ turned, x, y }: Places): Places => ({
  turned: turned.slice(),
  x: x.slice(),
  y: y.slice(),
});

export type CrowdStart = {
  readonly table: Table;
  /** Area of each outline of the table. */
  readonly areas: readonly number[];
  /** Outline of each item; keep-outs last. */
  readonly items: readonly number[];
  /** The first so many items can be moved. */
  readonly movable: number;
  readonly places: Places;
  /** What the outlines shall lie in. */
  readonly container: Box;
};

export type Crowd = {
  readonly table: Table;
  readonly overlap: Overlap;
  /** Turned outlines in the table. */
  readonly kinds: number;
  readonly count: number;
  readonly movable: number;
  readonly places: Places;
  /** By turned outline: the moves that keep it in the container, 4 numbers; empty if it is larger. */
  readonly fit: Float64Array;
  /** By pair of items (i × count + j, the same both ways round): scaled depth, and weight. */
  readonly loss: Float64Array;
  readonly weight: Float64Array;
  /** By item: fourth root of its area; a pair's depth counts by the product of both. */
  readonly scale: Float64Array;
  /** By item: turned outlines it may become. */
  readonly turns: readonly (readonly number[])[];
  /** Items column by column, so that only neighbors are asked. */
  readonly columns: Columns;
  /** Places looked at since the crowd was made: the measure of work. */
  readonly work: { looks: number };
};

/** Columns as wide as any two items can reach each other: an item meets only those of three columns. */
type Columns = {
  readonly width: number;
  readonly first: Int32Array;
  readonly next: Int32Array;
  readonly previous: Int32Array;
  readonly of: Int32Array;
};

/** Columns beyond this many are folded onto the last. */
const MOST_COLUMNS = 4096;

export function crowdOf({ table, areas, items, movable, places, container }: CrowdStart): Crowd {
  const count = items.length;
  const turnsOf = areas.map((_, outline) =>
    table.turned.flatMap((t, k) => (t.outline === outline ? [k] : [])),
  );
  const crowd: Crowd = {
    table,
    overlap: overlapOf(table),
    kinds: table.turned.length,
    count,
    movable,
    places,
    fit: new Float64Array(4 * table.turned.length),
    loss: new Float64Array(count * count),
    weight: new Float64Array(count * count).fill(1),
    scale: Float64Array.from(items, (o) => Math.sqrt(Math.sqrt(areas[o]))),
    turns: items.map((o) => turnsOf[o]),
    columns: {
      width: reachOf(table),
      first: new Int32Array(MOST_COLUMNS).fill(-1),
      next: new Int32Array(count).fill(-1),
      previous: new Int32Array(count).fill(-1),
      of: new Int32Array(count).fill(-1),
    },
    work: { looks: 0 },
  };
  setContainer(crowd, container);
  measureAll(crowd);
  return crowd;
}

/** No two outlines further apart than this along x meet. */
function reachOf({ boxes }: Table): number {
  let reach = 0;
  for (let b = 0; b < boxes.length; b += 4) {
    if (!Number.isNaN(boxes[b])) reach = Math.max(reach, -boxes[b], boxes[b + 2]);
  }
  return reach > 0 ? reach : 1;
}

/** Sets the container. Items keep their places, which may now lie outside. */
export function setContainer({ table, fit }: Crowd, [left, bottom, right, top]: Box): void {
  table.turned.forEach(({ box }, k) => {
    fit.set([left - box[0], bottom - box[1], right - box[2], top - box[3]], 4 * k);
    // An outline just as large as the container fits in spite of rounding.
    for (const side of [4 * k, 4 * k + 1]) {
      const [low, high] = [fit[side], fit[side + 2]];
      if (high < low && low - high <= ROUNDING * (1 + Math.abs(low))) fit[side + 2] = low;
    }
  });
}

/** Share by which sizes may differ and still count as equal. */
const ROUNDING = 1e-9;

/** True if the turned outline has a place in the container. */
export const fitsIn = ({ fit }: Crowd, k: number): boolean =>
  fit[4 * k + 2] >= fit[4 * k] && fit[4 * k + 3] >= fit[4 * k + 1];

export const clampX = ({ fit }: Crowd, k: number, x: number): number =>
  Math.min(Math.max(x, fit[4 * k]), fit[4 * k + 2]);
export const clampY = ({ fit }: Crowd, k: number, y: number): number =>
  Math.min(Math.max(y, fit[4 * k + 1]), fit[4 * k + 3]);

/** The column of a place; its neighbors on both sides exist. */
export const columnOf = ({ width }: Columns, x: number): number =>
  Math.min(MOST_COLUMNS - 2, Math.max(1, Math.floor(x / width) + 2));

/** Weighted loss item i would have as turned outline k at a place; infinite once it exceeds `limit`. */
export function lossAt(
  crowd: Crowd,
  i: number,
  k: number,
  x: number,
  y: number,
  limit: number,
): number {
  const { places, overlap, kinds, count, weight, scale, table, columns } = crowd;
  const { boxes } = table;
  const { turned, x: xs, y: ys } = places;
  const { first, next } = columns;
  crowd.work.looks++;
  const most = limit / scale[i];
  const middle = columnOf(columns, x);
  let sum = 0;
  for (let c = middle - 1; c <= middle + 1; c++) {
    for (let j = first[c]; j >= 0; j = next[j]) {
      const pair = k * kinds + turned[j];
      const dx = x - xs[j];
      const dy = y - ys[j];
      const b = 4 * pair;
      if (!(dx > boxes[b] && dx < boxes[b + 2] && dy > boxes[b + 1] && dy < boxes[b + 3])) continue;
      if (j === i) continue;
      const depth = overlap.depth(pair, dx, dy);
      if (depth > 0) {
        sum += weight[i * count + j] * scale[j] * depth;
        if (sum >= most) return Infinity;
      }
    }
  }
  return sum * scale[i];
}

/** Weighted loss of an item where it lies, from the pairs held. */
export function lossOf({ loss, weight, count }: Crowd, i: number): number {
  let sum = 0;
  for (let j = 0, p = i * count; j < count; j++, p++) if (loss[p] > 0) sum += weight[p] * loss[p];
  return sum;
}

/** Puts an item to a place and measures its pairs anew. */
export function put(crowd: Crowd, i: number, k: number, x: number, y: number): void {
  const { places, loss, count } = crowd;
  places.turned[i] = k;
  places.x[i] = x;
  places.y[i] = y;
  file(crowd.columns, i, x);
  for (let j = 0, p = i * count; j < count; j++, p++) {
    if (loss[p] === 0) continue;
    loss[p] = 0;
    loss[j * count + i] = 0;
  }
  measure(crowd, i);
}

/** Puts an item into the column of its place. */
function file(columns: Columns, i: number, x: number): void {
  const { first, next, previous, of } = columns;
  const c = columnOf(columns, x);
  if (of[i] === c) return;
  if (of[i] >= 0) {
    if (previous[i] >= 0) next[previous[i]] = next[i];
    else first[of[i]] = next[i];
    if (next[i] >= 0) previous[next[i]] = previous[i];
  }
  of[i] = c;
  next[i] = first[c];
  previous[i] = -1;
  if (first[c] >= 0) previous[first[c]] = i;
  first[c] = i;
}

/** Measures an item's pairs; those not measured count as apart. */
function measure({ places, overlap, kinds, count, loss, scale, columns }: Crowd, i: number): void {
  const { turned, x, y } = places;
  const middle = columns.of[i];
  for (let c = middle - 1; c <= middle + 1; c++) {
    for (let j = columns.first[c]; j >= 0; j = columns.next[j]) {
      if (j === i) continue;
      const depth = overlap.depth(turned[i] * kinds + turned[j], x[i] - x[j], y[i] - y[j]);
      if (depth === 0) continue;
      const value = depth * scale[i] * scale[j];
      loss[i * count + j] = value;
      loss[j * count + i] = value;
    }
  }
}

/** Measures all pairs anew, after the places were changed. */
export function measureAll(crowd: Crowd): void {
  crowd.loss.fill(0);
  for (let i = 0; i < crowd.count; i++) file(crowd.columns, i, crowd.places.x[i]);
  for (let i = 0; i < crowd.movable; i++) measure(crowd, i);
}

/**
 * Moves all items into the container, turning those that fit only otherwise, and measures anew.
 * @returns false if an item fits at none of its turns; the crowd is then only partly moved
 */
export function gather(crowd: Crowd): boolean {
  const { places, movable, turns } = crowd;
  for (let i = 0; i < movable; i++) {
    const own = places.turned[i];
    const k = fitsIn(crowd, own) ? own : turns[i].find((t) => fitsIn(crowd, t));
    if (k === undefined) return false;
    places.turned[i] = k;
    places.x[i] = clampX(crowd, k, places.x[i]);
    places.y[i] = clampY(crowd, k, places.y[i]);
  }
  measureAll(crowd);
  return true;
}

/** Right end of items; 0 of none. */
export function usedLength({ turned }: Table, places: Places): number {
  let right = 0;
  for (let i = 0; i < places.x.length; i++)
    right = Math.max(right, places.x[i] + turned[places.turned[i]].box[2]);
  return right;
}

/** Sum of the losses of all pairs, not weighted; 0 if nothing overlaps. */
export function totalLoss({ loss, count, movable }: Crowd): number {
  let sum = 0;
  for (let i = 0; i < movable; i++) {
    for (let j = i + 1, p = i * count + j; j < count; j++, p++) sum += loss[p];
  }
  return sum;
}

/** Weights of pairs that overlap grow, most where the loss is greatest; the others' fall back towards 1. */
export function reweigh({ loss, weight, count, movable }: Crowd): void {
  let greatest = 0;
  for (let p = 0; p < movable * count; p++) if (loss[p] > greatest) greatest = loss[p];
  if (greatest === 0) return;
  const growth = (MOST_GROWTH - LEAST_GROWTH) / greatest;
  for (let i = 0; i < movable; i++) {
    for (let j = i + 1, p = i * count + j; j < count; j++, p++) {
      const now = weight[p];
      if (loss[p] === 0 && now === 1) continue;
      const next = loss[p] > 0 ? now * (LEAST_GROWTH + growth * loss[p]) : Math.max(1, now * DECAY);
      weight[p] = next;
      weight[j * count + i] = next;
    }
  }
}

const LEAST_GROWTH = 1.2;
const MOST_GROWTH = 2;
const DECAY = 0.95;
