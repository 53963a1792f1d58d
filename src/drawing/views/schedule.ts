/** What is sawn, drilled and screwed in where, as a table. */
import { tipDepthMm } from '../../blank/hole.js';
import { SIZES, spelled, wrapped } from '../picture/words.js';
import type { NamedEye, ViewsInput } from './input.js';
import { inchFraction, millimeters, roundMm } from './measure.js';
import { type Column, type Row, type Table, tableWidthMm, widened } from './table.js';

const COLUMNS: readonly Column[] = [
  { head: ['', 'what'], widthMm: 18, anchor: 'start' },
  { head: ['from', 'nose'], widthMm: 13.5, anchor: 'end' },
  { head: ['bit,', 'width'], widthMm: 13.5, anchor: 'end' },
  { head: ['', 'depth'], widthMm: 13.5, anchor: 'end' },
  { head: ['depth', 'to tip'], widthMm: 13.5, anchor: 'end' },
  { head: ['', 'angle'], widthMm: 13, anchor: 'end' },
];

export function schedule(input: ViewsInput): Table {
  const numbers = numberRows(input);
  const leads = input.eyes.flatMap((eye) => stationsOf(eye, input).map((s) => [eye.name, s, '']));
  const columns = widened(COLUMNS, [...numbers, ...leads]);
  const rows = [...numbers, ...input.eyes.flatMap((eye) => eyeRows(eye, input, columns))];
  return {
    title: `What goes where, mm${input.inches ? ' and inches' : ''}`,
    columns,
    rows,
    foot: wrapped(told(input), SIZES.note, tableWidthMm({ columns })),
  };
}

const degrees = (value: number): string => `${spelled(value, 1)}°`;

/** Slot, holes and bore; inches in a row of their own under the millimeters. */
function numberRows({ pattern, blank, inches }: ViewsInput): readonly Row[] {
  const { slot, holes } = blank;
  const { throughWire } = pattern;
  const row = (what: string, lengths: readonly (number | null)[], last: string): Row[] => {
    const spelt = (how: (mm: number) => string) =>
      lengths.map((mm) => (mm === null ? '' : how(mm)));
    return [
      [what, ...spelt(millimeters), last],
      ...(inches ? [['', ...spelt(inchFraction), '']] : []),
    ];
  };
  return [
    ...(slot
      ? row('lip slot', [slot.mouth[0], slot.widthMm, slot.depthMm, null], degrees(slot.angleDeg))
      : []),
    ...holes.flatMap((hole, i) =>
      row(
        `hole ${i + 1}`,
        [hole.stationMm, hole.diameterMm, hole.depthMm, tipDepthMm(hole)],
        hole.tiltDeg === 0 ? '' : degrees(hole.tiltDeg),
      ),
    ),
    ...(throughWire
      ? row(
          'wire',
          [null, throughWire.boreMm],
          `bore for ${roundMm(throughWire.diameterMm)} mm wire`,
        )
      : []),
  ];
}

const stationsOf = ({ surface: [x] }: NamedEye, { inches }: ViewsInput): readonly string[] => [
  millimeters(x),
  ...(inches ? [inchFraction(x)] : []),
];

/** Of an eye's words: with more, not all eyes would have room on a sheet. */
const MOST_LINES = 2;

/** An eye and what hangs on it, its words going on in another row where they are long. */
function eyeRows(eye: NamedEye, input: ViewsInput, columns: readonly Column[]): readonly Row[] {
  const {
    name,
    surface: [, z],
    parts,
  } = eye;
  const side = z > 0 ? 'over' : 'under';
  const isEnd = !name.startsWith('hanger');
  const height = isEnd && z !== 0 ? [`${millimeters(Math.abs(z))} ${side} datum`] : [];
  const roomMm = tableWidthMm({ columns: columns.slice(2) }) - 2.5;
  const lines = wrapped([...height, ...parts].join(', '), SIZES.note, roomMm);
  const shown = lines.slice(0, MOST_LINES);
  if (lines.length > shown.length) shown.push(`${shown.pop()}…`);
  const stations = stationsOf(eye, input);
  return Array.from({ length: Math.max(shown.length, stations.length) }, (_, i) => [
    i === 0 ? name : '',
    stations[i] ?? '',
    shown[i] ?? '',
  ]);
}

function told({ blank: { slot, holes } }: ViewsInput): string {
  return [
    ...(slot ? ['Slot: depth along the lip from the finished belly.'] : []),
    ...(holes.length > 0 ? ['Holes: depth from the sawn belly.'] : []),
    ...(holes.some(({ tiltDeg }) => tiltDeg !== 0) ? ['Angle of a hole: + leans aft.'] : []),
  ].join(' ');
}
