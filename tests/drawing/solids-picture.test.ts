import { describe, expect, test } from 'vitest';
import { checkPicture } from '../../src/drawing/picture/check.js';
import { type Flag, flagged, rowsMm } from '../../src/drawing/picture/flags.js';
import { type Picture, SHEET, type Shape } from '../../src/drawing/picture/picture.js';
import { scaleBar, scaleFor, scaleWords } from '../../src/drawing/picture/scale-bar.js';
import { type SolidsInput, solidsPicture } from '../../src/drawing/picture/solids-picture.js';
import { pictureSvg } from '../../src/formats/picture-svg.js';
import { seededDraws } from '../../src/geometry/random.js';
import { type Box, distance, type Point2 } from '../../src/geometry/vec.js';
import { readPng } from '../formats/png-reader.js';
import { readXml } from '../formats/xml.js';
import { body, box, ISOMETRIC, movedTo, scene, sphere } from '../shade/shapes.js';

const BACK = { toward: [-1, -1, 1], up: [0, 0, 1] } as const;

function input(size: number, labels = 2, captions = 2): SolidsInput {
  const of = scene(
    body(box(size, size / 2, size / 4)),
    body(box(size / 3, size / 3, size / 3), 'wood', movedTo(size / 4, 0, size / 4)),
  );
  const named = Array.from({ length: labels }, (_, k) => ({
    text: `part ${k + 1} with a name`,
    at: [(size * k) / Math.max(1, labels), 0, 0] as const,
  }));
  return {
    word: 'Jig',
    about: 'for a test',
    name: 'skerry',
    small: 'version 1',
    views: [
      { caption: 'From the nose', scene: of, view: ISOMETRIC, labels: named },
      { caption: 'From the tail', scene: of, view: BACK, labels: [] },
    ],
    captions: Array.from({ length: captions }, (_, k) => `Sentence ${k} that says something.`),
  };
}

const rasters = ({ shapes }: Picture) => shapes.filter((s) => s.kind === 'image');
const drawnLines = ({ shapes }: Picture): Point2[] =>
  shapes.flatMap((s) => (s.kind === 'lines' ? s.lines.flat() : []));

describe('a sheet of two views', () => {
  test.each([0.5, 7, 30, 75, 190, 420, 3000])('of a body %s mm long has no flaw', (size) => {
    const picture = solidsPicture(input(size));
    expect(checkPicture(picture)).toEqual([]);
    expect(rasters(picture)).toHaveLength(2);
  });

  test('holds as many labels and captions as a jig may want, and names without end', () => {
    const many = input(60, 9, 6);
    const long = 'the name of a lure that goes on and on and on '.repeat(5);
    expect(checkPicture(solidsPicture(many))).toEqual([]);
    const wordy = { ...many, word: long, name: long, about: long, captions: [long] };
    expect(checkPicture(solidsPicture(wordy))).toEqual([]);
  });

  test('is drawn to the scale it tells', () => {
    const size = 60;
    const picture = solidsPicture(input(size, 0));
    const told = picture.shapes.flatMap((s) => (s.kind === 'text' ? [s.text] : [])).join('|');
    const [, of, to] = told.match(/Scale ([\d.]+) : ([\d.]+)/) ?? [];
    const scale = Number(of) / Number(to);
    const xs = drawnLines(picture)
      .map(([x]) => x)
      .filter((x) => x < SHEET.widthMm / 2);
    // Along x and y both slant by 30 degrees: as wide as (a + b) cos 45°.
    const width = (size + size / 2) * Math.SQRT1_2;
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(scale * width, 6);
  });

  test('pixels are covered where its lines end', () => {
    for (const { at, heightMm, raster } of rasters(solidsPicture(input(60, 3)))) {
      const mm = heightMm / raster.rows;
      const first = raster.pixels.findIndex((p) => p > 0);
      const top = at[1] + heightMm - Math.floor(first / raster.columns) * mm;
      const ys = drawnLines(solidsPicture(input(60, 3)))
        .filter(([x]) => x < SHEET.widthMm / 2 === at[0] < SHEET.widthMm / 2)
        .map(([, y]) => y);
      expect(Math.abs(Math.max(...ys) - top)).toBeLessThan(mm);
    }
  });

  test('is the same file every time, small, with its pixels inside', () => {
    const file = pictureSvg(solidsPicture(input(60)));
    expect(pictureSvg(solidsPicture(input(60)))).toBe(file);
    expect(file.length).toBeLessThan(60_000);
    expect(file).not.toMatch(/<script|<style|@import|NaN|undefined/);
    const images = readXml(file).children.filter(({ name }) => name === 'image');
    expect(images).toHaveLength(2);
    for (const { attributes } of images) {
      const [kind, data] = attributes['xlink:href'].split(',');
      expect(kind).toBe('data:image/png;base64');
      const { columns, rows } = readPng(Buffer.from(data, 'base64'));
      const ratio = Number(attributes.width) / Number(attributes.height);
      expect(columns / rows).toBeCloseTo(ratio, 2);
    }
  });

  test('a smooth body is one outline', () => {
    const { shapes } = solidsPicture({
      ...input(10, 0),
      views: [
        { caption: 'a', scene: scene(body(sphere(9, 40))), view: ISOMETRIC, labels: [] },
        { caption: 'b', scene: scene(body(sphere(9, 40))), view: BACK, labels: [] },
      ],
    });
    const lines = shapes.filter((s) => s.kind === 'lines');
    expect(lines.map(({ pen, lines: some }) => [pen, some.length])).toEqual([
      ['fine', 1],
      ['fine', 1],
    ]);
  });
});

describe('flags', () => {
  test('never lie on each other, wherever what they name is', () => {
    const draw = seededDraws(4);
    const panel: Box = [12, 30, 144, 180];
    for (let round = 0; round < 200; round++) {
      const flags = Array.from(
        { length: 1 + Math.floor(8 * draw()) },
        (_, k): Flag => ({
          text: 'word '.repeat(1 + Math.floor(12 * draw())).trim() + k,
          at: [12 + 132 * draw(), 70 + 60 * draw()],
        }),
      );
      const drawing: Box = [12, 70, 144, 130];
      const shapes = flagged(flags, drawing, panel);
      expect(checkPicture({ title: '', description: '', ...SHEET, shapes })).toEqual([]);
      const texts = shapes.filter((s) => s.kind === 'text');
      expect(texts).toHaveLength(flags.length);
      const free = rowsMm(flags.length);
      for (const { at } of texts) {
        expect(at[1] > 130 || at[1] < 70).toBe(true);
        expect(at[1]).toBeGreaterThan(70 - free);
        expect(at[1]).toBeLessThan(130 + free);
      }
    }
  });
});

describe('scale', () => {
  test('is the largest of its steps that fits', () => {
    expect(scaleFor([10, 10], [132, 100])).toBe(5);
    expect(scaleFor([60, 10], [132, 100])).toBe(2);
    expect(scaleFor([132, 100], [132, 100])).toBe(1);
    expect(scaleFor([132.1, 10], [132, 100])).toBe(1 / 1.5);
    expect(scaleFor([10, 401], [132, 100])).toBe(1 / 5);
    expect(scaleFor([5000, 10], [132, 100])).toBe(1 / 40);
    expect(() => scaleFor([Number.NaN, 1], [132, 100])).toThrow();
    expect(() => scaleFor([10, 1], [0, 100])).toThrow();
    expect([5, 1, 1 / 1.5, 1 / 7.5, 1 / 40].map(scaleWords)).toEqual([
      '5 : 1',
      '1 : 1',
      '1 : 1.5',
      '1 : 7.5',
      '1 : 40',
    ]);
  });

  test('the bar is exactly 100 mm long, with a mark at 50, and so in the file', () => {
    const bar = scaleBar([14, 30]);
    const strokes = bar.filter((s): s is Extract<Shape, { kind: 'line' }> => s.kind === 'line');
    expect(distance(strokes[0].points[0], strokes[0].points[1])).toBe(100);
    expect(strokes.slice(1).map(({ points }) => points[0][0] - 14)).toEqual([0, 50, 100]);
    const file = readXml(pictureSvg({ title: '', description: '', ...SHEET, shapes: bar }));
    expect(file.attributes).toMatchObject({ width: '297mm', viewBox: '0 0 297 210' });
    expect(file.children.map(({ attributes }) => attributes.points)).toContain('14,180 114,180');
  });
});
