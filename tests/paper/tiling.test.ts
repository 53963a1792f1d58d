/** How many pages a drawing takes, by hand; windows that hold all of it, by chance. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkPapers } from '../../src/paper/check.js';
import { paperFile } from '../../src/paper/pages.js';
import type { Papers } from '../../src/paper/paper-file.js';
import { checkLines, printerCheck } from '../../src/paper/printer-check.js';
import { printNotes } from '../../src/paper/sentences.js';
import { roomsOn, sizeOf, tiling } from '../../src/paper/tiling.js';
import { type Paper, paperOf } from '../../src/pattern/paper.js';
import { A4, boxSketch, ERRING, LEAFLET } from './sample.js';

const laid = (wide: number, high: number, paper: Paper = A4) => {
  const { frame, rows, columns, tiles } = tiling(
    [0, 0, wide, high],
    roomsOn(paper, LEAFLET),
    paper.overlapMm,
  );
  return { way: frame.way, rows, columns, tiles };
};

/**
 * A4 less 8 mm and half a line all round is 193.6 × 280.6 mm; a footer without sentences is 20.5 mm high
 * (bars 14, title 6.5), with 2 mm over it. A page that is joined has 5 mm of border all round.
 */
describe('room on a page of A4', () => {
  test('upright and turned', () => {
    const [upright, turned] = roomsOn(A4, LEAFLET);
    expect(sizeOf(upright.whole).map((v) => Number(v.toFixed(6)))).toEqual([193.6, 258.1]);
    expect(sizeOf(turned.whole).map((v) => Number(v.toFixed(6)))).toEqual([280.6, 171.1]);
    expect(sizeOf(turned.joined).map((v) => Number(v.toFixed(6)))).toEqual([270.6, 161.1]);
  });
});

describe('pages of A4, by hand', () => {
  test('one, upright before turned', () => {
    expect(laid(150, 100)).toMatchObject({ way: 'upright', rows: 1, columns: 1 });
    expect(laid(193.59, 258.09)).toMatchObject({ way: 'upright', rows: 1, columns: 1 });
    expect(laid(193.7, 100)).toMatchObject({ way: 'turned', rows: 1, columns: 1 });
    expect(laid(280.59, 171.09)).toMatchObject({ way: 'turned', rows: 1, columns: 1 });
  });

  // 500 + 2 × 7 white = 514; every page but the first gives its width less 10:
  // upright 183.6: (514 − 10)/173.6 = 2.90, three; turned 270.6: 504/260.6 = 1.93, two.
  test('a long drawing takes two turned pages rather than three upright ones', () => {
    expect(laid(500, 50)).toMatchObject({ way: 'turned', rows: 1, columns: 2 });
  });

  // 514 both ways: upright 3 columns × (504/238.1 = 2.12) 3 rows; turned 2 × (504/151.1 = 3.34) 4.
  test('a square of half a meter takes eight turned pages rather than nine', () => {
    expect(laid(500, 500)).toMatchObject({ way: 'turned', rows: 4, columns: 2 });
  });

  // 300 + 14 high: 304/238.1 = 1.28, two rows upright; 304/151.1 = 2.01, three turned.
  test('a high one takes two upright pages', () => {
    expect(laid(50, 300)).toMatchObject({ way: 'upright', rows: 2, columns: 1 });
  });

  test('pages of one drawing are alike and overlap by 10 mm; rows go down', () => {
    const { tiles } = laid(500, 500);
    for (const { drawingMm } of tiles) {
      // (514 + 10)/2 wide, (514 + 3 × 10)/4 high.
      expect(sizeOf(drawingMm)[0]).toBeCloseTo(262, 9);
      expect(sizeOf(drawingMm)[1]).toBeCloseTo(136, 9);
    }
    expect(tiles.map((t) => [t.row, t.column]).slice(0, 3)).toEqual([
      [1, 1],
      [1, 2],
      [2, 1],
    ]);
    expect(tiles[0].drawingMm[2] - tiles[1].drawingMm[0]).toBeCloseTo(10, 9);
    expect(tiles[2].drawingMm[3] - tiles[0].drawingMm[1]).toBeCloseTo(10, 9);
  });

  test('a wider overlap, a wider margin and a larger correction take more pages', () => {
    const pages = (paper: Paper) => laid(515, 60, paper).tiles.length;
    // (529 − 10)/(270.6 − 10) = 1.99
    expect(pages(A4)).toBe(2);
    // (529 − 40)/(270.6 − 40) = 2.12
    expect(pages(paperOf({ marginMm: 8, overlapMm: 40 }).paper)).toBe(3);
    // 24 mm less: (529 − 10)/(246.6 − 10) = 2.19
    expect(pages(paperOf({ marginMm: 20, overlapMm: 10 }).paper)).toBe(3);
    // 240 that print as 234 are scaled by 1.0256 the long way, and must stay on the sheet when they are.
    const small = paperOf(undefined, { printed: { acrossMm: 180, alongMm: 234 } }).paper;
    // (297 − 16 − 0.4)/1.0256 − 10 = 263.6: (529 − 10)/(263.6 − 10) = 2.05
    expect(pages(small)).toBe(3);
  });
});

describe('by chance', () => {
  test('every page of any drawing passes the check', () => {
    const sizes = fc.constantFrom('A4', 'A3', 'Letter', 'Legal');
    const side = fc.double({ min: 5, max: 900, noNaN: true });
    fc.assert(
      fc.property(
        side,
        side,
        sizes,
        fc.integer({ min: 8, max: 40 }),
        fc.integer({ min: 0, max: 25 }),
        fc.double({ min: 0.97, max: 1.03, noNaN: true }),
        fc.double({ min: 0.97, max: 1.03, noNaN: true }),
        (wide, high, size, overlapMm, marginMm, across, along) => {
          const { check } = paperOf({ size, overlapMm, marginMm }).paper;
          const printed = { acrossMm: check.acrossMm * across, alongMm: check.alongMm * along };
          const { paper } = paperOf({ size, overlapMm, marginMm }, { printed });
          const file = paperFile(LEAFLET, [boxSketch(wide, high)], paper);
          const papers: Papers = {
            paper,
            files: [printerCheck(paper), file],
            checkLines: checkLines(paper),
          };
          expect(checkPapers(papers)).toEqual([]);
        },
      ),
      { seed: 6, numRuns: 150 },
    );
  });

  // ISO 216, A5: the words of the page stand over the bars, in one column.
  test('so does a sheet that is hardly wider than the bars', () => {
    const { paper } = paperOf({ sizeMm: [148, 177], marginMm: 8, overlapMm: 10 });
    const leaflet = { ...LEAFLET, notes: printNotes(LEAFLET, paper) };
    for (const [wide, high] of [
      [100, 60],
      [300, 80],
      [90, 400],
    ]) {
      const file = paperFile(leaflet, [boxSketch(wide, high)], paper);
      const files = [printerCheck(paper), file];
      expect(checkPapers({ paper, files, checkLines: checkLines(paper) })).toEqual([]);
    }
  });

  test('paper of the tests errs as they say', () => {
    const { paper } = paperOf(undefined, ERRING);
    expect(paper.printed.acrossMm / 180).toBeCloseTo(1.015, 12);
    expect(paper.printed.alongMm / 240).toBeCloseTo(0.99, 12);
  });
});
