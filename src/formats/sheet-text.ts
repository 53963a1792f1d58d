/** Inlines of the sheet as text for pdfmake, and how wide they are about. */
import { textWidthMm } from '../drawing/picture/picture.js';
import type { Inline, Inlines, Quantity, SheetDocument } from '../sheet/document.js';
import { type HasLetter, spelledOut } from './letters.js';
import { brokenLines, runsFromRight, shownPieces } from './reading-order.js';
import { unitText } from './sheet-html.js';
import { POINTS } from './sheet-style.js';

/** A piece of text in pdfmake's tree. */
export type TextNode = {
  readonly text: string;
  readonly bold?: boolean;
  readonly noWrap?: boolean;
  readonly fontSize?: number;
  readonly lineHeight?: number;
};

/** What every block is laid out with. */
export type Setting = {
  readonly sheet: SheetDocument;
  readonly has: HasLetter;
  /** What there is for a line, points: between the margins, or in a cell. */
  readonly widthPt: number;
  readonly heightPt: number;
};

/** A box to tick is a letter of the face (U+2610). */
export const TICK = '☐';
/** Before what can hurt (U+26A0). */
export const WARNING = '⚠';
/** Width of an underscore, a share of the size of the letters. */
const UNDERSCORE_RATIO = 0.45;

export const textNodes = (inlines: Inlines, setting: Setting): readonly TextNode[] =>
  inlines.flatMap((inline) => nodesOf(inline, setting));

/** Text of a node: of one piece without an array round it, which the library is slow with. */
export function textOf(inlines: Inlines, setting: Setting): object {
  const nodes = textNodes(inlines, setting);
  return nodes.length === 1 ? nodes[0] : { text: nodes };
}

function nodesOf(inline: Inline, setting: Setting): readonly TextNode[] {
  switch (inline.kind) {
    case 'words':
    case 'hash':
      return [{ text: inline.text, ...strength(inline) }];
    case 'free':
      return freeNodes(inline.text, setting).map((node) => ({ ...node, ...strength(inline) }));
    case 'quantity':
      return quantityNodes(inline, setting.sheet.inches).map((node) => ({
        ...strength(inline),
        ...node,
      }));
    case 'tick':
      return [{ text: TICK, fontSize: POINTS.subheading, lineHeight: 1 }];
    case 'line': {
      const letters = Math.ceil(((inline.widthMm / 25.4) * 72) / (UNDERSCORE_RATIO * POINTS.text));
      return [{ text: '_'.repeat(letters), noWrap: true }];
    }
  }
}

const strength = (inline: Inline): { readonly bold?: true } =>
  'strong' in inline && inline.strong ? { bold: true } : {};

/** Of a line that has to hold other words too, a typed text takes no more than this. */
const LINE_RATIO = 0.9;

/**
 * What somebody typed; white space is a space. Text with words from the right is broken into lines here,
 * before its pieces are turned round, and no line of it is broken again.
 */
export function freeNodes(text: string, { has, widthPt: wide }: Setting): readonly TextNode[] {
  const line = spelledOut(text.replace(/\s+/g, ' '), has);
  if (!runsFromRight(line)) return [{ text: line }];
  const lines = brokenLines(line, (t) => widthPt(t, POINTS.text), LINE_RATIO * wide);
  return lines.flatMap((part, i): TextNode[] => [
    ...(i > 0 ? [{ text: '\n' }] : []),
    ...shownPieces(part).map((piece) => ({ text: piece.replace(/ /g, '\u00a0'), noWrap: true })),
  ]);
}

function quantityNodes(quantity: Quantity, inches: boolean): readonly TextNode[] {
  const metric = { text: `${quantity.text}${unitText(quantity.unit)}` };
  if (!inches || !quantity.inches) return [metric];
  return [
    metric,
    { text: ' ' },
    { text: `(${quantity.inches.text}\u00a0in)`, fontSize: POINTS.inches, bold: false },
  ];
}

/** About how wide a line of text is, in points; rather more than less. */
export const widthPt = (text: string, sizePt: number): number => textWidthMm(text, sizePt, true);
