/** Sizes of sheets against their standards; corrections and their limits by hand. */
import { describe, expect, test } from 'vitest';
import { paperWish } from '../../src/commands/paper-options.js';
import { load } from '../../src/load.js';
import { tell } from '../../src/messages.js';
import { paperWrong } from '../../src/papers.js';
import { correctionOf, paperOf } from '../../src/pattern/paper.js';
import { PAPER_SIZES } from '../../src/pattern/paper-schema.js';
import { problem } from '../../src/problem.js';

const FILE = { marginMm: 8, overlapMm: 10 };

describe('sizes of sheets', () => {
  test('A3 and A4 by halving A0, 841 × 1189 mm, whole millimeters (ISO 216)', () => {
    const halved = ([short, long]: number[]) => [Math.floor(long / 2), short];
    const sizes = [1, 2, 3, 4].reduce(
      (all) => [...all, halved(all[all.length - 1])],
      [[841, 1189]],
    );
    expect(PAPER_SIZES.A3).toEqual(sizes[3]);
    expect(PAPER_SIZES.A4).toEqual(sizes[4]);
  });

  test('Letter is 8.5 × 11 in (ANSI/ASME Y14.1, size A), Legal 8.5 × 14 in', () => {
    const mm = (inches: readonly number[]) => inches.map((v) => Number((v * 25.4).toFixed(6)));
    expect(PAPER_SIZES.Letter).toEqual(mm([8.5, 11]));
    expect(PAPER_SIZES.Legal).toEqual(mm([8.5, 14]));
  });

  test('A4 where nothing is said; a size in millimeters in place of a name; the line before the file', () => {
    expect(paperOf(undefined).paper).toMatchObject({ size: 'A4', acrossMm: 210, alongMm: 297 });
    const custom = paperOf({ ...FILE, sizeMm: [300, 420] }).paper;
    expect(custom).toMatchObject({ size: 'custom', acrossMm: 300, alongMm: 420 });
    const told = paperOf({ ...FILE, sizeMm: [300, 420] }, { size: 'Letter' });
    expect(told.paper).toMatchObject({ size: 'Letter', acrossMm: 215.9 });
    expect(told.problems).toEqual([]);
  });

  test('a name and a size in millimeters contradict each other', () => {
    const { problems } = paperOf({ ...FILE, size: 'A3', sizeMm: [300, 420] });
    expect(problems.map((p) => p.code)).toEqual(['paper-size-twice']);
  });
});

describe('the lines that measure the printer', () => {
  test('are 180 and 240 mm on every size with a name', () => {
    for (const size of Object.keys(PAPER_SIZES) as (keyof typeof PAPER_SIZES)[])
      expect(paperOf({ ...FILE, size }).paper.check).toEqual({ acrossMm: 180, alongMm: 240 });
  });

  // 160 − 2 × 8 − 14 = 130 across; 200 − 2 × 8 − 8 = 176, so 170 along.
  test('are the most whole centimeters there is room for where that is less', () => {
    expect(paperOf({ ...FILE, sizeMm: [160, 200] }).paper.check).toEqual({
      acrossMm: 130,
      alongMm: 170,
    });
  });
});

describe('correction', () => {
  test('is nominal over measured, each way', () => {
    const { paper, problems } = paperOf(FILE, { printed: { acrossMm: 179.6, alongMm: 240.4 } });
    expect(problems).toEqual([]);
    const { x, y } = correctionOf(paper);
    expect(x).toBeCloseTo(180 / 179.6, 12);
    expect(y).toBeCloseTo(240 / 240.4, 12);
  });

  test('is none where nothing was measured, and one way where one line was', () => {
    expect(correctionOf(paperOf(FILE).paper)).toEqual({ x: 1, y: 1 });
    const { paper } = paperOf({ ...FILE, printedAlongMm: 239 });
    expect(correctionOf(paper)).toEqual({ x: 1, y: 240 / 239 });
  });

  // 3 % of 180 mm is 5.4 mm: from 174.6 to 185.4 mm.
  test.each([
    [174.6, []],
    [185.4, []],
    [174.5, ['printer-correction-large']],
    [185.5, ['printer-correction-large']],
  ])('%d mm of 180 gives %j', (acrossMm, codes) => {
    const { problems } = paperOf(FILE, { printed: { acrossMm, alongMm: 240 } });
    expect(problems.map((p) => p.code)).toEqual(codes);
  });

  test('too large a one tells the lengths, the limits and what to do', () => {
    const { problems } = paperOf({ ...FILE, printedAcrossMm: 171, printedAlongMm: 260 });
    expect(problems).toHaveLength(2);
    const told = problems.map((p) => tell(p.code, p.facts));
    expect(told[0].what).toBe('paper.printedAcrossMm is 171 mm for a line of 180 mm: off by -5 %.');
    expect(told[0].limit).toBe('Within 3 %: 174.6 to 185.4 mm.');
    expect(told[1].limit).toBe('Within 3 %: 232.8 to 247.2 mm.');
    expect(told[0].fix).toContain('printer-check.pdf at 100 %');
  });
});

describe('words of the command line', () => {
  test('name a size, or give it, and what the lines measured', () => {
    expect(paperWish({})).toEqual({});
    expect(paperWish({ paper: 'a3' })).toEqual({ size: 'A3' });
    expect(paperWish({ paper: '300x420' })).toEqual({ size: [300, 420] });
    expect(paperWish({ printed: '179.6x240.4' })).toEqual({
      printed: { acrossMm: 179.6, alongMm: 240.4 },
    });
  });

  test.each([
    [{ paper: 'B5' }, 'A4, A3, Letter, Legal'],
    [{ paper: '300x' }, '--paper is "", which is not a number'],
    [{ paper: '10x20' }, 'lengths are in mm, 50 to 3000 each. These sizes'],
    [{ paper: '8.5x11' }, 'In inches it is Letter: write --paper Letter.'],
    [{ paper: '14x8.5' }, 'In inches it is Legal: write --paper Legal.'],
    [{ paper: '8,5x11' }, 'write it with a point, 8.5'],
    [{ paper: '-210x297' }, 'must be 0 to'],
    [{ printed: '180' }, 'two lengths in mm, across first'],
    [{ printed: '179,6x240' }, 'write it with a point, 179.6'],
    [{ printed: '0x240' }, 'must be 1 to 1000'],
  ])('%j is refused', (options, words) => {
    expect(() => paperWish(options)).toThrow(words);
  });
});

describe('what the line said is told of the line', () => {
  test('lengths of the printer: of --printed, not of a place in the file', () => {
    const { problems } = load('templates/first-ice.yaml', {
      printed: { acrossMm: 100, alongMm: 240 },
    });
    expect(problems).toMatchObject([{ code: 'printer-correction-large', option: '--printed' }]);
    expect(problems[0].at).toBeUndefined();
  });

  test.each(['first-ice', 'holm'])('a size that %s has no room on: of --paper', (name) => {
    const file = `templates/${name}.yaml`;
    const small = { of: 'job', problem: problem('paper-too-small', ['paper']) } as const;
    expect(load(file, { size: [60, 80] }).placed(small)).toMatchObject({ option: '--paper' });
    const { at, option } = load(file).placed(small);
    expect(option).toBeUndefined();
    expect(at?.file).toBe(file);
  });

  test('and the sizes that would do are told', () => {
    // 147 mm are one too few for the bars: see problems.test.ts.
    const [{ facts }] = paperWrong(paperOf({ ...FILE, sizeMm: [147, 200] }).paper, 'run', [], []);
    expect(facts.enough).toBe('148 × 202 mm, or of those with a name A4, A3, Letter, Legal');
    const wide = paperOf({ marginMm: 50, overlapMm: 10 }).paper;
    expect(paperWrong(wide, 'run', [], [])[0].facts.enough).toMatch(/of those with a name A3$/);
  });
});
