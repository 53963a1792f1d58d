/** Of the choices that cost the same, the one with fewest faces to trace and fewest stacks to saw. */

import {
  type LinearSolver,
  type Program,
  type Row,
  solve,
  type Unknown,
} from '../linear/solver.js';
import {
  atMostMissing,
  type Chosen,
  type Demand,
  missingOf,
  type Use,
  unitOf,
  usesOf,
  valuesOf,
} from './master.js';

/** A face to trace is as much work as so many stacks to tape and saw. Common practice, no source. */
const STACKS_PER_FACE = 10;

/**
 * A choice that costs no more and leaves no more blanks missing, with least work; the choice itself
 * if the solver finds none.
 * @param among places of the layouts that may be used
 */
export function leastWork(
  solver: LinearSolver,
  demand: Demand,
  chosen: readonly Chosen[],
  { among, nodes }: { readonly among: ReadonlySet<number>; readonly nodes: number },
): readonly Chosen[] {
  const uses = usesOf(demand.pool).filter((u) => among.has(u.layout));
  const program = workProgram(demand, uses, chosen);
  const from = startOf(demand, uses, chosen);
  const solved = solve(solver, program, { nodes, from });
  if (!solved) return chosen;
  return uses.flatMap((use, i) =>
    solved.values[i] > 0 ? [{ ...use, blocks: solved.values[i] }] : [],
  );
}

/** Layouts in order of first use, and how high their stacks may be. */
function stacked({ pool }: Demand, uses: readonly Use[]): { layout: number; highest: number }[] {
  return [...new Set(uses.map((u) => u.layout))].map((layout) => ({
    layout,
    highest: Math.min(...pool.layouts[layout].piles.map((p) => pool.piles[p].layers)),
  }));
}

/**
 * Beside blocks and missing blanks, four unknowns a layout: full stacks, whether there are any, layers
 * of a last lower stack, and whether there is one.
 */
function workProgram(demand: Demand, uses: readonly Use[], chosen: readonly Chosen[]): Program {
  const { pool, ordered, costs } = demand;
  const missing = missingOf(pool, ordered, chosen).reduce((s, n) => s + n, 0);
  const filled = atMostMissing(demand, uses, missing, () => 0);
  const unit = unitOf(costs);
  const cost = chosen.reduce((s, c) => s + (c.blocks * costs[c.pile]) / unit, 0);
  const budget: Row = {
    terms: uses.map((u, i) => [i, costs[u.pile] / unit] as const),
    least: -Infinity,
    most: cost * (1 + SAME_COST),
  };
  const unknowns: Unknown[] = [...filled.unknowns];
  const rows: Row[] = [...filled.rows, budget];
  for (const { layout, highest } of stacked(demand, uses)) {
    const own = uses.flatMap((u, i) => (u.layout === layout ? [i] : []));
    const blocks = own.reduce((s, i) => s + pool.piles[uses[i].pile].count, 0);
    const stacks = Math.floor(Math.min(blocks, mostUseful(demand, layout)) / highest);
    const at = unknowns.length;
    unknowns.push(
      { cost: 1, most: stacks, whole: true },
      { cost: STACKS_PER_FACE, most: 1, whole: true },
      { cost: 0, most: highest - 1, whole: true },
      { cost: STACKS_PER_FACE + 1, most: 1, whole: true },
    );
    rows.push(
      {
        terms: [...own.map((i) => [i, 1] as const), [at, -highest], [at + 2, -1]],
        least: 0,
        most: 0,
      },
      {
        terms: [
          [at, 1],
          [at + 1, -stacks],
        ],
        least: -Infinity,
        most: 0,
      },
      {
        terms: [
          [at + 2, 1],
          [at + 3, 1 - highest],
        ],
        least: -Infinity,
        most: 0,
      },
    );
  }
  return { unknowns, rows };
}

/** Sums of costs that agree to this are equal, relative. */
const SAME_COST = 1e-12;

/** Blocks of a layout beyond which it would make nothing that is ordered, to the next full stack. */
function mostUseful({ pool, ordered }: Demand, layout: number): number {
  const { counts, piles } = pool.layouts[layout];
  const useful = counts.map((n, part) => (n > 0 ? Math.ceil(ordered[part] / n) : 0));
  return Math.max(...useful) + pool.piles[piles[0]].layers;
}

function startOf(demand: Demand, uses: readonly Use[], chosen: readonly Chosen[]): number[] {
  const stacks = stacked(demand, uses).flatMap(({ layout, highest }) => {
    const blocks = chosen.reduce((s, c) => s + (c.layout === layout ? c.blocks : 0), 0);
    const [full, rest] = [Math.floor(blocks / highest), blocks % highest];
    return [full, Math.min(full, 1), rest, Math.min(rest, 1)];
  });
  return [...valuesOf(demand, uses, chosen), ...stacks];
}
