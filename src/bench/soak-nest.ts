/**
 * `npm run soak:nest`: faces drawn by chance are nested and written as the record of a build tells
 * them, for judges from outside to read. What is right is not decided here.
 */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Nest } from '../nest/nest.js';
import { faceRecord, recordText } from '../record/build-json.js';
import { type FaceCase, faceCase } from './drawn-face.js';
import { nestOf } from './nest-door.js';

/** Faces a file holds: some megabytes. */
const FACES_PER_FILE = 50;
/** Cases on whose block nothing finds room come along; so many for each face asked for end the soak. */
const CASES_PER_FACE = 4;

/** Files of an earlier soak are taken away, nothing else. */
const FILE = /^faces-\d+\.json$/;

type Soaked = { readonly index: number; readonly asked: FaceCase; readonly nest: Nest };

const { count, seed, out, from } = asked();
mkdirSync(out, { recursive: true });
for (const file of readdirSync(out)) if (FILE.test(file)) rmSync(join(out, file));
const start = performance.now();
const tally = { faces: 0, outlines: 0, empty: 0, usedRatio: 0, slowestSeconds: 0, slowest: 0 };
let chunk: Soaked[] = [];
for (let index = from; tally.faces < count && index < from + CASES_PER_FACE * count; index++) {
  const begin = performance.now();
  const drawn = faceCase(seed, index);
  const nest = nestOf(drawn.parts, [drawn.block], drawn.rules);
  const seconds = (performance.now() - begin) / 1000;
  if (seconds > tally.slowestSeconds)
    Object.assign(tally, { slowestSeconds: seconds, slowest: index });
  if (nest.faces.length === 0) tally.empty++;
  for (const face of nest.faces) {
    tally.faces++;
    tally.outlines += face.placements.length;
    tally.usedRatio += face.usedRatio;
  }
  chunk.push({ index, asked: drawn, nest });
  if (tally.faces % FACES_PER_FILE === 0 || tally.faces === count) {
    if (chunk.length > 0) write(chunk);
    chunk = [];
  }
}
if (chunk.length > 0) write(chunk);
const seconds = ((performance.now() - start) / 1000).toFixed(1);
console.log(
  `${tally.faces} faces, ${tally.outlines} outlines, ${tally.empty} blocks on which nothing has room; ` +
    `mean used ratio ${(tally.usedRatio / Math.max(1, tally.faces)).toFixed(4)}; ` +
    `${seconds} s, slowest case ${tally.slowest} in ${tally.slowestSeconds.toFixed(1)} s; seed ${seed}; ${out}`,
);
if (tally.faces < count) {
  console.error(`only ${tally.faces} of ${count} faces hold an outline`);
  process.exitCode = 1;
}

function asked(): { count: number; seed: number; out: string; from: number } {
  const { values } = parseArgs({
    options: {
      count: { type: 'string', default: '200' },
      seed: { type: 'string', default: '1' },
      out: { type: 'string', default: 'output/soak-nest' },
      from: { type: 'string', default: '0' },
    },
  });
  const whole = (name: 'count' | 'seed' | 'from', least: number): number => {
    const value = Number(values[name]);
    if (!Number.isInteger(value) || value < least) {
      console.error(`--${name} ${values[name]}: a whole number from ${least}`);
      process.exit(2);
    }
    return value;
  };
  return {
    count: whole('count', 1),
    seed: whole('seed', 0),
    from: whole('from', 0),
    out: values.out,
  };
}

/** Cases side by side as one build: each part is named after its case. */
function write(soaked: readonly Soaked[]): void {
  const named = (index: number, part: string): string => `case-${index}-${part}`;
  const counts = (of: (s: Soaked) => Readonly<Record<string, number>>): Record<string, number> =>
    Object.fromEntries(
      soaked.flatMap((s) => Object.entries(of(s)).map(([part, n]) => [named(s.index, part), n])),
    );
  const faces = soaked.flatMap((s) =>
    s.nest.faces.map((face) => ({
      ...face,
      placements: face.placements.map((p) => ({ ...p, part: named(s.index, p.part) })),
    })),
  );
  const record = {
    schemaVersion: 1,
    kind: 'soak',
    name: `seed ${seed}`,
    patterns: soaked.flatMap(({ index, asked: { parts } }) =>
      parts.map(({ id, outline }) => ({
        name: named(index, id),
        outline: outline.map(([x, y]) => [x, y]),
      })),
    ),
    nest: {
      faces: faces.map((face, i) => faceRecord({ ...face, id: i + 1 })),
      made: counts((s) => s.nest.made),
      ordered: counts((s) => s.nest.ordered),
      missing: counts((s) => s.nest.missing),
    },
  };
  const first = String(soaked[0].index).padStart(6, '0');
  writeFileSync(join(out, `faces-${first}.json`), recordText(record));
}
