/** Reads a PDF back with pdf.js, which shares nothing with the writer: sizes in mm, text, and how lines are drawn. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

const MM_PER_POINT = 25.4 / 72;

export type ReadText = {
  readonly text: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly sizeMm: number;
  readonly turnDeg: number;
};

export type ReadPage = {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly texts: readonly ReadText[];
  /** Calls of the page's drawing, by the names of pdf.js, with their arguments. */
  readonly calls: readonly { readonly name: string; readonly args: readonly unknown[] }[];
};

export async function readPdf(bytes: Uint8Array): Promise<readonly ReadPage[]> {
  const names = new Map(Object.entries(OPS).map(([name, code]) => [code as number, name]));
  // It keeps what it is given, and makes no fuss of fonts it need not draw.
  const pdf = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  const pages: ReadPage[] = [];
  for (let n = 1; n <= pdf.numPages; n++) {
    const page = await pdf.getPage(n);
    const [x0, y0, x1, y1] = page.view;
    const { items } = await page.getTextContent();
    const list = await page.getOperatorList();
    pages.push({
      widthMm: (x1 - x0) * MM_PER_POINT,
      heightMm: (y1 - y0) * MM_PER_POINT,
      texts: items.flatMap((item) => {
        if (!('str' in item) || item.str === '') return [];
        const [a, b, , , x, y] = item.transform as number[];
        return [
          {
            text: item.str,
            xMm: x * MM_PER_POINT,
            yMm: y * MM_PER_POINT,
            sizeMm: Math.hypot(a, b) * MM_PER_POINT,
            turnDeg: (Math.atan2(b, a) * 180) / Math.PI,
          },
        ];
      }),
      calls: list.fnArray.map((code, i) => ({
        name: names.get(code) ?? String(code),
        args: list.argsArray[i] ?? [],
      })),
    });
  }
  await pdf.destroy();
  return pages;
}
