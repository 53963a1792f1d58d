/** A job's lures as far as they need no tools: designed, checked against the wood, and in their water. */

import { checkFloating } from './afloat/check.js';
import { type Floating, floating, USUAL_WATER } from './afloat/floating.js';
import type { Blank } from './blank/blank.js';
import { makeBlank } from './blank/make.js';
import { type TimberDensity, timberDensity } from './blank/timber-density.js';
import { type Body, bodyShape, makeBody } from './body/body.js';
import type { BodyShape } from './body/shape.js';
import { type Finding, finding, type Job } from './job.js';
import { tabProblems } from './mass/lip-tab.js';
import { ballastProblems } from './mass/problems.js';
import { wireProblems } from './mass/wire-bent.js';
import { THICKNESS_TOLERANCE_MM } from './nest/stack.js';
import type { Pattern } from './pattern/pattern.js';
import { blockDensityKgM3 } from './pattern/run.js';
import type { WaterFile } from './pattern/water-schema.js';
import { assertNone } from './problem.js';

export type Design = {
  readonly shape: BodyShape;
  /** Null when it cannot be made in wood. */
  readonly blank: Blank | null;
  readonly findings: readonly Finding[];
};

/** One design a line of the order. */
const designsOf = ({ orders, materials }: Job): Design[] =>
  orders.map(({ pattern }, index) => {
    const shape = bodyShape(pattern);
    const { blank, problems } = makeBlank(pattern, shape);
    const filled = blank ? ballastProblems(blank.holes, shape, materials) : [];
    const unbent = blank ? wireProblems(pattern, shape, materials) : [];
    const tab = blank ? tabProblems(pattern, shape, blank.slot) : [];
    const found = [...problems, ...filled, ...unbent, ...tab];
    return { shape, blank, findings: found.map((p) => finding(index, p)) };
  });

export type Designed = {
  readonly designs: readonly Design[];
  /** One a design; null when one of them cannot be made in wood, and findings say why. */
  readonly blanks: readonly Blank[] | null;
  readonly findings: readonly Finding[];
};

/** All lures of the job designed, and their blanks if every one can be made. */
export function designed(job: Job): Designed {
  const designs = designsOf(job);
  const findings = designs.flatMap((d) => d.findings);
  const blanks = designs.flatMap((d) => (d.blank ? [d.blank] : []));
  return { designs, findings, blanks: findings.length === 0 ? blanks : null };
}

/** Can every lure of the job be made in wood? */
export const designFindings = (job: Job): readonly Finding[] => designed(job).findings;

/** What is known better than the files say: the water at hand, the timber of the very block. */
export type AtHand = { readonly water?: Partial<WaterFile>; readonly timber?: TimberDensity };

/** A line of the order in its water, checked. */
export function afloat(
  job: Job,
  index: number,
  made: { readonly body: Body; readonly blank: Blank },
  { water, timber }: AtHand = {},
): Floating {
  const { pattern } = job.orders[index];
  const lure = floating({
    ...made,
    pattern,
    materials: job.materials,
    timber: timber ?? timberFor(job, pattern),
    water: { ...(job.water ?? pattern.water ?? USUAL_WATER), ...water },
  });
  assertNone(checkFloating(lure));
  return lure;
}

/** Every lure of the job in its water, or why not; nothing is nested or cut. */
export function floatings(
  job: Job,
  atHand: AtHand = {},
): { readonly lures: readonly Floating[]; readonly findings: readonly Finding[] } {
  const { designs, blanks, findings } = designed(job);
  if (!blanks) return { lures: [], findings };
  const lures = designs.map(({ shape }, index) =>
    afloat(job, index, { body: makeBody(shape), blank: blanks[index] }, atHand),
  );
  return { lures, findings };
}

/** The same job with other ballast in all its lures. */
export const withBallast = (job: Job, ballast: Pattern['ballast']): Job => ({
  ...job,
  orders: job.orders.map((o) => ({ ...o, pattern: { ...o.pattern, ballast } })),
});

/** Density of the timber a pattern is sawn from: of its weighed blocks, its own, or the table's. */
const timberFor = ({ materials, workshop }: Job, pattern: Pattern): TimberDensity =>
  timberDensity(
    materials.timbers[pattern.timber],
    pattern.timberDensityKgM3,
    (workshop?.blocks ?? [])
      .filter((block) => isSawnFrom(pattern, block))
      .map((b) => ({ count: b.count, densityKgM3: blockDensityKgM3(b) })),
  );

/** Whether a pattern's blanks come out of such blocks. */
export const isSawnFrom = (
  pattern: Pattern,
  block: { readonly timber: string; readonly thicknessMm: number },
): boolean =>
  block.timber === pattern.timber &&
  Math.abs(block.thicknessMm - pattern.blockThicknessMm) <= THICKNESS_TOLERANCE_MM;
