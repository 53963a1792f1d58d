/**
 * `npm run -s bench:nest -- --folder DIR --seconds N [--seed S] [--only NAME] [--out DIR2]`: packs every
 * instance of a folder and compares its density with the published record. One line each: name,
 * density, record, ratio, seconds; then the mean and the least ratio.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { loadSolver } from '../linear/solver.js';
import { type Budget, packStrip } from '../pack/team.js';
import { flawOf, problemOf, readInstance, resultOf, settledLayout } from './nest-instance.js';

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
  if (!existsSync(folder)) return refuse(`${folder}: there is no such folder`);
  const names = readdirSync(folder)
    .filter((f) => f.endsWith('.json') && !NOT_INSTANCES.includes(f))
    .map((f) => f.slice(0, -'.json'.length))
    .filter((name) => only === undefined || name === only)
    .sort();
  if (names.length === 0)
    return refuse(`${folder}: no instance${only === undefined ? '' : ` ${only}`} in it`);
  const records = recordsIn(folder);
  if (out !== undefined) mkdirSync(out, { recursive: true });
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
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : {};
}

function refuse(line: string): number {
  console.error(line);
  return 2;
}

async function packed(name: string, record: number | null, options: Options): Promise<Row> {
  const start = performance.now();
  try {
    const instance = readInstance(name, readFileSync(join(options.folder, `${name}.json`), 'utf8'));
    const problem = problemOf(instance);
    const layout = await packStrip(problem, { ...options, budget: budgetOf(options, start) });
    const seconds = ((performance.now() - start) / 1000).toFixed(1);
    if (!layout) {
      console.log(`${name.padEnd(12)} no layout within the budget, ${seconds} s`);
      return { ratio: null, ok: false };
    }
    const settled = settledLayout(await loadSolver(), instance, problem, layout);
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
      `${seconds} s`,
    ];
    console.log(`${name.padEnd(12)} ${told.join('  ')}`);
    return { ratio, ok: true };
  } catch (error) {
    console.log(`${name.padEnd(12)} ${error instanceof Error ? error.message : String(error)}`);
    return { ratio: null, ok: false };
  }
}

/** Seconds count from the reading of the file on. */
function budgetOf({ looks, seconds = 60, threads }: Options, start: number): Budget {
  return looks === undefined
    ? { kind: 'seconds', seconds, start: start / 1000, now: () => performance.now() / 1000 }
    : { kind: 'looks', looksPerThread: looks / threads };
}

const number = (text: string): number => Number(text);

const program = new Command('bench:nest')
  .requiredOption('--folder <dir>', 'folder of instance files')
  .option('--seconds <number>', 'budget for each instance', number)
  .option(
    '--looks <number>',
    'budget in places looked at, instead: the same result anywhere',
    number,
  )
  .option('--seed <number>', 'where the draws start', number, 1)
  .option('--threads <number>', 'searches at once', number, Math.min(4, availableParallelism()))
  .option('--only <name>', 'this instance alone')
  .option('--out <dir>', 'write the layouts here');
process.exitCode = await main(program.parse().opts<Options>());
