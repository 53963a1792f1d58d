/** What every sheet of views has: white paper, a frame, a bar of 100 mm and the title block. */
import type { Box, Point2 } from '../../geometry/vec.js';
import { type Picture, type Shape, type SheetSize, textWidthMm } from '../picture/picture.js';
import { scaleBar } from '../picture/scale-bar.js';
import { sheet } from '../picture/sheet.js';
import { fitted, SIZES, words } from '../picture/words.js';
import { boxLine, ink } from './ink.js';
import type { ViewsInput } from './input.js';
import { length } from './measure.js';

/** Printers leave 5 mm or so of a sheet white. Common practice, no source. */
const MARGIN_MM = 8;
const frameOf = ({ widthMm, heightMm }: SheetSize): Box => [
  MARGIN_MM,
  MARGIN_MM,
  widthMm - MARGIN_MM,
  heightMm - MARGIN_MM,
];
const BLOCK_MM = 17;
const FOOT_MM = 9;
const INSET_MM = 4;

/** Free for what a sheet shows. */
export function roomOf({ sheet }: Pick<ViewsInput, 'sheet'>): Box {
  const [left, low, right, top] = frameOf(sheet);
  return [left + INSET_MM, low + BLOCK_MM + FOOT_MM, right - INSET_MM, top - INSET_MM];
}

export type SheetOf = {
  /** In a word or two: what is on it. */
  readonly title: string;
  /** As it is told in the title block; null where nothing is drawn to scale. */
  readonly scale: string | null;
  /** What the lines mean, one or two lines of text at the foot. */
  readonly key: readonly string[];
  /** For who cannot see it. */
  readonly description: string;
  readonly shapes: readonly Shape[];
};

/** `number` counts from 1 to `of`. */
export function framed(
  input: ViewsInput,
  { title, scale, key, description, shapes }: SheetOf,
  { number, of }: { readonly number: number; readonly of: number },
): Picture {
  const frame = frameOf(input.sheet);
  const [left, , right] = roomOf(input);
  const foot = frame[1] + BLOCK_MM;
  const keyX = left + 108;
  return {
    title: `${input.name} ${input.version}: ${title.toLowerCase()}, sheet ${number} of ${of}`,
    description,
    ...input.sheet,
    shapes: [
      ...sheet(input.sheet),
      boxLine(frame, 'bold'),
      ...titleBlock(input, { title, scale, place: `${number} of ${of}` }),
      ...scaleBar([left + 1, foot + 2.6]),
      ...key.flatMap((text, i) =>
        fitted(text, keyX, foot + 5.2 - 3.8 * i + (key.length === 1 ? -1.9 : 0), right - keyX),
      ),
      ...shapes,
    ],
  };
}

type Told = { readonly title: string; readonly scale: string | null; readonly place: string };

/** Width, what it is, and how it is told; the first is the name in large letters. */
function titleBlock(input: ViewsInput, { title, scale, place }: Told): Shape[] {
  const { name, version, pattern, hash, tool, inches } = input;
  const cells = [
    { widthMm: 58, caption: 'drawing', value: title },
    { widthMm: 22, caption: 'scale', value: scale ?? 'none' },
    {
      widthMm: inches ? 40 : 24,
      caption: inches ? 'length, mm (in)' : 'length, mm',
      value: length(pattern.lengthMm, inches).replace(' in)', ')'),
    },
    { widthMm: 43, caption: 'pattern, SHA-256', value: hash === '' ? 'none' : hash },
    { widthMm: 24, caption: 'sheet', value: place },
  ];
  const frame = frameOf(input.sheet);
  const nameX = frame[0] + INSET_MM;
  const nameMm = frame[2] - frame[0] - cells.reduce((sum, { widthMm }) => sum + widthMm, 0);
  const top = frame[1] + BLOCK_MM;
  const [captionY, valueY] = [top - 6, frame[1] + 4];
  const edges = cells.map(
    (_, i) => frame[0] + nameMm + cells.slice(0, i).reduce((sum, { widthMm }) => sum + widthMm, 0),
  );
  return [
    ink(
      [
        [frame[0], top],
        [frame[2], top],
      ],
      'firm',
    ),
    ...fitted(name, nameX, top - 7.2, nameMm - 6, {
      size: nameSize(name, nameMm - 6),
      bold: true,
    }),
    ...fitted(`version ${version}, made by ${tool}`, nameX, valueY - 0.6, nameMm - 6),
    ...cells.flatMap(({ widthMm, caption, value }, i): Shape[] => [
      ink(
        [
          [edges[i], frame[1]],
          [edges[i], top],
        ],
        'hair',
      ),
      ...fitted(caption, edges[i] + 2, captionY, widthMm - 3),
      ...fitted(value, edges[i] + 2, valueY, widthMm - 3, { size: 'title', bold: true }),
    ]),
  ];
}

const NAME_SIZES = ['name', 'value', 'title', 'note'] as const;

/** The largest letters in which a name has room; the least where none are small enough. */
const nameSize = (name: string, widthMm: number): (typeof NAME_SIZES)[number] =>
  NAME_SIZES.find((size) => textWidthMm(name, SIZES[size], true) <= widthMm) ?? 'note';

/** A heading over a part of a sheet, with more said of it in plain letters where that has room. */
export function heading(title: string, about: string, [x, y]: Point2, widthMm: number): Shape[] {
  const from = textWidthMm(title, SIZES.title, true) + 2.5;
  const hasRoom = about !== '' && from + textWidthMm(about, SIZES.note) <= widthMm;
  return [
    ...fitted(title, x, y, widthMm, { size: 'title', bold: true }),
    ...(hasRoom ? [words(about, x + from, y)] : []),
  ];
}
