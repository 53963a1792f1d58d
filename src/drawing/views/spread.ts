/** Places moved apart. */

/**
 * Rising places so close to those wanted (least squares) that neighbors keep a gap: what is too close
 * is put together and spread about its middle (pool adjacent violators; from memory).
 */
export function spread(wanted: readonly number[], gap: number): readonly number[] {
  type Pool = { readonly count: number; readonly sum: number };
  const pools: Pool[] = [];
  wanted.forEach((place, i) => {
    // Less the gaps before it, all that is asked is that places do not fall.
    let pool: Pool = { count: 1, sum: place - i * gap };
    for (;;) {
      const last = pools[pools.length - 1];
      if (!last || last.sum / last.count <= pool.sum / pool.count) break;
      pools.pop();
      pool = { count: last.count + pool.count, sum: last.sum + pool.sum };
    }
    pools.push(pool);
  });
  return pools
    .flatMap(({ count, sum }) => Array.from({ length: count }, () => sum / count))
    .map((level, i) => level + i * gap);
}

/** The same, kept between two bounds as far as they leave room. */
export function spreadWithin(
  wanted: readonly number[],
  gap: number,
  [low, high]: readonly [low: number, high: number],
): readonly number[] {
  const most = high - (wanted.length - 1) * gap;
  return spread(wanted, gap).map((place, i) =>
    Math.max(low + i * gap, Math.min(Math.max(low, most) + i * gap, place)),
  );
}
