import { describe, expect, test } from 'vitest';
import { drawnPattern } from '../../../src/bench/drawn-pattern.js';
import { offsetAt } from '../../../src/body/shape.js';
import { checkPicture } from '../../../src/drawing/picture/check.js';
import { type Picture, SHEET, textBox } from '../../../src/drawing/picture/picture.js';
import type { ViewsInput } from '../../../src/drawing/views/input.js';
import { viewSheets } from '../../../src/drawing/views/views.js';
import { pictureSvg } from '../../../src/formats/picture-svg.js';
import { boxOf, type Point2 } from '../../../src/geometry/vec.js';
import type { PatternFile } from '../../../src/pattern/schema.js';
import { readXml, type Tag } from '../../formats/xml.js';
import {
  fileOf,
  inputOf,
  linesOf,
  madeInput,
  STAMP,
  sheetsOf,
  textsOf,
  wordsOf,
} from './sample.js';

/** Lying: 11 × 8.5 in and 14 × 8.5 in (ANSI/ASME Y14.1, size A, and its longer sister). */
const LETTER = { widthMm: 279.4, heightMm: 215.9 };
const LEGAL = { widthMm: 355.6, heightMm: 215.9 };

const SHIPPED = ['skerry', 'ghyll', 'holm'] as const;

describe('the sheets of shipped patterns', () => {
  test.each(SHIPPED)('%s: lines and arrangement, the arrangement at true size', (name) => {
    const [lines, arrangement, ...more] = sheetsOf(name);
    expect(more).toEqual([]);
    const input = madeInput(fileOf(name));
    const [onLines, onArrangement] = [wordsOf([lines]), wordsOf([arrangement])];
    for (const words of [onLines, onArrangement])
      for (const said of [name, STAMP.hash, `version ${input.version}, made by ${STAMP.tool}`])
        expect(words).toContain(said);
    expect(onLines).toEqual(
      expect.arrayContaining(['Lines', '1 of 2', 'Profile', 'Plan', 'Body plan', 'Particulars']),
    );
    expect(onArrangement).toEqual(
      expect.arrayContaining(['Arrangement', '2 of 2', '1 : 1', 'Side view and plan', 'Section']),
    );
    expect(onArrangement).toContain(input.pattern.lengthMm.toFixed(1));
    // The note is wrapped, and all of it is there.
    expect(onArrangement.join(' ')).toContain(input.note.replace(/\s+/g, ' ').trim());
  });

  test('a lure that takes up a sheet at true size has one to itself', () => {
    const size = { scaleRatio: 1.7, blockThicknessMm: 36 };
    const [, arrangement, parts, ...more] = sheetsOf('skerry', { size });
    expect(more).toEqual([]);
    expect(wordsOf([arrangement])).toEqual(expect.arrayContaining(['1 : 1', '170.0', '2 of 3']));
    expect(wordsOf([arrangement])).not.toContain('What goes where, mm');
    expect(wordsOf([parts])).toEqual(
      expect.arrayContaining(['What goes where, mm', 'Section', '3 of 3', '78.2']),
    );
  });

  test('say timber, allowance, bit, coats, water and how it floats, as computed', () => {
    const input = madeInput(fileOf('skerry'));
    const words = wordsOf(viewSheets(input)).join(' ');
    const { float } = input;
    for (const said of [
      'western-redcedar',
      'block 20.0 mm thick',
      '1.5 mm left on all round; round-over bit 10 mm',
      '1 × 0.05 mm sealer, 3 × 0.15 mm epoxy',
      'polycarbonate 22 × 34 × 1.5 mm',
      `Floats nose down ${Math.abs(float.trimDeg).toFixed(1)}° at ${float.massG.toFixed(2)} g, rigged`,
      `water of ${float.water.densityKgM3.toFixed(1)} kg/m³ (9 °C, salinity 5)`,
    ])
      expect(words).toContain(said);
  });

  test('a coat whose name is read from the right stands last in a line of its own', () => {
    const file = fileOf('skerry');
    const coat = { thicknessMm: 0.03, count: 2 };
    const coats = ['לכה', 'طلاء', 'top'].map((name) => ({ ...coat, name }));
    const words = wordsOf(viewSheets(madeInput({ ...file, coats })));
    expect(words).toEqual(
      expect.arrayContaining(['2 × 0.03 mm לכה', '2 × 0.03 mm طلاء', '2 × 0.03 mm top']),
    );
    expect(words.filter((w) => w === 'coats')).toHaveLength(1);
  });

  test('twenty coats with such long names still leave room for the views', () => {
    const file = fileOf('skerry');
    const coats = Array.from({ length: 20 }, (_, i) => ({
      name: `${'לכה '.repeat(9)}${i}`,
      thicknessMm: 0.125,
      count: 20,
    }));
    const sheets = viewSheets(madeInput({ ...file, coats }));
    expect(sheets.flatMap(checkPicture)).toEqual([]);
    expect(wordsOf(sheets)).toContain('and 15 more coats');
  });

  test('what goes where, by the pattern’s numbers', () => {
    const words = wordsOf([sheetsOf('ghyll')[1]]);
    for (const said of [
      '36.0 hole 1',
      '48.0 hole 2',
      '58.0 hanger 1',
      '4.0 lip slot',
      '125.0 tail',
    ])
      expect(words).toContain(said);
    // Bit, depth, and depth to the tip of a point of 118°: 11 + 3.5/tan 59° = 13.1, 9 + 2.1.
    expect(words).toEqual(expect.arrayContaining(['7.0', '11.0', '13.1', '9.0', '11.1', '20.0°']));
    expect(words).toContain('wire loop, ring-6, treble-6');
  });
});

describe('on other paper', () => {
  test.each([LETTER, LEGAL])(
    'of $widthMm × $heightMm mm: true size still, nothing cut short',
    (sheet) => {
      for (const [i, name] of [...SHIPPED, ...SHIPPED].entries()) {
        const inches = i < SHIPPED.length;
        const sheets = viewSheets({ ...madeInput(fileOf(name), { inches }), sheet });
        for (const { widthMm, heightMm } of sheets) expect({ widthMm, heightMm }).toEqual(sheet);
        expect(wordsOf(sheets).filter((w) => w.endsWith('…'))).toEqual([]);
        const arrangement = sheets[1];
        expect(wordsOf([arrangement])).toEqual(expect.arrayContaining(['Arrangement', '1 : 1']));
        // The frame: 8 mm inside the edge all round.
        const frame = boxOf(linesOf(arrangement).flatMap(({ points }) => points));
        const [w, h] = [sheet.widthMm - 8, sheet.heightMm - 8];
        for (const [i, mm] of [8, 8, w, h].entries()) expect(frame[i]).toBeCloseTo(mm, 9);
      }
    },
  );
});

describe('drawn to scale', () => {
  /** The heaviest closed lines of a sheet but its frame: outlines of the finished body. */
  const outlines = (sheet: Picture) =>
    linesOf(sheet)
      .filter(({ pen, closed }) => pen === 'firm' && closed)
      .map(({ points }) => points);
  const sizes = (points: readonly Point2[]) => {
    const [x0, y0, x1, y1] = boxOf(points);
    return [x1 - x0, y1 - y0];
  };

  test('the arrangement is as long, high and broad as the body', () => {
    const { shape } = madeInput(fileOf('skerry'));
    const [plan, side] = outlines(sheetsOf('skerry')[1]).map(sizes);
    // The side view's arcs are within 0.005 mm of it and their chords within 0.02.
    expect(plan[0]).toBeCloseTo(100, 9);
    expect(plan[1]).toBeCloseTo(2 * offsetAt(shape.halfBreadthSquared, 42), 2);
    expect(Math.abs(side[0] - 100)).toBeLessThan(0.02);
    expect(Math.abs(side[1] - 26)).toBeLessThan(0.025);
  });

  test('the lines are so at the scale told', () => {
    for (const scaleRatio of [1, 1.3, 0.7]) {
      const asked = { size: { scaleRatio } };
      const [lines] = sheetsOf('skerry', asked);
      const [over, under] = (wordsOf([lines]).find((w) => / : \d/.test(w)) ?? '').split(' : ');
      const { shape } = madeInput(fileOf('skerry'), asked);
      for (const outline of outlines(lines).slice(0, 2))
        expect(sizes(outline)[0]).toBeCloseTo((shape.lengthMm * Number(over)) / Number(under), 9);
    }
  });

  test('sections on the sheet are the body’s own: a superellipse through offsets and exponents', () => {
    const input = madeInput(fileOf('holm'));
    const { shape } = input;
    const [lines] = sheetsOf('holm');
    const scale = Number(
      wordsOf([lines])
        .find((w) => / : 1$/.test(w))
        ?.split(' ')[0],
    );
    // The body plan's halves: open lines that begin and end on one upright line.
    const halves = linesOf(lines)
      .filter(({ pen, closed, points }) => pen === 'fine' && !closed && points.length === 65)
      .map(({ points }) => points);
    const stations = input.pattern.back.map((p) => p.stationMm);
    expect(halves).toHaveLength(stations.length);
    const center = halves[0][0][0];
    const datumY = linesOf(lines).find(({ chain }) => chain)?.points[0][1] as number;
    const found = halves.map((points) => {
      expect(points[0][0]).toBeCloseTo(center, 9);
      const offsets = points.map(([x, y]) => [Math.abs(x - center) / scale, (y - datumY) / scale]);
      const b = Math.max(...offsets.map(([y]) => y));
      const station = stations.find(
        (x) => Math.abs(offsetAt(shape.halfBreadthSquared, x) - b) < 1e-9,
      ) as number;
      const [back, belly] = [shape.backSquared, shape.bellySquared].map((c) =>
        offsetAt(c, station),
      );
      for (const [y, z] of offsets) {
        const n = (z >= 0 ? shape.upperExponent : shape.lowerExponent).value(station);
        const h = z >= 0 ? back : belly;
        // Coordinates of some 100 mm hold 1e-14 of themselves; powers of 3 leave 1e-11.
        expect((y / b) ** n + (Math.abs(z) / h) ** n).toBeCloseTo(1, 9);
      }
      // Before the greatest section on the right, behind it on the left.
      expect(Math.sign(points[32][0] - center)).toBe(station <= 32 ? 1 : -1);
      return station;
    });
    expect(found.sort((a, b) => a - b)).toEqual(stations);
  });

  test('stations run through profile and plan at one place, and are numbered', () => {
    const [lines] = sheetsOf('skerry');
    const upright = linesOf(lines).filter(
      ({ points, pen, chain }) =>
        pen === 'hair' && !chain && points.length === 2 && points[0][0] === points[1][0],
    );
    // Not the 0 of the scale bar at the foot.
    const numbers = textsOf(lines).filter(
      ({ text, anchor, at }) => /^\d$/.test(text) && anchor === 'middle' && at[1] > 60,
    );
    expect(numbers.map((n) => n.text)).toEqual(['0', '1', '2', '3', '4', '5', '6', '7', '8']);
    for (const { at } of numbers) {
      const own = upright.filter(({ points }) => Math.abs(points[0][0] - at[0]) < 1e-9);
      expect(own).toHaveLength(2);
      // One over the number, one under it.
      expect(own.map(({ points }) => Math.sign(points[0][1] - at[1])).sort()).toEqual([-1, 1]);
    }
    const [first, , , , fourth] = numbers.map((n) => n.at[0]);
    expect(fourth - first).toBeCloseTo(1.5 * 42, 9);
  });

  test('running dimensions stand under what they are of', () => {
    const [, sheet] = sheetsOf('skerry');
    const [plan] = outlines(sheet);
    const nose = Math.min(...plan.map(([x]) => x));
    for (const [text, station] of [
      ['35.0 hole 1', 35],
      ['46.0 hanger 1', 46],
      ['100.0 tail', 100],
    ] as const) {
      const label = textsOf(sheet).find((t) => t.text === text);
      expect(label?.turnDeg).toBe(90);
      const [x0, , x1] = textBox(label as NonNullable<typeof label>);
      expect((x0 + x1) / 2 - nose).toBeCloseTo(station, 0);
      expect(
        linesOf(sheet).some(
          ({ points, pen }) => pen === 'hair' && Math.abs(points[0][0] - nose - station) < 1e-9,
        ),
      ).toBe(true);
    }
  });
});

describe('text stands clear', () => {
  const clear = (input: ViewsInput) =>
    viewSheets(input).flatMap((sheet, i) => checkPicture(sheet).map((flaw) => ({ i, ...flaw })));

  test('on sheets of shipped patterns at any size, with inches and without', () => {
    let patterns = 0;
    for (const name of SHIPPED)
      for (const scaleRatio of [0.4, 1, 1.3, 2.7, 10]) {
        const size = { scaleRatio, blockThicknessMm: 20 * Math.max(1, scaleRatio) };
        const file = scaleRatio < 1 ? bare(fileOf(name)) : fileOf(name);
        const input = inputOf(file, { size });
        if (!input) continue;
        for (const inches of [false, true])
          for (const sheet of [SHEET, inches ? LETTER : LEGAL])
            expect(clear({ ...input, inches, sheet }), `${name} × ${scaleRatio}`).toEqual([]);
        patterns++;
      }
    expect(patterns).toBeGreaterThan(11);
  });

  /** Without what does not scale. */
  const bare = ({ lip: _, throughWire: __, ...file }: PatternFile): PatternFile => ({
    ...file,
    ballast: [],
    hangers: [],
    towEye: undefined,
    tailEye: undefined,
  });

  test('on sheets of patterns drawn by chance, seed 6', () => {
    let made = 0;
    for (let i = 1; made < 12 && i < 60; i++) {
      const input = inputOf(drawnPattern(6, i), { inches: i % 4 === 0 });
      if (!input) continue;
      expect(clear(input), `case ${i}`).toEqual([]);
      made++;
    }
    expect(made).toBe(12);
  });

  test('with all there may be: 8 holes, 8 hangers, 198 stations, 20 coats, notes of any letters', () => {
    const file = fileOf('skerry');
    const offsets = Array.from({ length: 198 }, (_, i) => {
      const x = (i + 1) / 2;
      const t = Math.sqrt(x * (100 - x)) / 50;
      const row = { stationMm: x, backMm: 12 * t, halfBreadthMm: 9 * t };
      return i % 3 === 0 ? row : { ...row, bellyMm: 13 * t };
    });
    const input = madeInput(
      {
        ...file,
        note: 'W'.repeat(900) + ' מים קרים <b>&</b> مرحبا '.repeat(40),
        body: { ...file.body, offsets },
        lip: file.lip && { ...file.lip, angleDeg: 90, slot: { ...file.lip.slot, depthMm: 8 } },
        ballast: Array.from({ length: 8 }, (_, i) => ({
          ...file.ballast[0],
          stationMm: 22 + 9 * i,
          diameterMm: 2,
          depthMm: 6,
          tiltDeg: i === 3 ? 12 : 0,
        })),
        hangers: Array.from({ length: 8 }, (_, i) => ({
          ...file.hangers[0],
          stationMm: 26.5 + 9 * i,
        })),
        coats: Array.from({ length: 20 }, (_, i) => ({
          name: `epoxy ${'<W>'.repeat(11)}${i}`,
          thicknessMm: 0.125,
          count: 20,
        })),
      },
      { size: { name: 'w'.repeat(40) } },
    );
    for (const [inches, sheet] of [
      [false, SHEET],
      [true, SHEET],
      [true, LETTER],
    ] as const) {
      const sheets = viewSheets({ ...input, inches, sheet });
      expect(sheets.length).toBeGreaterThan(5);
      expect(sheets.flatMap(checkPicture)).toEqual([]);
      const words = wordsOf(sheets);
      expect(words.some((w) => w.endsWith('…'))).toBe(true);
      expect(words).toContain('199 tail');
      expect(words).toContain(`${sheets.length} of ${sheets.length}`);
      // Every station has its row.
      for (let n = 1; n < 199; n++) expect(words).toContain(String(n));
    }
  });

  test('and a damaged sheet is complained of', () => {
    const [sheet] = sheetsOf('skerry');
    const label = textsOf(sheet).find(({ text }) => text === '+5') as ReturnType<typeof textsOf>[0];
    const moved = (by: Point2): Picture => ({
      ...sheet,
      shapes: sheet.shapes.map((s) =>
        s === label ? { ...label, at: [label.at[0] + by[0], label.at[1] + by[1]] } : s,
      ),
    });
    const kinds = (picture: Picture) => checkPicture(picture).map(({ kind }) => kind);
    expect(kinds(sheet)).toEqual([]);
    expect(kinds(moved([12, 0]))).toContain('text-on-line');
    expect(kinds(moved([-40, 0]))).toContain('text-off-sheet');
    expect(kinds(moved([0, 8]))).toContain('texts-overlap');
    const turned = textsOf(sheetsOf('skerry')[1]).find((t) => t.turnDeg) as typeof label;
    const { turnDeg: _, ...level } = turned;
    const beside: Picture = { ...sheet, shapes: [turned, level] };
    expect(kinds({ ...beside, shapes: [turned] })).toEqual([]);
    expect(kinds(beside)).toContain('texts-overlap');
  });
});

test('black and white: lines are told apart by weight and dash alone', () => {
  const sheets = SHIPPED.flatMap((name) => sheetsOf(name));
  const shapes = sheets.flatMap((s) => s.shapes);
  const roles = new Set(shapes.flatMap((s) => ('role' in s ? [s.role] : [])));
  expect([...roles].sort()).toEqual(['ink', 'sheet']);
  const kinds = new Set(
    shapes.flatMap((s) =>
      s.kind === 'line' ? [`${s.pen}${s.dashed ? ' dashed' : ''}${s.chain ? ' chain' : ''}`] : [],
    ),
  );
  expect([...kinds].sort()).toEqual([
    'bold',
    'fine',
    'fine dashed',
    'firm',
    'hair',
    'hair chain',
    'hair dashed',
  ]);
  const svg = sheets.map(pictureSvg).join('');
  const tones = new Set(svg.match(/#[0-9a-f]{6}/g));
  // Ink, paper, and the edge of discs.
  expect([...tones].sort()).toEqual(['#1f2426', '#3a4144', '#ffffff']);
});

describe('any words', () => {
  const hostile = {
    ...madeInput(fileOf('holm')),
    name: '</text><script>&"\'אב',
    note: 'שלום עולם, גרסה 1.3 <b>bold</b> مرحبا \u0007 \ud800 &amp; "x"',
  };
  const sheets = viewSheets(hostile);
  const read = (picture: Picture): readonly string[] => {
    const root = readXml(pictureSvg(picture));
    const texts = (tag: Tag): string[] =>
      tag.name === 'text' ? [tag.text] : tag.children.flatMap(texts);
    return texts(root);
  };

  test('are escaped and shown as they are; what no file holds by a sign', () => {
    for (const sheet of sheets) {
      expect(checkPicture(sheet)).toEqual([]);
      expect(pictureSvg(sheet)).not.toMatch(/<script|<b>/);
      expect(read(sheet)).toContain(hostile.name);
    }
    const all = sheets.flatMap(read).join(' ');
    expect(all).toContain('שלום עולם, גרסה 1.3 <b>bold</b> مرحبا \ufffd \ufffd &amp; "x"');
  });

  test('the same sheets give the same file', () => {
    expect(viewSheets(hostile).map(pictureSvg)).toEqual(sheets.map(pictureSvg));
  });
});
