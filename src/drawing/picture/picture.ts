/**
 * A picture: filled areas, lines, shaded pixels and real text on a white sheet, to be pinned up and looked at. It is
 * never cut (for that there are drawings). Millimeters of the sheet, origin at its lower left corner,
 * y up. It knows no file format.
 */
import type { Box, Point2 } from '../../geometry/vec.js';
import type { Raster } from '../../shade/raster.js';

/**
 * What a shape stands for. A writer gives each role one tone; the tones differ in lightness and the
 * two areas that judge (`good`, `warn`) in hatching, so a picture can be read without color.
 */
export const ROLES = [
  'sheet',
  'ink',
  'faint',
  'line',
  'water',
  'surface',
  'wood',
  'wetWood',
  'lip',
  'wetLip',
  'metal',
  'bar',
  'grid',
  'good',
  'warn',
] as const;
export type Role = (typeof ROLES)[number];

/** Weights of a line: for help lines, for edges, for outlines, and for what the eye should find first. */
const PENS = ['hair', 'fine', 'firm', 'bold'] as const;
export type Pen = (typeof PENS)[number];

export type Area = {
  readonly kind: 'area';
  readonly points: readonly Point2[];
  readonly role: Role;
  /** Too dark or too busy for text. */
  readonly clear?: true;
};

export type Line = {
  readonly kind: 'line';
  readonly points: readonly Point2[];
  readonly role: Role;
  readonly pen: Pen;
  readonly closed?: true;
  readonly dashed?: true;
  /** Long and short strokes by turns, as of an axis; not together with `dashed`. */
  readonly chain?: true;
  /** No text may lie on it. */
  readonly clear?: true;
};

/** Many open lines drawn alike. */
export type Lines = {
  readonly kind: 'lines';
  readonly lines: readonly (readonly Point2[])[];
  readonly role: Role;
  readonly pen: Pen;
  readonly dashed?: true;
};

/** Pixels; `at` is the lower left corner. */
export type Image = {
  readonly kind: 'image';
  readonly at: Point2;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly raster: Raster;
};

/** `pen` is its edge in `line`; null for none. */
export type Disc = {
  readonly kind: 'disc';
  readonly center: Point2;
  readonly radiusMm: number;
  readonly role: Role;
  readonly pen: Pen | null;
  /** No text may lie on it. */
  readonly clear?: true;
};

export type Anchor = 'start' | 'middle' | 'end';

/** One line of text; `at` is on its baseline, at the end the anchor names. */
export type Text = {
  readonly kind: 'text';
  readonly at: Point2;
  readonly text: string;
  /** Size of the letters as printers count it: line to line of text set solid. */
  readonly sizeMm: number;
  readonly anchor: Anchor;
  readonly bold: boolean;
  readonly role: Role;
  /** Counter-clockwise about `at`: read from the right side of the sheet. Left out: upright. */
  readonly turnDeg?: 90;
};

/** Later shapes lie over earlier ones. */
export type Shape = Area | Line | Lines | Image | Disc | Text;

export type Picture = {
  readonly title: string;
  /** One sentence for who cannot see it. */
  readonly description: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly shapes: readonly Shape[];
};

/** Paper lying on its long side, ISO 216 A4. */
export const SHEET = { widthMm: 297, heightMm: 210 } as const;

export type SheetSize = { readonly widthMm: number; readonly heightMm: number };

/** Smallest letters that are read from an arm's length. Common practice, no source. */
export const LEAST_TEXT_MM = 3;

/** Widths of letters over their size, in a wide face (DejaVu Sans, measured, rounded up); narrower faces leave air. */
const LETTER_RATIOS: readonly (readonly [letters: RegExp, ratio: number])[] = [
  [/[ .,:;'|!ijltfrI()[\]-]/, 0.42],
  [/[mMW%@…—]/, 1],
  [/[w+−±=×<>]/, 0.84],
  [/[A-Z]/, 0.78],
  [/[\u1100-\uffff]/, 1],
];
const OTHER_RATIO = 0.64;
/** Bold over plain. */
const BOLD_RATIO = 1.1;

export function textWidthMm(text: string, sizeMm: number, bold = false): number {
  const ems = [...text].reduce(
    (sum, letter) => sum + (LETTER_RATIOS.find(([some]) => some.test(letter))?.[1] ?? OTHER_RATIO),
    0,
  );
  return ems * sizeMm * (bold ? BOLD_RATIO : 1);
}

/** The box a text is taken to need, from under its descenders to over its capitals. An estimate: the face is the reader's. */
export function textBox({ at: [x, y], text, sizeMm, anchor, bold, turnDeg }: Text): Box {
  const width = textWidthMm(text, sizeMm, bold);
  const start = anchor === 'start' ? 0 : anchor === 'end' ? -width : -width / 2;
  const [under, over] = [0.22 * sizeMm, 0.78 * sizeMm];
  return turnDeg === 90
    ? [x - over, y + start, x + under, y + start + width]
    : [x + start, y - under, x + start + width, y + over];
}
