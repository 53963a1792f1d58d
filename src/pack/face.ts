/**
 * A face made better: to a layout that is free of overlaps one outline more is added anywhere, or a
 * small one is exchanged for a larger, or its right end is pushed in; the overlaps this makes are
 * removed. What can be freed stays.
 */
import type { Box } from '../geometry/vec.js';
import { crowdOf, gather } from './crowd.js';
import { type Effort, separator } from './separate.js';
import type { Table } from './table.js';

/** An outline of the table at one of its turns, at a place. */
export type Spot = { readonly turned: number; readonly x: number; readonly y: number };

export type FaceProblem = {
  readonly table: Table;
  /** Area of each outline of the table, and of the outline grown by half the gap. */
  readonly areas: readonly number[];
  readonly grownAreas: readonly number[];
  /** What the outlines shall lie in. */
  readonly container: Box;
  /** No layout covers more than this with grown outlines. */
  readonly mostGrownArea: number;
  /** Keep-outs: outlines of the table that are never moved. */
  readonly keepOuts: readonly Spot[];
  /** Outlines wanted, by outline of the table; 0 for keep-outs. */
  readonly wanted: readonly number[];
};

export type FaceSearch = {
  readonly draw: () => number;
  /** Places that may be looked at. */
  readonly looks: number;
  readonly shouldStop: () => boolean;
};

export type Improved = { readonly spots: readonly Spot[]; readonly looks: number };

const EFFORT: Effort = { draws: { near: 12, far: 30 }, sweeps: 25, strikes: 2 };

/** Beyond its budget a search is not begun; this much work a single trial may take at least. */
const LEAST_TRIAL = 2000;

/**
 * The layout with the greatest area found, from `start`, which must be free of overlaps. It never
 * covers less than `start`.
 */
export function packMore(
  problem: FaceProblem,
  start: readonly Spot[],
  { draw, looks, shouldStop }: FaceSearch,
): Improved {
  let spots = start;
  let spent = 0;
  while (spent < looks && !shouldStop()) {
    const changes = changesOf(problem, spots);
    if (changes.length === 0) break;
    // What adds least finds room most easily, and is tried most often.
    const change = changes[Math.floor(draw() * draw() * changes.length)];
    const left = Math.max(LEAST_TRIAL, looks - spent);
    const trial = freed(problem, changed(problem, spots, change, draw), {
      draw,
      looks: left,
      shouldStop,
    });
    spent += Math.max(1, trial.looks);
    if (trial.spots) spots = trial.spots;
  }
  return { spots, looks: spent };
}

/** The first step by which the right end is pushed in, as a share of the length; the last one. */
const FIRST_PUSH = 0.05;
const LAST_PUSH = 0.002;

/** The same outlines with their right end as far left as was found. */
export function packShorter(
  problem: FaceProblem,
  start: readonly Spot[],
  { draw, looks, shouldStop }: FaceSearch,
): Improved {
  const { table, container } = problem;
  const [left, bottom, , top] = container;
  const endOf = (spots: readonly Spot[]): number =>
    Math.max(left, ...spots.map((s) => s.x + table.turned[s.turned].box[2]));
  let spots = start;
  let spent = 0;
  for (let push = FIRST_PUSH; push > LAST_PUSH && spent < looks && !shouldStop(); ) {
    const right = endOf(spots) - push * (endOf(spots) - left);
    const shorter = { ...problem, container: [left, bottom, right, top] as const };
    const trial = freed(shorter, spots, {
      draw,
      looks: Math.max(LEAST_TRIAL, looks - spent),
      shouldStop,
    });
    spent += Math.max(1, trial.looks);
    if (trial.spots) spots = trial.spots;
    else push /= 2;
  }
  return { spots, looks: spent };
}

/** One outline more in place of another (null: of none). */
type Change = { readonly add: number; readonly drop: number | null; readonly gain: number };

/** All changes that add area and are not beyond the area there is, those that add least first. */
function changesOf(problem: FaceProblem, spots: readonly Spot[]): Change[] {
  const { table, areas, grownAreas, wanted, mostGrownArea } = problem;
  const laid = areas.map(() => 0);
  for (const s of spots) laid[table.turned[s.turned].outline]++;
  const covered = laid.reduce((sum, n, o) => sum + n * grownAreas[o], 0);
  const changes: Change[] = [];
  areas.forEach((area, add) => {
    if (laid[add] >= wanted[add]) return;
    for (const drop of [null, ...areas.keys()]) {
      if (drop !== null && (drop === add || laid[drop] === 0)) continue;
      const gain = area - (drop === null ? 0 : areas[drop]);
      const grown = covered + grownAreas[add] - (drop === null ? 0 : grownAreas[drop]);
      if (gain > SAME * area && grown <= mostGrownArea) changes.push({ add, drop, gain });
    }
  });
  return changes.sort((a, b) => a.gain - b.gain || a.add - b.add);
}

/** Areas that agree to this share are equal. */
const SAME = 1e-9;

/** The spots after a change; the outline added comes last, anywhere in the container. */
function changed(
  { table, container }: FaceProblem,
  spots: readonly Spot[],
  { add, drop }: Change,
  draw: () => number,
): Spot[] {
  const outlineOf = (s: Spot): number => table.turned[s.turned].outline;
  const candidates = spots.flatMap((s, i) => (outlineOf(s) === drop ? [i] : []));
  const out = candidates.length === 0 ? -1 : candidates[Math.floor(draw() * candidates.length)];
  const turns = table.turned.flatMap((t, k) => (t.outline === add ? [k] : []));
  const turned = turns[Math.floor(draw() * turns.length)];
  const [left, bottom, right, top] = container;
  const anywhere = {
    turned,
    x: left + draw() * (right - left),
    y: bottom + draw() * (top - bottom),
  };
  return [...spots.filter((_, i) => i !== out), anywhere];
}

type Freed = { readonly spots: readonly Spot[] | null; readonly looks: number };

/** The spots moved until none overlap; null if that was not found. */
function freed(
  { table, areas, container, keepOuts }: FaceProblem,
  spots: readonly Spot[],
  { draw, looks, shouldStop }: FaceSearch,
): Freed {
  const all = [...spots, ...keepOuts];
  const crowd = crowdOf({
    table,
    areas,
    items: all.map((s) => table.turned[s.turned].outline),
    movable: spots.length,
    places: {
      turned: Int32Array.from(all, (s) => s.turned),
      x: Float64Array.from(all, (s) => s.x),
      y: Float64Array.from(all, (s) => s.y),
    },
    container,
  });
  if (!gather(crowd)) return { spots: null, looks: 1 };
  const isOver = (): boolean => crowd.work.looks >= looks || shouldStop();
  const steps = separator(crowd, draw)(EFFORT, isOver);
  let step = steps.next();
  while (!step.done) step = steps.next();
  if (step.value.loss > 0) return { spots: null, looks: crowd.work.looks };
  const { turned, x, y } = step.value.places;
  const free = spots.map((_, i) => ({ turned: turned[i], x: x[i], y: y[i] }));
  return { spots: free, looks: crowd.work.looks };
}
