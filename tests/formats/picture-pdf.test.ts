import { beforeAll, describe, expect, test } from 'vitest';
import { type Picture, ROLES, type Shape } from '../../src/drawing/picture/picture.js';
import { CHAIN_MM, DASHES_MM, LOOK, WEIGHT_MM } from '../../src/formats/picture-look.js';
import { picturesPdf } from '../../src/formats/picture-pdf.js';
import { pictureSvg } from '../../src/formats/picture-svg.js';
import { readFaces } from '../../src/io.js';
import { Fault } from '../../src/problem.js';
import { type ReadPage, readPdf } from './pdf-reader.js';
import { readXml } from './xml.js';

const picture = (shapes: readonly Shape[]): Picture => ({
  title: 'T',
  description: 'D',
  widthMm: 120,
  heightMm: 80,
  shapes,
});
const written = (shapes: readonly Shape[], more: readonly Picture[] = []) =>
  picturesPdf([picture(shapes), ...more], { title: 'T', faces: readFaces() });
const LINE = {
  kind: 'line',
  points: [
    [10, 10],
    [30, 10],
    [30, 25],
  ],
  role: 'ink',
  pen: 'hair',
} as const;
const AREA = {
  kind: 'area',
  points: [
    [40, 10],
    [60, 10],
    [60, 30],
    [40, 30],
  ],
  role: 'wood',
} as const;
const TEXT = {
  kind: 'text',
  at: [20, 50],
  text: 'back to belly',
  sizeMm: 4,
  anchor: 'start',
  bold: false,
  role: 'ink',
} as const;

const argsOf = ({ calls }: ReadPage, name: string) =>
  calls.filter((c) => c.name === name).map((c) => c.args);
/** Corners of every path, as pdf.js gives them: [code, x, y, …] with 0 to move and 1 to draw, 4 to close. */
const pathsOf = (page: ReadPage): readonly (readonly number[])[] =>
  argsOf(page, 'constructPath').map(([, paths]) => Array.from((paths as Float32Array[])[0]));

describe('a page', () => {
  let page: ReadPage;
  beforeAll(async () => {
    const shapes: Shape[] = [
      LINE,
      { ...LINE, pen: 'fine', dashed: true },
      { ...LINE, pen: 'firm', chain: true },
      { ...LINE, pen: 'bold', closed: true },
      { kind: 'lines', lines: [LINE.points, LINE.points], role: 'faint', pen: 'fine' },
      TEXT,
      { ...TEXT, anchor: 'end', bold: true, at: [90, 60] },
      { ...TEXT, turnDeg: 90, at: [100, 20], text: 'upward' },
      { kind: 'disc', center: [80, 40], radiusMm: 5, role: 'sheet', pen: 'fine' },
    ];
    [page] = (await readPdf(await written(shapes))).pages;
  });

  test('has the size of the picture', () => {
    expect(page.widthMm).toBeCloseTo(120, 4);
    expect(page.heightMm).toBeCloseTo(80, 4);
  });

  test('draws lines where they are, at the weights and dashes of the looks', () => {
    expect(argsOf(page, 'setLineWidth').map(([w]) => w)).toEqual([
      ...(['hair', 'fine', 'firm', 'bold', 'fine', 'fine', 'fine'] as const).map(
        (pen) => WEIGHT_MM[pen],
      ),
    ]);
    expect(argsOf(page, 'setDash').map(([dashes]) => dashes)).toEqual([
      [],
      [...DASHES_MM],
      [...CHAIN_MM],
      [],
      [],
      [],
      [],
    ]);
    const line = [0, 10, 10, 1, 30, 10, 1, 30, 25];
    const paths = pathsOf(page);
    expect(paths.slice(0, 3)).toEqual([line, line, line]);
    expect(paths[3]).toEqual([...line, 1, 10, 10, 4]);
    expect(paths.slice(4, 6)).toEqual([line, line]);
    // One matrix makes millimeters of the sheet into points, y up.
    expect(argsOf(page, 'transform')[1]?.map((v) => Math.round(1e4 * Number(v)) / 1e4)).toEqual([
      2.8346, 0, 0, -2.8346, 0, 226.7717,
    ]);
  });

  test('sets text where it is told, turned and anchored, in the faces given', () => {
    const [start, end, turned] = page.texts;
    expect(start).toMatchObject({ text: 'back to belly' });
    for (const [value, told] of [
      [start.at[0], 20],
      [start.at[1], 50],
      [start.sizeMm, 4],
      [start.turnDeg, 0],
      [end.at[1], 60],
      [turned.at[0], 100],
      [turned.at[1], 20],
      [turned.turnDeg, 90],
    ])
      expect(value).toBeCloseTo(told, 2);
    // 13 letters of a condensed bold face, ending at 90 mm.
    expect(end.at[0]).toBeGreaterThan(60);
    expect(end.at[0]).toBeLessThan(70);
  });
});

test('every role has its tone, and the same as in SVG', async () => {
  const [page] = (await readPdf(await written(ROLES.map((role) => ({ ...LINE, role }))))).pages;
  const tones = argsOf(page, 'setStrokeRGBColor').map(([tone]) => tone);
  expect(tones).toEqual(ROLES.map((role) => LOOK[role].tone));
  const svg = readXml(pictureSvg(picture(ROLES.map((role) => ({ ...LINE, role })))));
  expect(svg.children.flatMap((c) => c.attributes.stroke ?? [])).toEqual(tones);
});

describe('hatching', () => {
  test.each([
    ['good', 1],
    ['warn', -1],
  ] as const)('of %s slants as in SVG, in stripes at the same places', async (role, up) => {
    const [page] = (await readPdf(await written([{ ...AREA, role }]))).pages;
    const [ground, ...stripes] = pathsOf(page);
    expect(ground.filter((_, i) => i % 3 === 1).slice(0, 4)).toEqual([40, 60, 60, 40]);
    // 20 mm squared has a diagonal of 28.3 mm: 17 or 18 stripes, 1.6 mm apart.
    expect([17, 18]).toContain(stripes.length);
    for (const [, x0, y0, , x1, y1] of stripes) {
      expect((y1 - y0) / (x1 - x0)).toBeCloseTo(up, 3);
      for (const x of [x0, x1]) expect(x >= 39.999 && x <= 60.001).toBe(true);
      // An SVG turns its stripes, each 0 to 0.3 mm of every 1.6, about the upper left corner of the sheet.
      const [sx, sy] = [x0, 80 - y0];
      const across = (sx + up * sy) / Math.SQRT2;
      expect((((across - 0.15) / 1.6) % 1) + 1).toBeCloseTo(
        Math.round(((across - 0.15) / 1.6) % 1) + 1,
        3,
      );
    }
  });
});

test('one page a picture, the same bytes every time, and text of any script', async () => {
  // The reader drops < and > from lines it turns round, so they have a line of their own.
  const more = [
    picture([
      { ...TEXT, text: 'שלום 12' },
      { ...TEXT, text: '<b>&</b>' },
    ]),
    picture([]),
  ];
  const bytes = await written([TEXT], more);
  expect(await written([TEXT], more)).toEqual(bytes);
  const { pages } = await readPdf(bytes);
  expect(pages).toHaveLength(3);
  expect(pages[0].texts.map((t) => t.text)).toEqual(['back to belly']);
  const letters = pages[1].texts.map((t) => t.text).join('');
  for (const part of ['שלום', '12', '<b>&</b>']) expect(letters).toContain(part);
});

test('refuses no pictures and numbers no page can hold', async () => {
  await expect(picturesPdf([], { title: 'T', faces: readFaces() })).rejects.toThrow(Fault);
  const broken = { ...TEXT, at: [Number.NaN, 0] as const };
  await expect(written([broken])).rejects.toThrow(Fault);
});

test('in SVG a line of a script from the right keeps its place: its start is its right end', () => {
  const svg = readXml(
    pictureSvg(
      picture([
        { ...TEXT, text: 'שלום 12' },
        { ...TEXT, text: '12 a שלום' },
      ]),
    ),
  );
  const [hebrew, latin] = svg.children.filter((c) => c.name === 'text').map((c) => c.attributes);
  expect(hebrew).toMatchObject({ x: '20', direction: 'rtl', 'text-anchor': 'end' });
  expect(latin['text-anchor']).toBe('start');
  expect(latin.direction).toBeUndefined();
});
