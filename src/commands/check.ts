/** `blankwright check FILE`: every problem, nothing written. */

import { isError } from '../messages.js';
import { produce } from '../produce.js';
import { jsonDocument, type Terminal } from '../terminal.js';
import { exitCode } from './exit-code.js';
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
