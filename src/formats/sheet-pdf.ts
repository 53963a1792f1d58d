/**
 * The shop sheet as PDF: the same document as the HTML file, laid out on pages. The one door to pdfmake.
 * Faces are given and embedded as far as they are used; nothing is read or fetched. The same document
 * gives the same bytes.
 */
import type { Printer } from 'pdfmake/js/Printer.js';
import { Fault } from '../problem.js';
import type { SheetDocument } from '../sheet/document.js';
import { lettersOf } from './letters.js';
import { collected, type Faces, POINTS_PER_MM, UNDATED } from './pdf.js';
import { type Node, sectionNodes } from './sheet-layout.js';
import { PAGE_MARGINS_MM, POINTS } from './sheet-style.js';
import { type Setting, TICK, textNodes, WARNING } from './sheet-text.js';

/** Papers the sheet is laid out for, mm: ISO 216, and ANSI/ASME Y14.1 size A. */
export const SHEET_PAPERS = {
  A4: { widthMm: 210, heightMm: 297 },
  Letter: { widthMm: 215.9, heightMm: 279.4 },
} as const;

export type SheetPaper = keyof typeof SHEET_PAPERS;

/** Letters that stand on the pages beside those of the document: boxes, signs, numbers of pages, code points, brackets turned round. */
export const FIXED_LETTERS = `${TICK}${WARNING}_()[]{}<>«»U+0123456789ABCDEF `;

/** Names under which the faces are handed over; no files. */
const FACES = { normal: 'regular', bold: 'bold' } as const;

export async function sheetPdf(
  sheet: SheetDocument,
  faces: Faces,
  paper: SheetPaper,
): Promise<Uint8Array> {
  const { default: module } = await import('pdfmake/js/Printer.js');
  const PdfPrinter = 'default' in module ? module.default : module;
  const bytes: Readonly<Record<string, Buffer>> = {
    regular: Buffer.from(faces.regular),
    bold: Buffer.from(faces.bold),
  };
  const printer: Printer = new PdfPrinter(
    { Sheet: { ...FACES } },
    {
      existsSync: (path) => path in bytes,
      readFileSync: (path) => {
        // Text in pictures asks the document itself for a face, by the same name.
        printer.pdfKitDoc.registerFont(path, bytes[path]);
        return bytes[path];
      },
    },
    { resolve: () => {}, resolved: async () => {} },
    (path) => {
      throw new Fault(`the sheet asks for the file ${path}`);
    },
  );
  const doc = await printer.createPdfKitDocument(definition(sheet, faces, paper));
  const whole = collected(doc);
  doc.end();
  return whole;
}

function definition(sheet: SheetDocument, faces: Faces, paper: SheetPaper): Node {
  const { widthMm, heightMm } = SHEET_PAPERS[paper];
  const { top, side, bottom } = PAGE_MARGINS_MM;
  const [regular, bold] = [lettersOf(faces.regular), lettersOf(faces.bold)];
  const setting: Setting = {
    sheet,
    has: (letter) => regular(letter) && bold(letter),
    widthPt: (widthMm - 2 * side) * POINTS_PER_MM,
    heightPt: (heightMm - top - bottom) * POINTS_PER_MM,
  };
  return {
    version: '1.7',
    language: sheet.language,
    displayTitle: true,
    info: {
      title: sheet.plainTitle,
      creationDate: UNDATED.CreationDate,
      modDate: UNDATED.ModDate,
    },
    pageSize: { width: widthMm * POINTS_PER_MM, height: heightMm * POINTS_PER_MM },
    pageMargins: [side, top, side, bottom].map((mm) => mm * POINTS_PER_MM),
    defaultStyle: { font: 'Sheet', fontSize: POINTS.text, lineHeight: 1.12 },
    footer: foot(setting),
    content: [
      { text: textNodes(sheet.title, setting), fontSize: POINTS.title, bold: true },
      ...sheet.sections.flatMap((section) => sectionNodes(section, setting)),
    ],
  };
}

/** What stands at the foot of a page. */
const foot =
  (setting: Setting) =>
  (page: number, pages: number): Node => ({
    columns: [
      { text: textNodes(setting.sheet.footer, setting) },
      {
        text: setting.sheet.pageWords
          .replace('{page}', String(page))
          .replace('{pages}', String(pages)),
        alignment: 'right',
      },
    ],
    fontSize: POINTS.foot,
    margin: [PAGE_MARGINS_MM.side * POINTS_PER_MM, 12],
  });
