/** Reads PNG with a palette, for tests: structure by hand, inflate by node:zlib. Shares nothing with the writer. */
import { inflateSync } from 'node:zlib';

export type ReadPng = {
  readonly columns: number;
  readonly rows: number;
  readonly depthBits: number;
  readonly colorType: number;
  /** Red, green and blue, row after row. */
  readonly rgb: Uint8Array;
};

/** Throws on anything that is not a whole, sound file of 8-bit palette pixels. */
export function readPng(file: Uint8Array): ReadPng {
  const bytes = Buffer.from(file);
  if (bytes.subarray(0, 8).toString('latin1') !== '\u0089PNG\r\n\u001a\n')
    throw new Error('signature');
  const chunks = new Map<string, Buffer>();
  let at = 8;
  while (at < bytes.length) {
    const length = bytes.readUInt32BE(at);
    const name = bytes.toString('latin1', at + 4, at + 8);
    const data = bytes.subarray(at + 8, at + 8 + length);
    if (chunks.has(name)) throw new Error(`${name} twice`);
    const sum = crc32(bytes.subarray(at + 4, at + 8 + length));
    if (bytes.readUInt32BE(at + 8 + length) !== sum) throw new Error(`check sum of ${name}`);
    chunks.set(name, data);
    at += 12 + length;
  }
  const [names, header] = [[...chunks.keys()], chunks.get('IHDR')];
  if (names.join() !== 'IHDR,PLTE,IDAT,IEND' || !header) throw new Error(`chunks ${names}`);
  const [columns, rows] = [header.readUInt32BE(0), header.readUInt32BE(4)];
  const palette = chunks.get('PLTE') as Buffer;
  const lines = inflateSync(chunks.get('IDAT') as Buffer);
  if (lines.length !== rows * (columns + 1)) throw new Error(`${lines.length} bytes of pixels`);
  const rgb = new Uint8Array(3 * columns * rows);
  for (let i = 0; i < columns * rows; i++) {
    const row = Math.floor(i / columns);
    if (lines[row * (columns + 1)] !== 0) throw new Error('filtered');
    const color = lines[row * (columns + 1) + 1 + (i % columns)];
    if (3 * color + 3 > palette.length) throw new Error('color of no palette');
    rgb.set(palette.subarray(3 * color, 3 * color + 3), 3 * i);
  }
  return { columns, rows, depthBits: header[8], colorType: header[9], rgb };
}

/** The check sum bit by bit, as ISO/IEC 15948 annex D describes it. */
function crc32(data: Buffer): number {
  let c = 0xffffffff;
  for (const byte of data)
    for (let bit = 0; bit < 8; bit++)
      c = ((c ^ (byte >>> bit)) & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1) >>> 0;
  return ~c >>> 0;
}
