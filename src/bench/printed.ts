/** How long what is printed takes for a run of six patterns: the pages at true size, the views, the shop sheet. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readFaces, shippedPath } from '../io.js';
import type { Build } from '../pipeline.js';
import { produce } from '../produce.js';
import { buildRecord, recordText } from '../record/build-json.js';
import { jigPaths } from '../record/jig-files.js';
import { paperFiles } from '../record/paper-files.js';
import { sheetFiles } from '../record/sheet-files.js';
import { viewFiles } from '../record/view-files.js';

export type PrintedRow = {
  readonly what: string;
  readonly ms: number;
  /** Over what all of it may take. */
  readonly ofLimit: number;
  readonly files: number;
  readonly kB: number;
};

/** What six patterns may take besides their nest. */
const LIMIT_MS = 3000;

/** Each part in a warm process. */
export async function printedRows(): Promise<PrintedRow[]> {
  const build = await sixPatterns();
  const faces = readFaces();
  const recorded = recordText(buildRecord(build, 'bench', jigPaths));
  const parts = {
    'pages at true size': () => paperFiles(build.papers, faces),
    views: () => viewFiles(build, 'bench', faces),
    'shop sheet': () => sheetFiles(build, recorded, faces),
  };
  const rows: PrintedRow[] = [];
  for (const [what, make] of Object.entries(parts)) {
    await make();
    const start = performance.now();
    const files = await make();
    const ms = performance.now() - start;
    rows.push(row(what, ms, files.length, files.reduce((sum, f) => sum + f.bytes.length, 0) / 1e3));
  }
  const sum = (key: 'ms' | 'files' | 'kB') => rows.reduce((all, r) => all + r[key], 0);
  return [...rows, row('together', sum('ms'), sum('files'), sum('kB'))];
}

const row = (what: string, ms: number, files: number, kB: number): PrintedRow => ({
  what,
  ms: Math.round(ms),
  ofLimit: Number((ms / LIMIT_MS).toFixed(3)),
  files,
  kB: Math.round(kB),
});

/** The shipped run with two sizes of each of its patterns. */
async function sixPatterns(): Promise<Build> {
  const dir = mkdtempSync(join(tmpdir(), 'blankwright-bench-'));
  try {
    const file = join(dir, 'six.yaml');
    const lines = ['skerry', 'ghyll', 'holm'].flatMap((name) => {
      const pattern = JSON.stringify(shippedPath(`templates/${name}.yaml`));
      const size = `scaleRatio: 0.95, blockThicknessMm: 20, name: ${name}-small`;
      return [
        `  - { pattern: ${pattern}, count: 8 }`,
        `  - { pattern: ${pattern}, ${size}, count: 4 }`,
      ];
    });
    const text = readFileSync(shippedPath('templates/first-ice.yaml'), 'utf8');
    const orders = `orders:\n${lines.join('\n')}\n`;
    writeFileSync(file, text.replace(/orders:\n( {2}- .*\n)+/, orders).concat('jigs: []\n'));
    const { made, problems } = await produce(file);
    if (!made) throw new Error(JSON.stringify(problems));
    return made.build;
  } finally {
    rmSync(dir, { recursive: true, force: true });
  }
}
