/**
 * `npm run -s bench:nest -- --folder DIR [--seconds N | --looks N] [--seed S] [--threads T] [--only NAME]
 * [--out DIR2]`: packs every instance of a folder and compares its density with the published record.
 * One line each: name, density, record, ratio, seconds; then the mean and the least ratio. Exit 1 if
 * an instance could not be packed (its line says why), 2 if the command line, the folder, its records
 * or the folder for results are no good.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { loadSolver } from '../linear/solver.js';
import type { StripLayout, StripProblem } from '../pack/strip.js';
import { type Budget, packStrip } from '../pack/team.js';
import {
  flawOf,
  type Instance,
  problemOf,
  readInstance,
  readRecords,
  resultOf,
  settledLayout,
} from './nest-instance.js';

type Options = {
  readonly folder: string;
  readonly seconds?: number;
  readonly looks?: number;
  readonly seed: number;
  readonly threads: number;
  readonly only?: string;
  readonly out?: string;
};

const NOT_INSTANCES = ['records.json', 'package.json'];

type Row = { readonly ratio: number | null; readonly ok: boolean };

async function main(options: Options): Promise<number> {
  const { folder, only, out } = options;
  const names = attempt(`cannot read folder ${folder}`, () => readdirSync(folder))
    .filter((f) => f.endsWith('.json') && !NOT_INSTANCES.includes(f))
    .map((f) => f.slice(0, -'.json'.length))
    .filter((name) => only === undefined || name === only)
    .sort();
  if (names.length === 0)
    throw new Refusal(`${folder}: no instance${only === undefined ? '' : ` ${only}`} in it`);
  const records = recordsIn(folder);
  if (out !== undefined)
    attempt(`cannot make folder ${out}`, () => mkdirSync(out, { recursive: true }));
  const rows: Row[] = [];
  for (const name of names) rows.push(await packed(name, records[name] ?? null, options));
  const ratios = rows.flatMap((r) => (r.ratio === null ? [] : [r.ratio]));
  if (ratios.length > 0) {
    const mean = ratios.reduce((a, b) => a + b, 0) / ratios.length;
    console.log(`mean ratio ${mean.toFixed(4)}, least ${Math.min(...ratios).toFixed(4)}`);
  }
  return rows.every((r) => r.ok) ? 0 : 1;
}

function recordsIn(folder: string): Readonly<Record<string, number>> {
  const path = join(folder, 'records.json');
  if (!existsSync(path)) return {};
  return attempt(`${path} is no table of densities`, () => readRecords(readFileSync(path, 'utf8')));
}

/** The command can not begin; one line says why. */
class Refusal extends Error {}

/** @throws Refusal with what failed and why, on one line */
function attempt<T>(what: string, act: () => T): T {
  try {
    return act();
  } catch (error) {
    throw new Refusal(`${what}: ${oneLine(error)}`);
  }
}

const oneLine = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).replace(/\s+/g, ' ').trim();

async function packed(name: string, record: number | null, options: Options): Promise<Row> {
  const start = performance.now();
  try {
    const instance = readInstance(name, readFileSync(join(options.folder, `${name}.json`), 'utf8'));
    const problem = problemOf(instance);
    const layout = await packStrip(problem, { ...options, budget: budgetOf(options, start) });
    const seconds = (): string => ((performance.now() - start) / 1000).toFixed(1);
    if (!layout) {
      console.log(`${name.padEnd(12)} no layout within the budget, ${seconds()} s`);
      return { ratio: null, ok: false };
    }
    const settled = await exactLayout(instance, problem, layout, options);
    const result = resultOf(instance, problem, settled);
    const flaw = flawOf(instance, result);
    if (flaw) throw new Error(`the layout found is wrong: ${flaw}`);
    if (options.out !== undefined)
      writeFileSync(join(options.out, `${name}.json`), `${JSON.stringify(result)}\n`);
    const density = (100 * instance.area) / (instance.height * settled.length);
    const ratio = record === null ? null : density / record;
    const told = [
      `density ${density.toFixed(3)} %`,
      `record ${record === null ? 'none' : `${record.toFixed(3)} %`}`,
      `ratio ${ratio === null ? 'none' : ratio.toFixed(4)}`,
      `${seconds()} s`,
    ];
    console.log(`${name.padEnd(12)} ${told.join('  ')}`);
    return { ratio, ok: true };
  } catch (error) {
    console.log(`${name.padEnd(12)} ${oneLine(error)}`);
    return { ratio: null, ok: false };
  }
}

/** Places each thread may look at while outlines of true size are parted. */
const PARTING_LOOKS = 4_000_000;

/**
 * The layout settled with outlines of their true size. Where linear programs alone can not part what
 * was searched a trace too small, a short search from there does.
 */
async function exactLayout(
  instance: Instance,
  problem: StripProblem,
  layout: StripLayout,
  options: Options,
): Promise<StripLayout> {
  const solver = await loadSolver();
  const settled = settledLayout(solver, instance, problem, layout);
  if (!flawOf(instance, resultOf(instance, problem, settled))) return settled;
  const exact = { ...problemOf(instance, 0), start: settled.places };
  const budget = { kind: 'looks', looksPerThread: PARTING_LOOKS } as const;
  const parted = await packStrip(exact, { ...options, budget });
  return parted ? settledLayout(solver, instance, exact, parted) : settled;
}

/** Seconds count from the reading of the file on. */
function budgetOf({ looks, seconds = 60, threads }: Options, start: number): Budget {
  return looks === undefined
    ? { kind: 'seconds', seconds, start: start / 1000, now: () => performance.now() / 1000 }
    : { kind: 'looks', looksPerThread: looks / threads };
}

function positive(text: string): number {
  const value = Number(text);
  if (text.trim() !== '' && value > 0 && value < Infinity) return value;
  throw new InvalidArgumentError('It is a number above 0.');
}

/** Whole numbers from `least` to `most`. */
const whole =
  (least: number, most: number) =>
  (text: string): number => {
    const value = Number(text);
    if (text.trim() !== '' && Number.isInteger(value) && value >= least && value <= most)
      return value;
    throw new InvalidArgumentError(`It is a whole number from ${least} to ${most}.`);
  };

const threads = Math.min(4, availableParallelism());
const program = new Command('bench:nest')
  .exitOverride()
  .requiredOption('--folder <dir>', 'folder of instance files')
  .option('--seconds <number>', 'budget for each instance, 60 if nothing is said', positive)
  .addOption(
    new Option('--looks <number>', 'budget in places looked at: the same result anywhere')
      .argParser(positive)
      .conflicts('seconds'),
  )
  .option('--seed <number>', 'where the draws start', whole(0, 2 ** 32 - 1), 1)
  .option('--threads <number>', 'searches at once', whole(1, 64), threads)
  .option('--only <name>', 'this instance alone')
  .option('--out <dir>', 'write the layouts here');

try {
  process.exitCode = await main(program.parse().opts<Options>());
} catch (error) {
  if (error instanceof Refusal) console.error(error.message);
  // Commander has told its own already.
  else if (!(error instanceof CommanderError)) throw error;
  process.exitCode = error instanceof CommanderError && error.exitCode === 0 ? 0 : 2;
}
