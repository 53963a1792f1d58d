import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { png } from '../../src/formats/png.js';
import { seededDraws } from '../../src/geometry/random.js';
import { Fault } from '../../src/problem.js';
import type { Raster, Rgb } from '../../src/shade/raster.js';
import { readPng } from './png-reader.js';

const gray = (count: number): Rgb[] =>
  Array.from({ length: count }, (_, k) => [k, 255 - k, k >> 1]);

function noise(columns: number, rows: number): Raster {
  const draw = seededDraws(columns);
  const pixels = Uint8Array.from({ length: columns * rows }, () => Math.floor(256 * draw()));
  return { columns, rows, pixels, palette: gray(256) };
}

test.each([
  [1, 1],
  [7, 3],
  [300, 200],
])('%s by %s pixels are read back as they are', (columns, rows) => {
  const raster = noise(columns, rows);
  const read = readPng(png(raster));
  expect([read.columns, read.rows, read.depthBits, read.colorType]).toEqual([columns, rows, 8, 3]);
  expect(read.rgb).toEqual(Uint8Array.from([...raster.pixels].flatMap((p) => raster.palette[p])));
});

test('the check value of the standard’s check sum', () => {
  // The empty last chunk: its sum is known from any PNG file, ae 42 60 82.
  expect([...png(noise(2, 2)).slice(-4)]).toEqual([0xae, 0x42, 0x60, 0x82]);
});

test('is the same file on any machine', () => {
  // A change here is a change of the deflate or of the writer: look at a picture, then take the new sum.
  const stripes = Uint8Array.from(
    { length: 120 * 80 },
    (_, i) => ((i % 120) >> 3) + (i / 1200) * 2,
  );
  const file = png({ columns: 120, rows: 80, pixels: stripes, palette: gray(40) });
  expect(createHash('sha256').update(file).digest('hex').slice(0, 16)).toBe('9aef35c406a16ac4');
});

test('refuses what is no picture', () => {
  const good: Raster = { columns: 2, rows: 1, pixels: Uint8Array.of(0, 1), palette: gray(2) };
  expect(() => png(good)).not.toThrow();
  for (const wrong of [
    { columns: 0, pixels: new Uint8Array() },
    { rows: 2 },
    { palette: gray(1) },
    { palette: gray(257) },
  ])
    expect(() => png({ ...good, ...wrong })).toThrow(Fault);
});
