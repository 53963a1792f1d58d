/** One file → everything made from it, or every problem that stands in the way, each with its place. */

import { lettersOf } from './formats/letters.js';
import { readFaces } from './io.js';
import { loadSolver } from './linear/solver.js';
import { load } from './load.js';
import { designFindings } from './lures.js';
import type { Search } from './nest/search.js';
import type { Effort } from './nested.js';
import type { PaperWish } from './pattern/paper.js';
import { type Build, build } from './pipeline.js';
import { unprintable } from './printable.js';
import { byPlace, type Problem } from './problem.js';
import type { Input } from './reader.js';
import { loadKernel, type SolidKernel } from './solid/kernel.js';

export type Produced = {
  /** In order of file, line and column; warnings too. */
  readonly problems: readonly Problem[];
  /** Null when a problem is an error. */
  readonly made: { readonly build: Build; readonly kernel: SolidKernel } | null;
  readonly inputs: readonly Input[];
};

/** Whom to ask and to tell while the nest of a run is searched for, and how hard it is; what the command line says of paper. */
export type Watch = Omit<Search, 'solver'> & {
  readonly effort?: Effort;
  readonly paper?: PaperWish;
  /** The sheet shows inches too, whatever the file says. */
  readonly inches?: boolean;
};

export async function produce(
  path: string,
  { effort, paper, inches = false, ...watch }: Watch = {},
): Promise<Produced> {
  const { job, complete, problems, inputs, placed } = load(path, paper);
  const give = (more: readonly Problem[], made: Produced['made']): Produced => ({
    problems: [...problems, ...more].sort(byPlace),
    made,
    inputs,
  });
  if (!job) return give([], null);
  if (!complete) return give(designFindings(job).map(placed), null);
  const [kernel, solver] = await Promise.all([loadKernel(), loadSolver()]);
  const wished = inches ? { ...job, shop: { ...job.shop, inches } } : job;
  const { build: made, findings } = build(wished, kernel, { ...watch, solver }, effort);
  const { regular, bold } = readFaces();
  const [plain, strong] = [lettersOf(regular), lettersOf(bold)];
  const onPaper = unprintable(job, (letter) => plain(letter) && strong(letter));
  return give([...findings, ...onPaper].map(placed), made && { build: made, kernel });
}
