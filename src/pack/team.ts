/**
 * Several searches on one strip at once, one thread each. They work in rounds of equally many places
 * looked at and tell each other the shortest layout between the rounds. So a budget counted in places
 * gives the same layout on every machine; a budget in seconds gives the best it can.
 */
import { Worker } from 'node:worker_threads';
import type { StripLayout, StripProblem } from './strip.js';

export type Budget =
  | { readonly kind: 'looks'; readonly looksPerThread: number }
  | {
      readonly kind: 'seconds';
      readonly seconds: number;
      readonly start: number;
      readonly now: () => number;
    };

export type TeamOptions = {
  readonly threads: number;
  readonly seed: number;
  readonly budget: Budget;
  /** Called whenever a shorter layout is known. */
  readonly onBest?: (layout: StripLayout) => void;
  /** Asked between rounds; ends the search with the best so far. */
  readonly shouldStop?: () => boolean;
};

/** What a thread is started with, told, and answers. */
export type Brief = { readonly problem: StripProblem; readonly seed: number };
export type Round = {
  readonly looks: number;
  readonly spent: number;
  readonly other: StripLayout | null;
};
export type Answer = { readonly best: StripLayout | null; readonly hasEnded: boolean };

/** Places looked at in one round by each thread: some tenths of a second. */
const LOOKS_A_ROUND = 400_000;
/** Seconds kept back for the last round to end in. */
const LAST_ROUND_SECONDS = 0.6;

/** The shortest layout found; null if the budget ended before the first. */
export async function packStrip(
  problem: StripProblem,
  { threads, seed, budget, onBest, shouldStop = () => false }: TeamOptions,
): Promise<StripLayout | null> {
  const spentAfter = (looks: number): number =>
    budget.kind === 'looks'
      ? looks / budget.looksPerThread
      : (budget.now() - budget.start) / Math.max(1e-3, budget.seconds - LAST_ROUND_SECONDS);
  const crew = Array.from({ length: threads }, (_, i) => member(problem, seed + i));
  let best: StripLayout | null = null;
  try {
    for (let looks = 0; ; looks += LOOKS_A_ROUND) {
      const spent = Math.min(1, spentAfter(looks));
      const isLast = spent >= 1 || shouldStop();
      if (isLast && best) return best;
      const other: StripLayout | null = best;
      const round: Round = { looks: LOOKS_A_ROUND, spent: isLast ? 1 : spent, other };
      const answers = await Promise.all(crew.map((m) => m.work(round)));
      const shortest = shortestOf([best, ...answers.map((a) => a.best)]);
      if (shortest && shortest !== best) onBest?.(shortest);
      best = shortest;
      if (isLast || answers.some((a) => a.hasEnded)) return best;
    }
  } finally {
    await Promise.all(crew.map((m) => m.dismiss()));
  }
}

/** The first of the shortest. */
const shortestOf = (layouts: readonly (StripLayout | null)[]): StripLayout | null =>
  layouts.reduce((a, b) => (b && (!a || b.length < a.length) ? b : a), null);

function member(problem: StripProblem, seed: number) {
  const workerData: Brief = { problem, seed };
  const worker = new Worker(new URL('./worker.js', import.meta.url), { workerData });
  const work = (round: Round): Promise<Answer> =>
    new Promise((resolve, reject) => {
      worker.once('message', (answer: Answer) => {
        worker.off('error', reject);
        resolve(answer);
      });
      worker.once('error', reject);
      worker.postMessage(round);
    });
  return { work, dismiss: () => worker.terminate() };
}
