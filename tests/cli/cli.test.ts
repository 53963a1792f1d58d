/** The built command line, run as a maker would: exit codes, streams, files left as they were. */
import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { patternStarter } from '../../src/commands/starter.js';
import { PROBLEM_CODES } from '../../src/messages.js';
import { CLI, ROOT, runCli, type Where } from './run.js';

const work = mkdtempSync(join(tmpdir(), 'blankwright-cli-'));

const run = (args: readonly string[], where: Where = {}) => runCli(args, { cwd: work, ...where });

/** Every file below a folder with its hash. */
const snapshot = (dir: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(dir, { recursive: true, withFileTypes: true })
      .filter((e) => e.isFile())
      .map((e) => join(e.parentPath, e.name))
      .sort()
      .map((f) => [
        f.slice(dir.length + 1),
        createHash('sha256').update(readFileSync(f)).digest('hex'),
      ]),
  );

const edited = (name: string, edit: (text: string) => string): string => {
  const path = join(work, name);
  writeFileSync(path, edit(readFileSync(join(ROOT, 'templates/holm.yaml'), 'utf8')));
  return path;
};

beforeAll(() => {
  expect(existsSync(CLI), 'npm run build comes before the tests').toBe(true);
  cpSync(join(ROOT, 'templates/holm.yaml'), join(work, 'holm.yaml'));
});

describe('make', () => {
  test('writes the whole set, its manifest true to the bytes, and the same bytes again', () => {
    const one = run(['make', 'holm.yaml', '--out', 'set']);
    expect(one.stderr).toBe('');
    expect(one.status).toBe(0);
    expect(one.stdout).toContain('Look first at set/templates/holm.svg');
    const files = snapshot(join(work, 'set'));
    const manifest = JSON.parse(readFileSync(join(work, 'set/manifest.json'), 'utf8'));
    expect(Object.keys(manifest)).toEqual(['tool', 'version', 'inputs', 'files']);
    expect(manifest.files.length).toBe(Object.keys(files).length - 1);
    for (const { path, sha256 } of manifest.files) expect(files[path]).toBe(sha256);
    const kinds = manifest.files.map((f: { kind: string }) => f.kind);
    expect([...new Set(kinds)]).toEqual([
      'sheet',
      'template',
      'gauge',
      'round-over-map',
      'printer-check',
      'picture',
      'view',
      'jig',
      'body',
      'blank',
      'build',
    ]);
    expect(manifest.inputs.map((i: { path: string }) => i.path)).toContain('holm.yaml');
    expect(run(['make', 'holm.yaml', '--out', 'again']).status).toBe(0);
    expect(snapshot(join(work, 'again'))).toEqual(files);
    // A third build over the first changes nothing and leaves nothing beside it.
    expect(run(['make', 'holm.yaml', '--out', 'set']).status).toBe(0);
    expect(snapshot(join(work, 'set'))).toEqual(files);
    expect(readdirSync(work).filter((f) => f.startsWith('.'))).toEqual([]);
  });

  test('an error leaves the earlier set as it was', () => {
    const before = snapshot(join(work, 'set'));
    const path = edited('through.yaml', (t) => t.replace('depthMm: 15', 'depthMm: 40'));
    const { status, stderr, stdout } = run(['make', path, '--out', 'set']);
    expect(status).toBe(1);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/through\.yaml:\d+:\d+: error hole-through-back/);
    expect(stderr).toContain('nothing was written');
    expect(snapshot(join(work, 'set'))).toEqual(before);
  });

  test('a folder with files of somebody else is left alone', () => {
    mkdirSync(join(work, 'mine'));
    writeFileSync(join(work, 'mine/notes.txt'), 'swims well');
    const { status, stderr } = run(['make', 'holm.yaml', '--out', 'mine']);
    expect(status).toBe(2);
    expect(stderr).toContain('output-not-ours');
    expect(stderr).toContain('notes.txt');
    expect(readdirSync(join(work, 'mine'))).toEqual(['notes.txt']);
  });

  test.each(['', '.', 'sub/..', './'])(
    '--out %j, which is the folder one is in, loses nothing',
    (out) => {
      const here = mkdtempSync(join(tmpdir(), 'blankwright-here-'));
      cpSync(join(ROOT, 'templates/holm.yaml'), join(here, 'holm.yaml'));
      const { status, stderr } = run(['make', 'holm.yaml', '--out', out], { cwd: here });
      expect(status).toBe(2);
      expect(stderr).toContain('output-not-ours');
      expect(readdirSync(here)).toEqual(['holm.yaml']);
    },
  );

  test('a set edited by hand, a strange manifest, the folder of the shell, a link', () => {
    const place = mkdtempSync(join(tmpdir(), 'blankwright-places-'));
    const holm = join(ROOT, 'templates/holm.yaml');
    expect(run(['make', holm, '--out', 'set'], { cwd: place }).status).toBe(0);
    const inside = run(['make', holm, '--out', '.'], { cwd: join(place, 'set') });
    expect(inside).toMatchObject({ status: 2 });
    expect(inside.stderr).toContain('output-is-here');
    writeFileSync(join(place, 'set/templates/holm.svg'), 'mine');
    expect(run(['make', holm, '--out', 'set'], { cwd: place }).stderr).toContain('output-changed');
    expect(readFileSync(join(place, 'set/templates/holm.svg'), 'utf8')).toBe('mine');
    mkdirSync(join(place, 'odd'));
    writeFileSync(join(place, 'odd/notes.txt'), 'mine');
    writeFileSync(join(place, 'odd/manifest.json'), '{"files":[{"path":"notes.txt"}]}');
    expect(run(['make', holm, '--out', 'odd'], { cwd: place }).stderr).toContain('output-not-ours');
    mkdirSync(join(place, 'far'));
    symlinkSync('far', join(place, 'near'));
    expect(run(['make', holm, '--out', 'near'], { cwd: place }).status).toBe(0);
    expect(existsSync(join(place, 'far/manifest.json'))).toBe(true);
  });

  test.each([
    ['a file', () => 'holm.yaml', 'output-is-file'],
    ['below a file', () => 'holm.yaml/below', 'output-is-file'],
    ['a place nobody may write', () => '/proc/blankwright', 'output-unwritable'],
  ])('an output folder that is %s', (_, dir, code) => {
    const { status, stderr } = run(['make', 'holm.yaml', '--out', dir()]);
    expect(status).toBe(2);
    expect(stderr).toContain(code);
    expect(stderr).not.toContain('    at ');
  });

  test('--json: one document, problems with places in it', () => {
    const path = edited('wrong.yaml', (t) =>
      t.replace('lengthMm: 85', 'lengthMm: -85').replace('note:', 'nota:'),
    );
    const { status, stdout } = run(['make', path, '--json']);
    expect(status).toBe(1);
    const document = JSON.parse(stdout);
    expect(document).toMatchObject({ schemaVersion: 1, command: 'make', ok: false });
    expect(document.problems.map((p: { code: string }) => p.code).sort()).toEqual([
      'out-of-range',
      'unknown-key',
    ]);
    for (const p of document.problems) expect(p).toMatchObject({ file: path, severity: 'error' });
    const good = run(['make', 'holm.yaml', '--out', 'json-set', '--json']);
    expect(JSON.parse(good.stdout)).toMatchObject({
      ok: true,
      out: 'json-set',
      patterns: [{ name: 'holm' }],
    });
  });
});

describe('check', () => {
  test('tells, and writes nothing', () => {
    const before = readdirSync(work).sort();
    expect(run(['check', 'holm.yaml'])).toMatchObject({
      status: 0,
      stdout: 'holm.yaml: no problems\n',
      stderr: '',
    });
    const { status, stdout, stderr } = run([
      'check',
      join(ROOT, 'templates/broken/holes-meet.yaml'),
    ]);
    expect(status).toBe(1);
    expect(stdout).toContain('1 error');
    expect(stderr).toContain('holes-meet');
    expect(readdirSync(work).sort()).toEqual(before);
  });

  test('a warning is told and does not fail', () => {
    expect(run(['check', join(ROOT, 'templates/broken/blade-too-wide.yaml')])).toMatchObject({
      status: 0,
    });
  });

  test.each([
    ['a missing file', 'nowhere.yaml', 'file-missing'],
    ['a folder', '.', 'file-is-folder'],
  ])('%s ends with 2 and no stack', (_, file, code) => {
    const { status, stderr } = run(['check', file]);
    expect(status).toBe(2);
    expect(stderr).toContain(code);
    expect(stderr).not.toContain('    at ');
  });
});

describe('new and explain', () => {
  const dir = mkdtempSync(join(tmpdir(), 'blankwright-new-'));

  test('a new pattern and a new run build at once; nothing is overwritten', () => {
    expect(run(['new', 'pattern', 'cove'], { cwd: dir }).status).toBe(0);
    expect(run(['new', 'run', 'spring'], { cwd: dir }).status).toBe(0);
    expect(readdirSync(dir).sort()).toEqual(['cove.yaml', 'spring-lure.yaml', 'spring.yaml']);
    const text = readFileSync(join(dir, 'cove.yaml'), 'utf8');
    expect(text).toMatch(/^# yaml-language-server: \$schema=.*schema\/pattern\.schema\.json\n/);
    expect(text.split('\n').filter((l) => l.trim().startsWith('#')).length).toBeGreaterThan(40);
    expect(run(['make', 'cove.yaml'], { cwd: dir })).toMatchObject({ status: 0, stderr: '' });
    expect(run(['make', 'spring.yaml'], { cwd: dir })).toMatchObject({ status: 0, stderr: '' });
    const again = run(['new', 'pattern', 'cove'], { cwd: dir });
    expect(again.status).toBe(2);
    expect(readFileSync(join(dir, 'cove.yaml'), 'utf8')).toBe(text);
  });

  test('a new run of a pattern of another timber and size passes its check', () => {
    const cove = patternStarter('heavy', 'x')
      .replace('timber: western-redcedar', 'timber: american-beech')
      .replace('scaleRatio: 1\n', 'scaleRatio: 2.2\n')
      .replace('thicknessMm: 1.5,', 'thicknessMm: 3,')
      .replace('  thicknessMm: 1.5\n', '  thicknessMm: 3\n');
    writeFileSync(join(dir, 'heavy.yaml'), cove);
    expect(run(['new', 'run', 'big', '--pattern', 'heavy.yaml'], { cwd: dir }).status).toBe(0);
    const text = readFileSync(join(dir, 'big.yaml'), 'utf8');
    expect(text).toContain('timber: american-beech, lengthMm: 400, widthMm: 140, thicknessMm: 44,');
    // Nothing that only the scale or the eye at the bench can tell.
    expect(text).not.toMatch(/massG|knots/);
    expect(run(['check', 'big.yaml'], { cwd: dir })).toMatchObject({ status: 0 });
  });

  test.each([
    ['nowhere.yaml', 'nowhere.yaml'],
    [join(ROOT, 'templates/first-ice.yaml'), 'is a run file'],
  ])('a new run of %s, which is no pattern, writes nothing', (pattern, said) => {
    const { status, stderr } = run(['new', 'run', 'none', '--pattern', pattern], { cwd: dir });
    expect(status).not.toBe(0);
    expect(stderr).toContain(said);
    expect(existsSync(join(dir, 'none.yaml'))).toBe(false);
  });

  test.each([
    [['new', 'patern', 'x'], 'Did you mean pattern?'],
    [['new', 'pattern', 'Bad Name'], 'cannot be a name'],
    [['explain', 'sandingAlowanceMm'], 'Did you mean sandingAllowanceMm?'],
    [['mak', 'x.yaml'], 'Did you mean make?'],
    [['make'], 'missing required argument'],
    [['make', 'holm.yaml', '--out', 'a', '--out', 'b'], 'twice'],
    [['make', 'holm.yaml', '--speed'], 'unknown option'],
  ])('%j ends with 2 and a hint', (args, hint) => {
    const { status, stderr } = run(args);
    expect(status).toBe(2);
    expect(stderr).toContain(hint);
  });

  test('every problem code and a nested key can be explained', () => {
    expect(PROBLEM_CODES.length).toBeGreaterThan(50);
    expect(run(['explain', 'hole-through-back']).stdout).toContain('comes out of the back');
    const { stdout } = run(['explain', 'body.offsets.backMm', '--json']);
    expect(JSON.parse(stdout).parameters[0]).toMatchObject({ key: 'body.offsets[].backMm' });
  });
});

describe('manners', () => {
  test('help is there for every command, starts with examples, and no arguments end with 2', () => {
    for (const args of [
      ['--help'],
      ['make', '--help'],
      ['nest', '--help'],
      ['check', '--help'],
      ['new', '--help'],
      ['explain', '--help'],
    ]) {
      const { status, stdout } = run(args);
      expect(status).toBe(0);
      expect(stdout).toMatch(/^Examples:\n {2}blankwright /);
    }
    expect(run([])).toMatchObject({ status: 2, stdout: '' });
    expect(run(['--version']).stdout).toBe(
      `${JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).version}\n`,
    );
  });

  test('the examples in the help run', () => {
    const place = mkdtempSync(join(tmpdir(), 'blankwright-examples-'));
    cpSync(join(ROOT, 'templates'), join(place, 'templates'), { recursive: true });
    const shown = new Set(
      [
        ['--help'],
        ['make', '--help'],
        ['nest', '--help'],
        ['check', '--help'],
        ['float', '--help'],
        ['ballast', '--help'],
        ['new', '--help'],
        ['explain', '--help'],
      ].flatMap((a) =>
        run(a)
          .stdout.split('Usage')[0]
          .split('\n')
          .filter((l) => l.startsWith('  blankwright ')),
      ),
    );
    expect(shown.size).toBeGreaterThanOrEqual(8);
    for (const line of [...shown].sort()) {
      const args = line.trim().split(' ').slice(1);
      if (args[0] === 'new' && existsSync(join(place, `${args[2]}.yaml`))) continue;
      if (args[1] === 'holm.yaml' && !existsSync(join(place, 'holm.yaml')))
        run(['new', 'pattern', 'holm'], { cwd: place });
      expect(run(args, { cwd: place }), line).toMatchObject({ status: 0 });
    }
  }, 600_000);

  test('color only on a terminal; NO_COLOR and pipes have none', () => {
    const { stderr } = run(['check', 'nowhere.yaml'], { env: { NO_COLOR: '1' } });
    expect(stderr).not.toContain('\u001b[');
    expect(run(['check', 'nowhere.yaml']).stderr).not.toContain('\u001b[');
  });
});
