/** The views of every pattern: each sheet as SVG, all of a pattern's together as PDF. */
import { type Picture, SHEET, type SheetSize } from '../drawing/picture/picture.js';
import { viewSheets } from '../drawing/views/views.js';
import { facesFor } from '../formats/face-subset.js';
import type { Faces } from '../formats/pdf.js';
import { picturesPdf } from '../formats/picture-pdf.js';
import { pictureSvg } from '../formats/picture-svg.js';
import { utf8 } from '../formats/utf8.js';
import type { Paper } from '../pattern/paper.js';
import type { Build } from '../pipeline.js';
import { checked } from './pictures.js';
import { shortHash } from './short-hash.js';
import { viewsInput } from './views.js';

type ViewFile = {
  readonly path: string;
  readonly kind: 'view';
  readonly format: 'svg' | 'pdf';
  readonly pattern: string;
  readonly bytes: Uint8Array;
};

export async function viewFiles(
  { products, job }: Pick<Build, 'products' | 'job'>,
  tool: string,
  faces: Faces,
): Promise<readonly ViewFile[]> {
  const all = products.map((product, i) => {
    const hash = shortHash(job.orders[i].fileSha256 ?? '');
    const stamp = { hash, tool, inches: job.shop.inches, sheet: sheetOf(job.paper) };
    const sheets = viewSheets(viewsInput(product, stamp)).map(checked);
    return { name: product.blank.name, sheets };
  });
  const fewer = await facesFor(faces, all.flatMap(({ sheets }) => sheets.map(textIn)).join(''));
  const files = await Promise.all(all.map((views) => filesOf(views, fewer)));
  return files.flat();
}

/** A sheet of the run's paper, lying, where it is one of those in place of A4; A4 for any other. */
const sheetOf = ({ size, acrossMm, alongMm }: Paper): SheetSize =>
  size === 'Letter' || size === 'Legal' ? { widthMm: alongMm, heightMm: acrossMm } : SHEET;

type Views = { readonly name: string; readonly sheets: readonly Picture[] };

async function filesOf({ name, sheets }: Views, faces: Faces): Promise<readonly ViewFile[]> {
  const file = (end: string, format: ViewFile['format'], bytes: Uint8Array): ViewFile => ({
    path: `views/${name}${end}`,
    kind: 'view',
    format,
    pattern: name,
    bytes,
  });
  return [
    file('.pdf', 'pdf', await picturesPdf(sheets, { title: `${name}: views`, faces })),
    ...sheets.map((sheet, i) =>
      file(sheets.length === 1 ? '.svg' : `-${i + 1}.svg`, 'svg', utf8(pictureSvg(sheet))),
    ),
  ];
}

const textIn = ({ shapes }: Picture): string =>
  shapes.map((shape) => (shape.kind === 'text' ? shape.text : '')).join('');
