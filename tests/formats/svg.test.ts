import svgpath from 'svgpath';
import { describe, expect, it } from 'vitest';
import { LAYER_MEANING } from '../../src/drawing/drawing.js';
import { svg } from '../../src/formats/svg.js';
import { Fault } from '../../src/problem.js';
import { DAMAGED, PLATE, pathOn, withStrokes } from './plate.js';
import { readXml, type Tag } from './xml.js';

type Command = readonly [string, ...number[]];

/** Absolute path commands by svgpath, which keeps what it cannot read in `err`. */
function commands(d: string): Command[] {
  const path = svgpath(d).abs();
  expect((path as unknown as { err: string }).err).toBe('');
  const found: Command[] = [];
  path.iterate((segment) => {
    found.push(segment as unknown as Command);
  });
  return found;
}

/** Points along an arc command by the implementation notes of SVG 1.1, F.6.5 (circles only). */
function arcPoints([x1, y1]: readonly number[], arc: readonly number[], count: number): number[][] {
  const [r, , , large, sweep, x2, y2] = arc;
  const [hx, hy] = [(x1 - x2) / 2, (y1 - y2) / 2];
  const root = Math.sqrt(Math.max(0, (r * r) / (hx * hx + hy * hy) - 1));
  const factor = large === sweep ? -root : root;
  const [cx, cy] = [factor * hy + (x1 + x2) / 2, -factor * hx + (y1 + y2) / 2];
  const start = Math.atan2(y1 - cy, x1 - cx);
  let turn = Math.atan2(y2 - cy, x2 - cx) - start;
  if (sweep && turn < 0) turn += 2 * Math.PI;
  if (!sweep && turn > 0) turn -= 2 * Math.PI;
  return Array.from({ length: count + 1 }, (_, i) => {
    const a = start + (turn * i) / count;
    return [cx + r * Math.cos(a), cy + r * Math.sin(a)];
  });
}

function boxOfPath(d: string): number[] {
  let at = [0, 0];
  const points: number[][] = [];
  for (const [letter, ...numbers] of commands(d)) {
    const to = numbers.slice(-2);
    if (letter === 'A') points.push(...arcPoints(at, numbers, 10_000));
    else if (letter !== 'Z') points.push(to);
    if (letter !== 'Z') at = to;
  }
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

const groups = (root: Tag) => root.children.filter((child) => child.name === 'g');
const group = (root: Tag, id: string) => groups(root).find((g) => g.attributes.id === id) as Tag;

describe('SVG, read back by readers that share nothing with the writer', () => {
  const root = readXml(svg(PLATE));

  it('is as large in mm as its view box, 3 mm around the strokes', () => {
    expect(root.attributes).toMatchObject({
      width: '116mm',
      height: '48mm',
      viewBox: '0 0 116 48',
      xmlns: 'http://www.w3.org/2000/svg',
    });
  });

  it('says what it is, and escapes it', () => {
    const [title, desc] = root.children;
    expect([title.name, title.text]).toEqual(['title', PLATE.title]);
    expect([desc.name, desc.text]).toEqual(['desc', PLATE.description]);
  });

  it('has one group a layer, in the order of cutting, and one shape a stroke', () => {
    expect(groups(root).map((g) => g.attributes.id)).toEqual([
      'MARK',
      'CUT_INSIDE',
      'CUT_OUTSIDE',
      'STOCK',
      'RULE',
    ]);
    const shapes = groups(root).flatMap((g) => g.children);
    expect(shapes).toHaveLength(PLATE.strokes.length);
    expect(shapes.filter((s) => s.name === 'circle')).toHaveLength(1);
    for (const g of groups(root)) {
      expect(g.attributes['data-meaning']).toBe(
        LAYER_MEANING[g.attributes.id as keyof typeof LAYER_MEANING],
      );
      expect(g.attributes.fill).toBe('none');
    }
  });

  it('keeps arcs as arcs and closes the outline', () => {
    const [outline] = group(root, 'CUT_OUTSIDE').children;
    // x + 8, 18 − y: the block edge is left of and above all, 3 mm within the picture
    expect(commands(outline.attributes.d)).toEqual([
      ['M', 18, 28],
      ['L', 98, 28],
      ['A', 10, 10, 0, 0, 0, 98, 8],
      ['L', 18, 8],
      ['A', 10, 10, 0, 0, 0, 18, 28],
      ['Z'],
    ]);
  });

  it('bulges to the right side: boxes agree with the drawing to 0.0005 mm', () => {
    const [outline] = group(root, 'CUT_OUTSIDE').children;
    const [, arc] = group(root, 'MARK').children;
    // 10,000 chords miss the top of a 20 mm arc by less than 1e-6 mm
    const expected = [
      [0 + 8, 18 - 10, 100 + 8, 18 + 10],
      // 270 degrees about (50, 0) from (55, 0) clockwise to (50, 5): all but the upper right quarter
      [45 + 8, 18 - 5, 55 + 8, 18 + 5],
    ];
    [outline, arc].forEach((shape, k) => {
      boxOfPath(shape.attributes.d).forEach((value, i) => {
        expect(Math.abs(value - expected[k][i])).toBeLessThan(0.0005);
      });
    });
    // the quarter that is left out: nothing of the arc lies up and right of the center
    const [[, ...start], [, ...numbers]] = commands(arc.attributes.d);
    const quarter = arcPoints(start, numbers, 1000).filter(([x, y]) => x > 58.001 && y < 17.999);
    expect(quarter).toHaveLength(0);
  });

  it('has a scale bar of exactly 100 mm', () => {
    const lengths = group(root, 'RULE').children.map(({ attributes }) => {
      const [[, x1, y1], [, x2, y2]] = commands(attributes.d);
      return y1 === y2 ? x2 - x1 : 0;
    });
    expect(lengths).toContain(100);
  });

  it('breaks only the strokes that are to be dashed', () => {
    const plain = pathOn('STOCK', false, [0, 0], [5, 0]);
    const dashed = { ...pathOn('STOCK', false, [0, 1], [5, 1]), dashed: true as const };
    const [first, second] = group(readXml(svg(withStrokes(plain, dashed))), 'STOCK').children;
    expect(first.attributes['stroke-dasharray']).toBeUndefined();
    expect(second.attributes['stroke-dasharray']).toMatch(/^[\d.]+ [\d.]+$/);
  });
});

describe('SVG as text', () => {
  it('has the same bytes every time, and no number that is not plain', () => {
    const text = svg(PLATE);
    expect(text).toBe(svg(structuredClone(PLATE)));
    expect(text).not.toMatch(/NaN|undefined|Infinity|\de[-+]?\d|-0[ "]|\.\d{5}/);
  });

  it.each(Object.entries(DAMAGED))('refuses a drawing with: %s', (_, drawing) => {
    expect(() => svg(drawing)).toThrow(Fault);
  });

  it('refuses a title that XML cannot hold', () => {
    for (const title of ['bell \u0007', 'a ]]> b & c']) {
      expect(() => svg({ ...PLATE, title })).toThrow(Fault);
    }
  });
});
