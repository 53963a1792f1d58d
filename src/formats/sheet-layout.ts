/** Blocks of the sheet as a tree for pdfmake. */
import type { Block, Column, Figure, Inlines, Picture, Section, Table } from '../sheet/document.js';
import { plainText } from '../sheet/plain.js';
import { POINTS_PER_MM } from './pdf.js';
import { beginsAtRight } from './reading-order.js';
import { columnShares } from './sheet-columns.js';
import { fittedPt, heightPt, highestRowPt, listColumns } from './sheet-heights.js';
import { POINTS, WRITING_MM } from './sheet-style.js';
import { freeNodes, type Setting, textNodes, textOf, WARNING } from './sheet-text.js';

/** A node of pdfmake's tree. */
export type Node = Readonly<Record<string, unknown>>;

/** More of a page than this is never kept together. */
const MOST_TOGETHER_RATIO = 0.8;

const isKept = (blocks: readonly Block[], { heightPt: page, ...rest }: Setting): boolean =>
  blocks.reduce((sum, block) => sum + heightPt(block, { heightPt: page, ...rest }), 0) <
  MOST_TOGETHER_RATIO * page;

export function sectionNodes(section: Section, setting: Setting): readonly Node[] {
  const [first, ...others] = section.blocks;
  const heading = sectionHeading(section, setting);
  const kept = first !== undefined && isKept([first], setting);
  const begun: Node = kept
    ? { stack: [heading, blockNode(first, setting)], unbreakable: true }
    : heading;
  // A heading that cannot be kept with what it is over stands at the top of a page.
  const atTop = section.newPage || !kept;
  return [
    { ...begun, ...(atTop ? { pageBreak: 'before' } : {}) },
    ...(kept ? others : section.blocks).map((block) => blockNode(block, setting)),
  ];
}

function sectionHeading({ step, heading }: Section, setting: Setting): Node {
  const text: Node = {
    text: textNodes(heading, setting),
    fontSize: POINTS.heading,
    bold: true,
    outline: true,
    outlineText: plainText(heading),
  };
  const line = [false, false, false, true];
  const numbered: Node = {
    text: String(step),
    fontSize: POINTS.heading,
    bold: true,
    alignment: 'center',
    border: [true, true, true, true],
  };
  return {
    table: {
      widths: step === null ? ['*'] : [24, '*'],
      body: [step === null ? [{ ...text, border: line }] : [numbered, { ...text, border: line }]],
    },
    layout: { hLineWidth: () => 1.7, vLineWidth: () => 1.7, ...padding(8, 2) },
    margin: [0, 10, 0, 6],
  };
}

function blockNode(block: Block, setting: Setting): Node {
  switch (block.kind) {
    case 'heading':
      return {
        text: textNodes(block.inlines, setting),
        fontSize: POINTS.subheading,
        bold: true,
        margin: [0, 8, 0, 3],
      };
    case 'paragraph':
      return { text: textNodes(block.inlines, setting), margin: [0, 2, 0, 4] };
    case 'note':
      return noteNode(block, setting);
    case 'list':
      return listNode(block, setting);
    case 'caution':
      return cautionNode(block, setting);
    case 'figures':
      return figuresNode(block.figures, setting);
    case 'table':
      return tableNode(block, setting);
    case 'picture':
      return pictureNode(block, setting);
    case 'together':
      return {
        stack: block.blocks.map((inner) => blockNode(inner, setting)),
        unbreakable: isKept([block], setting),
      };
  }
}

/** The same where there is less room for a line. */
const within = (setting: Setting, widthPt: number): Setting => ({ ...setting, widthPt });

const padding = (x: number, y: number) => ({
  paddingLeft: () => x,
  paddingRight: () => x,
  paddingTop: () => y,
  paddingBottom: () => y,
});

/** Beside the text of a note: its line, and air. */
const NOTE_PT = 30;

/** A line that is read from the right stands there. */
function noteNode({ label, lines }: Extract<Block, { kind: 'note' }>, setting: Setting): Node {
  const inside = within(setting, setting.widthPt - NOTE_PT);
  const told = lines.map((line) => ({
    text: freeNodes(line, inside),
    alignment: beginsAtRight(line) ? 'right' : 'left',
  }));
  return {
    table: {
      widths: ['*'],
      body: [
        [
          {
            stack: [{ text: textNodes(label, setting), bold: true }, ...told],
            border: [true, false, false, false],
          },
        ],
      ],
    },
    layout: { vLineWidth: () => 0.9, ...padding(8, 1) },
    margin: [0, 4, 0, 4],
  };
}

/** A box to tick and the air behind it. */
const TICK_PT = 20;

/** Items in columns as wide as the widest needs, each behind its box. */
function listNode({ title, items }: Extract<Block, { kind: 'list' }>, setting: Setting): Node {
  const columns = listColumns(items, setting);
  const inside = within(setting, setting.widthPt / columns - TICK_PT);
  const [tick] = textNodes([{ kind: 'tick' }], setting);
  const nodes = items.map((item) => [tick, { text: '\u00a0' }, ...textNodes(item, inside)]);
  const rows = Array.from({ length: Math.ceil(nodes.length / columns) }, (_, row) =>
    Array.from({ length: columns }, (__, i) => ({ text: nodes[row * columns + i] ?? '' })),
  );
  return {
    stack: [
      {
        text: textNodes(title, setting),
        fontSize: POINTS.subheading,
        bold: true,
        margin: [0, 6, 0, 2],
      },
      {
        table: { widths: Array.from({ length: columns }, () => '*'), body: rows },
        layout: { hLineWidth: () => 0, vLineWidth: () => 0, ...padding(0, 0) },
      },
    ],
    unbreakable: isKept([{ kind: 'list', title, items }], setting),
    margin: [0, 0, 0, 4],
  };
}

function cautionNode(
  { title, items }: Extract<Block, { kind: 'caution' }>,
  setting: Setting,
): Node {
  return {
    table: {
      widths: ['*'],
      dontBreakRows: isKept([{ kind: 'caution', title, items }], setting),
      body: [
        [
          {
            stack: [
              {
                text: [{ text: `${WARNING}\u00a0` }, ...textNodes(title, setting)],
                fontSize: POINTS.subheading,
                bold: true,
                margin: [0, 0, 0, 2],
              },
              { ul: items.map((item) => ({ text: textNodes(item, setting) })) },
            ],
          },
        ],
      ],
    },
    layout: {
      hLineWidth: () => 0.9,
      vLineWidth: (i: number) => (i === 0 ? 5.5 : 0.9),
      ...padding(9, 5),
    },
    margin: [0, 5, 0, 7],
  };
}

function figuresNode(figures: readonly Figure[], setting: Setting): Node {
  const inside = within(setting, setting.widthPt / figures.length - 2 * CELL.x);
  return {
    table: {
      widths: figures.map(() => '*'),
      dontBreakRows: true,
      body: [
        figures.map(({ label, value, detail }) => ({
          stack: [
            { text: textNodes(label, inside), fontSize: POINTS.head },
            { text: textNodes(value, inside), fontSize: POINTS.figure, bold: true },
            ...(detail.length > 0 ? [{ text: textNodes(detail, inside) }] : []),
          ],
          border: [false, true, false, true],
        })),
      ],
    },
    layout: { hLineWidth: () => 0.9, vLineWidth: () => 0, ...padding(3, 5) },
    margin: [0, 6, 0, 6],
  };
}

const pictureNode = (picture: Picture, setting: Setting): Node => ({
  stack: [
    { svg: picture.svg, fit: fittedPt(picture, setting.widthPt), alignment: 'center' },
    ...(picture.caption
      ? [{ text: textNodes(picture.caption, setting), fontSize: POINTS.head }]
      : []),
  ],
  margin: [0, 4, 0, 4],
});

const CELL = { x: 5, y: 2.5 } as const;
const RULE_PT = 0.4;
const HEAD_RULE_PT = 1.1;
const ALIGN = { start: 'left', end: 'right', middle: 'center' } as const;

function tableNode(table: Table, setting: Setting): Node {
  const { title, columns, rows, forWriting, share } = table;
  const headerRows = title ? 2 : 1;
  const whole = isKept([table], setting);
  const inner =
    setting.widthPt * share - columns.length * 2 * CELL.x - (columns.length + 1) * RULE_PT;
  const widths = columnShares(table, setting.sheet.inches).map((of) => inner * of);
  const cells = widths.map((wide) => within(setting, wide));
  const node: Node = {
    table: {
      widths,
      headerRows,
      keepWithHeaderRows: 1,
      dontBreakRows: highestRowPt(table, setting) < MOST_TOGETHER_RATIO * setting.heightPt,
      heights: (row: number) =>
        forWriting && row >= headerRows ? WRITING_MM * POINTS_PER_MM - 2 * CELL.y : 'auto',
      body: [
        ...(title ? [titleRow(title, columns, setting)] : []),
        columns.map((c, i) => ({
          ...textOf(c.head, cells[i]),
          fontSize: POINTS.head,
          bold: true,
          alignment: ALIGN[c.align],
          border: [false, false, false, true],
        })),
        ...rows.map((row) => row.map((cell, i) => cellNode(cell, columns[i], cells[i]))),
      ],
    },
    layout: {
      hLineWidth: (i: number) => (i < headerRows ? 0 : i === headerRows ? HEAD_RULE_PT : RULE_PT),
      vLineWidth: () => RULE_PT,
      ...padding(CELL.x, CELL.y),
    },
    fontSize: POINTS.table,
    margin: [0, 6, 0, 6],
  };
  return whole ? { stack: [node], unbreakable: true } : node;
}

const titleRow = (
  title: Inlines,
  columns: readonly Column[],
  setting: Setting,
): readonly Node[] => [
  {
    text: textNodes(title, setting),
    fontSize: POINTS.subheading,
    bold: true,
    colSpan: columns.length,
    border: [false, false, false, false],
  },
  ...columns.slice(1).map(() => ({ text: '' })),
];

/** An empty cell is boxed, to be written in. */
const cellNode = (cell: Inlines, { align }: Column, setting: Setting): Node =>
  cell.length === 0
    ? { text: '', border: [true, true, true, true] }
    : {
        ...textOf(cell, setting),
        alignment: ALIGN[align],
        border: [false, false, false, true],
      };
