/** Faces with no more letters than a text needs: quick to read and small to embed. A door to subset-font. */
import type { Faces } from './pdf.js';

/** Faces that set this text as the whole ones do. */
export async function facesFor({ regular, bold }: Faces, text: string): Promise<Faces> {
  const { default: subsetFont } = await import('subset-font');
  const letters = [...new Set(text)].sort().join('');
  const fewer = async (face: Uint8Array) =>
    new Uint8Array(
      await subsetFont(Buffer.from(face), letters, { targetFormat: 'truetype', noHinting: true }),
    );
  return { regular: await fewer(regular), bold: await fewer(bold) };
}
