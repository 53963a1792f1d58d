import { spawnSync } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { stl } from '../../src/formats/stl.js';
import { threemf } from '../../src/formats/threemf.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { translation } from '../../src/solid/placement.js';
import { box, through } from '../solid/shapes.js';
import { folderOf, judge, kindsTold } from './shapely.js';

const hasSlicer =
  spawnSync('slic3r', ['--version']).status === 0 &&
  spawnSync('/usr/bin/python3', ['-c', 'import numpy']).status === 0;

const kernel = await loadKernel();
const plate = evaluate(kernel, {
  kind: 'subtract',
  from: box(60, 40, 10, [-20, -20, 0]),
  parts: [through(7)],
});
const post = evaluate(kernel, box(12, 12, 30));
const good = stl(plate, 'plate');

function changed(change: (bytes: DataView) => number): Uint8Array {
  const bytes = Uint8Array.from(good);
  return bytes.slice(0, change(new DataView(bytes.buffer)));
}
const open = changed((view) => {
  view.setUint32(80, view.getUint32(80, true) - 1, true);
  return view.byteLength - 50;
});
/** One facet of the top face, which is not in a plane through the origin, wound the other way. */
const turnedOver = changed((view) => {
  const at = (i: number) => 84 + 50 * i;
  const normalZ = (i: number) => view.getFloat32(at(i) + 8, true);
  const top = Array.from({ length: view.getUint32(80, true) }, (_, i) => i).find(
    (i) => normalZ(i) === 1,
  );
  if (top === undefined) throw new Error('no top');
  for (let k = 12; k < 24; k += 4) {
    const [a, b] = [view.getFloat32(at(top) + k, true), view.getFloat32(at(top) + k + 12, true)];
    view.setFloat32(at(top) + k, b, true);
    view.setFloat32(at(top) + k + 12, a, true);
  }
  return view.byteLength;
});
const pair = threemf({
  title: 'pair',
  description: 'pair',
  application: 'blankwright 9.9.9',
  parts: [
    { name: 'plate', mesh: plate, at: translation(20, 20, 0) },
    { name: 'post', mesh: post, at: translation(70, 0, 0) },
  ],
});

describe.skipIf(!hasSlicer)('the judge that slices (needs slic3r and numpy)', () => {
  const files: Record<string, { bytes: Uint8Array; kinds: string[] }> = {
    'plate.stl': { bytes: good, kinds: [] },
    'post.stl': { bytes: stl(post, 'post'), kinds: [] },
    'pair.3mf': { bytes: pair, kinds: [] },
    'open.stl': { bytes: open, kinds: ['mended'] },
    'turned-over.stl': { bytes: turnedOver, kinds: ['mended'] },
  };
  const folder = folderOf({});
  afterAll(() => rmSync(folder, { recursive: true }));
  const paths = Object.entries(files).map(([name, { bytes }]) => {
    writeFileSync(join(folder, name), bytes);
    return join(folder, name);
  });
  const verdict = judge('slice.py', ...paths);

  it.each(Object.entries(files))('%s', (name, { kinds }) => {
    expect(kindsTold(verdict, `/${name}`)).toEqual(kinds);
  });

  it('fails on flaws, and where there is nothing to slice', () => {
    expect(verdict.status).toBe(1);
    expect(verdict.lines.at(-1)).toBe('slic3r: 5 of 5 files sliced, 2 with flaws');
    expect(judge('slice.py', folder).status).toBe(1);
  });
});
