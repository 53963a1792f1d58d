/** The judge of pages that poppler renders: content with good ones, and not with damaged ones. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Page, type PageItem, pdf } from '../../src/formats/pdf.js';
import { circleRing } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import { readFaces } from '../../src/io.js';
import { paperFile } from '../../src/paper/pages.js';
import type { Papers } from '../../src/paper/paper-file.js';
import { checkLines, printerCheck } from '../../src/paper/printer-check.js';
import { paperOf } from '../../src/pattern/paper.js';
import { recordText } from '../../src/record/build-json.js';
import { paperRecord } from '../../src/record/paper-json.js';
import { ERRING, LEAFLET, lineOf } from '../paper/sample.js';
import { judge, kindsTold } from './shapely.js';

const hasPoppler =
  spawnSync('pdftoppm', ['-v']).status === 0 &&
  spawnSync('/usr/bin/python3', ['-c', 'import numpy']).status === 0;
const WHY = hasPoppler ? '' : ' (skipped: no pdftoppm, or /usr/bin/python3 has no numpy)';

/** An ellipse of 420 × 60 mm, on two turned pages of a printer that errs. */
const outline = circleRing([0, 0], 1, { segments: 400 }).map(([x, y]): Point2 => [210 * x, 30 * y]);
const { paper } = paperOf(undefined, ERRING);
const file = paperFile(
  LEAFLET,
  [{ items: [lineOf(outline, true)], box: [-211, -31, 211, 31] }],
  paper,
);
const papers: Papers = { paper, files: [printerCheck(paper), file], checkLines: checkLines(paper) };

type Data = { patterns: { outline: Point2[] }[]; paper: { files: { pages: never[] }[] } };
const recordOf = (): Data =>
  JSON.parse(
    recordText({
      patterns: [{ name: 'skerry', outline, profile: outline }],
      nest: null,
      paper: paperRecord(papers),
    }),
  );

type Change = {
  readonly record?: (data: Data) => void;
  readonly pages?: (pages: Page[]) => Page[];
};

const folder = mkdtempSync(join(tmpdir(), 'blankwright-poppler-'));

async function write(name: string, { record, pages }: Change): Promise<void> {
  const data = recordOf();
  record?.(data);
  const put = (path: string, content: string | Uint8Array) => {
    mkdirSync(dirname(join(folder, name, path)), { recursive: true });
    writeFileSync(join(folder, name, path), content);
  };
  put('build.json', JSON.stringify(data));
  for (const { file: path, pages: laid, title } of papers.files) {
    const whole = laid.map((p) => p.page);
    const changed = pages && path === LEAFLET.file ? pages(whole) : whole;
    put(path, await pdf(changed, { title, faces: readFaces() }));
  }
}

const group = (items: readonly PageItem[], matrix: readonly number[]): PageItem => ({
  kind: 'group',
  matrix: matrix as [number, number, number, number, number, number],
  window: null,
  items,
});
const onto = (pages: readonly Page[], index: number, change: (p: Page) => Page): Page[] =>
  pages.map((p, i) => (i === index ? change(p) : p));

const CASES: Readonly<Record<string, Change & { readonly kinds: readonly string[] }>> = {
  good: { kinds: [] },
  'outline-moved': {
    record: ({ patterns: [pattern] }) => {
      pattern.outline = pattern.outline.map(([x, y]): Point2 => [x, y + 0.5]);
    },
    kinds: ['outermost', 'outline'],
  },
  // 0.15 mm on 100 mm, where a pixel of 300 dpi is 0.085 mm; 0.2 mm at the ends of the page.
  'printed-too-large': {
    pages: (pages) =>
      pages.map((p) => ({
        ...p,
        items: [
          group(p.items, [1.0015, 0, 0, 1.0015, -0.00075 * p.widthMm, -0.00075 * p.heightMm]),
        ],
      })),
    kinds: ['bar', 'outermost', 'outline'],
  },
  'second-page-shifted': {
    pages: (pages) =>
      onto(pages, 1, (p) => ({ ...p, items: [group(p.items, [1, 0, 0, 1, 0, 0.5])] })),
    kinds: ['cross', 'outermost', 'outline'],
  },
  // In the white over the nose of the ellipse.
  'ink-beyond': {
    pages: (pages) =>
      onto(pages, 0, (p) => {
        const [x, y] = file.pages[0].atMm;
        const line: Point2[] = [
          [x + 30, y + 60],
          [x + 40, y + 60],
        ];
        return { ...p, items: [...p.items, lineOf(line)] };
      }),
    kinds: ['outermost'],
  },
  'other-size': {
    record: (data) => {
      const [page] = data.paper.files[1].pages as unknown as { heightMm: number }[];
      page.heightMm += 0.1;
    },
    kinds: ['size'],
  },
  'page-missing': { pages: (pages) => pages.slice(1), kinds: ['pages'] },
};

describe.skipIf(!hasPoppler)(`the judge of paper${WHY}`, () => {
  beforeAll(async () => {
    for (const [name, change] of Object.entries(CASES)) await write(name, change);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('has a drawing on two turned pages', () => {
    expect(file.pages.map((p) => [p.row, p.column, p.page.widthMm])).toEqual([
      [1, 1, 297],
      [1, 2, 297],
    ]);
  });

  it('is content with good pages, to a pixel', () => {
    const { status, lines } = judge('paper_poppler.py', '--dpi', '300', join(folder, 'good'));
    expect(status).toBe(0);
    expect(lines).toHaveLength(1);
    // Two bars on each of three pages, two lines of the printer’s.
    expect(lines[0]).toContain('3 pages, 8 lengths');
    expect(lines[0]).toContain('1 outlines, 1 drawings put together from several pages');
  });

  it('sees what is wrong with damaged ones', () => {
    const verdict = judge('paper_poppler.py', '--dpi', '300', folder);
    expect(verdict.status).toBe(1);
    for (const [name, { kinds }] of Object.entries(CASES))
      expect(kindsTold(verdict, `/${name}/`), name).toEqual(kinds);
  });

  it('fails when it looked at nothing', () => {
    const empty = mkdtempSync(join(tmpdir(), 'blankwright-none-'));
    expect(judge('paper_poppler.py', '--dpi', '300', empty).status).toBe(1);
    rmSync(empty, { recursive: true });
  });
});
