/** How long it takes to find the ballast for a wish: ten bits, one hole or two. */
import { searchBallast } from '../ballast/search.js';
import type { Workpiece } from '../ballast/workpiece.js';
import type { WishFile } from '../pattern/wish-schema.js';

export type BallastRow = {
  readonly lure: string;
  readonly bits: number;
  readonly mostHoles: number;
  /** Sets of holes that were refused, by the wood, the moment or the water. */
  readonly refused: number;
  readonly choices: number;
  /** Median and slowest of a search that starts with nothing looked up. */
  readonly searchMs: number;
  readonly slowestMs: number;
};

const RUNS = { warm: 2, timed: 9 };

const WISH: WishFile = {
  buoyancy: 'floats',
  dryRatio: 0.1,
  noseDownDeg: 4,
  leastGmMm: 0.5,
  bitsMm: [4, 5, 6, 7, 8, 9, 10, 12, 14, 16],
  metals: ['lead'],
  weights: false,
  mostHoles: 2,
};

/** @param fresh makes the lure's workpiece anew: it keeps what a search has looked up. */
export function benchBallast(lure: string, fresh: () => Workpiece): BallastRow {
  for (let i = 0; i < RUNS.warm; i++) searchBallast(fresh(), WISH);
  const times = Array.from({ length: RUNS.timed }, () => {
    const piece = fresh();
    const start = performance.now();
    searchBallast(piece, WISH);
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const { refused, choices } = searchBallast(fresh(), WISH);
  return {
    lure,
    bits: WISH.bitsMm?.length ?? 0,
    mostHoles: WISH.mostHoles,
    refused: refused.reduce((sum, r) => sum + r.tried, 0),
    choices: choices.length,
    searchMs: times[Math.floor(RUNS.timed / 2)],
    slowestMs: times[RUNS.timed - 1],
  };
}
