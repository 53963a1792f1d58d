/** A job's order → the plan of its nest, and nothing else of it: no solid, no jig, no drawing. */
import type { Blank } from './blank/blank.js';
import { gapMm } from './drawing/cut.js';
import { sawing } from './drawing/sawing.js';
import { type Finding, finding, type Job, type Workshop } from './job.js';
import { designed } from './lures.js';
import { isError } from './messages.js';
import type { Nest, NestEffort } from './nest/nest.js';
import { checkOrder, nestOrder } from './nest/order.js';
import type { Search } from './nest/search.js';
import { blockCost } from './pattern/run.js';
import { assertNone } from './problem.js';

/** How hard the nest of a run is searched for, and how long. */
export type Effort = NestEffort & {
  /** If given, the search goes on with more and more effort until it says that the time is up. */
  readonly isTimeUp?: (() => boolean) | undefined;
};

/** Layouts tried per face beside the systematic ones, where their shuffles start, and layouts tried for a whole plan. */
export const NEST_EFFORT: Effort = { tries: 24, seed: 1, layouts: 120 };

/** The plan of a run, checked, and what stands in its way. */
export type Nested = { readonly nest: Nest; readonly findings: readonly Finding[] };

/** A run whose blanks can be made. */
export type RunWork = {
  readonly job: Job;
  readonly workshop: Workshop;
  readonly blanks: readonly Blank[];
};

export function nestRun(
  { job, workshop, blanks }: RunWork,
  search: Search,
  { isTimeUp, ...effort }: Effort,
): Nested {
  const { saw, stack, webMm, clearNoseRatio, largestTiltDeg, timberLeast } = workshop;
  const blocks = workshop.blocks.map((block) => ({
    ...block,
    costEach: blockCost(block, timberLeast, job.materials.timbers),
  }));
  const wanted = job.orders.map(({ pattern, count }, i) => ({
    blank: blanks[i],
    timber: pattern.timber,
    count,
  }));
  const rules = { gapMm: gapMm(saw, webMm), clearNoseRatio, largestTiltDeg, ...stack, ...effort };
  const { nest, problems } = nestOrder(wanted, blocks, rules, search, isTimeUp);
  const findings = problems.map((p) => finding('job', p));
  if (!findings.some(({ problem }) => isError(problem)))
    assertNone(checkOrder(nest, wanted, blocks, rules).map((c) => JSON.stringify(c)));
  return { nest, findings };
}

export type NestedJob = {
  /** Null when a finding is an error. */
  readonly nest: Nest | null;
  /** One a line of the order; none when they cannot be made. */
  readonly blanks: readonly Blank[];
  readonly findings: readonly Finding[];
};

/** The nest of a run alone, or why there is none; what the saw cannot follow is told too. */
export function nestJob(
  job: Job,
  workshop: Workshop,
  search: Search,
  effort: Effort = NEST_EFFORT,
): NestedJob {
  const { blanks, findings: unmakeable } = designed(job);
  if (!blanks) return { nest: null, blanks: [], findings: unmakeable };
  const sawn = blanks.flatMap((blank) => sawing(blank, workshop.saw).problems);
  const { nest, findings } = nestRun({ job, workshop, blanks }, search, effort);
  const found = [...sawn.map((p) => finding('job', p)), ...findings];
  const isWrong = found.some(({ problem }) => isError(problem));
  return { nest: isWrong ? null : nest, blanks, findings: found };
}
