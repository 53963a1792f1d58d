/** How hard and how long a nest is searched for, as the command line says it. */
import { type Effort, NEST_EFFORT } from '../nested.js';
import { numberOf, wholeOf } from './arguments.js';

export type EffortOptions = {
  readonly tries?: string;
  readonly seed?: string;
  readonly seconds?: string;
};

const TRIES = { least: 0, most: 100_000 };
const SEED = { least: 0, most: 2 ** 32 - 1 };
const SECONDS = { least: 0.1, most: 86_400 };

/** Seconds are counted from the search's first question whether time is up. @throws ArgumentProblem */
export function effortOf({ tries, seed, seconds }: EffortOptions): Effort {
  const most = numberOf('--seconds', seconds, SECONDS);
  return {
    ...NEST_EFFORT,
    tries: wholeOf('--tries', tries, TRIES) ?? NEST_EFFORT.tries,
    seed: wholeOf('--seed', seed, SEED) ?? NEST_EFFORT.seed,
    ...(most === null ? {} : { isTimeUp: timer(1000 * most) }),
  };
}

function timer(ms: number): () => boolean {
  let endMs: number | null = null;
  return () => {
    endMs ??= performance.now() + ms;
    return performance.now() >= endMs;
  };
}
