/** `nest`, and what a maker sees of a search: effort, interrupts, progress; the built program, run as a maker would. */
import { spawn } from 'node:child_process';
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
import { CLI, ROOT, runCli } from './run.js';

const work = mkdtempSync(join(tmpdir(), 'blankwright-nest-'));
const run = (...args: string[]) => runCli(args, { cwd: work });

/** One pattern on few blocks, which is quick; or by the hundred on blocks that differ, which is not. */
const order = (count: number, blocks: number): string =>
  readFileSync(join(ROOT, 'templates/first-ice.yaml'), 'utf8')
    .replace(
      /orders:[\s\S]*?blocks:/,
      `orders:\n  - { pattern: skerry.yaml, count: ${count} }\nblocks:`,
    )
    .replace(/count: (2|4)$/gm, `count: ${blocks}`);

beforeAll(() => {
  expect(existsSync(CLI), 'npm run build comes before the tests').toBe(true);
  for (const name of ['skerry', 'holm'])
    cpSync(join(ROOT, `templates/${name}.yaml`), join(work, `${name}.yaml`));
  writeFileSync(join(work, 'few.yaml'), order(22, 4));
  writeFileSync(join(work, 'many.yaml'), order(2200, 300));
});

describe('nest', () => {
  // biome-ignore lint/suspicious/noExplicitAny: a document as an outsider reads it
  let document: any;
  beforeAll(() => {
    const { status, stdout } = run('nest', 'few.yaml', '--tries', '4', '--seed', '7', '--json');
    expect(status).toBe(0);
    document = JSON.parse(stdout);
  });

  test('tells of every face how many blanks it makes and how near it comes to the limit', () => {
    const made = document.faces.reduce((sum: number, f: { blanks: number }) => sum + f.blanks, 0);
    expect(document).toMatchObject({ command: 'nest', ok: true, interrupted: false });
    expect(document.patterns).toMatchObject([{ name: 'skerry', ordered: 22, made }]);
    expect(made).toBeGreaterThanOrEqual(22);
    for (const face of document.faces) {
      expect(face.blanks).toBe(face.placements.length * face.layers * face.copies);
      expect(face.latticeLimitRatio).toBeCloseTo(document.patterns[0].latticeLimitRatio, 12);
      expect(face.usedRatio).toBeLessThan(face.latticeLimitRatio);
    }
    expect(document.timberBoundMm3).toBeLessThanOrEqual(document.timberUsedMm3);
  });

  test('the words say what the numbers say, and nothing is written', () => {
    const before = readdirSync(work).sort();
    const { status, stdout, stderr } = run('nest', 'few.yaml', '--tries', '4', '--seed', '7');
    expect(status).toBe(0);
    expect(stderr).toBe('');
    const [face] = document.faces;
    expect(stdout).toContain(`${(100 * face.usedRatio).toFixed(1).replace('.0', '')} %`);
    expect(stdout).toContain(
      `${((100 * face.usedRatio) / face.latticeLimitRatio).toFixed(1).replace('.0', '')} %`,
    );
    expect(stdout).toContain(`${(document.timberUsedMm3 / 1e6).toFixed(2)} l in whole blocks`);
    expect(stdout).toContain('Offcuts');
    expect(readdirSync(work).sort()).toEqual(before);
  });

  test('the same seed and tries give the same nest; make lays the same faces and tells their limit', () => {
    const effort = ['--tries', '4', '--seed', '7'];
    const again = JSON.parse(run('nest', 'few.yaml', ...effort, '--json').stdout);
    expect(again).toEqual(document);
    expect(run('make', 'few.yaml', ...effort, '--out', 'few').status).toBe(0);
    const { nest } = JSON.parse(readFileSync(join(work, 'few/build.json'), 'utf8'));
    expect(nest.faces.length).toBe(document.faces.length);
    // The record has six decimals.
    nest.faces.forEach((face: (typeof nest.faces)[number], i: number) => {
      const { placements, usedRatio, latticeLimitRatio } = document.faces[i];
      expect(face.latticeLimitRatio).toBeCloseTo(latticeLimitRatio, 6);
      expect(face.usedRatio).toBeCloseTo(usedRatio, 6);
      expect(face.placements.length).toBe(placements.length);
      for (const [k, { xMm, yMm, turnDeg }] of placements.entries()) {
        expect(face.placements[k].xMm).toBeCloseTo(xMm, 5);
        expect(face.placements[k].yMm).toBeCloseTo(yMm, 5);
        expect(face.placements[k].turnDeg).toBe(turnDeg);
      }
    });
  });

  test('a single pattern has no timber: a run is needed, and how to start one', () => {
    const { status, stdout, stderr } = run('nest', 'holm.yaml');
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain('blankwright new run');
    const told = JSON.parse(run('nest', 'holm.yaml', '--json').stdout);
    expect(told).toMatchObject({ command: 'nest', ok: false, error: { code: 'usage' } });
  });

  test('what is wrong with a run is told with its place', () => {
    writeFileSync(join(work, 'wrong.yaml'), order(22, 4).replace('webMm: 0', 'webMm: -1'));
    const { status, stderr } = run('nest', 'wrong.yaml');
    expect(status).toBe(1);
    expect(stderr).toMatch(/wrong\.yaml:\d+:\d+: error out-of-range/);
    writeFileSync(join(work, 'short.yaml'), order(2200, 1));
    expect(run('nest', 'short.yaml', '--tries', '0').stderr).toContain('timber-short');
  });

  test.each([
    [['--tries', 'many'], '--tries is "many", which is not a number'],
    [['--tries', '2.5'], '--tries is 2.5: it must be a whole number'],
    [['--tries', '-1'], '--tries is -1: it must be 0 to 100000'],
    [['--seed', '1e10'], '--seed is 10000000000: it must be 0 to 4294967295'],
    [['--seconds', '0'], '--seconds is 0: it must be 0.1 to 86400'],
    [['--seconds', '1,5'], 'write it with a point, 1.5'],
    [['--seconds', '1', '--seconds', '2'], 'twice'],
  ])('%j is refused by make and nest: %s', (args, told) => {
    for (const command of ['make', 'nest']) {
      const { status, stdout, stderr } = run(command, 'few.yaml', ...args);
      expect(status).toBe(2);
      expect(stderr).toContain(told);
      expect(stdout).toBe('');
    }
  });

  test('a budget in seconds ends the search and is told as a limit, not as an interrupt', () => {
    const { status, stdout } = run('nest', 'many.yaml', '--seconds', '1', '--json');
    expect(status).toBe(0);
    const told = JSON.parse(stdout);
    expect(told.interrupted).toBe(false);
    expect(told.patterns[0].made).toBeGreaterThanOrEqual(2200);
  });
});

/** Runs the program, sends it interrupts after so many seconds, and waits for its end. */
function interrupted(args: readonly string[], afterSeconds: readonly number[], cli = CLI) {
  const child = spawn(process.execPath, [cli, ...args], { cwd: work });
  const written = { stdout: '', stderr: '' };
  child.stdout.on('data', (data) => {
    written.stdout += data;
  });
  child.stderr.on('data', (data) => {
    written.stderr += data;
  });
  const timers = afterSeconds.map((s) => setTimeout(() => child.kill('SIGINT'), 1000 * s));
  return new Promise<typeof written & { code: number | null; signal: string | null }>((resolve) => {
    child.on('close', (code, signal) => {
      for (const timer of timers) clearTimeout(timer);
      resolve({ ...written, code, signal });
    });
  });
}

describe('an interrupt', () => {
  test('keeps the best so far: the set is written whole, and says so', async () => {
    const start = performance.now();
    const args = ['make', 'many.yaml', '--out', 'many', '--seconds', '60', '--json'];
    const { code, stdout } = await interrupted(args, [2]);
    expect(code).toBe(0);
    expect(performance.now() - start).toBeLessThan(50_000);
    const told = JSON.parse(stdout);
    expect(told).toMatchObject({ ok: true, interrupted: true });
    expect(told.patterns[0].made).toBeGreaterThanOrEqual(2200);
    const manifest = JSON.parse(readFileSync(join(work, 'many/manifest.json'), 'utf8'));
    expect(manifest.files.length).toBeGreaterThan(10);
    for (const { path } of manifest.files) expect(existsSync(join(work, 'many', path))).toBe(true);
    const { nest } = JSON.parse(readFileSync(join(work, 'many/build.json'), 'utf8'));
    expect(nest.interrupted).toBe(true);
  });

  test('is told in words by nest', async () => {
    const { code, stdout } = await interrupted(['nest', 'many.yaml', '--seconds', '60'], [2]);
    expect(code).toBe(0);
    expect(stdout).toContain('The search was stopped early');
  });

  test('a second one ends at once and leaves nothing half-written', async () => {
    const args = ['make', 'many.yaml', '--out', 'none', '--seconds', '60'];
    const { signal, stdout } = await interrupted(args, [1.5, 1.6]);
    expect(signal).toBe('SIGINT');
    expect(stdout).toBe('');
    expect(readdirSync(work).filter((f) => f.includes('none'))).toEqual([]);
  });
});

describe('the working thread', () => {
  /** The program with another `nest` in it. */
  function programWith(name: string, nest: string): string {
    const place = join(work, name);
    mkdirSync(place);
    cpSync(join(ROOT, 'dist'), join(place, 'dist'), { recursive: true });
    cpSync(join(ROOT, 'package.json'), join(place, 'package.json'));
    symlinkSync(join(ROOT, 'node_modules'), join(place, 'node_modules'));
    writeFileSync(
      join(place, 'dist/commands/nest.js'),
      `import { writeFileSync } from 'node:fs';\nexport async function nest(brief, terminal, watching) {${nest}}\n`,
    );
    return join(place, 'dist/cli.js');
  }

  test.each([
    ['an exception', 'throw new Error("the blade broke");', 'the blade broke'],
    [
      'a rejection nobody hears',
      'Promise.reject(new Error("lost")); return new Promise((r) => setTimeout(r, 1000));',
      'lost',
    ],
    ['an end without a word', 'process.exit(0);', 'ended without a result'],
  ])('%s in it is our fault, with the usual text', async (name, nest, told) => {
    const cli = programWith(name.replace(/ /g, '-'), nest);
    const { code, stdout, stderr } = await interrupted(['nest', 'few.yaml'], [], cli);
    expect(code).toBe(70);
    expect(stdout).toBe('');
    expect(stderr).toContain('Something broke that should not; nothing was written.');
    expect(stderr).toContain(told);
    const json = await interrupted(['nest', 'few.yaml', '--json'], [], cli);
    expect(json.code).toBe(70);
    expect(JSON.parse(json.stdout)).toMatchObject({ ok: false, error: { code: 'fault' } });
  });

  test('what it says arrives whole and in order, then its code', async () => {
    const cli = programWith(
      'wordy',
      'for (let i = 0; i < 20000; i++) terminal.out(i + " " + "x".repeat(100) + "\\n"); terminal.err("end\\n"); return 1;',
    );
    const { code, stdout, stderr } = await interrupted(['nest', 'few.yaml'], [], cli);
    expect(code).toBe(1);
    expect(stderr).toBe('end\n');
    const lines = stdout.trimEnd().split('\n');
    expect(lines.length).toBe(20000);
    expect(lines.every((line, i) => line === `${i} ${'x'.repeat(100)}`)).toBe(true);
    // A reader that has had enough.
    const child = spawn('sh', ['-c', `"${process.execPath}" "${cli}" nest few.yaml | head -1`], {
      cwd: work,
    });
    let complaint = '';
    child.stderr.on('data', (data) => {
      complaint += data;
    });
    await new Promise((resolve) => child.on('close', resolve));
    expect(complaint.replace('end\n', '')).toBe('');
  });

  test('is not cut in half while it writes, however often it is interrupted', async () => {
    const cli = programWith(
      'writing',
      `return watching.uncut(() => {
        const end = performance.now() + 2500;
        while (performance.now() < end);
        writeFileSync('whole.txt', 'whole');
        return 0;
      });`,
    );
    const { code, signal } = await interrupted(['nest', 'few.yaml'], [1.2, 1.4, 1.6], cli);
    expect({ code, signal }).toEqual({ code: 0, signal: null });
    expect(readFileSync(join(work, 'whole.txt'), 'utf8')).toBe('whole');
  });
});
