/** `npm run bench`: ratios measured in one run. Nothing here is a test; a busy machine only blurs it. */
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { preparedSolid, reballasted } from '../afloat/floating.js';
import { shippedPath } from '../io.js';
import { shapedCg } from '../pipeline.js';
import { produce } from '../produce.js';
import { benchBallast } from './ballast.js';
import { benchCuts, benchEllipsoid, benchRests } from './float.js';
import { workDoor } from './jig-door.js';
import { benchJigTimes } from './jig-times.js';
import { benchJigs, oneOfEachKind } from './jigs.js';
import { makeRows } from './make.js';
import { printNestBoxes } from './nest-boxes-tables.js';
import { planRows } from './plan.js';
import { printedRows } from './printed.js';
import { table } from './table.js';

console.log('Booleans of each jig: manifold-3d against the same tree by @jscad/modeling');
const { made } = await produce(shippedPath('templates/first-ice.yaml'));
if (!made) throw new Error('the shipped run does not build');
table(
  benchJigs(
    made.kernel,
    oneOfEachKind(made.build.products.flatMap((p) => p.jigs.map(({ jig }) => jig))),
  ),
);

console.log('From a pattern to the bytes of its jigs, and their proof');
const door = workDoor();
for (const { pattern, blank, body, floating } of made.build.products) {
  const { materials } = made.build.job;
  const work = { pattern, blank, body, materials, shapedCgMm: shapedCg(floating) };
  table(benchJigTimes(made.kernel, work, door.setups));
}

console.log(
  'A body cut at a waterline, volume and center: our own cut against the mesh kernel’s plane split',
);
const lures = made.build.products.map((p) => p.floating);
table(lures.map((f) => benchCuts(made.kernel, f.pattern.name, f.piece.design.body.mesh)));
console.log('All rest attitudes of a lure, lip, hooks and coats with it');
table(lures.map((f) => benchRests(f.pattern.name, () => preparedSolid(f), f.load)));
console.log(
  'Ellipsoid at 20 drafts × 20 attitudes against its closed forms, greatest relative errors',
);
table([benchEllipsoid()]);
console.log('Ballast search, 10 bits × 2 holes');
table(lures.map((f) => benchBallast(f.pattern.name, () => reballasted(f, []).piece)));

printNestBoxes(made.build);
console.log('The plan of a run over 200 planks, and how near its bounds it comes');
table(await planRows(made.build.products.map((p) => p.blank)));

console.log('What is printed for six patterns');
table(await printedRows());

console.log('A whole make, from file to files on disk');
const rows = await makeRows();
table(rows);
const per = (i: number) => rows[i].seconds / rows[i].blanks;
for (const i of [2, 3]) {
  const growth = (rows[i].seconds / rows[i - 1].seconds).toFixed(2);
  const share = (per(i) / per(i - 1)).toFixed(3);
  console.log(
    `${rows[i - 1].blanks} → ${rows[i].blanks} blanks: ${growth} times the time, ${share} of it a blank (linear is 1)`,
  );
}

const out = join(tmpdir(), `blankwright-bench-${process.pid}`);
const cli = fileURLToPath(new URL('../cli.js', import.meta.url));
const cold = (args: readonly string[]) => {
  const start = performance.now();
  spawnSync(process.execPath, [cli, ...args], { stdio: 'ignore' });
  return ((performance.now() - start) / 1000).toFixed(2);
};
console.log(
  `Cold process: make one pattern ${cold(['make', shippedPath('templates/skerry.yaml'), '--out', out])} s, --help ${cold(['--help'])} s`,
);
rmSync(out, { recursive: true, force: true });
console.log(
  `Memory at the end: ${Math.round(process.memoryUsage().rss / 1e6)} MB resident, ${Math.round(process.resourceUsage().maxRSS / 1e3)} MB at most`,
);
