import { spawnSync } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { afterAll, describe, expect, it } from 'vitest';
import { stl } from '../../src/formats/stl.js';
import { threemf } from '../../src/formats/threemf.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { placement, translation } from '../../src/solid/placement.js';
import { box, through } from '../solid/shapes.js';
import { folderOf, judge, kindsTold } from './shapely.js';

const kernel = await loadKernel();
const long = evaluate(kernel, {
  kind: 'subtract',
  from: box(60, 20, 10, [-20, -10, 0]),
  parts: [through(5)],
});
const cube = evaluate(kernel, box(10, 10, 10));
const set = {
  title: 'skerry',
  description: 'skerry 1.2',
  application: 'blankwright 9.9.9',
  parts: [
    // Turned by a quarter and moved, it covers 0 to 20 across and 0 to 60 up the bed.
    {
      name: 'long',
      mesh: long,
      at: placement([0, 1, 0], [-1, 0, 0], [0, 0, 1], [10, 20, 0]),
    },
    { name: 'cube', mesh: cube, at: translation(25, 0, 0) },
  ],
};
const good = threemf(set);

const MODEL = '3D/3dmodel.model';
/** The package with something of its model replaced. */
function changed(from: string | RegExp, to: string): Uint8Array {
  const members = unzipSync(good);
  const text = strFromU8(members[MODEL]);
  const other = text.replace(from, to);
  expect(other).not.toBe(text);
  return zipSync({ ...members, [MODEL]: strToU8(other) }, { mtime: new Date(1980, 0, 1) });
}

const READERS = 'import ctypes, numpy; ctypes.CDLL("lib3MF.so.1")';
const hasReaders =
  spawnSync('/usr/bin/python3', ['-c', READERS]).status === 0 &&
  spawnSync('xmllint', ['--version']).status === 0;

describe.skipIf(!hasReaders)('the judge of 3MF files (needs lib3mf, xmllint, numpy)', () => {
  const files: Record<string, { bytes: () => Uint8Array; kinds: string[] }> = {
    good: { bytes: () => good, kinds: [] },
    inch: { bytes: () => changed('unit="millimeter"', 'unit="inch"'), kinds: ['unit'] },
    'not-told': {
      bytes: () => changed(/<metadata name="Application">.*<\/metadata>/, ''),
      kinds: ['metadata'],
    },
    'unknown-metadata': {
      bytes: () => changed('name="Title"', 'name="Heading"'),
      kinds: ['reader', 'schema'],
    },
    open: { bytes: () => changed(/<triangle [^>]*>\n/, ''), kinds: ['object', 'stl'] },
    'turned-over': {
      bytes: () => changed(/v1="(\d+)" v2="(\d+)"/, 'v1="$2" v2="$1"'),
      kinds: ['object', 'stl'],
    },
    'off-the-bed': { bytes: () => changed(' 25 0 0"', ' 25 -1 0"'), kinds: ['place'] },
    'on-another': { bytes: () => changed(' 25 0 0"', ' 19 55 0"'), kinds: ['place'] },
    'beside-another': { bytes: () => changed(' 25 0 0"', ' 20 55 0"'), kinds: [] },
    'moved-corner': { bytes: () => changed('x="40"', 'x="40.001"'), kinds: ['stl'] },
    'no-stl': { bytes: () => changed('name="cube"', 'name="dice"'), kinds: ['stl'] },
    'no-object': {
      bytes: () => changed('objectid="2"', 'objectid="3"'),
      kinds: ['reader', 'schema'],
    },
    'not-a-number': { bytes: () => changed('x="40"', 'x="forty"'), kinds: ['schema', 'stl'] },
    today: {
      bytes: () => zipSync(unzipSync(good), { mtime: new Date(2020, 5, 1) }),
      kinds: ['package'],
    },
  };
  const folder = folderOf({});
  afterAll(() => rmSync(folder, { recursive: true }));
  for (const part of set.parts) {
    writeFileSync(join(folder, `${part.name}.stl`), stl(part.mesh, part.name));
  }
  for (const [name, { bytes }] of Object.entries(files)) {
    writeFileSync(join(folder, `${name}.3mf`), bytes());
  }
  const verdict = judge('threemf_judge.py', folder);

  it.each(Object.entries(files))('%s', (name, { kinds }) => {
    expect(kindsTold(verdict, `/${name}.3mf`)).toEqual(kinds);
  });

  it('fails on flaws, and where there is nothing to look at', () => {
    expect(verdict.status).toBe(1);
    expect(judge('threemf_judge.py', join(folder, 'nowhere')).status).toBe(1);
  });
});
