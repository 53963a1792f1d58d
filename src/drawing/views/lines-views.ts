/** Profile and plan of the lines, station under station. */
import type { BodyShape } from '../../body/shape.js';
import type { Point2 } from '../../geometry/vec.js';
import type { Shape } from '../picture/picture.js';
import { SIZES, words } from '../picture/words.js';
import { heading } from './frame.js';
import { buttocks, planCurve, sideCurve, waterlines } from './hull-lines.js';
import { CHAIN, CLOSED, dot, ink } from './ink.js';
import { roundMm } from './measure.js';
import type { OffsetRow } from './offsets.js';

/** Where the three views stand on the sheet, and which lines are drawn. */
export type LinesPose = {
  readonly shape: BodyShape;
  readonly scale: number;
  /** The nose’s x, the datum line’s y in the profile, the center plane’s y in the plan, mm of the sheet. */
  readonly left: number;
  readonly datumY: number;
  readonly centerY: number;
  readonly stations: readonly OffsetRow[];
  /** Heights of waterlines over and under the datum line, counted positive, and buttocks’ distances from the center plane, mm. */
  readonly upper: readonly number[];
  readonly lower: readonly number[];
  readonly beside: readonly number[];
  /** Greatest breadth, and reach of back and belly from the datum line, mm. */
  readonly breadthMm: number;
  readonly highMm: number;
  readonly lowMm: number;
  readonly greatest: { readonly stationMm: number };
};

/** Lines reach so far beyond what they cross, mm of the sheet. */
export const BEYOND_MM = 2;
const HALF_LETTER_MM = 0.28 * SIZES.note;
const NAME_STEP_MM = SIZES.note * 1.3;

const inProfile = ({ scale, left, datumY }: LinesPose, [x, z]: Point2): Point2 => [
  left + scale * x,
  datumY + scale * z,
];

const inPlan = ({ scale, left, centerY }: LinesPose, [x, y]: Point2): Point2 => [
  left + scale * x,
  centerY + scale * y,
];

export function profileView(pose: LinesPose): Shape[] {
  const { shape, scale, left, datumY, upper, lower, beside } = pose;
  const at = (points: readonly Point2[]) => points.map((p) => inProfile(pose, p));
  const right = left + scale * shape.lengthMm;
  const [low, high] = [datumY - scale * pose.lowMm, datumY + scale * pose.highMm];
  const level = (y: number, name: string, kind = {}): Shape[] => [
    ink(
      [
        [left - BEYOND_MM, y],
        [right + BEYOND_MM, y],
      ],
      'hair',
      kind,
    ),
    words(name, left - BEYOND_MM - 1, y - HALF_LETTER_MM, { anchor: 'end' }),
  ];
  const curves = beside.map((y) => ({ name: roundMm(y), parts: buttocks(shape, y).map(at) }));
  const belly = sideCurve(shape, -1);
  const back = [...sideCurve(shape, 1)].reverse().slice(1, -1);
  return [
    ...heading(
      'Profile',
      'waterlines and buttocks, mm from datum and center',
      [left, high + 4.5],
      right - left,
    ),
    ...stationLines(pose, low - BEYOND_MM, high + BEYOND_MM),
    ...level(datumY, '0', CHAIN),
    ...upper.flatMap((z) => level(datumY + scale * z, `+${roundMm(z)}`)),
    ...lower.flatMap((z) => level(datumY - scale * z, `−${roundMm(z)}`)),
    ...curves.flatMap(({ parts }) => parts.map((points) => ink(points, 'fine', CLOSED))),
    ...named(curves, [datumY, right], 1),
    ink(at([...belly, ...back]), 'firm', CLOSED),
  ];
}

export function planView(pose: LinesPose): Shape[] {
  const { shape, scale, left, centerY, upper, lower, beside, breadthMm } = pose;
  const right = left + scale * shape.lengthMm;
  const half = (scale * breadthMm) / 2;
  const at = (points: readonly Point2[], side: 1 | -1) =>
    points.map(([x, y]) => inPlan(pose, [x, side * y]));
  const waters = (side: 1 | -1) =>
    (side > 0 ? upper : lower).map((z) => ({
      name: `${side > 0 ? '+' : '−'}${roundMm(z)}`,
      parts: waterlines(shape, side * z).map((points) => at(points, side)),
    }));
  const outline = planCurve(shape);
  const over = waters(1);
  const under = waters(-1);
  const straight = (y: number, kind = {}) =>
    ink(
      [
        [left - BEYOND_MM, y],
        [right + BEYOND_MM, y],
      ],
      'hair',
      kind,
    );
  return [
    ...stationLines(pose, centerY - half - BEYOND_MM, centerY + half + BEYOND_MM),
    straight(centerY, CHAIN),
    ...beside.flatMap((y) =>
      [1, -1].flatMap((side) => [
        straight(centerY + side * scale * y),
        words(roundMm(y), left - BEYOND_MM - 1, centerY + side * scale * y - HALF_LETTER_MM, {
          anchor: 'end',
        }),
      ]),
    ),
    ...[...over, ...under].flatMap(({ parts }) => parts.map((points) => ink(points, 'fine'))),
    ...named(over, [centerY, right], 1),
    ...named(under, [centerY, right], -1),
    ink([...at(outline, 1), ...[...at(outline, -1)].reverse().slice(1, -1)], 'firm', CLOSED),
    ...heading(
      'Plan',
      'upper half: waterlines above the datum; lower: below',
      [left, centerY - half - BEYOND_MM - 4.5],
      right - left,
    ),
  ];
}

/** Perpendiculars and stations across a view, each with its number in the gap between profile and plan. */
function stationLines(
  { stations, left, scale, datumY, lowMm }: LinesPose,
  low: number,
  high: number,
): Shape[] {
  const numbersY = datumY - scale * lowMm - BEYOND_MM - 1 - 0.78 * SIZES.note;
  const isProfile = low > numbersY - 1 && high > datumY;
  return stations.flatMap(({ stationMm, number }): Shape[] => {
    const x = left + scale * stationMm;
    return [
      ink(
        [
          [x, low],
          [x, high],
        ],
        'hair',
      ),
      ...(isProfile ? [words(String(number), x, numbersY, { anchor: 'middle' })] : []),
    ];
  });
}

type Named = { readonly name: string; readonly parts: readonly (readonly Point2[])[] };

/**
 * Names of nested curves in a column right of them, one over the other from the middle line outward, the
 * outermost farthest: from each a level leader to where its curve comes down aft. A curve too low for
 * its place goes without; the heading and the straight lines tell.
 */
function named(curves: readonly Named[], [middleY, right]: Point2, side: 1 | -1): Shape[] {
  return curves.flatMap(({ name, parts }, i): Shape[] => {
    const y = middleY + side * (0.6 + curves.length - 1 - i) * NAME_STEP_MM;
    const x = parts.length === 0 ? null : lastCrossing(parts.flat(), y);
    if (x === null) return [];
    const end = right + BEYOND_MM;
    return [
      ink(
        [
          [x, y],
          [end, y],
        ],
        'hair',
      ),
      dot([x, y]),
      words(name, end + 0.8, y - HALF_LETTER_MM),
    ];
  });
}

/** The farthest right at which a curve passes a height; null where it does not. */
function lastCrossing(points: readonly Point2[], y: number): number | null {
  const xs = points.slice(1).flatMap(([x1, y1], i) => {
    const [x0, y0] = points[i];
    return (y0 - y) * (y1 - y) <= 0 && y0 !== y1 ? [x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)] : [];
  });
  return xs.length === 0 ? null : Math.max(...xs);
}
