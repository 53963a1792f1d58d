/** Every shipped file × the same assertions; every broken file × exactly its code. */
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CATALOG, PROBLEM_CODES, type ProblemCode, tell } from '../src/messages.js';
import { produce } from '../src/produce.js';

const TEMPLATES = join(import.meta.dirname, '../templates');
const yamls = (dir: string) => readdirSync(dir).filter((f) => f.endsWith('.yaml'));
const shipped = yamls(TEMPLATES);
const broken = yamls(join(TEMPLATES, 'broken'));

/** Codes that no file of a few lines can show; other tests do. */
const SHOWN_ELSEWHERE: readonly ProblemCode[] = [
  'file-too-large',
  'file-unreadable',
  'opening-needs-threading',
  'outline-unreachable',
  'output-changed',
  'output-is-file',
  'output-is-here',
  'output-not-ours',
  'output-unwritable',
];

test('there are files, and every problem code has its broken one', () => {
  expect(shipped).toEqual(['first-ice.yaml', 'ghyll.yaml', 'holm.yaml', 'skerry.yaml']);
  const codes = [...broken.map((f) => f.replace('.yaml', '')), ...SHOWN_ELSEWHERE];
  expect(codes.sort()).toEqual([...PROBLEM_CODES].sort());
});

describe('shipped files build without a problem', () => {
  test.each(shipped)('%s', async (file) => {
    const { problems, made } = await produce(join(TEMPLATES, file));
    expect(problems).toEqual([]);
    expect(made).not.toBeNull();
  });
});

describe('broken files', () => {
  test.each(broken)('%s gives exactly its code, with place and numbers', async (file) => {
    const { problems, made } = await produce(join(TEMPLATES, 'broken', file));
    expect(problems.map((p) => p.code)).toEqual([file.replace('.yaml', '')]);
    const [{ code, facts, at }] = problems;
    expect(made === null).toBe(CATALOG[code].severity === 'error');
    expect(at?.file).toContain('templates');
    expect(at?.line).toBeGreaterThanOrEqual(1);
    for (const text of Object.values(tell(code, facts))) {
      expect(text).not.toMatch(/undefined|NaN mm|\?(?! |$)|\{\w+\}/);
      expect(text).not.toBe('');
    }
  });

  test('a warning stands beside the set, an error instead of it', () => {
    const warnings = PROBLEM_CODES.filter((c) => CATALOG[c].severity === 'warning');
    expect(warnings.length).toBeGreaterThan(2);
  });
});

describe('many problems at once', () => {
  const dir = mkdtempSync(join(tmpdir(), 'blankwright-'));
  const write = (name: string, edit: (text: string) => string): string => {
    const path = join(dir, name);
    writeFileSync(path, edit(readFileSync(join(TEMPLATES, 'skerry.yaml'), 'utf8')));
    return path;
  };

  test('slips in several sections, a crossing and a hole through the back are told together, by line', async () => {
    const path = write('several.yaml', (t) =>
      t
        .replace('angleDeg: 40', 'angleDeg: 400')
        .replace('depthMm: 14', 'depthMm: 31')
        .replace('timber: western-redcedar', 'timber: western-redceda')
        .replace('blockThicknessMm: 20', 'blockThicknesMm: 20'),
    );
    const { problems } = await produce(path);
    const found = problems.map((p) => p.code);
    expect(found).toContain('out-of-range');
    expect(found).toContain('hole-through-back');
    expect(found).toContain('unknown-timber');
    expect(found).toContain('unknown-key');
    expect(found).toContain('missing-key');
    const lines = problems.map((p) => p.at?.line ?? 0);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
    expect(
      tell('unknown-key', problems.find((p) => p.code === 'unknown-key')?.facts ?? {}).fix,
    ).toContain('blockThicknessMm');
  });

  test('a byte order mark and Windows line ends are read', async () => {
    const path = write('crlf.yaml', (t) => `\uFEFF${t.replace(/\n/g, '\r\n')}`);
    expect((await produce(path)).problems).toEqual([]);
  });

  test('a file that is too large is not even parsed', async () => {
    const path = write('large.yaml', (t) => t + '# '.padEnd(1 << 21, 'x'));
    const { problems } = await produce(path);
    expect(problems.map((p) => p.code)).toEqual(['file-too-large']);
  });
});
