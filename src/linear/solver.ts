/**
 * The door to highs: linear and integer programs. Programs are handed over as numbers, not as text
 * (malformed text is silently an empty program), whole values come back whole, and every answer is
 * held against its program before it is believed.
 */
import loader, { type Highs, type ModelData } from 'highs';
import { Fault } from '../problem.js';

declare const solverMark: unique symbol;
/** The started solver. Opaque: only this file can use what is behind it. */
export type LinearSolver = { readonly [solverMark]: true };

/** A quantity to be chosen, at least 0. */
export type Unknown = {
  readonly cost: number;
  readonly most: number;
  readonly whole: boolean;
};

/** A sum over unknowns that has to stay at or above `least` and at or below `most`. */
export type Row = {
  /** Pairs of (place of the unknown, factor). */
  readonly terms: readonly (readonly [number, number])[];
  readonly least: number;
  readonly most: number;
};

/** Find the unknowns that keep all rows and cost least. */
export type Program = { readonly unknowns: readonly Unknown[]; readonly rows: readonly Row[] };

export type Solved = {
  readonly values: readonly number[];
  readonly cost: number;
  /** No choice can cost less than this. */
  readonly bound: number;
  /** What one more of a row's least (or most) would cost; meaningless if something is whole. */
  readonly duals: readonly number[];
  /** False if the limit of nodes was reached before the best was proved. */
  readonly proved: boolean;
};

export type SolveLimits = {
  /** Branchings at most; counted, not timed, so the answer is the same on any machine. */
  readonly nodes: number;
  /** A choice to start from, if one is known. */
  readonly from?: readonly number[];
  /** Rows are kept to this; the solver’s own 1e-7 if left out. At least 1e-10. */
  readonly tolerance?: number;
};

let started: Promise<LinearSolver> | undefined;

/** The package's types describe its CommonJS form; as a module its default export is the loader itself. */
const start = loader as unknown as typeof loader.default;

/** Starts the solver, once in a process. */
export function loadSolver(): Promise<LinearSolver> {
  started ??= start().then((highs) => highs as unknown as LinearSolver);
  return started;
}

const OPTIONS = {
  output_flag: false,
  random_seed: 1,
  mip_rel_gap: 0,
  mip_abs_gap: 1e-6,
  mip_feasibility_tolerance: 1e-9,
};

/**
 * The best choice, or the best that was found within the limits; null if there is none, or none that
 * keeps its rows once whole values are made whole.
 */
export function solve(solver: LinearSolver, program: Program, limits: SolveLimits): Solved | null {
  const highs = solver as unknown as Highs;
  const { optimal, solutionLimit, infeasible, unboundedOrInfeasible } = highs.constants.modelStatus;
  const whole = program.unknowns.some((u) => u.whole);
  return highs.withModel(modelData(program), (model) => {
    model.options.set({ ...OPTIONS, mip_max_nodes: limits.nodes });
    if (limits.tolerance) model.options.set({ primal_feasibility_tolerance: limits.tolerance });
    if (limits.from && whole) model.setSolution({ colValue: [...limits.from] });
    model.run();
    const status = model.getModelStatus();
    if (status === infeasible || status === unboundedOrInfeasible) return null;
    if (status !== optimal && status !== solutionLimit) throw new Fault(`solver status ${status}`);
    const { colValue, rowDual } = model.getSolution();
    const values = program.unknowns.map((u, i) => rounded(colValue[i], u));
    if (values.length !== colValue.length || !keepsRows(program, values)) return null;
    const cost = program.unknowns.reduce((sum, u, i) => sum + u.cost * values[i], 0);
    const bound = whole ? Math.min(cost, lifted(program, model.info.get('mip_dual_bound'))) : cost;
    return { values, cost, bound, duals: [...rowDual], proved: status === optimal };
  });
}

/** A bound on costs that can only be whole numbers is the next whole number. */
const lifted = ({ unknowns }: Program, bound: number | bigint): number =>
  unknowns.every((u) => u.cost === 0 || (u.whole && Number.isInteger(u.cost)))
    ? Math.ceil(Number(bound) - WHOLE_TOLERANCE)
    : Number(bound);

const WHOLE_TOLERANCE = 1e-6;

const rounded = (value: number, { most, whole }: Unknown): number =>
  Math.min(most, Math.max(0, whole ? Math.round(value) : value));

/** What a row may be off by, relative to the sizes of its terms; a row of whole values is kept exactly. */
const ROW_TOLERANCE = { whole: 1e-12, continuous: 1e-6 };

function keepsRows({ unknowns, rows }: Program, values: readonly number[]): boolean {
  return rows.every(({ terms, least, most }) => {
    const exact = terms.every(([i]) => unknowns[i].whole);
    const sum = terms.reduce((s, [i, factor]) => s + factor * values[i], 0);
    const size = terms.reduce((s, [i, factor]) => s + Math.abs(factor * values[i]), 1);
    const off = size * (exact ? ROW_TOLERANCE.whole : ROW_TOLERANCE.continuous);
    return sum >= least - off && sum <= most + off;
  });
}

function modelData({ unknowns, rows }: Program): ModelData {
  const terms = rows.map((row) => row.terms);
  const starts = [0];
  for (const t of terms) starts.push(starts[starts.length - 1] + t.length);
  return {
    numCols: unknowns.length,
    numRows: rows.length,
    colCost: unknowns.map((u) => u.cost),
    colLower: unknowns.map(() => 0),
    colUpper: unknowns.map((u) => u.most),
    rowLower: rows.map((row) => row.least),
    rowUpper: rows.map((row) => row.most),
    matrix: {
      format: 'csr',
      numRows: rows.length,
      numCols: unknowns.length,
      starts,
      indices: terms.flat().map(([i]) => i),
      values: terms.flat().map(([, factor]) => factor),
    },
    integrality: unknowns.map((u) => (u.whole ? 1 : 0)),
  };
}
