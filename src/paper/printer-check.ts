/** The page that measures the printer: two long lines, and room to write down what they measured. */
import type { PageItem } from '../formats/pdf.js';
import type { Box, Point2 } from '../geometry/vec.js';
import { MOST_OFF_RATIO, type Paper } from '../pattern/paper.js';
import { footer } from './footer.js';
import { frameOf } from './frame.js';
import type { CheckLines, Leaflet, PaperFile } from './paper-file.js';
import { lineItem, PENS } from './pens.js';
import { LINE_MM, linesOf, textItem } from './words.js';

/** Of the line along beside the left edge of what is printed, and of the line across under the upper one. */
const [ALONG_MM, ACROSS_MM] = [4, 10];
const END_MM = 4; // half an end mark: long enough to lay a rule's edge beside the line

/** Both lines on the upright page, which is never corrected. */
export function checkLines(paper: Paper): CheckLines {
  const [left, bottom, , top] = frameOf(paper, 'upright', false).clear;
  const { acrossMm, alongMm } = paper.check;
  const [x, y] = [left + ALONG_MM, (bottom + top - alongMm) / 2];
  const [x0, y0] = [left + ACROSS_MM, top - ALONG_MM];
  return {
    across: [
      [x0, y0],
      [x0 + acrossMm, y0],
    ],
    along: [
      [x, y],
      [x, y + alongMm],
    ],
  };
}

export function printerCheck(paper: Paper): PaperFile {
  const frame = frameOf(paper, 'upright', false);
  const [left, bottom, right] = frame.clear;
  const lines = checkLines(paper);
  // The footer gives way to the line along.
  const beside = { ...frame, clear: [left + ACROSS_MM, bottom, right, frame.clear[3]] as const };
  const place = { number: 1, of: 1, row: 1, column: 1, rows: 1, columns: 1 };
  const below = footer(beside, LEAFLET, place);
  const items = [
    ...measured(lines.across, [0, 1]),
    ...measured(lines.along, [1, 0]),
    ...textItems(paper, lines),
    ...below.items,
  ];
  const drawingMm: Box = [
    lines.along[0][0],
    lines.along[0][1],
    lines.across[1][0],
    Math.max(lines.across[0][1], lines.along[1][1]),
  ];
  const { widthMm, heightMm } = frame;
  return {
    ...LEAFLET,
    sheets: [{ rows: 1, columns: 1, boxMm: drawingMm }],
    pages: [
      {
        number: 1,
        sheet: 1,
        row: 1,
        column: 1,
        drawingMm,
        atMm: [drawingMm[0], drawingMm[1]],
        crossesMm: [],
        bars: below.bars,
        page: { widthMm, heightMm, items },
      },
    ],
  };
}

const LEAFLET: Leaflet = {
  file: 'paper/printer-check.pdf',
  kind: 'printer-check',
  pattern: null,
  title: 'How true is the printer?',
  kerf: null,
  notes: [
    'Print at 100 %, not fitted to the page, with the settings, the paper and the tray of all other pages.',
    'This page is never corrected; it shows the printer as it is.',
  ],
};

/** A line from the middle of one fine end mark to the middle of the other. */
function measured([from, to]: readonly [Point2, Point2], [ax, ay]: Point2): PageItem[] {
  const mark = ([x, y]: Point2) =>
    lineItem([x - ax * END_MM, y - ay * END_MM], [x + ax * END_MM, y + ay * END_MM], PENS.hair);
  return [lineItem(from, to, PENS.hair), mark(from), mark(to)];
}

function textItems(
  paper: Paper,
  { across: [[x, y]], along: [, [, alongTop]] }: CheckLines,
): PageItem[] {
  const { acrossMm, alongMm } = paper.check;
  const [, , right] = frameOf(paper, 'upright', false).clear;
  const isUsual = acrossMm === 180 && alongMm === 240;
  const lessThanUsual = `The lines are as long as there is room for on ${paper.acrossMm} × ${paper.alongMm} mm with ${paper.marginMm} mm left white.`;
  const example = `${acrossMm - 0.4}x${alongMm + 0.4}`;
  const paragraphs = [
    'Measure both lines with a steel rule, from the middle of one end mark to the middle of the other, to a tenth of a millimeter if you can: let the rule’s 10 mm stand on the first mark and take 10 off.',
    ...(isUsual ? [] : [lessThanUsual]),
  ];
  const after = [
    `If they read ${acrossMm} and ${alongMm} mm, there is nothing to do.`,
    'Else tell it when you make the set, across first, and print the new pages:',
    `blankwright make --printed ${example} FILE`,
    'or write it in the run file, for every time:',
    'paper: { printedAcrossMm: …, printedAlongMm: … }',
    `More than ${100 * MOST_OFF_RATIO} % off? Then it was not printed at 100 %.`,
  ];
  const textLeft = x + 4;
  const column = Math.min(150, right - textLeft);
  let line = Math.min(y, alongTop) - 16;
  const said = (text: string) => {
    line -= LINE_MM;
    return textItem(text, [textLeft, line]);
  };
  const spaced = (text: string) => {
    const items = linesOf(text, column).map(said);
    line -= LINE_MM / 3;
    return items;
  };
  return [
    textItem(`ACROSS: ${acrossMm} mm`, [x + acrossMm / 2, y - 7], {
      anchor: 'middle',
      bold: true,
      sizeMm: 4,
    }),
    textItem(`ALONG: ${alongMm} mm`, [x + 1, alongTop - alongMm / 2], {
      anchor: 'middle',
      bold: true,
      sizeMm: 4,
      turnDeg: 90,
    }),
    ...paragraphs.flatMap(spaced),
    ...blanks(['Across, measured', 'Along, measured'], () => {
      line -= 12;
      return [textLeft, line];
    }),
    ...(() => {
      line -= 6;
      return after.flatMap(spaced);
    })(),
  ];
}

/** Lines to write on. */
const blanks = (names: readonly string[], next: () => Point2): PageItem[] =>
  names.flatMap((name) => {
    const [x, y] = next();
    return [
      textItem(name, [x, y], { sizeMm: 4, bold: true }),
      lineItem([x + 42, y - 1], [x + 82, y - 1], PENS.mark),
      textItem('mm', [x + 84, y], { sizeMm: 4 }),
    ];
  });
