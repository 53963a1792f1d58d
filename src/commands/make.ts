/** `blankwright make FILE`: the whole set, or nothing. */
import { join } from 'node:path';
import { outputProblem, readFaces, sha256, writeSet } from '../io.js';
import { isError } from '../messages.js';
import { type Produced, produce } from '../produce.js';
import { fileSet, type MadeFile } from '../record/file-set.js';
import { manifestText } from '../record/manifest.js';
import { jsonDocument, refuse, type Terminal, type Tool } from '../terminal.js';
import { ArgumentProblem } from './arguments.js';
import { effortOf } from './effort.js';
import { exitCode } from './exit-code.js';
import { paperWish } from './paper-options.js';
import { refused } from './refused.js';
import { summary, summaryData } from './summary.js';
import { asData, tellProblems } from './tell.js';
import type { Brief, Watching } from './thread.js';

type MakeBrief = Brief & { readonly command: 'make' };

export async function make(
  brief: MakeBrief,
  terminal: Terminal,
  watching: Watching,
): Promise<number> {
  try {
    return await makeFile(brief, terminal, watching);
  } catch (error) {
    if (error instanceof ArgumentProblem) return refuse('make', error.message, terminal);
    throw error;
  }
}

async function makeFile(
  { file, options, tool }: MakeBrief,
  terminal: Terminal,
  { shouldStop, tell, uncut }: Watching,
): Promise<number> {
  const effort = effortOf(options);
  const paper = paperWish(options);
  const out = options.out ?? null;
  // What is cheap is looked at before what is slow.
  const early = out === null ? null : outputProblem(out);
  if (early) return refused('make', [early], terminal, NOTHING);
  const inches = options.inches ?? false;
  const produced = await produce(file, { shouldStop, tell, effort, paper, inches });
  const { problems, made } = produced;
  if (!made || problems.some(isError)) return refused('make', problems, terminal, NOTHING);
  const dir = out ?? join('output', made.build.job.name);
  const files = await deliver(produced, made, tool);
  const failure = outputProblem(dir) ?? uncut(() => writeSet(dir, files));
  if (failure) return refused('make', [...problems, failure], terminal, NOTHING);
  tellProblems(problems, terminal);
  if (terminal.json) {
    const facts = { command: 'make', ok: true, out: dir, problems: asData(problems) };
    terminal.out(
      jsonDocument({ ...facts, ...summaryData(made.build), files: files.map((f) => f.path) }),
    );
  } else {
    terminal.out(summary(made.build, dir));
  }
  return exitCode(problems);
}

const NOTHING = '; nothing was written';

type Written = Pick<MadeFile, 'path' | 'bytes'>;

async function deliver(
  { inputs }: Produced,
  made: NonNullable<Produced['made']>,
  tool: Tool,
): Promise<Written[]> {
  const words = `${tool.name} ${tool.version}`;
  const files = await fileSet(made.build, made.kernel, words, readFaces());
  const manifest = manifestText(tool, inputs, files, sha256);
  return [...files, { path: 'manifest.json', bytes: new TextEncoder().encode(manifest) }];
}
