/** What both kinds of sheet have: white paper, margins, rules and a head. */
import { stroke } from './lure-view.js';
import { SHEET, type Shape, type SheetSize, textWidthMm } from './picture.js';
import { fitted, SIZES, words } from './words.js';

/** White all round, mm. */
export const MARGIN_MM = 12;
export const LEFT = MARGIN_MM;
export const RIGHT = SHEET.widthMm - MARGIN_MM;
/** Height of the line under the head. */
const HEAD_Y = 184;

/** White paper, so that the picture is the same on a dark screen. */
export const sheet = ({ widthMm, heightMm }: SheetSize = SHEET): Shape[] => [
  {
    kind: 'area',
    points: [
      [0, 0],
      [widthMm, 0],
      [widthMm, heightMm],
      [0, heightMm],
    ],
    role: 'sheet',
  },
];

export const rule = (y: number): Shape[] => [
  stroke(
    [
      [LEFT, y],
      [RIGHT, y],
    ],
    'line',
    'hair',
  ),
];

type Head = {
  /** In large letters; `from` is where what stands beside it begins. */
  readonly word: string;
  readonly from: number;
  readonly about: string;
  readonly name: string;
  /** Under the name. */
  readonly small: string;
};

/** The head of a sheet. The name has the whole width, as nothing else stands so high. */
export const headed = ({ word, from, about, name, small }: Head): Shape[] => [
  words(word, LEFT, HEAD_Y + 5, { size: 'verdict', bold: true }),
  ...fitted(about, from, HEAD_Y + 5, RIGHT - from - textWidthMm(small, SIZES.note) - 6, {
    size: 'value',
  }),
  ...fitted(name, RIGHT, HEAD_Y + 12, RIGHT - from, { size: 'name', bold: true, anchor: 'end' }),
  words(small, RIGHT, HEAD_Y + 4.5, { anchor: 'end', role: 'faint' }),
  ...rule(HEAD_Y),
];
