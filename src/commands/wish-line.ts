/** The wish on the command line, over the one in the file. */
import { tell } from '../messages.js';
import { readForm } from '../pattern/form.js';
import { wishProblems } from '../pattern/wish-rules.js';
import { USUAL_WISH, type WishFile, wishSection } from '../pattern/wish-schema.js';
import type { Problem } from '../problem.js';
import { ArgumentProblem, listOf, numberOf } from './arguments.js';

export type WishOptions = {
  readonly floats?: true;
  readonly suspends?: true;
  readonly rises?: string;
  readonly sinks?: string;
  readonly freeboardMm?: string;
  readonly dryRatio?: string;
  readonly noseDownDeg?: string;
  readonly leastGmMm?: string;
  readonly bits?: string;
  readonly metals?: string;
  readonly weights?: true;
  readonly holes?: string;
};

/** `changed` when the line says anything of it: such a wish is written into the new version. */
export type Wished = { readonly wish: WishFile; readonly changed: boolean };

const ANY = { least: -1e6, most: 1e6 }; // the wish's own ranges are held below, with its own words

/**
 * How it lies (buoyancy, height, speed) is taken from the line as a whole when it says how; trim, GM,
 * bits, metals and holes one by one. @throws ArgumentProblem
 */
export function wishOf(options: WishOptions, file: WishFile | null): Wished {
  const { floats, suspends, rises, sinks } = options;
  const said = [
    ...(floats ? ['floats'] : []),
    ...(suspends ? ['suspends'] : []),
    ...(rises === undefined ? [] : ['rises']),
    ...(sinks === undefined ? [] : ['sinks']),
  ];
  if (said.length > 1)
    throw new ArgumentProblem(`--${said.join(' and --')} contradict each other: give one.`);
  const number = (option: string, text: string | undefined) =>
    numberOf(option, text, ANY) ?? undefined;
  const line = {
    freeboardMm: number('--freeboard-mm', options.freeboardMm),
    dryRatio: number('--dry-ratio', options.dryRatio),
    speedCmS: number('--rises', rises) ?? number('--sinks', sinks),
    noseDownDeg: number('--nose-down-deg', options.noseDownDeg),
    leastGmMm: number('--least-gm-mm', options.leastGmMm),
    bitsMm: listOf('--bits', options.bits)?.map((b) => numberOf('--bits', b, ANY) ?? 0),
    metals: listOf('--metals', options.metals) ?? undefined,
    weights: options.weights,
    mostHoles: number('--holes', options.holes),
  };
  const given = Object.fromEntries(Object.entries(line).filter(([, v]) => v !== undefined));
  // A height alone says that it floats, and how high takes the place of what the file says.
  const how = said[0] ?? ((line.freeboardMm ?? line.dryRatio) === undefined ? undefined : 'floats');
  const { buoyancy: _b, freeboardMm: _f, dryRatio: _d, speedCmS: _s, ...rest } = file ?? {};
  const base = how !== undefined ? { ...rest, buoyancy: how } : { ...file };
  if (base.buoyancy === undefined)
    throw new ArgumentProblem(
      'There is no wish: say how the lure shall lie (--floats, --suspends, --rises, --sinks), or write wish: into the pattern (`blankwright explain wish`).',
    );
  const { sections, problems } = readForm(lineSource({ wish: { ...base, ...given } }), {
    wish: wishSection,
  });
  const { wish } = sections;
  const found = [...problems, ...(wish ? wishProblems(wish) : [])];
  if (!wish || found.length > 0) throw new ArgumentProblem(found.map(inOptions).join('\n'));
  return { wish, changed: said.length > 0 || Object.keys(given).length > 0 };
}

const OPTION: Readonly<Record<string, string>> = {
  freeboardMm: '--freeboard-mm',
  dryRatio: '--dry-ratio',
  speedCmS: '--rises or --sinks',
  noseDownDeg: '--nose-down-deg',
  leastGmMm: '--least-gm-mm',
  bitsMm: '--bits',
  metals: '--metals',
  mostHoles: '--holes',
};

/** A problem of the wish, its keys called by the options that gave them. */
export function inOptions({ code, facts }: Problem): string {
  const named = Object.fromEntries(
    Object.entries(facts).map(([name, fact]) => [
      name,
      typeof fact === 'string' ? fact.replace(/^(?:wish\.)?(\w+)(?:\[\d+\])?/, optionFor) : fact,
    ]),
  );
  const { what, limit, fix } = tell(code, named);
  return `${what} ${limit}${code === 'unknown-item' ? ` ${fix}` : ''}`;
}

const optionFor = (whole: string, key: string): string => OPTION[key] ?? whole;

/** Data of the line where a file's source is wanted; it has no places. */
const lineSource = (data: Record<string, unknown>) => {
  const nowhere = () => ({ file: 'command line', line: 1, column: 1 });
  return {
    file: 'command line',
    data,
    placeOf: nowhere,
    placeOfKey: nowhere,
    behindKey: () => null,
    root: { end: 0, braces: false },
    keyBefore: () => null,
  };
};

/** As lines of YAML in the file's own size, without what is left at its default. */
export function wishLines(wish: WishFile, scale: number): string[] {
  const { leastGmMm, weights, mostHoles, freeboardMm, ...said } = wish;
  const entries = Object.entries({
    ...said,
    ...(freeboardMm === undefined
      ? {}
      : { freeboardMm: Math.round((freeboardMm / scale) * 1e4) / 1e4 }),
    ...(leastGmMm === USUAL_WISH.leastGmMm ? {} : { leastGmMm }),
    ...(weights ? { weights } : {}),
    ...(mostHoles === USUAL_WISH.mostHoles ? {} : { mostHoles }),
  }).filter(([, v]) => v !== undefined);
  return entries.map(([k, v]) => `${k}: ${Array.isArray(v) ? `[${v.join(', ')}]` : v}`);
}
