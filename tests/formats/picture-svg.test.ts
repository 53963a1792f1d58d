import { describe, expect, test } from 'vitest';
import { floatPicture } from '../../src/drawing/picture/float-picture.js';
import { type Picture, ROLES, type Role, type Shape } from '../../src/drawing/picture/picture.js';
import { pictureSvg } from '../../src/formats/picture-svg.js';
import { Fault } from '../../src/problem.js';
import { sampleFloat } from '../drawing/picture-sample.js';
import { readXml } from './xml.js';

const picture = (shapes: readonly Shape[], more: Partial<Picture> = {}): Picture => ({
  title: 'a < b & "c"',
  description: "the maker's",
  widthMm: 120,
  heightMm: 80,
  shapes,
  ...more,
});

const AREA: Shape = {
  kind: 'area',
  points: [
    [10, 20],
    [30, 20],
    [30, 60.5],
  ],
  role: 'wood',
};
const LINE: Shape = {
  kind: 'line',
  points: [
    [0, 0],
    [120, 80],
  ],
  role: 'line',
  pen: 'bold',
  dashed: true,
};
const DISC: Shape = { kind: 'disc', center: [5, 6], radiusMm: 1.5, role: 'sheet', pen: 'fine' };
const TEXT: Shape = {
  kind: 'text',
  at: [60, 70],
  text: 'G < B',
  sizeMm: 4,
  anchor: 'end',
  bold: true,
  role: 'ink',
};

describe('a picture as SVG, read back', () => {
  const root = readXml(pictureSvg(picture([AREA, LINE, DISC, TEXT])));
  const [title, desc, area, line, disc, text] = root.children;

  test('is as large in mm as its view box', () => {
    expect(root.attributes).toMatchObject({
      xmlns: 'http://www.w3.org/2000/svg',
      width: '120mm',
      height: '80mm',
      viewBox: '0 0 120 80',
      'font-family': 'sans-serif',
    });
  });

  test('says what it is, escaped', () => {
    expect([title.name, title.text]).toEqual(['title', 'a < b & "c"']);
    expect([desc.name, desc.text]).toEqual(['desc', "the maker's"]);
  });

  test('has the shapes in order, y down', () => {
    expect(area.name).toBe('polygon');
    expect(area.attributes.points).toBe('10,60 30,60 30,19.5');
    expect(line.name).toBe('polyline');
    expect(line.attributes).toMatchObject({ points: '0,80 120,0', fill: 'none' });
    expect(line.attributes['stroke-dasharray']).toBeDefined();
    expect(disc.attributes).toMatchObject({ cx: '5', cy: '74', r: '1.5' });
    expect(text.text).toBe('G < B');
    expect(text.attributes).toMatchObject({
      x: '60',
      y: '10',
      'font-size': '4',
      'text-anchor': 'end',
      'font-weight': 'bold',
    });
  });

  test('closes a closed line', () => {
    const closed = readXml(pictureSvg(picture([{ ...LINE, closed: true }])));
    expect(closed.children[2].name).toBe('polygon');
  });

  test('defines the hatching it uses, once, and no other', () => {
    const hatched: Shape = { ...AREA, role: 'good' };
    const file = pictureSvg(picture([hatched, hatched, AREA]));
    expect(file.match(/<pattern /g)).toHaveLength(1);
    expect(file.match(/fill="url\(#hatch-good\)"/g)).toHaveLength(2);
    expect(pictureSvg(picture([AREA]))).not.toContain('pattern');
  });

  test('knows every role', () => {
    expect(ROLES.length).toBeGreaterThan(10);
    for (const role of ROLES)
      expect(pictureSvg(picture([{ ...AREA, role }]))).not.toContain('undefined');
  });
});

/** CIE lightness of a gray equal to a tone (sRGB luminance, IEC 61966-2-1; L* of CIE 1976). */
function lightness(tone: string): number {
  const [r, g, b] = [1, 3, 5]
    .map((i) => Number.parseInt(tone.slice(i, i + 2), 16) / 255)
    .map((v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4));
  return 116 * Math.cbrt(0.2126 * r + 0.7152 * g + 0.0722 * b) - 16;
}

describe('tones in black and white', () => {
  const tone = (role: Role): string =>
    readXml(pictureSvg(picture([{ ...AREA, role }]))).children[2].attributes.fill;
  // Areas of neighboring lightness that lie side by side have an outline between them as well.
  test.each([
    ['sheet', 'water', 7],
    ['wood', 'wetWood', 15],
    ['water', 'wetWood', 15],
    ['lip', 'wetLip', 7],
    ['wetWood', 'metal', 20],
    ['wood', 'metal', 20],
    ['water', 'ink', 50],
    ['wetWood', 'ink', 45],
  ] as const)('%s and %s', (a, b, apart) => {
    expect(Math.abs(lightness(tone(a)) - lightness(tone(b)))).toBeGreaterThan(apart);
  });
});

describe('a whole sheet', () => {
  const file = pictureSvg(floatPicture(sampleFloat()));

  test('is the same every time, and holds nothing to run or to fetch', () => {
    expect(pictureSvg(floatPicture(sampleFloat()))).toBe(file);
    expect(file).not.toMatch(/<script|<style|<image|href|@import|NaN|undefined|e-\d/);
    expect(file.match(/https?:/g)).toEqual(['http:']);
  });

  test('begins with white paper from edge to edge', () => {
    const sheet = readXml(file).children.find(({ name }) => name === 'polygon');
    expect(sheet?.attributes).toEqual({ points: '0,210 297,210 297,0 0,0', fill: '#ffffff' });
  });
});

test('refuses what a file cannot hold', () => {
  for (const shape of [
    { ...TEXT, text: 'a\u0007' },
    { ...TEXT, text: '\ud800' },
    { ...TEXT, at: [Number.NaN, 0] as const },
    { ...DISC, radiusMm: Number.POSITIVE_INFINITY },
  ])
    expect(() => pictureSvg(picture([shape]))).toThrow(Fault);
});
