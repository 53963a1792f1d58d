/**
 * More outlines on a face: to a layout that is free of overlaps one outline more is added anywhere, or a
 * small one is exchanged for a larger, and the overlaps this makes are removed. What can be freed stays.
 */
import type { Box } from '../geometry/vec.js';
import { type Crowd, copyOfPlaces, crowdOf, fitsIn, put } from './crowd.js';
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

export type FaceBudget = {
  /** Places that may be looked at. */
  readonly looks: number;
  /** Asked between sweeps; ends the search with the best so far. */
  readonly shouldStop: () => boolean;
};

const EFFORT: Effort = { draws: { near: 12, far: 30 }, sweeps: 25, strikes: 2 };

/**
 * The layout with the greatest area found, beginning with `start`, which must be free of overlaps. It
 * never covers less than `start`.
 */
export function packMore(
  problem: FaceProblem,
  start: readonly Spot[],
  draw: () => number,
  { looks, shouldStop }: FaceBudget,
): readonly Spot[] {
  let best = start;
  let spent = 0;
  const isOver = (): boolean => spent >= looks || shouldStop();
  while (!isOver()) {
    const changes = changesOf(problem, best);
    if (changes.length === 0) return best;
    const change = changes[Math.floor(draw() * draw() * changes.length)];
    const { spots, work } = tried(
      problem,
      applied(problem, best, change, draw),
      draw,
      looks - spent,
      shouldStop,
    );
    spent += Math.max(1, work);
    if (spots) best = spots;
  }
  return best;
}

/** One outline more in place of another (null: of none). */
type Change = { readonly add: number; readonly drop: number | null; readonly gain: number };

/** What would add area and may have room, greatest gain last resort last: the likeliest first. */
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
      if (gain <= 1e-9 * area || grown > mostGrownArea) continue;
      changes.push({ add, drop, gain });
    }
  });
  // The least additional area finds room most easily.
  return changes.sort((a, b) => a.gain - b.gain || a.add - b.add);
}

function applied(
  { table }: FaceProblem,
  spots: readonly Spot[],
  { add, drop }: Change,
  draw: () => number,
): { readonly kept: readonly Spot[]; readonly add: number } {
  const outlineOf = (s: Spot): number => table.turned[s.turned].outline;
  const candidates = spots.flatMap((s, i) => (outlineOf(s) === drop ? [i] : []));
  const out = candidates.length === 0 ? -1 : candidates[Math.floor(draw() * candidates.length)];
  return { kept: spots.filter((_, i) => i !== out), add };
}

/** The spots with one outline more, freed of overlaps; null if that was not found. */
function tried(
  problem: FaceProblem,
  { kept, add }: { readonly kept: readonly Spot[]; readonly add: number },
  draw: () => number,
  looks: number,
  shouldStop: () => boolean,
): { readonly spots: readonly Spot[] | null; readonly work: number } {
  const { table, areas, container, keepOuts } = problem;
  const first = table.turned.findIndex((t) => t.outline === add);
  const all = [...kept, { turned: first, x: 0, y: 0 }, ...keepOuts];
  const crowd = crowdOf({
    table,
    areas,
    items: all.map((s) => table.turned[s.turned].outline),
    movable: kept.length + 1,
    places: {
      turned: Int32Array.from(all, (s) => s.turned),
      x: Float64Array.from(all, (s) => s.x),
      y: Float64Array.from(all, (s) => s.y),
    },
    container,
  });
  if (!strewn(crowd, kept.length, draw)) return { spots: null, work: 1 };
  const isOver = (): boolean => crowd.work.looks >= looks || shouldStop();
  const steps = separator(crowd, draw)(EFFORT, isOver);
  let step = steps.next();
  while (!step.done) step = steps.next();
  const work = crowd.work.looks;
  if (step.value.loss > 0) return { spots: null, work };
  const { turned, x, y } = copyOfPlaces(step.value.places);
  const spots = Array.from({ length: crowd.movable }, (_, i) => ({
    turned: turned[i],
    x: x[i],
    y: y[i],
  }));
  return { spots, work };
}

/** Puts an item anywhere in the container; false if it fits in no turn. */
function strewn(crowd: Crowd, i: number, draw: () => number): boolean {
  const open = crowd.turns[i].filter((k) => fitsIn(crowd, k));
  if (open.length === 0) return false;
  const { fit } = crowd;
  const k = open[Math.floor(draw() * open.length)];
  const [left, bottom, right, top] = [fit[4 * k], fit[4 * k + 1], fit[4 * k + 2], fit[4 * k + 3]];
  put(crowd, i, k, left + draw() * (right - left), bottom + draw() * (top - bottom));
  return true;
}
