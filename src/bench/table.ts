/** Prints rows with numbers to so many decimals. */
export const table = (rows: readonly object[], decimals = 2): void =>
  console.table(
    rows.map((row) =>
      Object.fromEntries(
        Object.entries(row).map(([k, v]) => [
          k,
          typeof v === 'number' ? Number(v.toFixed(decimals)) : v,
        ]),
      ),
    ),
  );
