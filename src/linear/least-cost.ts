/**
 * A few equations over many amounts that cannot be negative, met at least cost: a linear program of
 * that shape by the simplex method in two phases (G. Dantzig, 1951), small enough to need no library.
 */

/** What is chosen, in the order of the columns, and what it costs. */
export type LeastCost = { readonly amounts: Float64Array; readonly cost: number };

const ZERO = 1e-10;
/** How far the equations may be missed, as a share of the target's size. */
const MISSED = 1e-7;
/** After this many pivots R. Bland's rule (1977) takes over, which cannot go in circles. */
const QUICK_PIVOTS = 100;
const MOST_PIVOTS = 2000;

/**
 * Amounts x ≥ 0 with Σ x·column = target whose Σ x·cost is least; null if there are none. Costs must
 * not be negative, and the equations about as large as each other.
 */
export function leastCost(
  columns: readonly (readonly number[])[],
  costs: readonly number[],
  target: readonly number[],
): LeastCost | null {
  const [n, m] = [columns.length, target.length];
  const signs = target.map((t) => (t < 0 ? -1 : 1));
  // One row an equation: the columns, one amount of what is missing in each, the target.
  const rows = target.map((t, r) => {
    const row = new Float64Array(n + m + 1);
    columns.forEach((column, j) => {
      row[j] = signs[r] * column[r];
    });
    row[n + r] = 1;
    row[n + m] = signs[r] * t;
    return row;
  });
  const basis = rows.map((_, r) => n + r);
  const missing = priced(rows, basis, (j) => (j < n ? 0 : 1));
  improve(rows, basis, missing, n + m);
  const size = target.reduce((sum, t) => sum + Math.abs(t), 0);
  if (-missing[n + m] > MISSED * size) return null;
  const cost = priced(rows, basis, (j) => (j < n ? costs[j] : 0));
  improve(rows, basis, cost, n);
  const amounts = new Float64Array(n);
  basis.forEach((j, r) => {
    if (j < n) amounts[j] = rows[r][n + m];
  });
  return { amounts, cost: amounts.reduce((sum, x, j) => sum + x * costs[j], 0) };
}

/** The row of reduced costs for the amounts now chosen. */
function priced(
  rows: readonly Float64Array[],
  basis: readonly number[],
  costOf: (column: number) => number,
): Float64Array {
  const width = rows[0].length;
  const price = Float64Array.from({ length: width }, (_, j) => (j < width - 1 ? costOf(j) : 0));
  basis.forEach((j, r) => {
    const by = costOf(j);
    if (by !== 0) for (let k = 0; k < width; k++) price[k] -= by * rows[r][k];
  });
  return price;
}

/** Pivots until none of the first `count` columns makes it cheaper. */
function improve(
  rows: readonly Float64Array[],
  basis: number[],
  price: Float64Array,
  count: number,
): void {
  for (let pivots = 0; pivots < MOST_PIVOTS; pivots++) {
    const enter = entering(price, count, pivots < QUICK_PIVOTS);
    const leave = enter < 0 ? -1 : leaving(rows, basis, enter);
    if (leave < 0) return;
    pivot(rows, price, leave, enter);
    basis[leave] = enter;
  }
}

function entering(price: Float64Array, count: number, steepest: boolean): number {
  let [enter, least] = [-1, -ZERO];
  for (let j = 0; j < count; j++) {
    if (price[j] >= least) continue;
    enter = j;
    if (!steepest) return enter;
    least = price[j];
  }
  return enter;
}

function leaving(rows: readonly Float64Array[], basis: readonly number[], enter: number): number {
  const last = rows[0].length - 1;
  let [leave, least] = [-1, Infinity];
  rows.forEach((row, r) => {
    if (row[enter] <= ZERO) return;
    const ratio = row[last] / row[enter];
    if (ratio < least || (ratio === least && basis[r] < basis[leave])) [leave, least] = [r, ratio];
  });
  return leave;
}

function pivot(
  rows: readonly Float64Array[],
  price: Float64Array,
  leave: number,
  enter: number,
): void {
  const row = rows[leave];
  const by = 1 / row[enter];
  for (let k = 0; k < row.length; k++) row[k] *= by;
  for (const other of [...rows, price]) {
    const share = other[enter];
    if (other === row || share === 0) continue;
    for (let k = 0; k < row.length; k++) other[k] -= share * row[k];
    other[enter] = 0;
  }
}
