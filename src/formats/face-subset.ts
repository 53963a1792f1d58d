/** Faces with no more letters than a text needs: quick to read and small to embed. The door to subset-font. */
import type { Faces } from './pdf.js';

/** Faces that set this text as the whole ones do. */
export async function facesFor({ regular, bold }: Faces, text: string): Promise<Faces> {
  return {
    regular: await subset(regular, text, 'truetype'),
    bold: await subset(bold, text, 'truetype'),
  };
}

/** A face for a page of the web, packed, in base 64; letters it lacks are left to the reader's own faces. */
export async function webFace(face: Uint8Array, text: string): Promise<string> {
  return Buffer.from(await subset(face, text, 'woff2')).toString('base64');
}

async function subset(
  face: Uint8Array,
  text: string,
  targetFormat: 'truetype' | 'woff2',
): Promise<Uint8Array> {
  const { default: subsetFont } = await import('subset-font');
  const letters = [...new Set(text)].sort().join('');
  return new Uint8Array(
    await subsetFont(Buffer.from(face), letters, { targetFormat, noHinting: true }),
  );
}
