import type { Problem } from '../problem.js';
import { jsonDocument, type Terminal } from '../terminal.js';
import { exitCode } from './exit-code.js';
import { asData, counted, tellProblems } from './tell.js';

/** Ends a command whose file cannot be used: every problem, their count and what follows from it, the code. */
export function refused(
  command: string,
  problems: readonly Problem[],
  terminal: Terminal,
  so = '',
): number {
  tellProblems(problems, terminal);
  if (terminal.json) terminal.out(jsonDocument({ command, ok: false, problems: asData(problems) }));
  else terminal.err(`${counted(problems)}${so}.\n`);
  return exitCode(problems);
}
