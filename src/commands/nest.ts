/** `blankwright nest FILE`: the plan of a run's nest and how good it is; nothing written. */

import { loadSolver } from '../linear/solver.js';
import { load } from '../load.js';
import { designFindings } from '../lures.js';
import { nestJob } from '../nested.js';
import { byPlace } from '../problem.js';
import { jsonDocument, refuse, type Terminal } from '../terminal.js';
import { ArgumentProblem } from './arguments.js';
import { effortOf } from './effort.js';
import { exitCode } from './exit-code.js';
import { nestData, nestText } from './nest-table.js';
import { refused } from './refused.js';
import { asData, tellProblems } from './tell.js';
import type { Brief, Watching } from './thread.js';

type NestBrief = Brief & { readonly command: 'nest' };

export async function nest(
  brief: NestBrief,
  terminal: Terminal,
  watching: Watching,
): Promise<number> {
  try {
    return await nestFile(brief, terminal, watching);
  } catch (error) {
    if (error instanceof ArgumentProblem) return refuse('nest', error.message, terminal);
    throw error;
  }
}

async function nestFile(
  { file, options }: NestBrief,
  terminal: Terminal,
  { shouldStop, tell }: Watching,
): Promise<number> {
  const effort = effortOf(options);
  const { job, complete, problems, placed } = load(file);
  if (job?.kind === 'pattern') return refuse('nest', runNeeded(file), terminal);
  const workshop = job?.workshop;
  if (!job || !complete || !workshop) {
    const found = [...problems, ...(job ? designFindings(job).map(placed) : [])];
    return refused('nest', found.sort(byPlace), terminal);
  }
  const search = { solver: await loadSolver(), shouldStop, tell };
  const { nest: planned, blanks, findings } = nestJob(job, workshop, search, effort);
  const found = [...problems, ...findings.map(placed)].sort(byPlace);
  if (!planned) return refused('nest', found, terminal);
  tellProblems(found, terminal);
  if (terminal.json) {
    const facts = { command: 'nest', ok: true, problems: asData(found), run: job.name };
    terminal.out(jsonDocument({ ...facts, ...nestData(planned) }));
  } else {
    const shortestMm = Math.min(...blanks.map((b) => b.lengthMm));
    terminal.out(nestText(job, planned, shortestMm));
  }
  return exitCode(found);
}

const runNeeded = (file: string): string =>
  `${file} is a pattern; a nest needs a run, which says how many blanks of which blocks. Next: blankwright new run NAME --pattern ${file}`;
