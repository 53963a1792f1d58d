/**
 * Pixels with a palette as PNG (ISO/IEC 15948): 8 bits a pixel, rows without filter, as the standard
 * recommends for a palette (12.8). The door to fflate: its deflate is plain arithmetic on bytes, so a
 * picture is the same file under any Node, which that of the zlib built in is not.
 */
import { zlibSync } from 'fflate';
import { Fault } from '../problem.js';
import type { Raster } from '../shade/raster.js';

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const PALETTE_COLOR = 3;
/** Of fflate, 0 to 9. Higher ones take twice the time for a twentieth less. */
const LEVEL = 6;

/** @throws Fault on a picture without pixels, more than 256 colors, or a pixel of a color that is none. */
export function png({ columns, rows, pixels, palette }: Raster): Uint8Array {
  const known = palette.length;
  if (!(columns > 0 && rows > 0) || pixels.length !== columns * rows || known > 256)
    throw new Fault(`${pixels.length} pixels in ${columns} by ${rows}, ${known} colors`);
  if (pixels.some((color) => color >= known)) throw new Fault(`pixel of no color`);
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, columns);
  view.setUint32(4, rows);
  header.set([8, PALETTE_COLOR, 0, 0, 0], 8);
  return joined([
    Uint8Array.from(SIGNATURE),
    chunk('IHDR', header),
    chunk('PLTE', Uint8Array.from(palette.flat())),
    chunk('IDAT', zlibSync(scanLines(columns, rows, pixels), { level: LEVEL })),
    chunk('IEND', new Uint8Array()),
  ]);
}

/** Each row after the number of its filter: 0, none. */
function scanLines(columns: number, rows: number, pixels: Uint8Array): Uint8Array {
  const lines = new Uint8Array((columns + 1) * rows);
  for (let row = 0; row < rows; row++) {
    lines.set(pixels.subarray(row * columns, (row + 1) * columns), row * (columns + 1) + 1);
  }
  return lines;
}

/** Length of the data, name, data, and a check over name and data. */
function chunk(name: string, data: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(data.length + 12);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, data.length);
  bytes.set(new TextEncoder().encode(name), 4);
  bytes.set(data, 8);
  view.setUint32(data.length + 8, crc(bytes.subarray(4, data.length + 8)));
  return bytes;
}

/** Cyclic redundancy check of the standard's annex D: polynomial 0xedb88320, reversed. */
const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

function crc(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (const byte of bytes) c = CRC_TABLE[(c ^ byte) & 0xff] ^ (c >>> 8);
  return c ^ 0xffffffff;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}
