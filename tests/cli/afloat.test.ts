/** `float` and `ballast`, run as a maker would: documents, new versions, wrong words. */
import { copyFileSync, existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { ROOT, runCli, runHere } from './run.js';

const work = mkdtempSync(join(tmpdir(), 'blankwright-afloat-'));
for (const name of ['skerry', 'ghyll', 'holm', 'first-ice'])
  copyFileSync(join(ROOT, `templates/${name}.yaml`), join(work, `${name}.yaml`));
/** Words that name a file of the folder stand for the file there. */
const there = (args: readonly string[]) =>
  args.map((a) => (/^[\w.-]+\.(yaml|svg)$/.test(a) ? join(work, a) : a));
const run = (...args: string[]) => runHere(there(args));
const json = async (...args: string[]) => JSON.parse((await run(...args, '--json')).stdout);

describe('float', () => {
  // biome-ignore lint/suspicious/noExplicitAny: a document as an outsider reads it
  let lure: any;
  beforeAll(async () => {
    lure = await json('float', 'skerry.yaml');
  });

  test('the document has every key, in plain numbers', async () => {
    expect(Object.keys(lure)).toEqual(
      expect.arrayContaining([
        'volumeMm3',
        'massG',
        'cgMm',
        'inertiaGMm2',
        'waterDensityKgM3',
        'verdict',
        'items',
        'stages',
        'holes',
        'roundOverMm',
        'attitudes',
      ]),
    );
    expect(lure.verdict).toBe('floats');
    expect(lure.stages.map((s: { name: string }) => s.name)).toEqual([
      'sawn blank',
      'drilled',
      'poured',
      'rounded over',
      'shaped',
      'sealed',
      'epoxy 1',
      'epoxy 2',
      'epoxy 3',
      'rigged',
    ]);
    const keys =
      'stable upInBody planeOffsetMm displacedG cbMm trimDeg heelDeg gmAcrossMm gmAlongMm freeboardNoseMm freeboardTailMm dryRatio';
    for (const a of lure.attitudes)
      expect(Object.keys(a)).toEqual(expect.arrayContaining(keys.split(' ')));
    expect(Object.keys(lure.holes[0])).toEqual(
      expect.arrayContaining(['stationMm', 'diameterMm', 'drilledMm', 'plugMm', 'plugMassG']),
    );
    expect(lure.items[0]).toMatchObject({ name: 'timber', displacedMm3: lure.volumeMm3 });
  });

  test('the built program gives the same document', async () => {
    const { status, stdout } = runCli(['float', join(work, 'skerry.yaml'), '--json']);
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toEqual(lure);
  });

  test('items add up to the lure, the last stage is the lure, and water carries it', async () => {
    const sum = (of: (i: { massG: number; cgMm: number[] }) => number): number =>
      lure.items.reduce((s: number, i: { massG: number; cgMm: number[] }) => s + of(i), 0);
    expect(sum((i) => i.massG)).toBeCloseTo(lure.massG, 9);
    expect(sum((i) => i.massG * i.cgMm[0]) / lure.massG).toBeCloseTo(lure.cgMm[0], 9);
    expect(lure.stages.at(-1).massG).toBeCloseTo(lure.massG, 9);
    for (const a of lure.attitudes) expect(a.displacedG / lure.massG).toBeCloseTo(1, 9);
  });

  test('a run tells of each of its lures, by its own blocks', async () => {
    const { lures, run: name } = await json('float', 'first-ice.yaml');
    expect(name).toBe('first-ice');
    expect(lures.map((l: { name: string }) => l.name)).toEqual([
      'skerry',
      'skerry-130',
      'ghyll',
      'holm',
    ]);
    // Each in its own water, but for what the line says.
    expect(lures.map((l: { water: unknown }) => l.water)).toEqual([
      { temperatureC: 9, salinityPsu: 5 },
      { temperatureC: 9, salinityPsu: 5 },
      { temperatureC: 6, salinityPsu: 0 },
      { temperatureC: 9, salinityPsu: 0 },
    ]);
    const warm = await json('float', 'first-ice.yaml', '--temperature-c', '20');
    expect(warm.lures[0].water).toEqual({ temperatureC: 20, salinityPsu: 5 });
    expect(lures[0].timber).toMatchObject({ from: 'weighed blocks' });
    expect(lures[1].timber).toMatchObject({ from: 'table' });
  });

  test('salt lifts it, and the words say what the numbers say', async () => {
    const salt = await json('float', 'skerry.yaml', '--salinity-psu', '35');
    expect(salt.attitudes[0].dryRatio).toBeGreaterThan(lure.attitudes[0].dryRatio);
    const { stdout } = await run('float', 'skerry.yaml');
    expect(stdout).toContain(
      `nose ${Math.abs(lure.attitudes[0].trimDeg).toFixed(1).replace('.0', '')}° down`,
    );
    expect(stdout).toContain('Cautions');
  });

  test('a heavier block asks for a shallower hole, and then the lure weighs what was planned', async () => {
    const { block } = await json(
      'float',
      'skerry.yaml',
      '--block-mass',
      '320',
      '--block-size',
      '420x92x20',
    );
    expect(block.densityKgM3).toBeCloseTo(320 / (420 * 92 * 20e-6), 6);
    const [redrilled] = block.lures;
    expect(redrilled.holes[0].depthMm).toBeLessThan(14);
    expect(Math.abs(redrilled.massG - lure.massG)).toBeLessThan(0.03); // half a step of 0.1 mm in depth
    const named = await json(
      'float',
      'first-ice.yaml',
      '--block-mass',
      '320',
      '--block',
      'boathouse-cedar',
    );
    expect(named.block.densityKgM3).toBeCloseTo(block.densityKgM3, 6);
    expect(named.block.lures.map((l: { name: string }) => l.name)).toEqual(['skerry', 'ghyll']);
    const blank = await json('float', 'skerry.yaml', '--blank-mass', '18.2');
    expect(blank.stages[0].massG).toBeCloseTo(18.2, 6);
  });

  test('from the plug wanted back to the depth that leaves it', async () => {
    const { plugs, holes } = await json(
      'float',
      'skerry.yaml',
      '--plug-mass',
      String(lure.holes[0].plugMassG),
    );
    expect(plugs[0].drillMm).toBeCloseTo(holes[0].drilledMm, 6);
    expect((await json('float', 'skerry.yaml', '--plug-mass', '80')).plugs[0].drillMm).toBeNull();
  });

  test('what a changed lure shows in the tub leads back to the change', async () => {
    const text = readFileSync(join(work, 'skerry.yaml'), 'utf8');
    writeFileSync(join(work, 'heavy.yaml'), `${text}timberDensityKgM3: 400\n`);
    const heavy = await json('float', 'heavy.yaml');
    const [rest] = heavy.attitudes;
    const seen = `massG=${heavy.massG},trimDeg=${rest.trimDeg},freeboardTailMm=${rest.freeboardTailMm}`;
    const { tub } = await json('float', 'skerry.yaml', '--seen', seen);
    expect(tub.wellExplained).toBe(true);
    expect(Math.abs(tub.timberDensityKgM3 - 400)).toBeLessThan(15);
    expect(Math.abs(tub.metalShare - 1)).toBeLessThan(0.05);
    expect(tub.next.holes[0].depthMm).toBeLessThan(14);
  });

  test('a picture is drawn, and never over a file', async () => {
    expect((await run('float', 'holm.yaml', '--picture', 'holm.svg')).status).toBe(0);
    expect(readFileSync(join(work, 'holm.svg'), 'utf8')).toContain('<svg');
    const again = await run('float', 'holm.yaml', '--picture', 'holm.svg');
    expect(again.status).toBe(2);
    expect(again.stderr).toContain('there already');
  });

  test.each([
    [['float', 'nowhere.yaml'], 'no file'],
    [['float', 'skerry.yaml', '--temperature-c', '60'], 'must be 0 to 40'],
    [['float', 'skerry.yaml', '--salinity-psu', '50'], 'must be 0 to 43'],
    [['float', 'skerry.yaml', '--temperature-c', '9,5'], 'write it with a point'],
    [['float', 'skerry.yaml', '--block-mass', '300'], '--block-size'],
    [['float', 'skerry.yaml', '--block-mass', '3', '--block-size', '420x92x20'], 'no wood is so'],
    [['float', 'skerry.yaml', '--block-size', '420x92x20'], 'go with --block-mass'],
    [['float', 'first-ice.yaml', '--block-mass', '300'], '--block NAME'],
    [['float', 'first-ice.yaml', '--seen', 'trimDeg=1'], 'add --lure NAME'],
    [['float', 'skerry.yaml', '--seen', 'trimDeg=1,hungG=1,hungStationMm=200'], '100 mm long'],
    [['float', 'skerry.yaml', '--seen', 'trim=1'], 'Did you mean trimDeg?'],
    [['float', 'skerry.yaml', '--picture', 'x.png'], 'must end in .svg'],
  ])('%j is refused: %s', async (args, told) => {
    const { status, stderr, stdout } = await run(...args);
    expect(status).toBe(2);
    expect(stderr).toContain(told);
    expect(stdout).toBe('');
  });
});

describe('ballast', () => {
  test('choices with their float and sensitivity, refusals with their why', async () => {
    const found = await json('ballast', 'skerry.yaml');
    expect(found.choices.length).toBeGreaterThan(1);
    for (const c of found.choices) {
      expect(Math.abs(c.attitude.trimDeg + 2)).toBeLessThan(1.5);
      expect(Math.abs(c.attitude.dryRatio - 0.16)).toBeLessThan(0.02);
      expect(c.float.massG).toBeCloseTo(c.massG, 6);
      expect(c.float.attitudes[0].trimDeg).toBeCloseTo(c.attitude.trimDeg, 4);
      expect(c.sensitivity.holes).toHaveLength(c.holes.length);
    }
    for (const r of found.refused) expect(r.why).toMatch(/^[a-z-]+$/);
  });

  test('the choice written is a new version that does what was promised; the old file stays', async () => {
    const before = readFileSync(join(work, 'skerry.yaml'), 'utf8');
    const args = [
      'ballast',
      'skerry.yaml',
      '--dry-ratio',
      '0.12',
      '--nose-down-deg',
      '4',
      '--holes',
      '1',
    ];
    const found = await json(...args, '--choice', '2', '--write');
    expect(found.written).toBe(join(work, 'skerry-1.4.yaml'));
    expect(readFileSync(join(work, 'skerry.yaml'), 'utf8')).toBe(before);
    const written = await json('float', 'skerry-1.4.yaml');
    expect(written.version).toBe('1.4');
    expect(written.massG).toBeCloseTo(found.choices[1].massG, 6);
    expect(readFileSync(join(work, 'skerry-1.4.yaml'), 'utf8')).toContain('dryRatio: 0.12');
    const again = await run(...args, '--write');
    expect(again.status).toBe(2);
    expect(again.stderr).toContain('there already');
    expect((await run('check', 'skerry-1.4.yaml')).status).toBe(0);
  });

  test('in a run the lure is named, its own tables hold, and its pattern file gets the new version', async () => {
    const found = await json(
      'ballast',
      'first-ice.yaml',
      '--lure',
      'skerry-130',
      '--dry-ratio',
      '0.15',
      '--write',
      'skerry-big.yaml',
    );
    expect(found.choices[0].float.name).toBe('skerry-130');
    const text = readFileSync(found.written, 'utf8');
    // In the file's own size: the bit is a tool and does not scale, station and depth do.
    const { stationMm, diameterMm } = found.choices[0].holes[0];
    expect(text).toContain(`stationMm: ${Math.round((stationMm / 1.3) * 1e4) / 1e4}`);
    expect(text).toContain(`diameterMm: ${Math.round(diameterMm * 1e4) / 1e4}`);
    expect(text).toContain('scaleRatio: 1.3');
    expect((await run('check', 'skerry-big.yaml')).status).toBe(0);
    expect((await json('float', 'skerry-big.yaml')).lengthMm).toBe(130);
  });

  test('a wish that cannot be met ends with 1, the limit, and what would meet it', async () => {
    const { status, stdout } = await run(
      'ballast',
      'skerry.yaml',
      '--floats',
      '--dry-ratio',
      '0.6',
    );
    expect(status).toBe(1);
    expect(stdout).toContain('too heavy');
    expect(stdout).toMatch(/It takes timber under|No timber is light enough/);
    expect((await json('ballast', 'skerry.yaml', '--sinks', '150')).unmet.words).not.toBe('');
  });

  test('choices are drawn side by side', async () => {
    expect((await run('ballast', 'holm.yaml', '--picture', 'choices.svg')).status).toBe(0);
    expect(existsSync(join(work, 'choices.svg'))).toBe(true);
  });

  test('bits and metals at hand are kept to', async () => {
    const { choices } = await json(
      'ballast',
      'skerry.yaml',
      '--bits',
      '7,9',
      '--metals',
      'bismuth',
    );
    expect(choices.length).toBeGreaterThan(0);
    for (const { holes } of choices)
      for (const hole of holes) {
        expect([7, 9]).toContain(hole.diameterMm);
        expect(hole.metal).toBe('bismuth');
      }
  });

  test.each([
    [['ballast', 'first-ice.yaml'], 'add --lure NAME'],
    [
      ['ballast', 'first-ice.yaml', '--lure', 'holmen'],
      'there are skerry, skerry-130, ghyll, holm',
    ],
    [['ballast', 'skerry.yaml', '--floats', '--suspends'], 'contradict'],
    [['ballast', 'skerry.yaml', '--freeboard-mm', '4', '--dry-ratio', '0.1'], '--freeboard-mm 4'],
    [['ballast', 'skerry.yaml', '--suspends', '--dry-ratio', '0.1'], 'only a lure that floats'],
    [['ballast', 'skerry.yaml', '--dry-ratio', '3'], '--dry-ratio is 3'],
    [['ballast', 'skerry.yaml', '--bits', '0'], '--bits is 0'],
    [['ballast', 'skerry.yaml', '--metals', 'led'], 'Did you mean lead?'],
    [['ballast', 'skerry.yaml', '--bits', '7,,9'], 'commas between'],
    [['ballast', 'skerry.yaml', '--choice', '9'], '--choice'],
  ])('%j is refused: %s', async (args, told) => {
    const { status, stderr } = await run(...args);
    expect(status).toBe(2);
    expect(stderr).toContain(told);
  });
});
