/** The table of offsets as it is drawn. */
import { spelled } from '../picture/words.js';
import { inchFraction, millimeters } from './measure.js';
import type { Offset, OffsetRow } from './offsets.js';
import { type Column, type Table, widened } from './table.js';

const MM_COLUMN = 15;
const INCH_COLUMN = 16;

const LENGTHS: readonly {
  readonly head: readonly string[];
  readonly of: (row: OffsetRow) => Offset;
}[] = [
  { head: ['from', 'nose'], of: ({ stationMm }) => ({ mm: stationMm, given: true }) },
  { head: ['back', 'above'], of: ({ back }) => back },
  { head: ['belly', 'below'], of: ({ belly }) => belly },
  { head: ['half-', 'breadth'], of: ({ halfBreadth }) => halfBreadth },
];

/** Lengths to a tenth of a millimeter and, where wished, to a sixty-fourth of an inch; what the pattern does not give in brackets. */
export function offsetTable(rows: readonly OffsetRow[], inches: boolean): Table {
  const columns: Column[] = [
    { head: ['', 'station'], widthMm: 15, anchor: 'start' },
    ...LENGTHS.flatMap(({ head }): Column[] => [
      { head, widthMm: MM_COLUMN, anchor: 'end' },
      ...(inches ? [{ head: ['', 'in'], widthMm: INCH_COLUMN, anchor: 'end' } as const] : []),
    ]),
    { head: ['upper', 'fullness'], widthMm: 17, anchor: 'end' },
    { head: ['lower', 'fullness'], widthMm: 17, anchor: 'end' },
  ];
  const last = rows[rows.length - 1];
  const faired = rows.some(({ back, belly, halfBreadth }) =>
    [back, belly, halfBreadth].some(({ given }) => !given),
  );
  const told = rows.map((row) => [
    row.number === 0 ? '0 nose' : row === last ? `${row.number} tail` : String(row.number),
    ...LENGTHS.flatMap(({ of }) => {
      const { mm, given } = of(row);
      const marked = (text: string) => (given ? text : `(${text})`);
      return [marked(millimeters(mm)), ...(inches ? [marked(inchFraction(mm))] : [])];
    }),
    spelled(row.upperExponent, 2),
    spelled(row.lowerExponent, 2),
  ]);
  return {
    title: `Table of offsets, mm from the datum line${inches ? ' (and inches)' : ''}`,
    columns: widened(columns, told),
    rows: told,
    foot: [
      'Fullness 2 is an ellipse, larger is slab-sided.',
      ...(faired ? ['In brackets: not given, read off the fair curve.'] : []),
    ],
  };
}
