/** Which lure of a file a command is about. */
import type { Job } from '../job.js';
import { ArgumentProblem } from './arguments.js';

/** The job with the one order named, or all of it when none is. @throws ArgumentProblem when there is no such lure */
export function pickedLure(
  job: Job,
  patternFiles: readonly string[],
  name: string | undefined,
): { readonly job: Job; readonly patternFiles: readonly string[] } {
  if (name === undefined) return { job, patternFiles };
  const index = job.orders.findIndex(({ pattern }) => pattern.name === name);
  if (index < 0) throw new ArgumentProblem(`--lure: there is no lure ${name}; ${known(job)}.`);
  return {
    job: { ...job, orders: [job.orders[index]] },
    patternFiles: [patternFiles[index]],
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
