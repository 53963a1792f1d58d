import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readSource, type Source } from '../../src/pattern/source.js';
import { type Change, nextVersion, rewritten } from '../../src/pattern/version.js';

const skerry = readFileSync(join(import.meta.dirname, '../../templates/skerry.yaml'), 'utf8');
const write = (text: string, changes: readonly Change[]) =>
  rewritten(text, readSource('x.yaml', text) as Source, changes, 'Version 1.4, made from 1.3');

test.each([
  ['1.3', '1.4'],
  ['1.9', '1.10'],
  ['2', '3'],
  ['2.1a', '2.2'],
  ['0.1.7', '0.1.8'],
])('the version after %s is %s', (from, to) => {
  expect(nextVersion(from)).toBe(to);
});

test('only the changed values change; every other line stays as it is, comments too', () => {
  const changes = [
    { key: 'version', lines: ['"1.4"'] },
    {
      key: 'ballast',
      lines: [
        '- { stationMm: 33, diameterMm: 8, depthMm: 14.2, metal: lead }',
        '- { stationMm: 47, diameterMm: 8, depthMm: 9, metal: lead }',
      ],
    },
  ];
  const text = write(skerry, changes);
  const again = readSource('y.yaml', text) as Source;
  expect(again.data.version).toBe('1.4');
  expect(again.data.ballast).toHaveLength(2);
  const [before, after] = [skerry, text].map((t) => t.split('\n'));
  const lost = before.filter((l) => !after.includes(l));
  expect(lost).toEqual([
    'version: "1.3"',
    '  - { stationMm: 35, diameterMm: 8, depthMm: 14, metal: lead }',
  ]);
  expect(after.length).toBe(before.length + 2);
  expect(after[1]).toBe('# Version 1.4, made from 1.3');
});

test.each([
  ['in braces', '{"version":"1","ballast":[{"stationMm":30}],"timber":"x"}'],
  ['in braces over lines', '{\n  "version": "1",\n  "ballast": [],\n  "timber": "x"\n}\n'],
  ['with document marks', '---\nversion: "1"\nballast: []\ntimber: x\n...\n'],
  ['with Windows line ends', 'version: "1"\r\nballast:\r\n  - { stationMm: 3 }\r\ntimber: x\r\n'],
  ['with an empty value', 'version: "1"\nballast:\ntimber: x\n'],
  ['with a comment at the end', 'version: "1"\nballast: []\ntimber: x # light\n# the end\n'],
])('a file %s is read back as it was meant', (_, text) => {
  const out = write(text, [
    { key: 'version', lines: ['"2"'] },
    { key: 'ballast', lines: ['- { stationMm: 31 }', '- { stationMm: 47 }'] },
    { key: 'wish', lines: ['buoyancy: floats', 'dryRatio: 0.1'] },
  ]);
  expect((readSource('z.yaml', out) as Source).data).toEqual({
    version: '2',
    ballast: [{ stationMm: 31 }, { stationMm: 47 }],
    timber: 'x',
    wish: { buoyancy: 'floats', dryRatio: 0.1 },
  });
});

test('a key that is not there is added at the end, flow style and missing last newline are read', () => {
  const text = 'version: "1"\nballast: [ { stationMm: 30 } ] # the old hole\ntimber: x';
  const out = write(text, [
    { key: 'ballast', lines: ['- { stationMm: 31 }'] },
    { key: 'wish', lines: ['buoyancy: floats', 'dryRatio: 0.1'] },
  ]);
  expect((readSource('z.yaml', out) as Source).data).toEqual({
    version: '1',
    ballast: [{ stationMm: 31 }],
    timber: 'x',
    wish: { buoyancy: 'floats', dryRatio: 0.1 },
  });
  expect(out).toContain('# the old hole');
});
