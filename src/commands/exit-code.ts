/** The exit code problems ask for. */
import { isError } from '../messages.js';
import type { Problem } from '../problem.js';
import { EXIT } from '../terminal.js';

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
