import { describe, expect, test } from 'vitest';
import { png } from '../../src/formats/png.js';
import { cosSinDeg } from '../../src/geometry/vec.js';
import { modelOf } from '../../src/shade/model.js';
import type { Raster } from '../../src/shade/raster.js';
import type { Scene, Tone } from '../../src/shade/scene.js';
import { shaded } from '../../src/shade/shade.js';
import { axesOf, type View } from '../../src/shade/view.js';
import { body, box, ISOMETRIC, movedTo, scene, sphere, TOP } from './shapes.js';

const PIXEL = 0.1;
const raster = (of: Scene, view: View): Raster => shaded(modelOf(of), view, PIXEL).raster;

/** CIE lightness (sRGB luminance, IEC 61966-2-1; L* of CIE 1976). */
function lightness({ palette, pixels }: Raster, i: number): number {
  const [r, g, b] = palette[pixels[i]]
    .map((v) => v / 255)
    .map((v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4));
  return 116 * Math.cbrt(0.2126 * r + 0.7152 * g + 0.0722 * b) - 16;
}

const middle = ({ columns, rows }: Raster): number =>
  Math.floor(rows / 2) * columns + Math.floor(columns / 2);

test('a pixel half covered is half way to paper: coverings add up to the area', () => {
  const [x, y, z] = [8.03, 5.07, 3.01];
  const v = axesOf(ISOMETRIC).toward;
  const { pixels, palette } = raster(scene(body(box(x, y, z))), ISOMETRIC);
  expect(palette.length).toBeLessThanOrEqual(256);
  // Color 0 is paper; the others come in fours, one more sample covered each.
  const covered = pixels.reduce((sum, p) => sum + (p === 0 ? 0 : ((p - 1) % 4) + 1) / 4, 0);
  const want = y * z * v[0] + x * z * v[1] + x * y * v[2];
  expect(Math.abs(covered * PIXEL ** 2 - want)).toBeLessThan((2 * (x + y + z) * PIXEL) / 4);
});

describe('in black and white', () => {
  const tones: readonly Exclude<Tone, 'ghost'>[] = ['plastic', 'wood', 'metal'];
  /** Seen a little aside of z, so that wood has its lines; the median is between them. */
  const plate = (tone: Tone, view: View): number => {
    const r = raster(scene(body(box(20, 20, 1), tone)), view);
    const all = [...r.pixels.keys()].filter((i) => r.pixels[i] > 0).map((i) => lightness(r, i));
    return all.sort((a, b) => a - b)[all.length >> 1];
  };

  test.each([0, 90, 180, 270])(
    'tones of the same light differ by 8 and more, turned by %s°',
    (deg) => {
      const [c, s] = cosSinDeg(deg);
      const view: View = { toward: [0.8 * c, 0.8 * s, 0.3], up: [0, 0, 1] };
      const [plastic, wood, metal] = tones.map((tone) => plate(tone, view));
      expect(plastic - wood).toBeGreaterThan(8);
      expect(wood - metal).toBeGreaterThan(15);
    },
  );

  test('what looks up is lighter than what looks left, and that than what looks right', () => {
    const { pixels, palette, columns, rows } = raster(scene(body(box(10, 10, 10))), ISOMETRIC);
    const at = (x: number, y: number) =>
      lightness(
        { pixels, palette, columns, rows },
        Math.floor(y * rows) * columns + Math.floor(x * columns),
      );
    const [top, left, right] = [at(0.5, 0.25), at(0.25, 0.6), at(0.75, 0.6)];
    expect(top - left).toBeGreaterThan(5);
    expect(left - right).toBeGreaterThan(3);
  });
});

describe('grain', () => {
  /** Changes of tone along a row or a column through the middle. */
  const changes = (r: Raster, alongRow: boolean): number => {
    const count = alongRow ? r.columns : r.rows;
    const at = (k: number) =>
      alongRow
        ? r.pixels[Math.floor(r.rows / 2) * r.columns + k]
        : r.pixels[k * r.columns + Math.floor(r.columns / 2)];
    let sum = 0;
    for (let k = 4; k < count - 4; k++) if (at(k) !== at(k - 1)) sum++;
    return sum;
  };
  const front: View = { toward: [0, -1, 0], up: [0, 0, 1] };

  test('runs along x of what is of wood, wherever it is turned', () => {
    const r = raster(scene(body(box(40, 10, 30), 'wood')), front);
    expect(changes(r, true)).toBe(0);
    // A line each 0.9 mm over 0.8, by how flat the sheets lie, goes dark and light again.
    expect(changes(r, false)).toBeGreaterThan(2 * 20);
    const quarter = [0, 0, 1, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 1];
    const turned = raster(scene(body(box(40, 10, 30), 'wood', quarter)), {
      toward: [0, 0, -1],
      up: [0, 1, 0],
    });
    expect(changes(turned, true) + changes(turned, false)).toBeGreaterThan(0);
  });

  test('is on wood alone', () => {
    for (const tone of ['plastic', 'metal'] as const) {
      const r = raster(scene(body(box(40, 10, 30), tone)), front);
      expect(changes(r, false)).toBe(0);
    }
  });
});

test('a ghost has lines and no tone', () => {
  const of = scene(body(box(4, 4, 4)), body(box(2, 2, 9), 'ghost', movedTo(8, 0, 0)));
  const { raster: r, lines } = shaded(modelOf(of), ISOMETRIC, PIXEL);
  expect(r.pixels.filter((p) => p > 0).length).toBeLessThan((16 * Math.sqrt(3) * 1.1) / PIXEL ** 2);
  expect(lines.some(({ kind }) => kind === 'ghost')).toBe(true);
  expect(() => shaded(modelOf(scene(of.bodies[1])), ISOMETRIC, PIXEL)).toThrow();
});

test('the same scene gives the same bytes', () => {
  const of = () => scene(body(sphere(9, 20), 'wood'), body(box(4, 4, 12)));
  const [one, other] = [of(), of()].map((s) => shaded(modelOf(s), ISOMETRIC, PIXEL));
  expect(png(one.raster)).toEqual(png(other.raster));
  expect(one.lines).toEqual(other.lines);
});

test('pixels lie where the lines do', () => {
  const { raster: r, box: at, lines } = shaded(modelOf(scene(body(box(7, 5, 3)))), TOP, PIXEL);
  expect(at[2] - at[0]).toBeCloseTo(r.columns * PIXEL, 9);
  expect(at[3] - at[1]).toBeCloseTo(r.rows * PIXEL, 9);
  const xs = lines.flatMap(({ points }) => points.map(([x]) => x));
  expect([Math.min(...xs), Math.max(...xs)]).toEqual([0, 7]);
  const first = r.pixels.subarray(middle(r) - (middle(r) % r.columns)).findIndex((p) => p > 0);
  expect(at[0] + first * PIXEL).toBeCloseTo(0, 9);
});
