/** How long a whole build takes, and how it grows with the order. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readFaces, sha256, shippedPath, writeSet } from '../io.js';
import { produce } from '../produce.js';
import { fileSet } from '../record/file-set.js';
import { manifestText } from '../record/manifest.js';

export type MakeRow = {
  readonly what: string;
  readonly blanks: number;
  /** Median of the runs, from file to files on disk, in one process that is warm. */
  readonly seconds: number;
  readonly usedRatio: number | null;
  readonly faces: number;
};

const RUNS = 3;

/** One pattern alone, then orders of 10, 100 and 1000 of it with timber to match. */
export async function makeRows(): Promise<MakeRow[]> {
  const dir = mkdtempSync(join(tmpdir(), 'blankwright-bench-'));
  try {
    const rows: MakeRow[] = [];
    const pattern = shippedPath('templates/skerry.yaml');
    rows.push(await timed('one pattern', 1, pattern, dir));
    for (const count of [10, 100, 1000]) {
      const file = join(dir, `run-${count}.yaml`);
      writeFileSync(file, order(count, pattern));
      rows.push(await timed(`a run of ${count}`, count, file, dir));
    }
    return rows;
  } finally {
    rmSync(dir, { recursive: true, force: true });
  }
}

/** The shipped run with one line in its order and as many blocks as that can need. */
function order(count: number, pattern: string): string {
  const text = readFileSync(shippedPath('templates/first-ice.yaml'), 'utf8');
  return text
    .replace(
      /orders:\n( {2}- .*\n)+/,
      `orders:\n  - { pattern: ${JSON.stringify(pattern)}, count: ${count} }\n`,
    )
    .replace(/ {4}count: \d+\n/, `    count: ${Math.max(10, count)}\n`);
}

async function timed(what: string, blanks: number, file: string, dir: string): Promise<MakeRow> {
  const seconds: number[] = [];
  let facts: Pick<MakeRow, 'usedRatio' | 'faces'> = { usedRatio: null, faces: 0 };
  for (let run = 0; run <= RUNS; run++) {
    const start = performance.now();
    const { made, inputs, problems } = await produce(file);
    if (!made) throw new Error(`${what}: ${JSON.stringify(problems)}`);
    const files = await fileSet(made.build, made.kernel, 'bench', readFaces());
    const manifest = manifestText({ name: 'bench', version: '0' }, inputs, files, sha256);
    const failure = writeSet(join(dir, 'set'), [
      ...files,
      { path: 'manifest.json', bytes: new TextEncoder().encode(manifest) },
    ]);
    if (failure) throw new Error(JSON.stringify(failure));
    // The first run warms the process and does not count.
    if (run > 0) seconds.push((performance.now() - start) / 1000);
    facts = { usedRatio: made.build.nest?.usedRatio ?? null, faces: made.build.faces.length };
  }
  return { what, blanks, seconds: seconds.sort((a, b) => a - b)[RUNS >> 1], ...facts };
}
