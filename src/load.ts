/** Files → job: reads the file named, the patterns and set-ups it names, and the tables. */
import { type Finding, type Job, type Order, USUAL_SHOP, type Workshop } from './job.js';
import { readSetups } from './load-setups.js';
import { readForm } from './pattern/form.js';
import { overrideRules } from './pattern/item-rules.js';
import { nearest } from './pattern/nearest.js';
import { optionOf, type PaperWish, paperOf } from './pattern/paper.js';
import { type Pattern, resolvePattern, type Size } from './pattern/pattern.js';
import { patternRules, type Sections } from './pattern/rules.js';
import { cutterOf, type RunSections, runRules } from './pattern/run.js';
import { runSections } from './pattern/run-schema.js';
import { type PatternFile, patternSections } from './pattern/schema.js';
import type { Source } from './pattern/source.js';
import { type KeyPath, type Problem, problem } from './problem.js';
import { beside, type Input, makeReader, type Reader, readMaterials, wrongKind } from './reader.js';
import type { Materials } from './tables/materials.js';
import { overridden } from './tables/overrides.js';

export type Loaded = {
  /** Null when not even a part of the design can be looked at. */
  readonly job: Job | null;
  /** True when the job is whole; false when wrong sections were left out of it to look at the rest. */
  readonly complete: boolean;
  /** Problems of the files themselves, each with its place. */
  readonly problems: readonly Problem[];
  readonly inputs: readonly Input[];
  /** The pattern file of each order of the job. */
  readonly patternFiles: readonly string[];
  /** Gives a finding of a later stage its place. */
  readonly placed: (found: Finding) => Problem;
};

/** `wish` is what a command line says of paper. */
export function load(path: string, wish?: PaperWish): Loaded {
  const reader = makeReader(path);
  const materials = readMaterials(reader);
  const source = reader.source(path);
  if ('problems' in source) return nothing(reader, source.problems);
  switch (source.data.kind) {
    case 'run':
      return loadRun(reader, source, materials, wish);
    case 'pattern':
      return loadSingle(reader, source, materials, wish);
    default:
      return nothing(reader, [kindProblem(source)]);
  }
}

const nothing = (reader: Reader, problems: readonly Problem[]): Loaded => ({
  job: null,
  complete: false,
  problems,
  inputs: reader.inputs(),
  patternFiles: [],
  placed: ({ problem }) => problem,
});

function kindProblem(source: Source): Problem {
  const value = source.data.kind;
  const known = ['pattern', 'run'];
  const guess = typeof value === 'string' ? nearest(value, known) : null;
  const facts = {
    value: value === undefined ? 'nothing' : JSON.stringify(value),
    allowed: known.join(', '),
    ...(guess ? { guess } : {}),
  };
  return { ...problem('unknown-kind', ['kind'], facts), at: source.placeOf(['kind']) };
}

const at = (source: Source, p: Problem): Problem =>
  p.at || p.option ? p : { ...p, at: source.placeOf(p.path) };

/** What the command line said is placed there. */
const said = (p: Problem, wish?: PaperWish): Problem => {
  const option = optionOf(p, wish);
  return option === null ? p : { ...p, option };
};

type LoadedPattern = {
  readonly source: Source;
  readonly sections: Sections;
  readonly problems: readonly Problem[];
};

function readPattern(source: Source, materials: Materials): LoadedPattern {
  const { sections, problems } = readForm(source, patternSections);
  return {
    source,
    sections,
    problems: [...problems, ...patternRules(sections, materials).map((p) => at(source, p))],
  };
}

/**
 * Stand-ins for sections that are wrong, so that the right ones can still be looked at. They are
 * chosen to raise no problem of their own, and nothing is built from them.
 */
const STAND_INS = {
  schema: 1,
  kind: 'pattern',
  name: 'unnamed',
  version: '0',
  note: '',
  scaleRatio: 1,
  scaleHardware: false,
  ballast: [],
  hangers: [],
  timber: '',
  sandingAllowanceMm: 0,
  blockThicknessMm: 1e6,
  coats: [],
} as const satisfies Partial<PatternFile>;

/** The pattern as far as it is right; null when its body is wrong. */
function patternOf({ sections, problems }: LoadedPattern, size: Size): Pattern | null {
  const broken = new Set(problems.map((p) => p.path[0]));
  if (!sections.body || broken.has('body')) return null;
  const right = Object.fromEntries(Object.entries(sections).filter(([key]) => !broken.has(key)));
  return resolvePattern({ ...STAND_INS, ...right, body: sections.body } as PatternFile, size);
}

function loadSingle(
  reader: Reader,
  source: Source,
  materials: Materials,
  wish?: PaperWish,
): Loaded {
  const loaded = readPattern(source, materials);
  const pattern = patternOf(loaded, {});
  const setups = readSetups(reader, null);
  const { paper, problems } = paperOf(undefined, wish);
  const found = [...loaded.problems, ...problems.map((p) => at(source, said(p, wish)))];
  const job: Job | null = pattern && {
    kind: 'pattern',
    name: pattern.name,
    note: '',
    orders: [{ pattern, count: 1, fileSha256: reader.sha256Of(source.file) }],
    workshop: null,
    setups: setups.setups,
    paper,
    materials,
    water: null,
    shop: USUAL_SHOP,
  };
  return {
    job,
    complete: found.length === 0,
    problems: found,
    inputs: reader.inputs(),
    patternFiles: [source.file],
    placed: ({ problem }) => at(source, said(problem, wish)),
  };
}

function loadRun(reader: Reader, source: Source, tables: Materials, wish?: PaperWish): Loaded {
  const { sections, problems } = readForm(source, runSections);
  const { materials, flaws } = overridden(tables, sections.materials ?? {});
  const { paper, problems: onPaper } = paperOf(sections.paper, wish);
  const rules = [
    ...overrideRules(flaws, tables),
    ...runRules(sections, materials.timbers),
    ...onPaper.map((p) => said(p, wish)),
  ];
  const found: Problem[] = [...problems, ...rules.map((p) => at(source, p))];
  const places = new Map<number, (p: Problem) => Problem>();
  const patterns = new Map<string, Named>();
  const orders: Order[] = [];
  const patternFiles: string[] = [];
  (sections.orders ?? []).forEach((order, index) => {
    const path = beside(source.file, order.pattern);
    const known = patterns.get(path);
    const named = known ?? namedPattern(reader, { run: source, path, index, materials });
    if (!known) found.push(...named.problems);
    patterns.set(path, named);
    const { loaded } = named;
    const pattern = loaded && patternOf(loaded, order);
    if (!pattern) return;
    // What only this size brings about is told where the size is ordered.
    const resized = order.scaleRatio !== undefined || order.blockThicknessMm !== undefined;
    const line = source.placeOf(['orders', index]);
    places.set(orders.length, (p) => (resized ? { ...p, at: line } : at(loaded.source, p)));
    if (orders.some((o) => o.pattern.name === pattern.name)) {
      found.push(at(source, problem('duplicate-name', ['orders', index], { name: pattern.name })));
    }
    orders.push({ pattern, count: order.count, fileSha256: reader.sha256Of(path) });
    patternFiles.push(path);
  });
  const setups = readSetups(reader, sections.jigs ? { source, files: sections.jigs } : null);
  found.push(...setups.problems);
  const workshop = workshopOf(sections);
  return {
    job:
      orders.length === 0
        ? null
        : {
            kind: 'run',
            name: sections.name ?? 'run',
            note: sections.note ?? '',
            orders,
            workshop,
            setups: setups.setups,
            paper,
            materials,
            water: sections.water ?? null,
            shop: sections.shop ?? USUAL_SHOP,
          },
    complete: found.length === 0 && workshop !== null,
    problems: found,
    inputs: reader.inputs(),
    patternFiles,
    placed: ({ of, problem }) =>
      (of === 'job' ? null : places.get(of))?.(problem) ?? at(source, said(problem, wish)),
  };
}

/** A pattern an order names, or why it is not to be had. */
type Named = { readonly loaded: LoadedPattern | null; readonly problems: readonly Problem[] };

type Naming = {
  readonly run: Source;
  readonly path: string;
  /** Of the first order that names it. */
  readonly index: number;
  readonly materials: Materials;
};

function namedPattern(reader: Reader, { run, path, index, materials }: Naming): Named {
  const key: KeyPath = ['orders', index, 'pattern'];
  const here = (p: Problem): Problem => ({ ...p, path: key, at: run.placeOf(key) });
  const source = reader.source(path);
  if ('problems' in source) {
    return { loaded: null, problems: source.problems.map((p) => (p.at ? p : here(p))) };
  }
  if (source.data.kind !== 'pattern') {
    return { loaded: null, problems: [here(wrongKind(source, 'pattern'))] };
  }
  const loaded = readPattern(source, materials);
  return { loaded, problems: loaded.problems };
}

function workshopOf(run: RunSections): Workshop | null {
  const {
    blocks,
    stack,
    saw,
    webMm,
    clearNoseRatio,
    largestTiltDeg,
    templateSheet,
    timberLeast = 'volume',
  } = run;
  if (!blocks || !stack || !saw || !templateSheet) return null;
  if (webMm === undefined || clearNoseRatio === undefined || largestTiltDeg === undefined)
    return null;
  const { cutter, ...sheet } = templateSheet;
  return {
    blocks,
    timberLeast,
    stack,
    saw: cutterOf(saw, saw.guidance === 'follows'),
    webMm,
    clearNoseRatio,
    largestTiltDeg,
    sheet,
    templateCutter: cutterOf(cutter, true),
    lipSheets: (run.lipSheets ?? []).map((s) => ({ ...s, cutter: cutterOf(s.cutter, false) })),
  };
}
