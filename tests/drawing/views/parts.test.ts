import { describe, expect, test } from 'vitest';
import { bodyShape } from '../../../src/body/body.js';
import { SHEET } from '../../../src/drawing/picture/picture.js';
import { parted } from '../../../src/drawing/views/hidden.js';
import { levelsWithin, roundStep } from '../../../src/drawing/views/levels.js';
import { inchFraction, length, millimeters } from '../../../src/drawing/views/measure.js';
import { offsetTable } from '../../../src/drawing/views/offset-table.js';
import { apart, offsetRows } from '../../../src/drawing/views/offsets.js';
import { printable } from '../../../src/drawing/views/printable.js';
import { trueSizeFirst } from '../../../src/drawing/views/scale.js';
import { spread, spreadWithin } from '../../../src/drawing/views/spread.js';
import {
  drawnTable,
  mostRows,
  tableHeightMm,
  tableWidthMm,
  widened,
} from '../../../src/drawing/views/table.js';
import { tableSheets } from '../../../src/drawing/views/table-sheets.js';
import { heightsAt } from '../../../src/drawing/views/work-section.js';
import { hatchLines } from '../../../src/geometry/hatch.js';
import { seededDraws } from '../../../src/geometry/random.js';
import { circleRing, insideRing, rectRing } from '../../../src/geometry/ring.js';
import { distance, mix, type Point2 } from '../../../src/geometry/vec.js';
import { resolvePattern } from '../../../src/pattern/pattern.js';
import { fileOf } from './sample.js';

describe('lengths', () => {
  test('in inches, by hand', () => {
    // 25.4 mm an inch, exactly: 1/64 is 0.396875 mm.
    for (const [mm, told] of [
      [0, '0'],
      [25.4, '1'],
      [12.7, '1/2'],
      [0.396875, '1/64'],
      [46, '1 13/16'], // 115.9 sixty-fourths
      [100, '3 15/16'], // 251.97
      [31, '1 7/32'], // 78.1
      [25.35, '1'], // 63.87: rounds up to a whole inch
      [-6.35, '−1/4'],
      [-0.1, '0'],
    ] as const)
      expect(inchFraction(mm)).toBe(told);
  });

  test('every sixty-fourth is told in lowest terms and reads back', () => {
    for (let k = 0; k < 200; k++) {
      const told = inchFraction((k * 25.4) / 64);
      const [, whole, top, bottom] = told.match(/^(?:(\d+)(?: |$))?(?:(\d+)\/(\d+))?$/) ?? [];
      expect((Number(whole ?? 0) + (top ? Number(top) / Number(bottom) : 0)) * 64).toBe(k);
      if (top) expect(Number(top) % 2).toBe(1);
    }
  });

  test('in millimeters to a tenth, inches behind them where wished', () => {
    expect(millimeters(3.25)).toBe('3.3');
    expect(millimeters(-0.04)).toBe('0.0');
    expect(length(46, false)).toBe('46.0');
    expect(length(46, true)).toBe('46.0 (1 13/16 in)');
  });
});

describe('places spread apart', () => {
  const draw = seededDraws(5);
  const cases = Array.from({ length: 60 }, () => ({
    wanted: Array.from({ length: 1 + Math.floor(9 * draw()) }, () => 40 * draw()).sort(
      (a, b) => a - b,
    ),
    gap: 1 + 5 * draw(),
  }));

  const leastGap = (at: readonly number[]) =>
    Math.min(Number.POSITIVE_INFINITY, ...at.slice(1).map((x, i) => x - at[i]));

  test('keep their gap and their order, and stay where there is room', () => {
    expect(spread([0, 10, 20], 4)).toEqual([0, 10, 20]);
    // By hand: two in one place go half a gap each way; a third pushes all of them.
    expect(spread([5, 5], 4)).toEqual([3, 7]);
    expect(spread([5, 5, 8], 4)).toEqual([2, 6, 10]);
    for (const { wanted, gap } of cases) {
      const at = spread(wanted, gap);
      expect(leastGap(at)).toBeGreaterThan(gap - 1e-9);
    }
  });

  test('are the nearest such places: no small change that keeps the gaps is nearer', () => {
    const far = (at: readonly number[], wanted: readonly number[]) =>
      at.reduce((sum, x, i) => sum + (x - wanted[i]) ** 2, 0);
    let tried = 0;
    for (const { wanted, gap } of cases) {
      const at = spread(wanted, gap);
      for (let k = 0; k < 200; k++) {
        const other = at.map((x) => x + 0.2 * (draw() - 0.5));
        if (other.some((x, i) => i > 0 && x - other[i - 1] < gap)) continue;
        expect(far(other, wanted)).toBeGreaterThanOrEqual(far(at, wanted) - 1e-9);
        tried++;
      }
    }
    expect(tried).toBeGreaterThan(500);
  });

  test('within bounds', () => {
    for (const { wanted, gap } of cases) {
      const bounds = [5, 5 + gap * wanted.length] as const;
      const at = spreadWithin(wanted, gap, bounds);
      expect(at[0]).toBeGreaterThanOrEqual(bounds[0] - 1e-9);
      expect(at[at.length - 1]).toBeLessThanOrEqual(bounds[1] + 1e-9);
      expect(leastGap(at)).toBeGreaterThan(gap - 1e-9);
    }
  });
});

describe('hatching', () => {
  const circle = circleRing([3, -2], 10, { segments: 400 });

  test('lies inside, in steps, as much of it as the area holds', () => {
    for (const slantDeg of [0, 45, 135, 20]) {
      const lines = hatchLines(circle, { slantDeg, step: 0.05, shift: 0.013 });
      const sum = lines.reduce((all, [a, b]) => all + distance(a, b), 0);
      // A sum of chords times their step is the area, by the trapezoid rule: to (step/radius)^1.5 or so.
      expect(0.05 * sum).toBeCloseTo(Math.PI * 100, 1);
      for (const [a, b] of lines) {
        expect(insideRing(mix(a, b, 0.5), circle)).toBe(true);
        const angle = (slantDeg * Math.PI) / 180;
        const left = Math.cos(angle) * a[1] - Math.sin(angle) * a[0];
        expect((left - 0.013) / 0.05).toBeCloseTo(Math.round((left - 0.013) / 0.05), 6);
      }
    }
  });

  test('leaves out what a hollow leaves out', () => {
    const hollow: Point2[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [6, 10],
      [6, 4],
      [4, 4],
      [4, 10],
      [0, 10],
    ];
    const at8 = hatchLines(hollow, { slantDeg: 0, step: 8, shift: 8 }).filter(([a]) => a[1] === 8);
    expect(at8.map(([a, b]) => [a[0], b[0]])).toEqual([
      [0, 4],
      [6, 10],
    ]);
  });
});

test('a line that goes through a body is parted where it goes in and comes out', () => {
  const body = rectRing(0, 0, 10, 10);
  const parts = parted(
    [
      [-5, 5],
      [15, 5],
    ],
    body,
  );
  expect(parts.map(({ hidden }) => hidden)).toEqual([false, true, false]);
  // To the quarter of a millimeter it is looked at in.
  expect(parts[1].points[0][0]).toBeCloseTo(0, 0);
  expect(Math.abs(parts[1].points[0][0])).toBeLessThanOrEqual(0.25);
  expect(Math.abs(parts[2].points[0][0] - 10)).toBeLessThanOrEqual(0.25);
  expect(parts[0].points[0]).toEqual([-5, 5]);
  expect(parts[2].points.at(-1)).toEqual([15, 5]);
});

test('levels are round and under their reach', () => {
  expect(roundStep(4.61)).toBe(5);
  expect(roundStep(0.11)).toBe(0.15);
  expect(roundStep(3)).toBe(3);
  expect(roundStep(9e9)).toBe(9e9);
  expect(levelsWithin(13.8, 5)).toEqual([5, 10]);
  expect(levelsWithin(10.5, 5)).toEqual([5]); // 10 is within a tenth of the reach
  expect(levelsWithin(0, 5)).toEqual([]);
});

test('true size comes first but for tiny lures', () => {
  expect(trueSizeFirst(100).slice(0, 4)).toEqual([1, 1 / 2, 1 / 2.5, 1 / 5]);
  expect(trueSizeFirst(45)[0]).toBe(2);
  expect(trueSizeFirst(25)[0]).toBe(5);
  expect(trueSizeFirst(10)[0]).toBe(10);
});

test('heights of a ring at a station', () => {
  expect(heightsAt(rectRing(0, -3, 10, 4), 6)).toEqual([-3, 4]);
});

describe('the table of offsets', () => {
  const file = fileOf('skerry');
  const body = file.body;

  test('holds the pattern’s own numbers, with nose and tail', () => {
    const pattern = resolvePattern(file);
    const rows = offsetRows(pattern, bodyShape(pattern));
    expect(rows.map((r) => r.number)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    expect(rows.map((r) => r.stationMm)).toEqual([0, 5, 15, 30, 42, 60, 78, 92, 100]);
    for (const [i, offset] of body.offsets.entries()) {
      expect(rows[i + 1].back).toEqual({ mm: offset.backMm, given: true });
      expect(rows[i + 1].belly).toEqual({ mm: offset.bellyMm, given: true });
      expect(rows[i + 1].halfBreadth).toEqual({ mm: offset.halfBreadthMm, given: true });
    }
    const table = offsetTable(rows, false);
    expect(table.rows[4]).toEqual(['4', '42.0', '12.2', '13.8', '9.5', '2.79', '2.50']);
    expect(table.rows[0].slice(0, 5)).toEqual(['0 nose', '0.0', '0.0', '0.0', '0.0']);
    expect(table.rows[8][0]).toBe('8 tail');
    expect(offsetTable(rows, true).rows[4].slice(0, 6)).toEqual([
      '4',
      '42.0',
      '1 21/32', // 105.8 sixty-fourths, by hand
      '12.2',
      '31/64', // 30.7
      '13.8',
    ]);
  });

  test('marks what the pattern leaves out, and reads it off the curve', () => {
    const offsets = body.offsets.map((row, i) =>
      i === 3 ? { stationMm: row.stationMm, backMm: row.backMm } : row,
    );
    const pattern = resolvePattern({ ...file, body: { ...body, offsets } });
    const shape = bodyShape(pattern);
    const rows = offsetRows(pattern, shape);
    expect(rows[4].belly.given).toBe(false);
    expect(rows[4].belly.mm).toBeCloseTo(Math.sqrt(shape.bellySquared.value(42)), 12);
    const table = offsetTable(rows, false);
    expect(table.rows[4][2]).toBe('12.2');
    expect(table.rows[4][3]).toBe(`(${millimeters(rows[4].belly.mm)})`);
    expect(table.foot.join(' ')).toContain('In brackets: not given');
  });

  test('scaled, all of it but the exponents scales', () => {
    const pattern = resolvePattern(file, { scaleRatio: 1.3 });
    const rows = offsetRows(pattern, bodyShape(pattern));
    expect(rows[4].stationMm).toBeCloseTo(54.6, 12);
    expect(rows[4].belly.mm).toBeCloseTo(13.8 * 1.3, 12);
    const plain = resolvePattern(file);
    const own = offsetRows(plain, bodyShape(plain));
    expect(rows[4].lowerExponent).toBeCloseTo(own[4].lowerExponent, 12);
  });

  test('stations too close to be drawn are left out, never the ends', () => {
    const pattern = resolvePattern(file);
    const rows = offsetRows(pattern, bodyShape(pattern));
    expect(apart(rows, 0).map((r) => r.number)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    expect(apart(rows, 9).map((r) => r.number)).toEqual([0, 2, 3, 4, 5, 6, 8]);
    expect(apart(rows, 1000).map((r) => r.number)).toEqual([0, 8]);
  });
});

describe('tables', () => {
  const columns = widened(
    [
      { head: ['', 'what'], widthMm: 5, anchor: 'start' },
      { head: ['how', 'much'], widthMm: 5, anchor: 'end' },
    ],
    [['a long name of a thing', '1000.0']],
  );
  const table = (count: number, pair = false) => ({
    title: 'T',
    columns,
    rows: Array.from({ length: count }, (_, i) => [pair && i % 2 === 1 ? '' : `r${i}`, String(i)]),
    foot: ['F'],
  });

  test('are as wide as their entries and as high as told', () => {
    const shapes = drawnTable(table(6), [20, 100]);
    const texts = shapes.filter((s) => s.kind === 'text');
    expect(texts.map((t) => t.text)).toEqual(
      expect.arrayContaining(['T', 'what', 'how', 'much', 'r0', 'r5', '5', 'F']),
    );
    const ys = texts.map((t) => t.at[1]);
    expect(Math.min(...ys) - 0.22 * 3.2).toBeGreaterThan(100 - tableHeightMm(table(6)));
    expect(tableWidthMm({ columns })).toBeGreaterThan(45);
  });

  test('go on in more columns and on more sheets, every row once, no entry parted', () => {
    const rows = (count: number, pair: boolean) => {
      const sheets = tableSheets(table(count, pair), 'Many', { name: 'x', sheet: SHEET });
      const perSheet = sheets.map(({ shapes }) =>
        shapes.flatMap((s) => (s.kind === 'text' && /^\d+$/.test(s.text) ? [Number(s.text)] : [])),
      );
      return perSheet;
    };
    for (const pair of [false, true]) {
      const sheets = rows(301, pair);
      expect(sheets.length).toBeGreaterThan(1);
      expect(sheets.flat()).toEqual(Array.from({ length: 301 }, (_, i) => i));
      if (pair) for (const [first] of sheets) expect(first % 2).toBe(0);
    }
    expect(mostRows(table(0), 100)).toBeGreaterThan(10);
  });
});

test('text that no file can hold is shown by a sign, all other text as it is', () => {
  expect(printable('a\u0007b\ud800c\uffff')).toBe('a\ufffdb\ufffdc\ufffd');
  expect(printable('  <b> & "x"\n שלום 😀 ')).toBe('<b> & "x" שלום 😀');
});
