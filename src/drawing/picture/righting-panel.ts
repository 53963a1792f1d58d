/** The righting lever over a full turn from rest. */
import type { RightingPoint } from '../../float/righting.js';
import { type Box, mix, type Point2 } from '../../geometry/vec.js';
import { stroke } from './lure-view.js';
import type { Role, Shape } from './picture.js';
import { labeled } from './place.js';
import { spelled, words } from './words.js';

export type RightingInput = {
  readonly righting: readonly RightingPoint[];
  readonly gmAcrossMm: number;
  /** The lure hangs in the water instead of resting on it. */
  readonly hanging: boolean;
};

/** How far to either side the lure can be turned and comes back, degrees from rest, at most half a turn. */
export type Range = { readonly starboardDeg: number; readonly portDeg: number };

/** A lure that hardly cares is drawn flat, not blown up, mm. */
const LEAST_TOP_MM = 0.1;

type Plot = (turnDeg: number, leverMm: number) => Point2;

export function rightingPanel(
  { righting, gmAcrossMm, hanging }: RightingInput,
  panel: Box,
): Shape[] {
  const title = [
    words('Righting lever', panel[0], panel[3] - 4, { size: 'title', bold: true }),
    words(
      hanging ? 'mm, turned from hanging' : 'mm, turned from rest',
      panel[0] + 40,
      panel[3] - 4,
      {
        role: 'faint',
      },
    ),
  ];
  if (righting.length < 2)
    return [...title, words('not computed', panel[0], panel[3] - 12, { role: 'faint' })];
  const plot: Box = [panel[0] + 12, panel[1] + 12, panel[2] - 4, panel[3] - 8];
  const most = niceTop(Math.max(LEAST_TOP_MM, ...righting.map(({ leverMm }) => Math.abs(leverMm))));
  const at: Plot = (turnDeg, leverMm) => [
    plot[0] + ((turnDeg + 180) / 360) * (plot[2] - plot[0]),
    (plot[1] + plot[3]) / 2 + (leverMm / most) * ((plot[3] - plot[1]) / 2),
  ];
  const range = rightingRange(righting);
  const { starboardDeg, portDeg } = range;
  const rest = at(0, 0);
  const tangentEnd = at(...tangentTo(gmAcrossMm, most));
  const curve = righting.map(({ heelDeg, leverMm }) => at(heelDeg, leverMm));
  const shapes: Shape[] = [
    ...axes(plot, at, most),
    ...fill(righting, [-180, -starboardDeg], 'warn', at),
    ...fill(righting, [-starboardDeg, portDeg], 'good', at),
    ...fill(righting, [portDeg, 180], 'warn', at),
    { ...stroke(curve, 'ink', 'bold'), clear: true },
    { ...stroke([rest, tangentEnd], 'ink', 'fine'), dashed: true, clear: true },
    { kind: 'disc', center: rest, radiusMm: 1.3, role: 'ink', pen: null, clear: true },
  ];
  const gm = {
    text: `${hanging ? 'B over G' : 'GM'} ${spelled(gmAcrossMm, 1)} mm`,
    at: mix(rest, tangentEnd, 0.8),
  };
  return [
    ...title,
    ...labeled(
      shapes,
      [
        {
          text: hanging ? 'hangs' : 'rest',
          at: rest,
          firstDeg: -60,
          gapMm: 2,
          style: { bold: true },
        },
        { ...gm, firstDeg: 180, gapMm: 2 },
      ],
      [plot[0] + 0.5, plot[1] + 0.5, plot[2] - 0.5, plot[3] - 0.5],
    ),
    words(rangeText(range), panel[0], panel[1] + 1),
  ];
}

const rangeText = ({ starboardDeg, portDeg }: Range): string =>
  starboardDeg + portDeg > 359
    ? 'returns from any heel'
    : `returns from ${spelled(starboardDeg, 0)}° to starboard, ${spelled(portDeg, 0)}° to port`;

/** 1, 2 or 5 times a power of ten, at least the value, which is positive. */
export function niceTop(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  return ([1, 2, 5, 10].find((k) => k * power >= value * (1 + 1e-9)) ?? 10) * power;
}

/** From rest to both sides until the lever no longer turns back; the curve is straight between its points. */
export function rightingRange(righting: readonly RightingPoint[]): Range {
  const reach = (side: 1 | -1): number => {
    const away = righting
      .map(({ heelDeg, leverMm }) => ({ turn: side * heelDeg, lever: side * leverMm }))
      .filter(({ turn }) => turn > 0)
      .sort((a, b) => a.turn - b.turn);
    const i = away.findIndex(({ lever }) => lever <= 0);
    if (i < 0) return 180;
    if (i === 0) return 0;
    const [a, b] = [away[i - 1], away[i]];
    return a.turn + ((b.turn - a.turn) * a.lever) / (a.lever - b.lever);
  };
  return { starboardDeg: reach(-1), portDeg: reach(1) };
}

/** The area between curve and zero line from one turn to another. */
function fill(
  righting: readonly RightingPoint[],
  [fromDeg, toDeg]: readonly [number, number],
  role: Role,
  at: Plot,
): Shape[] {
  const between = righting.filter(({ heelDeg }) => heelDeg >= fromDeg && heelDeg <= toDeg);
  if (between.length === 0 || toDeg - fromDeg < 1) return [];
  const points = between.map(({ heelDeg, leverMm }) => at(heelDeg, leverMm));
  return [{ kind: 'area', points: [at(fromDeg, 0), ...points, at(toDeg, 0)], role }];
}

const RADIAN_DEG = 180 / Math.PI;

/** The tangent at rest is GM high a radian away; drawn so far, or as far as the plot is high. */
function tangentTo(gmMm: number, mostMm: number): readonly [turnDeg: number, leverMm: number] {
  const radians = Math.min(1, (0.97 * mostMm) / Math.max(1e-9, Math.abs(gmMm)));
  return [radians * RADIAN_DEG, radians * gmMm];
}

function axes(plot: Box, at: Plot, most: number): Shape[] {
  const decimals = Number.isInteger(most / 2)
    ? 0
    : Math.max(1, 1 - Math.floor(Math.log10(most) + 1e-9));
  return [
    ...[-180, -90, 0, 90, 180].flatMap((heel): Shape[] => {
      const [x] = at(heel, 0);
      return [
        stroke(
          [
            [x, plot[1]],
            [x, plot[3]],
          ],
          'grid',
          'hair',
        ),
        words(`${spelled(heel, 0)}°`, x, plot[1] - 5, { anchor: 'middle' }),
      ];
    }),
    ...[-most, -most / 2, 0, most / 2, most].flatMap((lever): Shape[] => {
      const [, y] = at(0, lever);
      const line = stroke(
        [
          [plot[0], y],
          [plot[2], y],
        ],
        lever === 0 ? 'line' : 'grid',
        lever === 0 ? 'fine' : 'hair',
      );
      return [
        lever === 0 ? { ...line, clear: true } : line,
        words(spelled(lever, lever === 0 ? 0 : decimals), plot[0] - 1.5, y - 1.1, {
          anchor: 'end',
        }),
      ];
    }),
  ];
}
