/**
 * `npm run soak:nest -- --count N [--seed S] [--from CASE] [--out DIR]`: faces drawn by chance are
 * nested and written as the record of a build tells them, for judges from outside to read. What is
 * right is not decided here. Same seed, same files.
 */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { recordText } from '../record/build-json.js';
import { faceCase } from './drawn-face.js';
import { nestOf } from './nest-door.js';
import { soakArguments } from './soak-arguments.js';
import { type Soaked, soakRecord } from './soak-record.js';

/** Faces a file holds: some megabytes. */
const FACES_PER_FILE = 50;
/** Cases on whose block nothing finds room come along; so many for each face asked for end the soak. */
const CASES_PER_FACE = 4;
/** Files of an earlier soak are taken away, nothing else. */
const FILE = /^faces-\d+\.json$/;

const { count, seed, from, out } = soakArguments('output/soak-nest', { writes: false });
mkdirSync(out, { recursive: true });
for (const file of readdirSync(out)) if (FILE.test(file)) rmSync(join(out, file));

const tally = { faces: 0, outlines: 0, empty: 0, usedRatio: 0 };
const slowest = { index: from, seconds: 0 };
let unwritten: Soaked[] = [];
const start = performance.now();
for (let index = from; tally.faces < count && index < from + CASES_PER_FACE * count; index++) {
  const begin = performance.now();
  const drawn = faceCase(seed, index);
  const nest = nestOf(drawn.parts, [drawn.block], drawn.rules);
  const seconds = (performance.now() - begin) / 1000;
  if (seconds > slowest.seconds) Object.assign(slowest, { index, seconds });
  if (nest.faces.length === 0) tally.empty++;
  for (const { placements, usedRatio } of nest.faces) {
    tally.faces++;
    tally.outlines += placements.length;
    tally.usedRatio += usedRatio;
  }
  unwritten.push({ index, asked: drawn, nest });
  if (unwritten.filter((s) => s.nest.faces.length > 0).length === FACES_PER_FILE) write();
}
write();

const seconds = ((performance.now() - start) / 1000).toFixed(1);
console.log(
  `${tally.faces} faces, ${tally.outlines} outlines, ${tally.empty} blocks on which nothing has room; ` +
    `mean used ratio ${(tally.usedRatio / Math.max(1, tally.faces)).toFixed(4)}; ` +
    `${seconds} s, slowest case ${slowest.index} in ${slowest.seconds.toFixed(1)} s; seed ${seed}; ${out}`,
);
if (tally.faces < count) {
  console.error(`Only ${tally.faces} of ${count} faces hold an outline.`);
  process.exitCode = 1;
}

function write(): void {
  if (unwritten.length === 0) return;
  const first = String(unwritten[0].index).padStart(6, '0');
  writeFileSync(join(out, `faces-${first}.json`), recordText(soakRecord(seed, unwritten)));
  unwritten = [];
}
