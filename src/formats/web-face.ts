/** A face for a page of the web: only the letters of a text, packed (WOFF 2). The one door to subset-font. */

/** @returns the bytes in base 64; letters the face lacks are left to the reader's own faces */
export async function webFace(face: Uint8Array, text: string): Promise<string> {
  const { default: subsetFont } = await import('subset-font');
  const letters = [...new Set(text)].sort().join('');
  const packed = await subsetFont(Buffer.from(face), letters, {
    targetFormat: 'woff2',
    noHinting: true,
  });
  return Buffer.from(packed).toString('base64');
}
