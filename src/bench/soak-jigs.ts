/**
 * `npm run soak:jigs -- --count N [--seed S] [--from CASE] [--write W] [--out DIR]`: all jigs, with
 * the set-ups that come with the program, of patterns drawn by chance. A check that fails stops the
 * soak with the case's number; what a set-up can not do has to come as a problem. Jigs of the first W
 * patterns are written as STL, for readers from outside. Same seed, same patterns.
 */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { stl } from '../formats/stl.js';
import { partName } from '../jig/print.js';
import { makeJigs } from '../jig/set.js';
import { loadKernel } from '../solid/kernel.js';
import { drawnPattern } from './drawn-pattern.js';
import { workDoor } from './jig-door.js';
import { soakArguments } from './soak-arguments.js';

/** Patterns that can not be made in wood come along; so many for each asked for end the soak. */
const CASES_PER_PATTERN = 6;
/** Files of an earlier soak are taken away, nothing else. */
const FILE = /^drawn-\d+-[a-z0-9-]+\.stl$/;

const { count, seed, from, write, out } = soakArguments('output/soak-jigs', { writes: true });
const kernel = await loadKernel();
const { workOf, setups } = workDoor();
if (write > 0) mkdirSync(out, { recursive: true });
if (write > 0) for (const file of readdirSync(out)) if (FILE.test(file)) rmSync(join(out, file));

const tally = { patterns: 0, jigs: 0, unmakeable: 0 };
const told = new Map<string, number>();
const slowest = { index: from, ms: 0 };
const start = performance.now();
let busyMs = 0;
for (let i = from; tally.patterns < count && i < from + CASES_PER_PATTERN * count; i++) {
  const work = workOf(drawnPattern(seed, i));
  if (!work) {
    tally.unmakeable++;
    continue;
  }
  const begin = performance.now();
  const { jigs, problems } = inCase(i, () => makeJigs(kernel, work, setups));
  const ms = performance.now() - begin;
  busyMs += ms;
  if (ms > slowest.ms) Object.assign(slowest, { index: i, ms });
  tally.patterns++;
  tally.jigs += jigs.length;
  for (const { code } of problems) told.set(code, (told.get(code) ?? 0) + 1);
  if (tally.patterns > write) continue;
  for (const { jig, parts } of jigs)
    for (const part of parts) {
      const name = partName(jig, part);
      writeFileSync(join(out, `${name}.stl`), stl(part.mesh, name));
    }
}

const seconds = ((performance.now() - start) / 1000).toFixed(1);
console.log(
  `${tally.patterns} patterns, ${tally.jigs} jigs, every check passed; ${tally.unmakeable} drawings no wood allows; ` +
    `${(busyMs / Math.max(1, tally.patterns)).toFixed(0)} ms a pattern, slowest case ${slowest.index} in ${slowest.ms.toFixed(0)} ms; ` +
    `${seconds} s; seed ${seed}`,
);
for (const [code, times] of [...told].sort()) console.log(`${times} × ${code}`);
if (tally.patterns < count) {
  console.error(`Only ${tally.patterns} of ${count} patterns can be made in wood.`);
  process.exitCode = 1;
}

function inCase<T>(index: number, work: () => T): T {
  try {
    return work();
  } catch (error) {
    console.error(`case ${index} of seed ${seed}`);
    throw error;
  }
}
