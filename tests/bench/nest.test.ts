/** The command that packs open instances, as a process of its own. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { ROOT } from '../cli/run.js';

const made: string[] = [];
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true });
});

function folderOf(files: Readonly<Record<string, unknown>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'blankwright-nest-'));
  made.push(folder);
  for (const [name, data] of Object.entries(files))
    writeFileSync(join(folder, name), typeof data === 'string' ? data : JSON.stringify(data));
  return folder;
}

function run(...args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(ROOT, 'dist/bench/nest.js'), ...args],
    { encoding: 'utf8', timeout: 50_000 },
  );
  return { status, lines: stdout.trimEnd().split('\n'), told: stderr };
}

/** A bar of 3 × 2 and two squares of 2, one of them only turned, in a strip of 2: 7 long, full. */
const tiny = {
  name: 'told otherwise',
  strip_height: 2,
  items: [
    {
      id: 0,
      demand: 1,
      allowed_orientations: [0],
      shape: {
        type: 'simple_polygon',
        data: [
          [0, 0],
          [3, 0],
          [3, 2],
          [0, 2],
          [0, 0],
        ],
      },
    },
    {
      id: 1,
      demand: 1,
      allowed_orientations: [0],
      shape: {
        type: 'simple_polygon',
        data: [
          [0, 0],
          [2, 0],
          [2, 2],
          [0, 2],
          [0, 0],
        ],
      },
    },
    {
      id: 2,
      demand: 1,
      allowed_orientations: [90],
      shape: {
        type: 'simple_polygon',
        data: [
          [0, 0],
          [2, 0],
          [2, 2],
          [0, 2],
          [0, 0],
        ],
      },
    },
  ],
};
const LOOKS = ['--looks', '1000', '--threads', '1'];

describe('a folder', () => {
  const folder = folderOf({
    'tiny.json': tiny,
    'other.json': tiny,
    'records.json': { tiny: 80 },
    'package.json': { name: 'not an instance' },
    'notes.txt': 'nothing',
  });
  const out = join(folderOf({}), 'deep', 'results');

  test('one line for each instance in order of name, then the ratios; results as files', () => {
    const { status, lines, told } = run('--folder', folder, '--out', out, ...LOOKS);
    expect(told).toBe('');
    expect(lines[0]).toMatch(
      /^other {8}density 100\.000 % {2}record none {2}ratio none {2}\d+\.\d s$/,
    );
    expect(lines[1]).toMatch(
      /^tiny {9}density 100\.000 % {2}record 80\.000 % {2}ratio 1\.2500 {2}\d+\.\d s$/,
    );
    expect(lines.slice(2)).toEqual(['mean ratio 1.2500, least 1.2500']);
    expect(status).toBe(0);
    expect(readdirSync(out).sort()).toEqual(['other.json', 'tiny.json']);
    const result = JSON.parse(readFileSync(join(out, 'tiny.json'), 'utf8'));
    expect(Object.keys(result)).toEqual(['name', 'stripHeight', 'length', 'placements']);
    expect(result.name).toBe('tiny');
    expect(result.stripHeight).toBe(2);
    expect(result.length).toBeCloseTo(7, 6);
    expect(result.placements).toHaveLength(3);
    result.placements.forEach((p: Record<string, number>, i: number) => {
      expect(Object.keys(p)).toEqual(['item', 'turnDeg', 'x', 'y']);
      expect([p.item, p.turnDeg]).toEqual([i, [0, 0, 90][i]]);
      expect(p.y).toBeCloseTo(0, 6);
    });
    // Left ends: the turned square lies left of its origin.
    const ends = result.placements.map(({ x }: { x: number }, i: number) => (i === 2 ? x - 2 : x));
    const lengths = [3, 2, 2];
    const order = [0, 1, 2].sort((a, b) => ends[a] - ends[b]);
    let at = 0;
    for (const i of order) {
      expect(ends[i]).toBeCloseTo(at, 6);
      at += lengths[i];
    }
  });

  test('one instance alone, the same result each time', () => {
    const again = join(folderOf({}), 'again');
    const { status, lines } = run('--folder', folder, '--only', 'tiny', '--out', again, ...LOOKS);
    expect([status, lines.length]).toEqual([0, 2]);
    expect(readFileSync(join(again, 'tiny.json'), 'utf8')).toBe(
      readFileSync(join(out, 'tiny.json'), 'utf8'),
    );
  });

  test('a broken instance says why on its line; the others are packed; exit 1', () => {
    const mixed = folderOf({
      'a.json': '{ nothing',
      'b.json': { ...tiny, strip_height: 1 },
      'c.json': { strip_height: 2, items: [] },
      'd.json': tiny,
    });
    const { status, lines, told } = run('--folder', mixed, ...LOOKS);
    expect([status, told, lines.length]).toEqual([1, '', 4]);
    expect(lines[0]).toMatch(/^a {12}.*JSON/);
    expect(lines[1]).toBe('b            item 0 is 2 high; the strip is 1 high');
    expect(lines[2]).toMatch(/^c {12}items: /);
    expect(lines[3]).toMatch(/^d {12}density 100\.000 %/);
  });

  test.each<readonly [string, readonly string[], RegExp]>([
    ['no folder said', [], /--folder/],
    ['no such folder', ['--folder', join(folder, 'none')], /^cannot read folder .*none/],
    ['no instance in it', ['--folder', folderOf({ 'records.json': {} })], /no instance in it/],
    ['no such instance', ['--folder', folder, '--only', 'ghyll'], /no instance ghyll in it/],
    ['words for seconds', ['--folder', folder, '--seconds', 'abc'], /above 0/],
    ['seconds below 0', ['--folder', folder, '--seconds', '-3'], /above 0/],
    ['0 threads', ['--folder', folder, '--threads', '0'], /whole number from 1 to 64/],
    ['two budgets', ['--folder', folder, '--seconds', '3', '--looks', '3'], /cannot be used with/],
    [
      'records that are none',
      ['--folder', folderOf({ 'a.json': tiny, 'records.json': { a: 'x' } })],
      /no table of densities: a: /,
    ],
    [
      'a file for results',
      ['--folder', folder, '--out', join(folder, 'notes.txt')],
      /^cannot make folder /,
    ],
  ])('%s: one line, exit 2', (_, args, line) => {
    const { status, lines, told } = run(...args);
    expect(status).toBe(2);
    expect(lines).toEqual(['']);
    expect(told.trimEnd()).toMatch(line);
    expect(told.trimEnd()).not.toContain('\n');
  });
});
