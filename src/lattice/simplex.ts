/** A small linear program, solved by the simplex method (G. Dantzig) with R. Bland's rule against cycling. */

const ZERO = 1e-12;
/** Rounding may undo what Bland's rule assures; every table on the way is a right, if lesser, answer. */
const MOST_PIVOTS = 500;

/**
 * The x ≥ 0 with every row·x ≤ limit that makes gain·x greatest. Limits must not be negative, so
 * that x = 0 is allowed; some row must bound each direction of gain.
 */
export function greatest(
  gain: readonly number[],
  rows: readonly (readonly number[])[],
  limits: readonly number[],
): number[] {
  const n = gain.length;
  const table = rows.map((row, i) => Float64Array.from([...row, limits[i]]));
  const price = Float64Array.from([...gain, 0]);
  const inside = rows.map((_, i) => n + i);
  const outside = gain.map((_, j) => j);
  for (let pivots = 0; pivots < MOST_PIVOTS; pivots++) {
    let enter = -1;
    for (let j = 0; j < n; j++) {
      if (price[j] > ZERO && (enter < 0 || outside[j] < outside[enter])) enter = j;
    }
    if (enter < 0) break;
    const leave = leavingRow(table, inside, enter);
    if (leave < 0) break;
    pivot(table, price, leave, enter);
    [inside[leave], outside[enter]] = [outside[enter], inside[leave]];
  }
  const x = new Array<number>(n).fill(0);
  inside.forEach((variable, i) => {
    if (variable < n) x[variable] = table[i][n];
  });
  return x;
}

function leavingRow(
  table: readonly Float64Array[],
  inside: readonly number[],
  enter: number,
): number {
  const last = table[0].length - 1;
  let leave = -1;
  let least = Infinity;
  table.forEach((row, i) => {
    if (row[enter] <= ZERO) return;
    const ratio = row[last] / row[enter];
    if (ratio < least || (ratio === least && inside[i] < inside[leave]))
      [least, leave] = [ratio, i];
  });
  return leave;
}

function pivot(table: Float64Array[], price: Float64Array, leave: number, enter: number): void {
  const row = table[leave];
  const by = 1 / row[enter];
  row[enter] = 1;
  for (let j = 0; j < row.length; j++) row[j] *= by;
  for (const other of [...table, price]) {
    const share = other[enter];
    if (other === row || share === 0) continue;
    other[enter] = 0;
    for (let j = 0; j < row.length; j++) other[j] -= share * row[j];
  }
}
