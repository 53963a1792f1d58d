/** Pages as a printer makes them: read back from PDF by another library, then moved as the printer errs. */
import { beforeAll, describe, expect, test } from 'vitest';
import { pdf } from '../../src/formats/pdf.js';
import type { Box, Point2 } from '../../src/geometry/vec.js';
import { readFaces } from '../../src/io.js';
import { paperFile } from '../../src/paper/pages.js';
import type { PaperFile, PaperPage } from '../../src/paper/paper-file.js';
import { checkLines, printerCheck } from '../../src/paper/printer-check.js';
import { printNotes } from '../../src/paper/sentences.js';
import { type Paper, paperOf } from '../../src/pattern/paper.js';
import { type ReadPage, readPdf } from '../formats/pdf-reader.js';
import { A4, boxSketch, ERRING, LEAFLET, lineOf } from './sample.js';

const faces = readFaces();
const read = async (file: PaperFile): Promise<readonly ReadPage[]> =>
  (
    await readPdf(
      await pdf(
        file.pages.map((p) => p.page),
        { title: file.title, faces },
      ),
    )
  ).pages;

/** pdf.js holds coordinates in 32 bits: at 400 mm to 3e-5 mm. */
const NEAR_MM = 2e-4;
const isAt = (p: Point2, q: Point2, near = NEAR_MM) => Math.hypot(p[0] - q[0], p[1] - q[1]) < near;

/** Where the printer of the tests puts a point: 1.5 % too far across, 1 % too near along, about the middle. */
const erring =
  ({ widthMm, heightMm }: ReadPage) =>
  ([x, y]: Point2): Point2 => {
    const [ex, ey] = widthMm < heightMm ? [1.015, 0.99] : [0.99, 1.015];
    return [widthMm / 2 + ex * (x - widthMm / 2), heightMm / 2 + ey * (y - heightMm / 2)];
  };

/** Level lines of two points on a printed page, longest first. */
const levelLines = (page: ReadPage, print: (p: Point2) => Point2) =>
  page.paths
    .filter((p) => p.points.length === 2 && p.window === null)
    .map(({ points }) => points.map(print))
    .filter(([p, q]) => Math.abs(p[1] - q[1]) < NEAR_MM)
    .map(([p, q]) => Math.abs(q[0] - p[0]));

const still = (p: Point2) => p;

describe('a drawing on two pages', () => {
  // 520 mm long: 534 with its white, two turned pages of A4 do not take it; 500 are taken by two.
  const file = paperFile(LEAFLET, [boxSketch(500, 60)], A4);
  const [first, second] = file.pages;

  test('has the same register crosses on both, whole, where nothing is drawn', () => {
    expect(first.crossesMm).toEqual(second.crossesMm);
    // The overlap is 10 mm about the middle, 250; 7 mm white over the box's 60: 67 less 2.5 and 0.8.
    const wanted = [-7 + 3.3, 67 - 3.3];
    expect(first.crossesMm.map(([x]) => x)).toEqual([250, 250]);
    first.crossesMm.forEach(([, y], i) => {
      expect(y).toBeCloseTo(wanted[i], 9);
    });
  });

  test('shows crosses and a line to cut on, broken where the drawing is', async () => {
    const [page] = await read(file);
    const onto = ([x, y]: Point2): Point2 => [
      first.atMm[0] + x - first.drawingMm[0],
      first.atMm[1] + y - first.drawingMm[1],
    ];
    const upright = page.paths.filter(
      ({ points: [p, q], window }) =>
        window !== null && q && isAt(p, [onto([250, 0])[0], p[1]]) && isAt(q, [p[0], q[1]]),
    );
    const cut = upright
      .filter((p) => p.dashMm.length > 0)
      .map((p) => p.points.map(([, y]) => y - onto([0, 0])[1]));
    const arms = upright.filter((p) => p.dashMm.length === 0);
    expect(arms).toHaveLength(2);
    // The box's own lines lie at 1 and 59; 0.8 mm of them are left free, and 0.5 mm at the ends.
    const wanted = [
      [-6.5, 0.2],
      [1.8, 58.2],
      [59.8, 66.5],
    ];
    expect(cut).toHaveLength(3);
    wanted.forEach((ends, i) => {
      ends.forEach((y, k) => {
        expect(Math.abs(cut[i][k] - y)).toBeLessThan(NEAR_MM);
      });
    });
  });

  test('says on each which it is, and over or under which it goes', async () => {
    const [one, two] = (await read(file)).map((p) => p.texts.map((t) => t.text));
    expect(one).toContain('Page 1 of 2');
    expect(one).toContain('row 1, column 1');
    expect(one.join(' ')).toContain('cut here, glue over page 2');
    expect(two).toContain('row 1, column 2');
    expect(two).toContain('goes under page 1');
    for (const words of [one, two]) {
      expect(words).toContain('Print at 100 %');
      expect(words).toContain('templates/skerry.pdf');
      expect(words).toContain('Template: skerry, version 1.3');
      // The map: one cell a page.
      expect(words.filter((w) => w === '1' || w === '2')).toHaveLength(2);
    }
  });

  test('fills its own cell of the map', async () => {
    const pages = await read(file);
    for (const [i, page] of pages.entries()) {
      const cells = page.paths.filter((p) => p.window === null && p.closed);
      expect(cells.map((c) => c.fill !== null)).toEqual([i === 0, i === 1]);
    }
  });
});

describe('register crosses', () => {
  test('are the same on every two neighbors of a grid, and lie on no others', () => {
    const { pages } = paperFile(LEAFLET, [boxSketch(500, 500)], A4);
    expect(pages).toHaveLength(8);
    const shown = (page: PaperPage) => page.crossesMm.map((c) => c.map((v) => v.toFixed(6)).join());
    const counts = new Map<string, number>();
    for (const cross of pages.flatMap(shown)) counts.set(cross, (counts.get(cross) ?? 0) + 1);
    expect(new Set(counts.values())).toEqual(new Set([2]));
    // Four rows of two: 4 joins across and 6 down, two crosses each.
    expect(counts.size).toBe(2 * (4 + 6));
  });

  test('keep off the lines of the drawing where they can', () => {
    const posts = Array.from({ length: 3 }, (_, i) =>
      lineOf([
        [0, 10 * i - 4],
        [500, 10 * i - 4],
      ]),
    );
    const box: Box = [0, -5, 500, 60];
    const { pages } = paperFile(LEAFLET, [{ items: posts, box }], A4);
    for (const [, y] of pages[0].crossesMm)
      for (const line of [-4, 6, 16]) expect(Math.abs(y - line)).toBeGreaterThan(2.5 + 0.79);
  });
});

describe('a page for a printer that errs by 1.5 % across and −1 % along', () => {
  const { paper } = paperOf(undefined, ERRING);
  const files = [boxSketch(150, 60), boxSketch(270, 60)].map((s) => paperFile(LEAFLET, [s], paper));
  let upright: ReadPage;
  let turned: ReadPage;
  beforeAll(async () => {
    [[upright], [turned]] = await Promise.all(files.map(read));
  });

  test('comes out exact, upright and turned', () => {
    expect([upright.widthMm, turned.widthMm].map(Math.round)).toEqual([210, 297]);
    for (const [page, file] of [
      [upright, files[0]],
      [turned, files[1]],
    ] as const) {
      const print = erring(page);
      const [{ atMm, drawingMm }] = file.pages;
      const [outline] = page.paths.filter((p) => p.window !== null);
      const [x0, y0, x1, y1] = drawingMm;
      // The sketch's box has its line 1 mm inside.
      const wanted: Point2[] = [
        [atMm[0] + 1, atMm[1] + 1],
        [atMm[0] + x1 - x0 - 1, atMm[1] + 1],
        [atMm[0] + x1 - x0 - 1, atMm[1] + y1 - y0 - 1],
      ];
      outline.points
        .slice(0, 3)
        .map(print)
        .forEach((p, i) => {
          expect(isAt(p, wanted[i]), `${p} ${wanted[i]}`).toBe(true);
        });
    }
  });

  test('has bars that come out at 100 mm and 4 in, which unprinted they are not', () => {
    for (const page of [upright, turned]) {
      for (const mm of [100, 101.6]) {
        const near = (lengths: number[]) => lengths.some((v) => Math.abs(v - mm) < NEAR_MM);
        expect(near(levelLines(page, erring(page)))).toBe(true);
        expect(near(levelLines(page, still))).toBe(false);
      }
    }
  });

  test('keeps inside the printable part as written and as printed', () => {
    for (const page of [upright, turned]) {
      const print = erring(page);
      const ink = page.paths.flatMap(({ points, penMm }) =>
        [...points, ...points.map(print)].map((p) => [p, (penMm ?? 0) / 2] as const),
      );
      const words = page.texts.flatMap(({ at: [x, y], sizeMm, widthMm }) =>
        [
          [x, y - 0.25 * sizeMm],
          [x + widthMm, y + 0.8 * sizeMm],
        ].flatMap((p) => [p as unknown as Point2, print(p as unknown as Point2)]),
      );
      expect(ink.length).toBeGreaterThan(20);
      for (const [[x, y], half] of [...ink, ...words.map((p) => [p, 0] as const)]) {
        expect(Math.min(x, page.widthMm - x) - half).toBeGreaterThan(8 - 1e-3);
        expect(Math.min(y, page.heightMm - y) - half).toBeGreaterThan(8 - 1e-3);
      }
    }
  });

  test('says so', () => {
    expect(printNotes(LEAFLET, paper).join(' ')).toContain(
      '182.7 of 180 mm across and 237.6 of 240 mm along',
    );
    expect(printNotes(LEAFLET, A4).join(' ')).toContain('Not corrected');
    expect(printNotes(LEAFLET, A4).join(' ')).toContain('Kerf is not in the lines');
  });
});

describe('the page that measures the printer', () => {
  const lengths = async (paper: Paper) => {
    const [page] = await read(printerCheck(paper));
    const along = (axis: 0 | 1) =>
      page.paths
        .filter((p) => p.points.length === 2)
        .map(({ points: [p, q] }) => Math.abs(q[axis] - p[axis]))
        .sort((a, b) => b - a)[0];
    return { across: along(0), along: along(1), page };
  };

  test('has lines of exactly 180 and 240 mm, whatever was measured', async () => {
    for (const paper of [
      A4,
      paperOf(undefined, ERRING).paper,
      paperOf(undefined, { size: 'A3' }).paper,
    ]) {
      const { along, page } = await lengths(paper);
      expect(Math.abs(along - 240)).toBeLessThan(NEAR_MM);
      const { across } = checkLines(paper);
      const drawn = page.paths.some(
        ({ points: [p, q] }) => q && isAt(p, across[0]) && isAt(q, across[1]),
      );
      expect(drawn).toBe(true);
      expect(across[1][0] - across[0][0]).toBeCloseTo(180, 9);
      for (const mm of [100, 101.6])
        expect(levelLines(page, still).some((v) => Math.abs(v - mm) < NEAR_MM)).toBe(true);
    }
  });

  test('tells what to type back, and to print it at 100 %', async () => {
    const { page } = await lengths(A4);
    const words = page.texts.map((t) => t.text).join(' ');
    expect(words).toContain('--printed 179.6x240.4');
    expect(words).toContain('printedAcrossMm');
    expect(words).toContain('Across, measured');
    expect(words).toContain('100 %');
  });

  test('has shorter lines on a smaller sheet, and says so', async () => {
    const { paper } = paperOf({ sizeMm: [160, 200], marginMm: 8, overlapMm: 10 });
    const { along, page } = await lengths(paper);
    expect(Math.abs(along - 170)).toBeLessThan(NEAR_MM);
    const words = page.texts.map((t) => t.text).join(' ');
    expect(words).toContain('ACROSS: 130 mm');
    expect(words).toContain('ALONG: 170 mm');
    expect(words).toContain('as long as there is room for');
  });
});
