/**
 * The shop sheet as one HTML file that prints well: no script, nothing fetched, faces inside; well-formed, so
 * that a reader of XML reads it too. Every number
 * stands as `<data value="…" data-from="/json/pointer" data-form="…">`, so that anybody can read the sheet
 * back against build.json; free text stands in `<bdi>`.
 */
import type {
  Block,
  Column,
  Inline,
  Inlines,
  Quantity,
  Section,
  SheetDocument,
  Table,
} from '../sheet/document.js';
import { plainText } from '../sheet/plain.js';
import { webFace } from './face-subset.js';
import { EVERY_LETTER, spelledOut } from './letters.js';
import type { Faces } from './pdf.js';
import { columnShares } from './sheet-columns.js';
import { PAGE_MARGINS_MM, POINTS, STYLE } from './sheet-style.js';
import { escaped } from './xml.js';

/** The text of the file. @throws Fault on a number or a letter HTML cannot hold */
export async function sheetHtml(sheet: SheetDocument, faces: Faces): Promise<string> {
  const body = bodyOf(sheet);
  const letters = `${body}${sheet.pageWords}`;
  const [regular, bold] = await Promise.all([
    webFace(faces.regular, letters),
    webFace(faces.bold, letters),
  ]);
  return `${[
    '<!DOCTYPE html>',
    `<html lang="${escaped(sheet.language)}">`,
    '<head>',
    '<meta charset="utf-8"/>',
    '<meta name="viewport" content="width=device-width, initial-scale=1"/>',
    `<meta http-equiv="Content-Security-Policy" content="${POLICY}"/>`,
    `<title>${escaped(sheet.plainTitle)}</title>`,
    '<style>',
    faceRule(regular, 400),
    faceRule(bold, 700),
    pageRule(sheet),
    STYLE,
    '</style>',
    '</head>',
    body,
    '</html>',
  ].join('\n')}\n`;
}

/** No script runs and nothing is fetched, whatever a name may hold. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:";

const faceRule = (base64: string, weight: number): string =>
  `@font-face { font-family: Sheet; font-weight: ${weight}; src: url(data:font/woff2;base64,${base64}) format("woff2"); }`;

/** Margins and foot of a printed page (CSS Paged Media 3); the paper is the printer's. */
function pageRule({ footer, pageWords }: SheetDocument): string {
  const { top, side, bottom } = PAGE_MARGINS_MM;
  const font = `font: ${POINTS.foot}pt Sheet, sans-serif;`;
  const count = pageWords
    .split(/(\{\w+\})/)
    .filter((piece) => piece !== '')
    .map((piece) => COUNTERS[piece] ?? cssString(piece))
    .join(' ');
  return [
    `@page { margin: ${top}mm ${side}mm ${bottom}mm;`,
    `@bottom-left { ${font} content: ${cssString(plainText(footer))}; }`,
    `@bottom-right { ${font} content: ${count}; } }`,
  ].join(' ');
}

const COUNTERS: Readonly<Record<string, string>> = {
  '{page}': 'counter(page)',
  '{pages}': 'counter(pages)',
};

/** A string of CSS inside a style element: nothing in it can end either. */
const cssString = (text: string): string =>
  `"${shownText(text).replace(/[^\p{L}\p{N} .,:·-]/gu, (c) => `\\${(c.codePointAt(0) ?? 0).toString(16)} `)}"`;

const shownText = (text: string): string => spelledOut(text, EVERY_LETTER);

const bodyOf = (sheet: SheetDocument): string =>
  [
    '<body>',
    `<h1>${run(sheet.title, sheet)}</h1>`,
    ...sheet.sections.map((section, i) => sectionHtml(section, i, sheet)),
    '</body>',
  ].join('\n');

function sectionHtml(section: Section, index: number, sheet: SheetDocument): string {
  const step = section.step === null ? '' : ` data-step="${section.step}"`;
  return [
    `<section id="${escaped(section.id)}"${section.newPage ? ' class="page"' : ''}>`,
    `<h2${step}>${run(section.heading, sheet)}</h2>`,
    ...section.blocks.map((block, i) => blockHtml(block, `${index}-${i}`, sheet)),
    '</section>',
  ].join('\n');
}

/** @param key tells the block from all others of the file */
function blockHtml(block: Block, key: string, sheet: SheetDocument): string {
  switch (block.kind) {
    case 'heading':
      return `<h3>${run(block.inlines, sheet)}</h3>`;
    case 'paragraph':
      return `<p>${run(block.inlines, sheet)}</p>`;
    case 'note':
      return `<div class="note"><b>${run(block.label, sheet)}</b>${block.lines
        .map((line) => `<p><bdi>${escaped(shownText(line))}</bdi></p>`)
        .join('')}</div>`;
    case 'list':
      return `<div class="together"><h3>${run(block.title, sheet)}</h3>\n<ul class="list">${block.items
        .map((item) => `<li>${TICK}${run(item, sheet)}</li>`)
        .join('\n')}</ul></div>`;
    case 'caution':
      return [
        '<aside class="caution">',
        `<h3>${run(block.title, sheet)}</h3>`,
        `<ul>${block.items.map((item) => `<li>${run(item, sheet)}</li>`).join('')}</ul>`,
        '</aside>',
      ].join('\n');
    case 'figures':
      return `<dl class="figures">${block.figures
        .map(
          ({ label, value, detail }) =>
            `<div><dt>${run(label, sheet)}</dt><dd class="value">${run(value, sheet)}</dd><dd>${run(detail, sheet)}</dd></div>`,
        )
        .join('\n')}</dl>`;
    case 'table':
      return tableHtml(block, sheet);
    case 'picture':
      return [
        `<figure role="img" aria-label="${escaped(shownText(plainText(block.told)))}">`,
        embedded(block.svg, key, block.mostHeightMm),
        ...(block.caption ? [`<figcaption>${run(block.caption, sheet)}</figcaption>`] : []),
        '</figure>',
      ].join('\n');
    case 'together':
      return `<div class="together">\n${block.blocks
        .map((inner, i) => blockHtml(inner, `${key}-${i}`, sheet))
        .join('\n')}\n</div>`;
  }
}

/** The picture's elements, with names of their own among those of the other pictures. */
const embedded = (svg: string, key: string, mostHeightMm: number): string =>
  svg
    .replace(/^<\?xml[^>]*>\s*/, '')
    .replace('<svg ', `<svg style="max-height: ${mostHeightMm}mm" `)
    .replace(/ id="/g, ` id="p${key}-`)
    .replace(/url\(#/g, `url(#p${key}-`)
    .trimEnd();

/** A table of so many rows is not torn apart. */
const WHOLE_ROWS = 14;

function tableHtml(table: Table, sheet: SheetDocument): string {
  const { title, columns, rows, forWriting, share } = table;
  const widths = columnShares(table, sheet.inches).map(
    (of) => `style="width: ${(100 * of).toFixed(2)}%"`,
  );
  const looks = share < 1 ? ` style="width: ${(100 * share).toFixed(0)}%"` : '';
  return [
    `<div class="scroll${rows.length <= WHOLE_ROWS ? ' whole' : ''}"><table${forWriting ? ' class="writing"' : ''}${looks}>`,
    `<colgroup>${widths.map((width) => `<col ${width}/>`).join('')}</colgroup>`,
    '<thead>',
    ...(title
      ? [
          `<tr class="title"><th colspan="${columns.length}" scope="colgroup">${run(title, sheet)}</th></tr>`,
        ]
      : []),
    `<tr>${columns.map((c) => `<th scope="col"${sided(c)}>${run(c.head, sheet)}</th>`).join('')}</tr>`,
    '</thead>',
    '<tbody>',
    ...rows.map(
      (cells) => `<tr>${cells.map((cell, i) => cellHtml(cell, columns[i], sheet)).join('')}</tr>`,
    ),
    '</tbody>',
    '</table></div>',
  ].join('\n');
}

const sided = ({ align }: Column): string => (align === 'start' ? '' : ` class="${align}"`);

const cellHtml = (cell: Inlines, column: Column, sheet: SheetDocument): string =>
  cell.length === 0 ? '<td class="blank"></td>' : `<td${sided(column)}>${run(cell, sheet)}</td>`;

const TICK = '<span class="tick"></span>';

const run = (inlines: Inlines, sheet: SheetDocument): string =>
  inlines.map((inline) => inlineHtml(inline, sheet)).join('');

function inlineHtml(inline: Inline, sheet: SheetDocument): string {
  switch (inline.kind) {
    case 'words':
      return bold(escaped(inline.text), inline.strong);
    case 'free':
      return bold(`<bdi>${escaped(shownText(inline.text))}</bdi>`, inline.strong);
    case 'hash':
      return `<code class="hash">${escaped(inline.text)}</code>`;
    case 'quantity':
      return bold(quantityHtml(inline, sheet.inches), inline.strong);
    case 'tick':
      return TICK;
    case 'line':
      return `<span class="line" style="width: ${inline.widthMm}mm"></span>`;
  }
}

const bold = (html: string, strong: true | undefined): string => (strong ? `<b>${html}</b>` : html);

function quantityHtml(quantity: Quantity, inches: boolean): string {
  const metric = `<span class="q">${dataHtml(quantity, quantity)}${unitText(quantity.unit)}</span>`;
  if (!inches || !quantity.inches) return metric;
  return `${metric} <span class="q in">(${dataHtml(quantity, quantity.inches)}\u00a0in)</span>`;
}

const dataHtml = (
  { from, value }: Quantity,
  { form, text }: { readonly form: string; readonly text: string },
): string =>
  `<data value="${value}" data-from="${escaped(from)}" data-form="${form}">${escaped(text)}</data>`;

/** A unit stands off its number but for degrees of angle. */
export const unitText = (unit: string): string =>
  unit === '' ? '' : unit === '°' ? unit : `\u00a0${unit}`;
