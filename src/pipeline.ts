/**
 * The whole program as one sentence: a job's patterns become bodies and blanks; blanks become
 * templates, jigs and a nest; the nest becomes face drawings. Nothing flows back, nothing here
 * touches a file.
 */

import type { Floating } from './afloat/floating.js';
import type { Blank } from './blank/blank.js';
import { type SawnMass, sawnMass } from './blank/sawn-mass.js';
import { type Body, checkBody, makeBody } from './body/body.js';
import type { CutPlan } from './cutplan/cutplan.js';
import { checkDrawing } from './drawing/check.js';
import type { Drawn } from './drawing/drawing.js';
import { LEAST_HEIGHT_MM } from './drawing/label.js';
import { checkTemplate, makeTemplate, type Template } from './drawing/template-part.js';
import { type Gauged, gauged, gaugeWish } from './gauged.js';
import type { Point3 } from './geometry/vec.js';
import { makeJigs, type ReadyJig } from './jig/set.js';
import type { JigSetups } from './jig/set-ups.js';
import { type Finding, finding, type Job } from './job.js';
import { afloat, designed } from './lures.js';
import type { Stage } from './mass/stages.js';
import { bentFor } from './mass/wire-bent.js';
import { isError } from './messages.js';
import type { Nest } from './nest/nest.js';
import type { Search } from './nest/search.js';
import { type Effort, NEST_EFFORT } from './nested.js';
import { checkPapers } from './paper/check.js';
import type { Papers } from './paper/paper-file.js';
import { papersOf, paperWrong } from './papers.js';
import type { Pattern } from './pattern/pattern.js';
import { assertNone, problem } from './problem.js';
import { sawRun } from './sawn.js';
import { lipSheets, type MadeSheet, templateSheets } from './sheets.js';
import { checkShop } from './shop/check.js';
import { potProblems } from './shop/fits.js';
import { makeShop } from './shop/make.js';
import type { Shop } from './shop/shop.js';
import type { ShopWork } from './shop/work.js';
import type { SolidKernel } from './solid/kernel.js';
import type { BentWire } from './wire/bent.js';
import { checkBentWire } from './wire/check.js';

/** One line of the order, with all that is made for it. */
export type Product = {
  readonly pattern: Pattern;
  readonly count: number;
  readonly body: Body;
  readonly blank: Blank;
  readonly floating: Floating;
  readonly sawnMass: SawnMass;
  readonly template: Template;
  readonly jigs: readonly ReadyJig[];
  /** The through-wire as it is bent; null without one. */
  readonly wire: BentWire | null;
  /** Null when no gauges are set up. */
  readonly gauged: Gauged | null;
};

export type { MadeSheet } from './sheets.js';

export type Build = {
  readonly job: Job;
  readonly products: readonly Product[];
  /** Null for a single pattern, which has no timber. */
  readonly nest: Nest | null;
  /** One drawing for each face of the nest, in its order. */
  readonly faces: readonly Drawn[];
  /** How each face of the nest is cut, in its order. */
  readonly cutPlans: readonly CutPlan[];
  /** Templates together, then lips; none for a single pattern. */
  readonly sheets: readonly MadeSheet[];
  readonly shop: Shop;
  /** The same by hand: templates, faces, gauges, wires and lips on paper. */
  readonly papers: Papers;
};

/** The build is null when a finding is an error; warnings come with a build. */
export type Outcome = { readonly build: Build | null; readonly findings: readonly Finding[] };

/** @param search whom to ask and to tell; only the effort knows of a time that is up, and only for the blocks */
export function build(
  job: Job,
  kernel: SolidKernel,
  search: Search,
  effort: Effort = NEST_EFFORT,
): Outcome {
  const { designs, blanks, findings: unmakeable } = designed(job);
  if (!blanks) return { build: null, findings: unmakeable };

  const { workshop } = job;
  const tools = workshop && { sheet: workshop.sheet, cutter: workshop.templateCutter };
  const templates = blanks.map((blank) => makeTemplate(blank, tools));
  const bodies = designs.map(({ shape }) => makeBody(shape));
  const unmixable = unmixableCoats(job, bodies);
  if (unmixable.length > 0) return { build: null, findings: unmixable };
  const setups = neededSetups(job);
  const lures = bodies.map((body, i) => afloat(job, i, { body, blank: blanks[i] }));
  const jigs = lures.map((lure, i) => {
    const { pattern, blank } = lure;
    const { materials } = job;
    const work = { pattern, body: bodies[i], blank, materials, shapedCgMm: shapedCg(lure) };
    return makeJigs(kernel, work, setups);
  });
  const plates = designs.map(({ shape }, i) =>
    gauged({ pattern: job.orders[i].pattern, shape, blank: blanks[i] }, gaugeWish(job), tools),
  );
  const sawn = workshop ? sawRun({ job, workshop, blanks }, search, effort) : null;
  const onPaper = paperWrong(
    job.paper,
    job.name,
    plates.map(({ gauged }, i) => ({ blank: blanks[i], gauged })),
    sawn?.faces ?? [],
  );
  const quiet = { ...search, tell: undefined };
  const lips = workshop && lipSheets(workshop, job.orders, blanks, quiet);
  const findings: Finding[] = [
    ...templates.flatMap((t) => t.problems.map((p) => finding('job', p))),
    ...jigs.flatMap((j, i) => j.problems.map((p) => finding(i, p))),
    ...plates.flatMap((g) => g.problems.map((p) => finding('job', p))),
    ...onPaper.map((p) => finding('job', p)),
    ...(sawn?.findings ?? []),
    ...(lips?.problems ?? []).map((p) => finding('job', p)),
  ];
  if (findings.some(({ problem }) => isError(problem))) return { build: null, findings };

  const products = job.orders.map(({ pattern, count }, i): Product => {
    const [body, blank] = [bodies[i], blanks[i]];
    const floating = lures[i];
    return {
      pattern,
      count,
      body,
      blank,
      floating,
      sawnMass: sawnMass(blank, floating.timber, {
        slotIsCut: workshop?.saw.cutsLipSlot ?? false,
      }),
      template: templates[i].template as Template,
      jigs: jigs[i].jigs,
      wire: bentFor(pattern, designs[i].shape, job.materials)?.wire ?? null,
      gauged: plates[i].gauged,
    };
  });
  const whole = products.map((p) => p.template);
  const nest = sawn?.nest ?? null;
  const made: Build = {
    job,
    products,
    nest,
    faces: (sawn?.faces ?? []).map((f) => f.drawn),
    cutPlans: sawn?.cutPlans ?? [],
    sheets: [
      ...(workshop ? templateSheets(workshop, blanks, whole, quiet) : []),
      ...(lips?.sheets ?? []),
    ],
    shop: shopOf({ job, products, nest }),
    papers: papersOf(job.name, products, sawn?.faces ?? [], job.paper),
  };
  assertSound(made);
  return { build: made, findings: [...findings, ...labelWarnings(made)] };
}

/** Two-part coats that no pot can be mixed for: told before anything slow begins. */
const unmixableCoats = ({ kind, orders, shop: wish, materials }: Job, bodies: readonly Body[]) =>
  potProblems(
    { wish, materials, lines: orders.map((order, i) => ({ ...order, body: bodies[i] })) },
    kind,
  ).map((p) => finding('job', p));

/** What the bench needs, checked. */
function shopOf({ job, products, nest }: Pick<Build, 'job' | 'products' | 'nest'>): Shop {
  const { workshop, materials, shop: wish } = job;
  const work: ShopWork = {
    wish,
    materials,
    lines: products,
    nest,
    blocks: workshop?.blocks ?? [],
    slotIsCut: workshop?.saw.cutsLipSlot ?? false,
  };
  const shop = makeShop(work);
  assertNone(checkShop(shop, work));
  return shop;
}

const labelWarnings = (made: Build): Finding[] => {
  const unlabeled = new Set(drawnOf(made).flatMap((d) => d.unlabeled));
  return [...unlabeled]
    .sort()
    .map((name) =>
      finding('job', problem('label-left-out', [], { name, leastMm: LEAST_HEIGHT_MM })),
    );
};

/** Center of gravity of the shaped body with its ballast in, before coats and fittings. */
export const shapedCg = ({ stages }: Pick<Floating, 'stages'>): Point3 =>
  (stages.find(({ name }) => name === 'shaped') as Stage).cgMm;

/** A slot that the outline's cutter makes needs no guide. */
function neededSetups({ workshop, setups }: Job): JigSetups {
  if (!workshop?.saw.cutsLipSlot) return setups;
  const { 'lip-slot-guide': _, ...byKind } = setups.byKind;
  return { ...setups, byKind };
}

/** Every drawing of a build. */
const drawnOf = ({ products, faces, sheets }: Build): Drawn[] => [
  ...products.map((p) => p.template.drawn),
  ...products.flatMap(({ gauged }) => (gauged ? [gauged.plates, gauged.strips] : [])),
  ...sheets.map((s) => s.drawn),
  ...faces,
];

/** The checks that need the whole build; those of the nest and the jigs run where they are made. */
function assertSound(made: Build): void {
  const { products } = made;
  assertNone([
    ...products.flatMap(({ body, template }) => [...checkBody(body), ...checkTemplate(template)]),
    ...products.flatMap(({ pattern, wire }) =>
      wire ? checkBentWire(wire).map((c) => `${pattern.name}: ${c}`) : [],
    ),
    ...checkPapers(made.papers),
    ...drawnOf(made).flatMap(({ drawing }) =>
      checkDrawing(drawing).map((flaw) => `${drawing.title}: ${JSON.stringify(flaw)}`),
    ),
  ]);
}
