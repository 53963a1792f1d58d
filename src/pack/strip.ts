/**
 * Strip packing: all items into a strip of fixed height and least length. The strip is shortened again
 * and again and the overlaps this makes are removed; a layout that can not be freed is shaken by
 * exchanging two large items. Method: J. Gardeyn, G. Vanden Berghe, T. Wauters, arXiv:2509.13329 (2025).
 */

import { Fault } from '../problem.js';
import {
  type Crowd,
  copyOfPlaces,
  crowdOf,
  fitsIn,
  gather,
  measureAll,
  type Places,
  setContainer,
  usedLength,
} from './crowd.js';
import { type Effort, restore, type Separation, separator } from './separate.js';
import { exchangeTwo } from './shake.js';
import type { Table } from './table.js';

export type StripProblem = {
  readonly table: Table;
  /** Area of each outline of the table. */
  readonly areas: readonly number[];
  /** Outline of each item. */
  readonly items: readonly number[];
  readonly height: number;
  /** A layout to start from; null to start from items strewn at random. */
  readonly start: Places | null;
};

export type StripLayout = { readonly length: number; readonly places: Places };

/** What the search is told while it runs. */
export type StripGuide = {
  /** Share of the budget that is spent, 0..1. */
  spent: number;
  /** A layout found elsewhere; taken over if it is shorter. */
  other: StripLayout | null;
};

export type StripSearch = {
  /**
   * Works until so many further places have been looked at.
   * @returns true once the search has ended: the budget is spent, or nothing can be shorter
   */
  readonly run: (looks: number) => boolean;
  /** Shortest layout so far; null before the first. */
  readonly best: () => StripLayout | null;
};

const START: Effort = { draws: { near: 15, far: 30 }, sweeps: 60, strikes: 2 };
const ROUGH: Effort = { draws: { near: 15, far: 30 }, sweeps: 40, strikes: 1 };
const EXPLORE: Effort = { draws: { near: 25, far: 50 }, sweeps: 200, strikes: 3 };
/** Fewer draws a move: with many items more sweeps find more, with few items more draws; so both take turns. */
const EXPLORE_LEAN: Effort = { ...EXPLORE, draws: { near: 8, far: 16 } };
const COMPRESS: Effort = { draws: { near: 25, far: 50 }, sweeps: 100, strikes: 5 };

/** Density of the strip that items are strewn into, and the growth while they do not come apart. */
const START_DENSITY = 0.6;
const START_GROWTH = 1.05;
/** Shortening at first, halved at every failure down to the last; then the step of exploring. */
const FIRST_STEP = 0.08;
const LAST_ROUGH_STEP = 0.0015;
const EXPLORE_STEP = 0.001;
/** Share of the budget for exploring, and the steps of compressing, from and to. */
const EXPLORE_SHARE = 0.8;
const COMPRESS_FROM = 0.0005;
const COMPRESS_TO = 0.00001;
/** Failed layouts are chosen among the better ones: spread of the choice. */
const CHOICE_SPREAD = 0.25;

export function stripSearch(
  problem: StripProblem,
  guide: StripGuide,
  draw: () => number,
): StripSearch {
  const strip = stripOf(problem, draw);
  let best: StripLayout | null = null;
  const steps = search(strip, guide, draw, (found) => {
    best = found;
  });
  let due = 0;
  return {
    best: () => best,
    run: (looks) => {
      due += looks;
      while (strip.crowd.work.looks < due) if (steps.next().done) return true;
      return false;
    },
  };
}

type Strip = {
  readonly crowd: Crowd;
  readonly problem: StripProblem;
  /** No layout is shorter. */
  readonly leastLength: number;
  length: number;
};

/** Lengths that agree to this share are equal. */
const SAME = 1e-9;

function* search(
  strip: Strip,
  guide: StripGuide,
  draw: () => number,
  found: (layout: StripLayout) => void,
): Generator<void, void, void> {
  const { crowd, problem } = strip;
  const separate = separator(crowd, draw);
  const exploring = (): boolean => guide.spent < EXPLORE_SHARE;
  const isExplored = (): boolean => !exploring();
  const isOver = (): boolean => guide.spent >= 1;
  const take = (): StripLayout => {
    const layout = {
      length: usedLength(crowd.table, crowd.places),
      places: copyOfPlaces(crowd.places),
    };
    found(layout);
    return layout;
  };
  /** The crowd as in a layout, in a strip shorter by a share; weights start anew. */
  const squeeze = ({ length, places }: StripLayout, share: number): void => {
    restore(crowd, places);
    strip.length = length;
    setLength(strip, Math.max(strip.leastLength, length * (1 - share)), draw());
    crowd.weight.fill(1);
  };
  const isLeast = ({ length }: StripLayout): boolean => length <= strip.leastLength * (1 + SAME);
  const shorter = (layout: StripLayout): StripLayout =>
    guide.other && guide.other.length < layout.length ? guide.other : layout;

  while ((yield* separate(START, isOver)).loss > 0)
    setLength(strip, strip.length * START_GROWTH, 1);
  let best = take();

  for (let step = FIRST_STEP; step > LAST_ROUGH_STEP && exploring() && !isLeast(best); ) {
    squeeze(best, step);
    if ((yield* separate(ROUGH, isExplored)).loss === 0) best = take();
    else step /= 2;
  }

  let failed: Separation[] = [];
  squeeze(best, EXPLORE_STEP);
  while (exploring() && !isLeast(best)) {
    const result = yield* separate(draw() < 0.5 ? EXPLORE : EXPLORE_LEAN, isExplored);
    if (result.loss === 0) best = take();
    const longer = best;
    best = shorter(best);
    if (result.loss === 0 || best !== longer) {
      failed = [];
      squeeze(best, EXPLORE_STEP);
    } else {
      failed = [...failed, result].sort((a, b) => a.loss - b.loss);
      const at = Math.floor(Math.abs(bell(draw)) * CHOICE_SPREAD * failed.length);
      restore(crowd, failed[Math.min(at, failed.length - 1)].places);
      crowd.weight.fill(1);
      exchangeTwo(crowd, problem, draw);
    }
  }

  while (!isOver() && !isLeast(best)) {
    const through = (guide.spent - EXPLORE_SHARE) / (1 - EXPLORE_SHARE);
    best = shorter(best);
    squeeze(best, COMPRESS_FROM + (COMPRESS_TO - COMPRESS_FROM) * through);
    if ((yield* separate(COMPRESS, isOver)).loss === 0) best = take();
  }
}

/** A draw near zero, spread about 1: the sum of twelve even ones, the same on every machine. */
function bell(draw: () => number): number {
  let sum = -6;
  for (let i = 0; i < 12; i++) sum += draw();
  return sum;
}

function stripOf(problem: StripProblem, draw: () => number): Strip {
  const { table, areas, items, height, start } = problem;
  const count = items.length;
  const places = start ?? {
    turned: Int32Array.from(items, (o) => table.turned.findIndex((t) => t.outline === o)),
    x: new Float64Array(count),
    y: new Float64Array(count),
  };
  const area = items.reduce((sum, o) => sum + areas[o], 0);
  const container = [0, 0, Infinity, height] as const;
  const crowd = crowdOf({
    table,
    areas,
    items,
    movable: count,
    places: copyOfPlaces(places),
    container,
  });
  const leastLength = Math.max(longest(crowd), area / height);
  const length = start
    ? usedLength(crowd.table, crowd.places)
    : Math.max(leastLength, area / (START_DENSITY * height));
  const strip = { crowd, problem, leastLength, length };
  setLength(strip, length, 1);
  if (!start) strew(crowd, draw);
  return strip;
}

/** The longest item, each at the shortest of its turns that fit. @throws Fault if one fits at none */
function longest(crowd: Crowd): number {
  const { turned } = crowd.table;
  return Math.max(
    ...crowd.turns.map((open, i) => {
      const lengths = open
        .filter((k) => fitsIn(crowd, k))
        .map((k) => turned[k].box[2] - turned[k].box[0]);
      if (lengths.length === 0)
        throw new Fault(`item ${i} is higher than the strip at all its turns`);
      return Math.min(...lengths);
    }),
  );
}

function strew(crowd: Crowd, draw: () => number): void {
  const { places, fit } = crowd;
  for (let i = 0; i < crowd.movable; i++) {
    const open = crowd.turns[i].filter((k) => fitsIn(crowd, k));
    const k = open[Math.floor(draw() * open.length)];
    places.turned[i] = k;
    places.x[i] = fit[4 * k] + draw() * (fit[4 * k + 2] - fit[4 * k]);
    places.y[i] = fit[4 * k + 1] + draw() * (fit[4 * k + 3] - fit[4 * k + 1]);
  }
  measureAll(crowd);
}

/**
 * Makes the strip so long; items right of the split (a share of its length) move with its end, and an
 * item too long for it is turned.
 */
function setLength(strip: Strip, length: number, splitAt: number): void {
  const { crowd, problem } = strip;
  const { places, table } = crowd;
  const split = splitAt * strip.length;
  for (let i = 0; i < crowd.movable; i++) {
    const { box } = table.turned[places.turned[i]];
    const middle = places.x[i] + (box[0] + box[2]) / 2;
    if (middle > split) places.x[i] = places.x[i] + length - strip.length;
  }
  setContainer(crowd, [0, 0, length, problem.height]);
  if (!gather(crowd)) throw new Fault(`a strip of ${length} is shorter than one of its items`);
  strip.length = length;
}
