/** What is sawn, drilled and screwed in where, as a table. */
import { tipDepthMm } from '../../blank/hole.js';
import { SIZES, spelled, wrapped } from '../picture/words.js';
import type { NamedEye, ViewsInput } from './input.js';
import { inchFraction, millimeters, roundMm } from './measure.js';
import { type Column, type Row, type Table, tableWidthMm } from './table.js';

const WIDTHS_MM = { what: 18, mm: 13.5, inches: 21, angle: 13 } as const;

export function schedule(input: ViewsInput): Table {
  const { pattern, blank, eyes, inches } = input;
  const mm = (value: number) =>
    inches ? `${millimeters(value)} (${inchFraction(value)})` : millimeters(value);
  const { slot, holes } = blank;
  const { throughWire } = pattern;
  const degrees = (value: number) => `${spelled(value, 1)}°`;
  const columns = columnsOf(inches);
  const rows: Row[] = [
    ...(slot
      ? [
          [
            'lip slot',
            mm(slot.mouth[0]),
            mm(slot.widthMm),
            mm(slot.depthMm),
            '',
            degrees(slot.angleDeg),
          ],
        ]
      : []),
    ...holes.map((hole, i) => [
      `hole ${i + 1}`,
      mm(hole.stationMm),
      mm(hole.diameterMm),
      mm(hole.depthMm),
      mm(tipDepthMm(hole)),
      hole.tiltDeg === 0 ? '' : degrees(hole.tiltDeg),
    ]),
    ...(throughWire
      ? [
          [
            'wire',
            '',
            mm(throughWire.boreMm),
            `bore for ${roundMm(throughWire.diameterMm)} mm wire`,
          ],
        ]
      : []),
    ...eyes.flatMap((eye) => eyeRows(eye, mm, columns)),
  ];
  const told = [
    ...(slot ? ['Slot: depth along the lip from the finished belly.'] : []),
    ...(holes.length > 0 ? ['Holes: depth from the sawn belly.'] : []),
    ...(holes.some(({ tiltDeg }) => tiltDeg !== 0) ? ['Angle of a hole: + leans aft.'] : []),
  ];
  return {
    title: `What goes where, mm${inches ? ' (in)' : ''}`,
    columns,
    rows,
    foot: wrapped(told.join(' '), SIZES.note, tableWidthMm({ columns })),
  };
}

function columnsOf(inches: boolean): readonly Column[] {
  const widthMm = inches ? WIDTHS_MM.inches : WIDTHS_MM.mm;
  const number = (...head: readonly string[]): Column => ({ head, widthMm, anchor: 'end' });
  return [
    { head: ['', 'what'], widthMm: WIDTHS_MM.what, anchor: 'start' },
    number('from', 'nose'),
    number('bit,', 'width'),
    number('', 'depth'),
    number('depth', 'to tip'),
    { head: ['', 'angle'], widthMm: WIDTHS_MM.angle, anchor: 'end' },
  ];
}

/** An eye and what hangs on it, its words going on in more rows where they are long. */
function eyeRows(
  { name, surface: [x, z], parts }: NamedEye,
  mm: (value: number) => string,
  columns: readonly Column[],
): Row[] {
  const height =
    name.startsWith('hanger') || z === 0
      ? []
      : [`${mm(Math.abs(z))} ${z > 0 ? 'over' : 'under'} datum`];
  const roomMm = columns.slice(2).reduce((sum, { widthMm }) => sum + widthMm, 0) - 2.5;
  const lines = wrapped([...height, ...parts].join(', '), SIZES.note, roomMm);
  return lines.map((line, i) => (i === 0 ? [name, mm(x), line] : ['', '', line]));
}
