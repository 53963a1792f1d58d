/** Coats of all patterns of a run, as they go on together: sealer on all, then epoxy on all, and so on. */
import type { Pattern } from '../pattern/pattern.js';

type Coats = Pattern['coats'];

/** One application of one coat. */
export type Application = {
  readonly name: string;
  /** Which coat of that name in a pattern, from 1. */
  readonly number: number;
  /** Coats of that name a pattern has, at most. */
  readonly of: number;
  /** The patterns it goes on, by their place, and which of their coats it is. */
  readonly on: readonly { readonly line: number; readonly coat: Coats[number] }[];
};

type Single = {
  readonly key: string;
  readonly name: string;
  readonly number: number;
  readonly coat: Coats[number];
};

/**
 * Each pattern keeps its own order. The next to go on is one that no pattern still waits for behind
 * another; where two patterns ask for two coats in opposite orders, the first has its way, and the coat
 * it can not share goes on twice.
 */
export function applicationsOf(lists: readonly Coats[]): Application[] {
  const left = lists.map(singlesOf);
  const totals = left.map((singles) => countsOf(singles));
  const out: Application[] = [];
  while (left.some((singles) => singles.length > 0)) {
    const heads = left.flatMap((singles) => singles.slice(0, 1));
    const { key, name, number } =
      heads.find((head) => left.every((singles) => !singles.slice(1).some(same(head)))) ?? heads[0];
    const on = left.flatMap((singles, line) =>
      singles[0]?.key === key ? [{ line, coat: singles[0].coat }] : [],
    );
    for (const { line } of on) left[line] = left[line].slice(1);
    out.push({ name, number, of: Math.max(...on.map((o) => totals[o.line].get(name) ?? 0)), on });
  }
  return out;
}

const same =
  ({ key }: Single) =>
  (other: Single): boolean =>
    other.key === key;

function singlesOf(coats: Coats): Single[] {
  const counted = new Map<string, number>();
  return coats.flatMap((coat) =>
    Array.from({ length: coat.count }, (): Single => {
      const number = (counted.get(coat.name) ?? 0) + 1;
      counted.set(coat.name, number);
      return { key: `${number} ${coat.name}`, name: coat.name, number, coat };
    }),
  );
}

function countsOf(singles: readonly Single[]): ReadonlyMap<string, number> {
  return new Map(singles.map(({ name, number }) => [name, number]));
}
