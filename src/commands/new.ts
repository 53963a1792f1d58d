/** `blankwright new pattern|run NAME`: a commented file to start from. */
import { relative, sep } from 'node:path';
import { isThere, shippedPath, writeNew } from '../io.js';
import { load } from '../load.js';
import { nearest } from '../pattern/nearest.js';
import { patternSections } from '../pattern/schema.js';
import { type Problem, problem } from '../problem.js';
import { EXIT, jsonDocument, refuse, type Terminal } from '../terminal.js';
import { refused } from './refused.js';
import { patternStarter, runStarter } from './starter.js';
import { type StarterStock, stockFor, USUAL_STOCK } from './starter-stock.js';

const KINDS = ['pattern', 'run'];

/** Files written, in this folder: NAME.yaml, and for a run without `pattern` also NAME-lure.yaml to order. */
export async function create(
  kind: string,
  name: string,
  pattern: string | null,
  terminal: Terminal,
): Promise<number> {
  if (!KINDS.includes(kind)) {
    const guess = nearest(kind, KINDS);
    return refuse(
      'new',
      `There is no kind ${kind}: write pattern or run.${guess ? ` Did you mean ${guess}?` : ''}`,
      terminal,
    );
  }
  if (kind === 'pattern' && pattern !== null)
    return refuse('new', '--pattern goes with `new run`.', terminal);
  if (!patternSections.name.safeParse(name).success) {
    return refuse(
      'new',
      `${name} cannot be a name: lower case letters, digits and hyphens, at most 40.`,
      terminal,
    );
  }
  const stock = pattern === null ? USUAL_STOCK : stockOf(pattern);
  if ('problems' in stock) return refused('new', stock.problems, terminal, '; nothing was written');
  const lure = `${name}-lure`;
  const files =
    kind === 'pattern'
      ? [{ path: `${name}.yaml`, text: patternStarter(name, schemaPath('pattern')) }]
      : [
          ...(pattern === null
            ? [{ path: `${lure}.yaml`, text: patternStarter(lure, schemaPath('pattern')) }]
            : []),
          {
            path: `${name}.yaml`,
            text: runStarter(name, pattern ?? `${lure}.yaml`, stock, schemaPath('run')),
          },
        ];
  const taken = files.find((f) => isThere(f.path));
  if (taken)
    return refuse(
      'new',
      `${taken.path} is there already; nothing was written. Choose another name.`,
      terminal,
    );
  for (const { path, text } of files) {
    try {
      writeNew(path, text);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      return refuse('new', `${path} cannot be written (${code}).`, terminal);
    }
  }
  const paths = files.map((f) => f.path);
  if (terminal.json) terminal.out(jsonDocument({ command: 'new', ok: true, files: paths }));
  else terminal.out(`${paths.join(', ')} written. Next: blankwright make ${name}.yaml\n`);
  return EXIT.done;
}

/** What the pattern in a file is made from, or why it cannot be told. */
function stockOf(pattern: string): StarterStock | { readonly problems: readonly Problem[] } {
  const { job, problems } = load(pattern);
  if (job?.kind === 'run')
    return {
      problems: [problem('wrong-kind', [], { file: pattern, kind: 'run', wanted: 'pattern' })],
    };
  return job === null || problems.length > 0 ? { problems } : stockFor(job.orders[0].pattern);
}

/** Where an editor finds the schema, from this folder. */
const schemaPath = (kind: string): string =>
  relative('.', shippedPath(`schema/${kind}.schema.json`))
    .split(sep)
    .join('/');
