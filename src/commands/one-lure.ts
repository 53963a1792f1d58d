/** Which lure of a file a command is about. */
import type { Finding, Job } from '../job.js';
import type { Problem } from '../problem.js';
import { ArgumentProblem } from './arguments.js';

type Placing = (found: Finding) => Problem;

export type Picked = {
  readonly job: Job;
  readonly patternFiles: readonly string[];
  /** What gives the whole file's findings their places, for findings about this job. */
  readonly placedIn: (placed: Placing) => Placing;
};

/** The job with the one order named, or all of it when none is. @throws ArgumentProblem when there is no such lure */
export function pickedLure(
  job: Job,
  patternFiles: readonly string[],
  name: string | undefined,
): Picked {
  if (name === undefined) return { job, patternFiles, placedIn: (placed) => placed };
  const index = job.orders.findIndex(({ pattern }) => pattern.name === name);
  if (index < 0) throw new ArgumentProblem(`--lure: there is no lure ${name}; ${known(job)}.`);
  return {
    job: { ...job, orders: [job.orders[index]] },
    patternFiles: [patternFiles[index]],
    placedIn: (placed) => (found) =>
      placed(found.of === 'job' ? found : { ...found, of: found.of + index }),
  };
}

/** @throws ArgumentProblem where something is about one lure and the file has several */
export function assertOneLure(job: Job, what: string): void {
  if (job.orders.length > 1)
    throw new ArgumentProblem(
      `${what} is about one lure, and this run orders ${job.orders.length}: add --lure NAME; ${known(job)}.`,
    );
}

const known = ({ orders }: Job): string =>
  `there ${orders.length === 1 ? 'is' : 'are'} ${orders.map(({ pattern }) => pattern.name).join(', ')}`;
