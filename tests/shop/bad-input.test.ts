/** What a run says of coats, steps and the bench, taken in or refused. The files of templates/broken show the codes of the shop's own. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { USUAL_SHOP } from '../../src/job.js';
import { load } from '../../src/load.js';
import { tell } from '../../src/messages.js';
import { potProblems } from '../../src/shop/fits.js';
import { MATERIALS } from '../mass/lures.js';
import { bareLine } from './sample.js';

const TEMPLATES = join(import.meta.dirname, '../../templates');
const dir = mkdtempSync(join(tmpdir(), 'blankwright-shop-'));

/** The demo run with more lines at its end. */
function loaded(more: string) {
  const path = join(dir, 'run.yaml');
  const run = readFileSync(join(TEMPLATES, 'first-ice.yaml'), 'utf8').replace(
    /pattern: (\w+\.yaml)/g,
    `pattern: ${TEMPLATES}/$1`,
  );
  writeFileSync(path, `${run}\n${more}\n`);
  return load(path);
}

const epoxy = (row: string) => loaded(`materials:\n  coats:\n    epoxy: ${row}`);

describe('is refused, with its key and its limit', () => {
  const densities = 'densityAKgM3: 1000, densityBKgM3: 1170';
  test.each([
    [
      'a ratio of zero',
      `{ mix: { aByVolume: 0, bByVolume: 1, ${densities} } }`,
      'materials.coats.epoxy.mix.aByVolume is 0',
      'At least 0.01',
    ],
    [
      'a ratio below zero',
      `{ mix: { aByMass: 100, bByMass: -45, ${densities} } }`,
      'mix.bByMass is -45',
      'At least 0.01',
    ],
    ['nothing but solvent', '{ solidsRatio: 0 }', 'solidsRatio is 0', 'At least 0.01'],
    ['more film than liquid', '{ solidsRatio: 1.2 }', 'solidsRatio is 1.2', 'At most 1'],
    ['waste below nothing', '{ wasteRatio: -0.1 }', 'wasteRatio is -0.1', 'At least 0'],
    ['a pot life of no time', '{ potLifeMin: 0 }', 'potLifeMin is 0 min', 'At least 1 min'],
    ['a pot for nothing', '{ largestPotG: 0 }', 'largestPotG is 0 g', 'At least 0.1 g'],
    ['a coat that never dries', '{ dryHours: 5000 }', 'dryHours is 5000 h', 'At most 1000 h'],
  ])('%s', (_, row, what, limit) => {
    const { problems, complete } = epoxy(row);
    expect(complete).toBe(false);
    expect(problems.map((p) => p.code)).toEqual(['out-of-range']);
    const told = tell(problems[0].code, problems[0].facts);
    expect(told.what).toContain(what);
    expect(told.limit).toContain(limit);
    expect(problems[0].at?.line).toBeGreaterThan(70);
  });

  test.each([
    ['half a ratio', `{ aByVolume: 1, ${densities} }`],
    ['one part each way', `{ aByVolume: 1, bByMass: 45, ${densities} }`],
    ['no ratio at all', `{ ${densities} }`],
  ])('%s', (_, mix) => {
    const { problems } = epoxy(`{ mix: ${mix} }`);
    expect(problems.map((p) => p.code)).toEqual(['mix-unclear']);
  });

  test('a step nobody knows, a bench day without end, inches that are no yes or no', () => {
    const codes = (more: string) => loaded(more).problems.map((p) => p.code);
    expect(codes('materials: { steps: { sanding: { minutes: 3 } } }')).toEqual(['unknown-key']);
    expect(codes('shop: { benchHoursPerDay: 25 }')).toEqual(['out-of-range']);
    expect(codes('shop: { inches: 1 }')).toEqual(['wrong-type']);
  });
});

describe('is taken in', () => {
  test('row by row, the rest as the table has it', () => {
    const { job, problems } = loaded(
      [
        'shop: { inches: true }',
        'materials:',
        '  coats:',
        '    epoxy: { potLifeMin: 45, mix: { aByMass: 100, bByMass: 45, densityAKgM3: 1150, densityBKgM3: 970 } }',
        '  steps:',
        '    sand: { minutes: 20 }',
        '    glue: { waitHours: 24 }',
        '  metals:',
        '    lead: { meltExtraRatio: 0.25 }',
      ].join('\n'),
    );
    expect(problems).toEqual([]);
    const { coats, steps, metals } = job?.materials ?? MATERIALS;
    expect(coats.epoxy).toMatchObject({ potLifeMin: 45, largestPotG: 60, densityKgM3: 1150 });
    expect(coats.epoxy.mix).toEqual({
      aByMass: 100,
      bByMass: 45,
      densityAKgM3: 1150,
      densityBKgM3: 970,
    });
    expect([steps.sand.minutes, steps.sand.waitHours]).toEqual([20, 0]);
    expect([steps.glue.minutes, steps.glue.waitHours]).toEqual([MATERIALS.steps.glue.minutes, 24]);
    expect([metals.lead.meltExtraRatio, metals.tin.meltExtraRatio]).toEqual([0.25, 0.1]);
    expect(job?.shop).toEqual({ inches: true, benchHoursPerDay: 6 });
  });

  test('nothing said is as a single pattern has it', () => {
    expect(loaded('').job?.shop).toEqual(USUAL_SHOP);
    expect(load(join(TEMPLATES, 'skerry.yaml')).job?.shop).toEqual(USUAL_SHOP);
  });
});

describe('a coat that can not be mixed is told once, however many lures and coats there are', () => {
  const EPOXY = { name: 'epoxy', thicknessMm: 0.2, count: 3 };
  const lines = [6000, 9000].map((areaMm2, i) =>
    bareLine(`size-${i}`, 5, { areaMm2, coats: [EPOXY] }),
  );
  const found = (changed: object, wish = USUAL_SHOP) => {
    const coats = { ...MATERIALS.coats, epoxy: { ...MATERIALS.coats.epoxy, ...changed } };
    return potProblems({ wish, materials: { ...MATERIALS, coats }, lines }, 'run');
  };

  test('by the lure that takes most: 9000 mm² × 0.2 mm × 1.15 mg/mm³ × 1.3 = 2.691 g', () => {
    expect(found({ largestPotG: 2.7 })).toEqual([]);
    const [problem, ...others] = found({ largestPotG: 2.69 });
    expect(others).toEqual([]);
    expect(problem).toMatchObject({
      code: 'pot-too-small',
      path: ['materials', 'coats', 'epoxy', 'largestPotG'],
      facts: { name: 'size-1', largestPotG: 2.69 },
    });
    expect(problem.facts.mixG).toBeCloseTo(2.691, 9);
  });

  test('by its time, and by the bench day', () => {
    expect(found({ potLifeMin: 5, minutesPerLure: 5 })).toEqual([]);
    expect(found({ potLifeMin: 5, minutesPerLure: 5.1 }).map((p) => p.code)).toEqual([
      'pot-life-short',
    ]);
    // Mixing takes 5 min, a lure 30: a day of 35 min is just enough.
    const slow = { potLifeMin: 60, minutesPerLure: 30 };
    expect(found(slow, { inches: false, benchHoursPerDay: 35 / 60 })).toEqual([]);
    expect(found(slow, { inches: false, benchHoursPerDay: 34 / 60 }).map((p) => p.code)).toEqual([
      'bench-day-short',
    ]);
  });
});
