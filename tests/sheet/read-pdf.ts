/** Text of a PDF by a reader from outside (Mozilla's pdf.js): where it stands on its page, in points from the lower left. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export type Piece = {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};
export type PdfPage = {
  readonly width: number;
  readonly height: number;
  readonly pieces: readonly Piece[];
};

export async function readPdf(bytes: Uint8Array): Promise<{
  readonly pages: readonly PdfPage[];
  readonly info: Readonly<Record<string, unknown>>;
}> {
  // The reader takes the bytes for its own.
  const doc = await getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 })
    .promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= doc.numPages; number++) {
    const page = await doc.getPage(number);
    const [, , width, height] = page.view;
    const { items } = await page.getTextContent({ disableNormalization: true });
    const pieces = items.flatMap((item): Piece[] => {
      if (!('str' in item) || item.str.trim() === '') return [];
      const [, , , scale, x, y] = item.transform as number[];
      return [{ text: item.str, x, y, width: item.width, height: Math.abs(scale) }];
    });
    pages.push({ width, height, pieces });
  }
  const { info } = await doc.getMetadata();
  await doc.loadingTask.destroy();
  return { pages, info: info as Record<string, unknown> };
}

/** A stretch of text as it is drawn, in the frame it is drawn in: x of its left end. Nothing is joined or turned round. */
export type Drawn = { readonly text: string; readonly x: number; readonly y: number };

export async function drawnTexts(bytes: Uint8Array): Promise<readonly (readonly Drawn[])[]> {
  const doc = await getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 })
    .promise;
  const pages: Drawn[][] = [];
  for (let number = 1; number <= doc.numPages; number++) {
    const { fnArray, argsArray } = await (await doc.getPage(number)).getOperatorList();
    let place = [0, 0];
    const drawn: Drawn[] = [];
    fnArray.forEach((operator, i) => {
      const args = argsArray[i];
      if (operator === OPS.setTextMatrix) {
        const matrix = Array.from((args.length === 1 ? args[0] : args) as ArrayLike<number>);
        place = [matrix[4], matrix[5]];
      }
      if (operator === OPS.showText) {
        const glyphs = args[0] as readonly (number | { readonly unicode: string } | null)[];
        const text = glyphs
          .map((g) => (g !== null && typeof g === 'object' ? g.unicode : ''))
          .join('');
        drawn.push({ text, x: place[0], y: place[1] });
      }
    });
    pages.push(drawn);
  }
  await doc.loadingTask.destroy();
  return pages;
}
