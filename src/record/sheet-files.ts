/** The shop sheet's files: one document, as a page for a screen and as pages for a printer. */
import { createHash } from 'node:crypto';
import { facesFor } from '../formats/face-subset.js';
import type { Faces } from '../formats/pdf.js';
import { sheetHtml } from '../formats/sheet-html.js';
import { FIXED_LETTERS, type SheetPaper, sheetPdf } from '../formats/sheet-pdf.js';
import { utf8 } from '../formats/utf8.js';
import type { Build } from '../pipeline.js';
import type { SheetRecord } from '../sheet/record.js';
import { shopSheet } from '../sheet/shop-sheet.js';
import { faceSvg, tubSvg } from './pictures.js';
import { shortHash } from './short-hash.js';

export type SheetFile = {
  readonly path: string;
  readonly kind: 'sheet';
  readonly format: 'html' | 'pdf';
  readonly bytes: Uint8Array;
};

/** @param recorded the text of build.json: the sheet shows what stands there, to the last digit */
export async function sheetFiles(
  { products, nest, cutPlans }: Pick<Build, 'products' | 'nest' | 'cutPlans'>,
  recorded: string,
  faces: Faces,
): Promise<readonly SheetFile[]> {
  const record = JSON.parse(recorded) as SheetRecord;
  const hash = shortHash(createHash('sha256').update(recorded).digest('hex'));
  const pictures = {
    faces: (nest?.faces ?? []).map((face, i) => faceSvg(face, cutPlans[i])),
    tubs: products.map(({ floating }) => tubSvg(floating)),
  };
  const sheet = shopSheet(record, pictures, hash);
  const fewer = await facesFor(faces, `${JSON.stringify(sheet)}${FIXED_LETTERS}`);
  const [pdf, html] = [
    await sheetPdf(sheet, fewer, paperFor(record.paper.size)),
    await sheetHtml(sheet, faces),
  ];
  return [
    { path: 'sheet/shop-sheet.pdf', kind: 'sheet', format: 'pdf', bytes: pdf },
    {
      path: 'sheet/shop-sheet.html',
      kind: 'sheet',
      format: 'html',
      bytes: utf8(html),
    },
  ];
}

/** American paper where the run's pages are on such, else A4. */
const paperFor = (size: string): SheetPaper =>
  size === 'Letter' || size === 'Legal' ? 'Letter' : 'A4';
