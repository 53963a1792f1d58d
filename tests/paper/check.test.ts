/** The check of pages: content with good ones, and not with damaged ones. */
import { describe, expect, test } from 'vitest';
import type { PageItem } from '../../src/formats/pdf.js';
import { checkPapers } from '../../src/paper/check.js';
import { paperFile } from '../../src/paper/pages.js';
import type { PaperFile, PaperPage, Papers } from '../../src/paper/paper-file.js';
import { PENS } from '../../src/paper/pens.js';
import { checkLines, printerCheck } from '../../src/paper/printer-check.js';
import { textItem } from '../../src/paper/words.js';
import { paperOf } from '../../src/pattern/paper.js';
import { boxSketch, ERRING, LEAFLET, lineOf } from './sample.js';

const { paper } = paperOf(undefined, ERRING);
const file = paperFile(LEAFLET, [boxSketch(500, 300)], paper);
const good: Papers = { paper, files: [printerCheck(paper), file], checkLines: checkLines(paper) };

type Group = Extract<PageItem, { kind: 'group' }>;

/** The papers with one page of the drawing changed. */
const withPage = (number: number, change: (page: PaperPage) => PaperPage): Papers => ({
  ...good,
  files: [
    good.files[0],
    { ...file, pages: file.pages.map((p) => (p.number === number ? change(p) : p)) },
  ],
});
const withFile = (change: (file: PaperFile) => PaperFile): Papers => ({
  ...good,
  files: [good.files[0], change(file)],
});
/** What stands on a page under its correction, changed. */
const withItems = (change: (items: readonly PageItem[]) => readonly PageItem[]) =>
  withPage(1, (page) => {
    const [whole] = page.page.items as readonly [Group];
    return { ...page, page: { ...page.page, items: [{ ...whole, items: change(whole.items) }] } };
  });
const withWindow = (change: (group: Group) => Group) =>
  withItems((items) => items.map((i) => (i.kind === 'group' ? change(i) : i)));

/** A line of the first cross of the first page. */
const isArm = (item: PageItem): boolean => {
  if (item.kind !== 'path' || item.path.vertices.length !== 2) return false;
  const [p, q] = item.path.vertices;
  const [[x, y]] = file.pages[0].crossesMm;
  return Math.abs((p.x + q.x) / 2 - x) < 1e-6 && Math.abs((p.y + q.y) / 2 - y) < 1e-6;
};

test('good pages are good', () => {
  expect(file.pages.length).toBeGreaterThan(3);
  expect(checkPapers(good)).toEqual([]);
});

describe('a damaged page', () => {
  test.each<[string, Papers, string]>([
    [
      'its correction is lost',
      withPage(1, (p) => ({
        ...p,
        page: { ...p.page, items: (p.page.items[0] as Group).items },
      })),
      'no bar of 100 mm',
    ],
    [
      'the drawing moved by a hundredth of a millimeter',
      withWindow((g) => ({ ...g, matrix: [1, 0, 0, 1, g.matrix[4] + 0.01, g.matrix[5]] })),
      'does not lie where it is said to',
    ],
    [
      'the drawing scaled by a thousandth',
      withWindow((g) => ({ ...g, matrix: [1.001, 0, 0, 1, g.matrix[4], g.matrix[5]] })),
      'does not lie where it is said to',
    ],
    [
      'a cross left out',
      withWindow((g) => ({ ...g, items: g.items.filter((i) => !isArm(i)) })),
      'register crosses are not whole',
    ],
    [
      'words over the drawing',
      withItems((items) => [...items, textItem('here', [100, 150])]),
      '1 things over the drawing',
    ],
    [
      'words over words',
      withItems((items) => [...items, textItem('here', [10, 30]), textItem('there', [11, 31])]),
      'texts over others',
    ],
    [
      'a line in the margin',
      withItems((items) => [
        ...items,
        lineOf([
          [7.5, 30],
          [7.5, 60],
        ]),
      ]),
      '1 things off the printable part',
    ],
    [
      'a bar that is too short',
      withItems((items) =>
        items.map((i) =>
          i.kind === 'path' && i.path.vertices.length === 2 && i.pen === PENS.mark
            ? {
                ...i,
                path: {
                  ...i.path,
                  vertices: i.path.vertices.map((v) => ({ ...v, x: v.x * 0.9999 })),
                },
              }
            : i,
        ),
      ),
      'no bar of 101.6 mm',
    ],
    ['a page left out', withFile((f) => ({ ...f, pages: f.pages.slice(1) })), 'drawing 1: '],
    [
      'a box that is larger than its windows',
      withFile((f) => ({
        ...f,
        sheets: [{ ...f.sheets[0], boxMm: [-7, -7.1, 507, 307] as const }],
      })),
      'a part of it is on no page',
    ],
    [
      'a box that is smaller than the drawing',
      withFile((f) => ({ ...f, sheets: [{ ...f.sheets[0], boxMm: [-7, -7, 490, 307] as const }] })),
      'lines beyond it',
    ],
    [
      'crosses that the neighbor has not',
      withPage(1, (p) => ({ ...p, crossesMm: p.crossesMm.slice(1) })),
      'joins without overlap or crosses',
    ],
    [
      'a page of the printer’s that is corrected',
      {
        ...good,
        files: [
          {
            ...good.files[0],
            pages: good.files[0].pages.map((p) => ({
              ...p,
              page: {
                ...p.page,
                items: [
                  {
                    kind: 'group' as const,
                    matrix: [0.99, 0, 0, 0.99, 1, 1] as const,
                    window: null,
                    items: p.page.items,
                  },
                ],
              },
            })),
          },
          file,
        ],
      },
      'the line across is not 180 mm',
    ],
    ['no page for the printer', { ...good, files: [file] }, '0 pages that measure the printer'],
  ])('%s', (_, damaged, words) => {
    expect(checkPapers(damaged).join('\n')).toContain(words);
  });
});
