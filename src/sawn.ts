/** A run's nest and how its faces are sawn: nested, planned, drawn, each checked. */
import { checkCutPlan } from './cutplan/check.js';
import type { CutPlan, SawnPart } from './cutplan/cutplan.js';
import { sawnWays } from './cutplan/open-cuts.js';
import { planCuts, sawProblems } from './cutplan/plan.js';
import { type BlankWork, type FaceWork, faceDrawing } from './drawing/face.js';
import { cutCaution, orderNotes, stackNotes } from './drawing/notes.js';
import { checkSawing, sawing, sawnPart } from './drawing/sawing.js';
import type { Circle } from './geometry/arcpath.js';
import { type Finding, finding, type Job, type Workshop } from './job.js';
import { isError } from './messages.js';
import type { Knot, Nest, NestFace } from './nest/nest.js';
import type { Search } from './nest/search.js';
import { type Effort, nestRun, type RunWork } from './nested.js';
import type { DrawnFace } from './paper/face-sheet.js';
import { assertNone, type Problem } from './problem.js';

export type Sawn = {
  readonly nest: Nest;
  readonly faces: readonly DrawnFace[];
  readonly cutPlans: readonly CutPlan[];
  readonly findings: readonly Finding[];
};

/** Nests the order, plans how its faces are cut, draws them, and checks all three. */
export function sawRun(run: RunWork, search: Search, effort: Effort): Sawn {
  const { job, workshop, blanks } = run;
  const { saw } = workshop;
  const sawings = blanks.map((blank) => sawing(blank, saw));
  const { nest, findings: unmet } = nestRun(run, search, effort);
  const told = (problems: readonly Problem[]) => problems.map((p) => finding('job', p));
  const nested = [...told(sawings.flatMap((s) => s.problems)), ...unmet];
  if (nested.some(({ problem }) => isError(problem))) return unsawn(nest, nested);
  const works = sawings.map((s) => s.work as BlankWork);
  assertNone(works.flatMap((work) => checkSawing(work, saw)));
  const parts = new Map(works.map((work) => [work.blank.name, sawnPart(work, saw)]));
  const planned = planFaces(job, workshop, nest, parts);
  const findings = [...nested, ...told(planned.problems)];
  if (findings.some(({ problem }) => isError(problem))) return unsawn(nest, findings);
  const byName = new Map(works.map((work) => [work.blank.name, work]));
  const faces = nest.faces.map((face, i): DrawnFace => {
    const work = faceWork(face, planned.plans[i], byName, workshop);
    return { work, drawn: faceDrawing(work) };
  });
  return { nest, faces, cutPlans: planned.plans, findings };
}

const unsawn = (nest: Nest, findings: readonly Finding[]): Sawn => ({
  nest,
  faces: [],
  cutPlans: [],
  findings,
});

/** How every face is cut, and what can not be. */
function planFaces(
  { materials }: Job,
  { saw }: Workshop,
  { faces }: Nest,
  parts: ReadonlyMap<string, SawnPart>,
): { readonly plans: readonly CutPlan[]; readonly problems: readonly Problem[] } {
  const { blades } = materials;
  const results = faces.map((face) => planCuts(face, parts, saw, blades));
  const problems = [
    ...[...parts].flatMap(([name, part]) => sawProblems(name, part, saw, blades)),
    ...results.flatMap((r) => r.problems),
  ];
  const plans = results.map((r) => r.plan);
  if (!problems.some(isError))
    assertNone(
      faces.flatMap((face, i) =>
        checkCutPlan(face, plans[i], saw).map((c) => `face ${face.id}: ${JSON.stringify(c)}`),
      ),
    );
  return { plans, problems };
}

const faceWork = (
  face: NestFace,
  plan: CutPlan,
  works: ReadonlyMap<string, BlankWork>,
  { saw, clearNoseRatio }: Workshop,
): FaceWork => ({
  ...face,
  title: `Face ${face.id}`,
  knots: face.knots.map(circleOf),
  poorZones: face.poorZones.map(circleOf),
  clearNoseRatio,
  placed: face.placements.map(({ part, turnDeg, xMm, yMm }) => ({
    work: works.get(part) as BlankWork,
    motion: { turnDeg, move: [xMm, yMm] },
  })),
  kerfMm: saw.guidance === 'follows' ? saw.kerfMm : null,
  cuts: {
    ...plan,
    entryPaths: sawnWays(plan),
    reliefCuts: plan.reliefCuts.map((r) => r.path),
    kerfMm: saw.kerfMm,
  },
  notes: [...stackNotes(face.stacks), ...orderNotes(plan, saw), cutCaution(saw)],
});

const circleOf = ({ xMm, yMm, radiusMm }: Knot): Circle => ({
  center: [xMm, yMm],
  radius: radiusMm,
});
