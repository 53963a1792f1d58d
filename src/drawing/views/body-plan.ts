/** The body plan: sections on one center line, those before the greatest on its right half, those behind it on its left. */
import type { Point2 } from '../../geometry/vec.js';
import type { Shape } from '../picture/picture.js';
import { SIZES, words } from '../picture/words.js';
import { heading } from './frame.js';
import { sectionCurve, sectionPoint } from './hull-lines.js';
import { CHAIN, dot, ink } from './ink.js';
import { BEYOND_MM, type LinesPose } from './lines-views.js';
import type { OffsetRow } from './offsets.js';

/** Beside either half, for leaders and numbers, mm. */
const NAMES_MM = 11;
/** From number to number, at least and at most. */
const STEP_MM = { least: 4.4, most: 8 } as const;
/** Sections smaller on paper than this are a dot. */
const LEAST_MM = 0.8;
/** From the center line to the words under it. */
const ASIDE_MM = 1.5;
const HALF_LETTER_MM = 0.28 * SIZES.note;

export const bodyPlanWidthMm = (breadthMm: number): number => breadthMm + 2 * NAMES_MM;

/** `left` is the edge of its room. */
export function bodyPlan(pose: LinesPose, left: number): Shape[] {
  const {
    shape,
    scale,
    datumY,
    breadthMm,
    highMm,
    lowMm,
    stations,
    upper,
    lower,
    beside,
    greatest,
  } = pose;
  const half = (scale * breadthMm) / 2;
  const x0 = left + NAMES_MM + half;
  const [low, high] = [datumY - scale * lowMm, datumY + scale * highMm];
  const at = (points: readonly Point2[], side: 1 | -1) =>
    points.map(([y, z]): Point2 => [x0 + side * scale * y, datumY + scale * z]);
  const level = (y: number, kind = {}) =>
    ink(
      [
        [x0 - half - BEYOND_MM, y],
        [x0 + half + BEYOND_MM, y],
      ],
      'hair',
      kind,
    );
  const upright = (x: number, kind = {}) =>
    ink(
      [
        [x, low - BEYOND_MM],
        [x, high + BEYOND_MM],
      ],
      'hair',
      kind,
    );
  const sized = stations.filter(
    ({ back, belly, halfBreadth }) =>
      scale * Math.max(back.mm + belly.mm, 2 * halfBreadth.mm) > LEAST_MM,
  );
  const most = Math.floor((high - low) / STEP_MM.least) + 1;
  const halves = ([1, -1] as const).map((side) => {
    const own = sized.filter(({ stationMm }) => stationMm <= greatest.stationMm === side > 0);
    return { side, rows: thinned(own, most) };
  });
  const whole = sectionCurve(shape, greatest.stationMm);
  return [
    ...heading('Body plan', '', [x0 - half - NAMES_MM, high + 4.5], 2 * (half + NAMES_MM)),
    level(datumY, CHAIN),
    ...upper.map((z) => level(datumY + scale * z)),
    ...lower.map((z) => level(datumY - scale * z)),
    upright(x0, CHAIN),
    ...beside.flatMap((y) => [upright(x0 + scale * y), upright(x0 - scale * y)]),
    ...([1, -1] as const).map((side) => ink(at(whole, side), 'firm')),
    ...halves.flatMap(({ side, rows }) => [
      ...rows.map(({ stationMm }) => ink(at(sectionCurve(shape, stationMm), side), 'fine')),
      ...numbers(pose, rows, {
        x0,
        side,
        columnMm: half + BEYOND_MM + 4,
        middleY: (low + high) / 2,
        heightMm: high - low,
      }),
    ]),
    words('after', x0 - ASIDE_MM, low - BEYOND_MM - 4.5, { anchor: 'end' }),
    words('forward', x0 + ASIDE_MM, low - BEYOND_MM - 4.5),
  ];
}

type Column = {
  readonly x0: number;
  readonly side: 1 | -1;
  /** From the center line to where leaders end. */
  readonly columnMm: number;
  readonly middleY: number;
  readonly heightMm: number;
};

/** Numbers beside a half, each on the ray from the middle of the datum line through its section: rays do not cross. */
function numbers(
  pose: LinesPose,
  rows: readonly OffsetRow[],
  { x0, side, columnMm, middleY, heightMm }: Column,
): Shape[] {
  const { shape, scale, datumY } = pose;
  const step = Math.min(STEP_MM.most, Math.max(STEP_MM.least, heightMm / rows.length));
  return rows.flatMap(({ number, stationMm, back, belly, halfBreadth }, i): Shape[] => {
    const rise = middleY + ((rows.length - 1) / 2 - i) * step - datumY;
    const h = rise >= 0 ? back.mm : belly.mm;
    // The angle at which the section drawn to a square of one is seen.
    const angle = Math.atan2(rise * halfBreadth.mm, columnMm * h);
    const [y, z] = sectionPoint(shape, stationMm, angle);
    const from: Point2 = [x0 + side * scale * y, datumY + scale * z];
    const to: Point2 = [x0 + side * columnMm, datumY + rise];
    return [
      ink([from, to], 'hair'),
      dot(from),
      words(String(number), to[0] + side * 0.8, to[1] - HALF_LETTER_MM, {
        anchor: side > 0 ? 'start' : 'end',
      }),
    ];
  });
}

/** So many of the rows at most, the first and the last among them. */
export function thinned<T>(rows: readonly T[], most: number): readonly T[] {
  if (rows.length <= most) return rows;
  const keep = Math.max(2, most);
  return Array.from(
    { length: keep },
    (_, i) => rows[Math.round((i * (rows.length - 1)) / (keep - 1))],
  );
}
