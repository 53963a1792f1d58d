/** Runs the judges that use shapely, where there is one. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Debian's Python, which its package of shapely is for. */
const PYTHON = '/usr/bin/python3';
const FOLDER = join(import.meta.dirname, '../../.ci/outside');

/** False where shapely is not installed; `.ci/run` installs it. */
export const hasShapely = spawnSync(PYTHON, ['-c', 'import shapely']).status === 0;

/** For the title of tests that are skipped without it. */
export const WHY_SKIPPED = hasShapely ? '' : ' (skipped: /usr/bin/python3 has no shapely)';

export type Verdict = { readonly status: number | null; readonly lines: readonly string[] };

export function judge(script: string, ...files: readonly string[]): Verdict {
  const { status, stdout, stderr } = spawnSync(PYTHON, [join(FOLDER, script), ...files], {
    encoding: 'utf8',
  });
  return { status, lines: `${stdout}${stderr}`.trim().split('\n') };
}

/** A new folder with these files of JSON. */
export function folderOf(files: Readonly<Record<string, unknown>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'blankwright-judged-'));
  for (const [name, data] of Object.entries(files))
    writeFileSync(join(folder, name), JSON.stringify(data));
  return folder;
}

/** Kinds of flaws told in lines `where: kind: what`, of one file or result. */
export const kindsTold = ({ lines }: Verdict, where: string): string[] =>
  [
    ...new Set(
      lines
        .filter((line) => line.includes(where))
        .flatMap((line) => /: (\w+): /.exec(line)?.[1] ?? []),
    ),
  ].sort();
