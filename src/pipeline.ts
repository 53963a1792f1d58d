/**
 * The whole program as one sentence: a job's patterns become bodies and blanks; blanks become
 * templates, jigs and a nest; the nest becomes face drawings. Nothing flows back, nothing here
 * touches a file.
 */
import type { Blank } from './blank/blank.js';
import { makeBlank } from './blank/make.js';
import { type SawnMass, sawnMass } from './blank/sawn-mass.js';
import { type TimberDensity, timberDensity } from './blank/timber-density.js';
import { type Body, bodyShape, checkBody, makeBody } from './body/body.js';
import type { BodyShape } from './body/shape.js';
import { checkDrawing } from './drawing/check.js';
import { gapMm } from './drawing/cut.js';
import type { Drawn } from './drawing/drawing.js';
import { type BlankWork, faceDrawing } from './drawing/face.js';
import { LEAST_HEIGHT_MM } from './drawing/label.js';
import { cutCaution, stackNotes } from './drawing/notes.js';
import { checkSawing, sawing } from './drawing/sawing.js';
import { checkTemplate, makeTemplate, type Template } from './drawing/template-part.js';
import { checkFloating, type Floating, floating, USUAL_WATER } from './floating.js';
import { checkJig } from './jig/check.js';
import type { Jig } from './jig/jig.js';
import { type JigSetups, makeJigs, wallProblem } from './jig/set.js';
import { type Finding, finding, type Job, type Workshop } from './job.js';
import { ballastProblems } from './mass/problems.js';
import { isError } from './messages.js';
import type { Nest, NestFace } from './nest/nest.js';
import { checkOrder, nestOrder } from './nest/order.js';
import { THICKNESS_TOLERANCE_MM } from './nest/stack.js';
import type { Pattern } from './pattern/pattern.js';
import { blockDensityKgM3 } from './pattern/run.js';
import type { WaterFile } from './pattern/water-schema.js';
import { Fault, type Problem, problem } from './problem.js';
import type { SolidKernel } from './solid/kernel.js';
import type { Materials } from './tables/materials.js';

/** One line of the order, with all that is made for it. */
export type Product = {
  readonly pattern: Pattern;
  readonly count: number;
  readonly body: Body;
  readonly blank: Blank;
  readonly floating: Floating;
  readonly sawnMass: SawnMass;
  readonly template: Template;
  readonly jigs: readonly Jig[];
};

export type Build = {
  readonly job: Job;
  readonly products: readonly Product[];
  /** Null for a single pattern, which has no timber. */
  readonly nest: Nest | null;
  /** One drawing for each face of the nest, in its order. */
  readonly faces: readonly Drawn[];
};

/** The build is null when a finding is an error; warnings come with a build. */
export type Outcome = { readonly build: Build | null; readonly findings: readonly Finding[] };

/** Layouts tried per face beside the systematic ones, and where their shuffles start. */
const NEST_EFFORT = { tries: 24, seed: 1 };

type Design = {
  readonly shape: BodyShape;
  readonly blank: Blank | null;
  readonly findings: readonly Finding[];
};

const design = (
  { pattern }: Job['orders'][number],
  index: number,
  materials: Materials,
): Design => {
  const shape = bodyShape(pattern);
  const { blank, problems } = makeBlank(pattern, shape);
  const filled = blank ? ballastProblems(blank.holes, shape, materials) : [];
  return { shape, blank, findings: [...problems, ...filled].map((p) => finding(index, p)) };
};

const designsOf = ({ orders, materials }: Job): Design[] =>
  orders.map((order, index) => design(order, index, materials));

/** The part that needs no tools: can every lure of the job be made in wood? */
export const designFindings = (job: Job): Finding[] => designsOf(job).flatMap((d) => d.findings);

/** The same job with other ballast in all its lures. */
export const withBallast = (job: Job, ballast: Pattern['ballast']): Job => ({
  ...job,
  orders: job.orders.map((o) => ({ ...o, pattern: { ...o.pattern, ballast } })),
});

/** What is known better than the files say: the water at hand, the timber of the very block. */
export type AtHand = { readonly water?: WaterFile | null; readonly timber?: TimberDensity | null };

/** Every lure of the job in its water, or why not; nothing is nested or cut. */
export function floatings(
  job: Job,
  atHand: AtHand = {},
): {
  readonly floating: readonly Floating[];
  readonly findings: readonly Finding[];
} {
  const designs = designsOf(job);
  const findings = designs.flatMap((d) => d.findings);
  if (findings.length > 0) return { floating: [], findings };
  const made = designs.map(({ shape, blank }, i) => {
    const body = makeBody(shape);
    const given = inWater(job, i, { body, blank: blank as Blank });
    const afloat = floating({
      ...given,
      water: atHand.water ?? given.water,
      timber: atHand.timber ?? given.timber,
    });
    assertNone(checkFloating(afloat));
    return afloat;
  });
  return { floating: made, findings };
}

const inWater = (job: Job, index: number, made: { readonly body: Body; readonly blank: Blank }) => {
  const { pattern } = job.orders[index];
  return {
    ...made,
    pattern,
    materials: job.materials,
    timber: timberFor(job, pattern),
    water: job.water ?? pattern.water ?? USUAL_WATER,
  };
};

const timberFor = ({ materials, workshop }: Job, pattern: Pattern): TimberDensity =>
  timberDensity(
    materials.timbers[pattern.timber],
    pattern.timberDensityKgM3,
    pilesFor(pattern, workshop),
  );

export function build(job: Job, kernel: SolidKernel): Outcome {
  const designs = designsOf(job);
  const unmakeable = designs.flatMap((d) => d.findings);
  if (unmakeable.length > 0) return { build: null, findings: unmakeable };
  const blanks = designs.map((d) => d.blank as Blank);

  const { workshop } = job;
  const tools = workshop && { sheet: workshop.sheet, cutter: workshop.templateCutter };
  const templates = blanks.map((blank) => makeTemplate(blank, tools));
  // A slot that the outline's cutter makes needs no guide.
  const setups = workshop?.saw.cutsLipSlot ? { ...job.setups, lipSlotGuide: null } : job.setups;
  const jigs = blanks.map((blank) => makeJigs(kernel, blank, setups));
  const thin = jigs.flatMap((j, i) =>
    j.jigs.flatMap((jig) => checkedJig(kernel, jig, blanks[i], setups).map((p) => finding(i, p))),
  );
  const sawn = workshop ? sawRun(job, workshop, blanks) : null;
  const findings: Finding[] = [
    ...templates.flatMap((t) => t.problems.map((p) => finding('job', p))),
    ...jigs.flatMap((j, i) => j.problems.map((p) => finding(i, p))),
    ...thin,
    ...(sawn?.findings ?? []),
  ];
  if (findings.some(({ problem }) => isError(problem))) return { build: null, findings };

  const products = job.orders.map(({ pattern, count }, i): Product => {
    const [body, blank] = [makeBody(designs[i].shape), blanks[i]];
    return {
      pattern,
      count,
      body,
      blank,
      floating: floating(inWater(job, i, { body, blank })),
      sawnMass: sawnMass(blank, timberFor(job, pattern), {
        slotIsCut: workshop?.saw.cutsLipSlot ?? false,
      }),
      template: templates[i].template as Template,
      jigs: jigs[i].jigs,
    };
  });
  const made: Build = { job, products, nest: sawn?.nest ?? null, faces: sawn?.faces ?? [] };
  assertSound(made);
  return { build: made, findings: [...findings, ...labelWarnings(made)] };
}

type Sawn = {
  readonly nest: Nest;
  readonly faces: readonly Drawn[];
  readonly findings: readonly Finding[];
};

/** Nests the order, draws its faces, and checks both. */
function sawRun(job: Job, workshop: Workshop, blanks: readonly Blank[]): Sawn {
  const { saw, stack, webMm, blocks } = workshop;
  const wanted = job.orders.map(({ pattern, count }, i) => ({
    blank: blanks[i],
    timber: pattern.timber,
    count,
  }));
  const rules = { gapMm: gapMm(saw, webMm), ...stack, ...NEST_EFFORT };
  const sawings = blanks.map((blank) => sawing(blank, saw));
  const { nest, problems } = nestOrder(wanted, blocks, rules);
  const findings = [...sawings.flatMap((s) => s.problems), ...problems].map((p) =>
    finding('job', p),
  );
  if (findings.some(({ problem }) => isError(problem))) return { nest, faces: [], findings };
  const works = sawings.map((s) => s.work as BlankWork);
  assertNone([
    ...works.flatMap((work) => checkSawing(work, saw)),
    ...checkOrder(nest, wanted, blocks, rules).map((c) => JSON.stringify(c)),
  ]);
  const byName = new Map(works.map((work) => [work.blank.name, work]));
  return { nest, faces: nest.faces.map((face) => drawFace(face, byName, workshop)), findings };
}

const drawFace = (
  face: NestFace,
  works: ReadonlyMap<string, BlankWork>,
  { saw }: Workshop,
): Drawn =>
  faceDrawing({
    ...face,
    title: `Face ${face.id}`,
    knots: face.knots.map((k) => ({ center: [k.xMm, k.yMm], radius: k.radiusMm })),
    placed: face.placements.map(({ part, turnDeg, xMm, yMm }) => ({
      work: works.get(part) as BlankWork,
      motion: { turnDeg, move: [xMm, yMm] },
    })),
    kerfMm: saw.guidance === 'follows' ? saw.kerfMm : null,
    notes: [...stackNotes(face.stacks), cutCaution(saw)],
  });

const pilesFor = (pattern: Pattern, workshop: Workshop | null) =>
  (workshop?.blocks ?? [])
    .filter(
      (b) =>
        b.timber === pattern.timber &&
        Math.abs(b.thicknessMm - pattern.blockThicknessMm) <= THICKNESS_TOLERANCE_MM,
    )
    .map((b) => ({ count: b.count, densityKgM3: blockDensityKgM3(b) }));

const labelWarnings = ({ products, faces }: Build): Finding[] => {
  const unlabeled = new Set(
    [...products.map((p) => p.template.drawn), ...faces].flatMap((d) => d.unlabeled),
  );
  return [...unlabeled]
    .sort()
    .map((name) =>
      finding('job', problem('label-left-out', [], { name, leastMm: LEAST_HEIGHT_MM })),
    );
};

/** Checks a jig; what its set-up is to blame for comes back, anything else is our fault. */
function checkedJig(kernel: SolidKernel, jig: Jig, blank: Blank, setups: JigSetups): Problem[] {
  const { flaws } = checkJig(kernel, { jig, blank, setups });
  const ours = flaws.filter((f) => f.code !== 'wall-thin');
  assertNone(ours.map((f) => `${jig.pattern} ${jig.kind}: ${JSON.stringify(f)}`));
  return flaws.map((f) => wallProblem(jig, f));
}

/** The checks that need the whole build; those of the nest and the jigs run where they are made. */
function assertSound({ products, faces }: Build): void {
  const drawn = [...products.map((p) => p.template.drawn), ...faces];
  assertNone([
    ...products.flatMap(({ body, floating: afloat, template }) => [
      ...checkBody(body),
      ...checkFloating(afloat),
      ...checkTemplate(template),
    ]),
    ...drawn.flatMap(({ drawing }) =>
      checkDrawing(drawing).map((flaw) => `${drawing.title}: ${JSON.stringify(flaw)}`),
    ),
  ]);
}

/** What a check of ours finds is our fault, never the maker's. */
function assertNone(complaints: readonly string[]): void {
  if (complaints.length > 0)
    throw new Fault(`checks failed:\n${complaints.map((c) => `  ${c}`).join('\n')}`);
}
