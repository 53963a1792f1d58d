/** How long the plan of a run takes, how it grows with the order, and how near its bounds it comes. */

import type { Blank } from '../blank/blank.js';
import { loadSolver } from '../linear/solver.js';
import type { Block, NestRules } from '../nest/nest.js';
import { planNest } from '../nest/plan.js';
import { flawsOf } from '../nest/stack.js';

export type PlanRow = {
  readonly blanks: number;
  readonly blocks: number;
  readonly seconds: number;
  readonly faces: number;
  readonly stacks: number;
  /** (used − bound) / used, in percent: plans of the layouts found, and any plan. */
  readonly gapPercent: number;
  readonly areaGapPercent: number;
};

const RULES: NestRules = {
  gapMm: 2.8,
  layers: 2,
  tapeThicknessMm: 0.2,
  largestHeightMm: 60,
  tries: 24,
  seed: 1,
  layouts: 100,
  clearNoseRatio: 0,
  largestTiltDeg: 0,
};

const plank = (name: string, lengthMm: number, widthMm: number): Block => ({
  name,
  lengthMm,
  widthMm,
  thicknessMm: 20,
  marginMm: 4,
  count: 100,
  ...flawsOf([]),
});

/** Orders of 100, 1000 and 10 000 of all these blanks together, over 200 planks of two sizes. */
export async function planRows(blanks: readonly Blank[]): Promise<PlanRow[]> {
  const solver = await loadSolver();
  const blocks = [plank('long', 2000, 200), plank('short', 1200, 200)];
  return [100, 1000, 10_000].map((count) => {
    const parts = blanks.map((b) => ({
      id: b.name,
      outline: b.outlineRing,
      thicknessMm: 20,
      orderedCount: Math.ceil(count / blanks.length),
    }));
    const start = performance.now();
    const nest = planNest(parts, blocks, RULES, { solver });
    const seconds = (performance.now() - start) / 1000;
    const below = (mm3: number, ofMm3: number): number => (100 * (ofMm3 - mm3)) / ofMm3;
    return {
      blanks: count,
      blocks: Object.values(nest.blocksUsed).reduce((a, b) => a + b, 0),
      seconds,
      faces: nest.faces.length,
      stacks: nest.stacks,
      gapPercent: below(nest.timberBoundMm3, nest.timberUsedMm3),
      areaGapPercent: below(nest.timberAreaBoundMm3, nest.timberUsedMm3),
    };
  });
}
