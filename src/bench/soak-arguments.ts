/** What a soak is asked for on the command line. */
import { parseArgs } from 'node:util';

export type SoakArguments = {
  /** Cases to judge. */
  readonly count: number;
  readonly seed: number;
  /** Number of the first case. */
  readonly from: number;
  /** How many of them are written for readers from outside, where a soak does not write all. */
  readonly write: number;
  readonly out: string;
};

/** `--count --seed --from --out`, and `--write` where it means something; a word that is not understood ends the program. */
export function soakArguments(out: string, { writes }: { writes: boolean }): SoakArguments {
  try {
    const { values } = parseArgs({
      options: {
        count: { type: 'string', default: '200' },
        seed: { type: 'string', default: '1' },
        from: { type: 'string', default: '0' },
        ...(writes ? { write: { type: 'string', default: '0' } as const } : {}),
        out: { type: 'string', default: out },
      },
    });
    const given = values as Readonly<Record<string, string | undefined>>;
    const whole = (name: string, least: number): number => {
      const value = Number(given[name] ?? 0);
      if (Number.isSafeInteger(value) && value >= least) return value;
      throw new Error(`--${name} ${given[name]}: give a whole number from ${least}.`);
    };
    return {
      count: whole('count', 1),
      seed: whole('seed', 0),
      from: whole('from', 0),
      write: whole('write', 0),
      out: given.out ?? out,
    };
  } catch (error) {
    console.error((error as Error).message);
    process.exit(2);
  }
}
