/** Pages read back by pdfjs-dist, which shares nothing with the writer. */
import { describe, expect, test } from 'vitest';
import { type Page, type PageItem, pdf } from '../../src/formats/pdf.js';
import { polyline } from '../../src/geometry/arcpath.js';
import { readFaces } from '../../src/io.js';
import { type ReadPage, readPdf } from './pdf-reader.js';

const faces = readFaces();
const INK = '#000000';
const pen = { widthMm: 0.35, tone: INK };

/** pdf.js holds coordinates in 32 bits: at 400 mm to 3e-5 mm. */
const NEAR_MM = 1e-4;

const written = (pages: readonly Page[], title = 'test') => pdf(pages, { title, faces });
const onA4 = (items: readonly PageItem[]): Page => ({ widthMm: 210, heightMm: 297, items });
const readOne = async (items: readonly PageItem[]): Promise<ReadPage> =>
  (await readPdf(await written([onA4(items)]))).pages[0];
const expectAt = (got: readonly number[], want: readonly number[]) => {
  expect(got).toHaveLength(want.length);
  got.forEach((v, i) => {
    expect(Math.abs(v - want[i])).toBeLessThan(NEAR_MM);
  });
};

describe('a document', () => {
  test('has pages of the sizes asked for, and its title', async () => {
    const sizes = [
      [210, 297],
      [420, 297],
      [215.9, 279.4],
      [215.9, 355.6],
    ];
    const pages = sizes.map(([widthMm, heightMm]) => ({ widthMm, heightMm, items: [] }));
    const read = await readPdf(await written(pages, 'Template: skerry'));
    expect(read.title).toBe('Template: skerry');
    expect(read.pages).toHaveLength(4);
    read.pages.forEach(({ widthMm, heightMm }, i) => {
      expectAt([widthMm, heightMm], sizes[i]);
    });
  });

  test('tells viewers not to scale it (PDF 32000-1:2008, 12.2)', async () => {
    expect((await readPdf(await written([onA4([])]))).printScaling).toBe('None');
  });

  test('has no date of its own, and the same bytes twice', async () => {
    const items: PageItem[] = [
      { kind: 'text', at: [20, 20], text: 'same', sizeMm: 4, anchor: 'start', tone: INK },
    ];
    const [once, again] = [await written([onA4(items)]), await written([onA4(items)])];
    expect(Buffer.compare(once, again)).toBe(0);
    const { dates } = await readPdf(once);
    expect(dates).toEqual(['D:19800101000000Z', 'D:19800101000000Z']);
  });

  test('is refused without pages and with a number that is none', async () => {
    await expect(written([])).rejects.toThrow('no pages');
    const path = polyline(
      [
        [0, 0],
        [Number.NaN, 1],
      ],
      false,
    );
    await expect(written([onA4([{ kind: 'path', path, pen }])])).rejects.toThrow('number NaN');
  });
});

describe('lines', () => {
  test('stand where they should, as broad as they should', async () => {
    const path = polyline(
      [
        [10, 20],
        [110, 20],
        [110, 121.6],
      ],
      true,
    );
    const dashed = { widthMm: 0.18, tone: INK, dashMm: [3, 1.5] as const };
    const { paths } = await readOne([
      { kind: 'path', path, pen },
      { kind: 'path', path: { ...path, closed: false }, pen: dashed },
    ]);
    // Back to its beginning, then closed.
    expectAt(paths[0].points.flat(), [10, 20, 110, 20, 110, 121.6, 10, 20]);
    expect([paths[0].closed, paths[0].fill, paths[0].dashMm]).toEqual([true, null, []]);
    expect(paths[0].penMm).toBeCloseTo(0.35, 5);
    expectAt(paths[1].dashMm, [3, 1.5]);
    expect(paths[1].closed).toBe(false);
  });

  test('arcs keep their radius: a quarter and three quarters turn, both ways', async () => {
    // Bulges tan(θ/4): a quarter turn left, three quarters right.
    const quarter = Math.tan(Math.PI / 8);
    const most = -Math.tan((3 * Math.PI) / 8);
    const arc = (bulge: number) => ({
      closed: false,
      vertices: [
        { x: 100, y: 50, bulge },
        { x: 80, y: 70, bulge: 0 },
      ],
    });
    const { paths } = await readOne(
      [quarter, most].map((bulge): PageItem => ({ kind: 'path', path: arc(bulge), pen })),
    );
    // A quarter to the left from (100, 50) to (80, 70) goes about (80, 50); three quarters to the right too.
    const far = (
      center: readonly [number, number],
      points: readonly (readonly [number, number])[],
    ) =>
      Math.max(...points.map((p) => Math.abs(Math.hypot(p[0] - center[0], p[1] - center[1]) - 20)));
    // Four curves to a half turn leave a circle by 4e-6 of its radius.
    expect(far([80, 50], paths[0].points)).toBeLessThan(20 * 5e-6 + NEAR_MM);
    expect(far([80, 50], paths[1].points)).toBeLessThan(20 * 5e-6 + NEAR_MM);
    expect(Math.min(...paths[1].points.map((p) => p[1]))).toBeCloseTo(30, 3);
    expectAt(paths[0].points[paths[0].points.length - 1], [80, 70]);
  });

  test('circles are round, filled ones filled', async () => {
    const circle = { center: [60, 80], radius: 12.5 } as const;
    const { paths } = await readOne([
      { kind: 'circle', circle, pen },
      { kind: 'circle', circle, pen: null, fill: '#808080' },
    ]);
    const radii = paths[0].points.map((p) => Math.hypot(p[0] - 60, p[1] - 80));
    // The library draws one curve to a quarter, which leaves the circle by 2.7e-4 of its radius.
    expect(Math.max(...radii.map((r) => Math.abs(r - 12.5)))).toBeLessThan(12.5 * 3e-4);
    expect(paths[1]).toMatchObject({ penMm: null, fill: '#808080' });
  });

  test('a group is moved and turned, and seen through its window only', async () => {
    const line = polyline(
      [
        [0, 0],
        [50, 10],
      ],
      false,
    );
    const { paths } = await readOne([
      {
        kind: 'group',
        matrix: [0, 1, -1, 0, 100, 30],
        window: [5, 0, 20, 10],
        items: [
          { kind: 'path', path: line, pen },
          {
            kind: 'group',
            matrix: [2, 0, 0, 2, 1, 0],
            window: null,
            items: [{ kind: 'path', path: line, pen }],
          },
        ],
      },
      { kind: 'path', path: line, pen },
    ]);
    // (x, y) ↦ (100 − y, 30 + x).
    expectAt(paths[0].points.flat(), [100, 30, 90, 80]);
    expectAt(paths[0].window ?? [], [90, 35, 100, 50]);
    // Twice as large and 1 to the right first; its pen grows with it.
    expectAt(paths[1].points.flat(), [100, 31, 80, 131]);
    expect(paths[1].penMm).toBeCloseTo(0.7, 5);
    expectAt(paths[2].points.flat(), [0, 0, 50, 10]);
    expect(paths[2].window).toBeNull();
  });
});

describe('text', () => {
  const at = [100, 50] as const;
  const text = (more: Partial<Extract<PageItem, { kind: 'text' }>>): PageItem => ({
    kind: 'text',
    at,
    text: 'Print at 100 %',
    sizeMm: 4,
    anchor: 'start',
    tone: INK,
    ...more,
  });

  test('stands on its baseline at the end that is named', async () => {
    const { texts } = await readOne(
      (['start', 'middle', 'end'] as const).map((anchor, i) =>
        text({ anchor, at: [100, 50 + 10 * i] }),
      ),
    );
    const [start, middle, end] = [50, 60, 70].map((y) =>
      texts.find((t) => Math.abs(t.at[1] - y) < 1),
    );
    expect(start).toMatchObject({ text: 'Print at 100 %' });
    expectAt(start?.at ?? [], [100, 50]);
    const width = start?.widthMm ?? Number.NaN;
    expect(start?.sizeMm).toBeCloseTo(4, 4);
    // The reader sums widths of glyphs rounded to whole units and leaves kerning to its own rounding.
    expect(middle?.at[0]).toBeCloseTo(100 - width / 2, 1);
    expect(end?.at[0]).toBeCloseTo(100 - width, 1);
  });

  test('turns counter-clockwise', async () => {
    const { texts } = await readOne([text({ turnDeg: 90 })]);
    expect(texts[0].turnDeg).toBeCloseTo(90, 6);
    expectAt(texts[0].at, [100, 50]);
  });

  test('markup is text', async () => {
    const words = '<b>&amp; "x" (y) \\n %';
    const { texts } = await readOne([text({ text: words })]);
    expect(texts.map((t) => t.text).join('')).toBe(words);
  });

  test('from the right stands in the order it is read in', async () => {
    const { texts } = await readOne([text({ text: 'a name as it is spoken: \u05d0\u05d1\u05d2' })]);
    // The reader turns what it finds from the right round, where most is from the left.
    expect(texts.map((t) => t.text).join('')).toBe('a name as it is spoken: \u05d0\u05d1\u05d2');
  });
});
