/** `blankwright check FILE`: every problem, nothing written. */

import { isError } from '../messages.js';
import type { Problem } from '../problem.js';
import { produce } from '../produce.js';
import { EXIT, jsonDocument, type Terminal } from '../terminal.js';
import { asData, counted, tellProblems } from './tell.js';

export async function check(file: string, terminal: Terminal): Promise<number> {
  const { problems } = await produce(file);
  const ok = !problems.some(isError);
  tellProblems(problems, terminal);
  if (terminal.json)
    terminal.out(jsonDocument({ command: 'check', ok, problems: asData(problems) }));
  else
    terminal.out(
      problems.length === 0 ? `${file}: no problems\n` : `${file}: ${counted(problems)}\n`,
    );
  return exitCode(problems);
}

/** Problems that are about reaching a file at all, rather than about what it says. */
const UNREACHED = new Set<Problem['code']>([
  'file-missing',
  'file-is-folder',
  'file-unreadable',
  'output-is-file',
  'output-not-ours',
  'output-changed',
  'output-is-here',
  'output-unwritable',
]);

/** 2 when the file named or the folder to write cannot be used at all, 1 for errors, 0 otherwise. */
export function exitCode(problems: readonly Problem[]): number {
  if (problems.some((p) => UNREACHED.has(p.code) && p.path.length === 0)) return EXIT.usage;
  return problems.some(isError) ? EXIT.wrong : EXIT.done;
}
