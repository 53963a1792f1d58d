/** The section of greatest area in the block it comes out of: what the saw leaves, what the router takes, what is left to sand. */
import { hatchLines } from '../../geometry/hatch.js';
import { type Box, boxOf, cosSinDeg, type Point2 } from '../../geometry/vec.js';
import type { Shape } from '../picture/picture.js';
import { scaleWords } from '../picture/scale-bar.js';
import { words } from '../picture/words.js';
import { levelDimension, OVER_LINE_MM, uprightDimension } from './dimension.js';
import { heading } from './frame.js';
import type { Greatests } from './greatest.js';
import { sectionCurve } from './hull-lines.js';
import { CHAIN, CLOSED, DASHED, ink } from './ink.js';
import type { ViewsInput } from './input.js';
import { length, millimeters, roundMm } from './measure.js';

const HEAD_MM = 7;
/** Over the section for the block's thickness, left of it for its height, mm. */
const OVER_MM = 4 + OVER_LINE_MM;
const ASIDE_MM = 14;
const UNDER_MM = 7;
const HATCH_MM = 2.2;
const SCALES = [
  5,
  4,
  2.5,
  2,
  1.5,
  1,
  1 / 1.5,
  1 / 2,
  1 / 2.5,
  1 / 4,
  1 / 5,
  1 / 7.5,
  1 / 10,
  1 / 20,
  1 / 50,
] as const;
/** Smaller than this on paper nothing is to be seen. */
const LEAST_MM = 12;

/** In a room on the sheet; nothing where it is too small. */
export function workSection(input: ViewsInput, most: Greatests, room: Box): Shape[] {
  const { shape, blank, roundOverMm, inches } = input;
  const { stationMm } = most.section;
  const [low, high] = heightsAt(blank.profileRing, stationMm);
  const half = blank.thicknessMm / 2;
  const wide = room[2] - room[0] - 2 * ASIDE_MM;
  const tall = room[3] - room[1] - HEAD_MM - OVER_MM - UNDER_MM;
  const scale = SCALES.find((s) => s * 2 * half <= wide && s * (high - low) <= tall);
  if (scale === undefined || scale * (high - low) < LEAST_MM) return [];
  const x0 = (room[0] + room[2]) / 2;
  const top = room[3] - HEAD_MM - OVER_MM;
  const y0 = top - scale * high;
  const at = ([y, z]: Point2): Point2 => [x0 + scale * y, y0 + scale * z];
  const side = sectionCurve(shape, stationMm);
  const body = [
    ...side,
    ...[...side]
      .reverse()
      .slice(1, -1)
      .map(([y, z]): Point2 => [-y, z]),
  ].map(at);
  const block: Box = [-half, low, half, high];
  const axis = (a: Point2, b: Point2) => ink([a, b], 'hair', CHAIN);
  return [
    ...heading(
      'Section',
      `${millimeters(stationMm)} from the nose, scale ${scaleWords(scale)}`,
      [room[0], room[3] - 4],
      room[2] - room[0],
    ),
    ...hatchLines(body, { slantDeg: 45, step: HATCH_MM }).map((ends) => ink(ends, 'hair')),
    axis([x0, y0 + scale * low - 3], [x0, y0 + scale * high + 3]),
    axis([x0 - scale * half - 3, y0], [x0 + scale * half + 3, y0]),
    ink(corners(block).map(at), 'hair', CLOSED),
    ...(roundOverMm > 0
      ? roundings(block, roundOverMm).map((arc) => ink(arc.map(at), 'fine', DASHED))
      : []),
    ink(body, 'firm', CLOSED),
    ...levelDimension(
      { from: at([-half, high]), to: at([half, high]), y: top + 4 },
      length(2 * half, inches),
    ),
    ...uprightDimension(
      { low: at([half, low]), high: at([half, high]), x: at([half, 0])[0] + 10 },
      length(high - low, inches),
    ),
    words(
      roundOverMm > 0
        ? `dashed: round-over ${roundMm(roundOverMm)}`
        : 'no round-over bit stays clear',
      x0,
      at([0, low])[1] - 6.5,
      { anchor: 'middle' },
    ),
  ];
}

const corners = ([minX, minY, maxX, maxY]: Box): Point2[] => [
  [minX, minY],
  [maxX, minY],
  [maxX, maxY],
  [minX, maxY],
];

/** The quarter rounds a bit leaves at the four edges; where it is larger than half a side, as far as the middle. */
function roundings([minX, minY, maxX, maxY]: Box, radius: number): readonly (readonly Point2[])[] {
  const corner = (x: number, y: number, fromDeg: number) =>
    Array.from({ length: 17 }, (_, i): Point2 => {
      const [c, s] = cosSinDeg(fromDeg + (90 * i) / 16);
      return [x + radius * c, y + radius * s];
    }).filter(([px, py]) => px >= minX && px <= maxX && py >= minY && py <= maxY);
  return [
    corner(maxX - radius, maxY - radius, 0),
    corner(minX + radius, maxY - radius, 90),
    corner(minX + radius, minY + radius, 180),
    corner(maxX - radius, minY + radius, 270),
  ].filter((points) => points.length > 1);
}

/** Least and greatest height at which a ring passes a station. */
export function heightsAt(ring: readonly Point2[], stationMm: number): readonly [number, number] {
  const heights = ring.flatMap(([x, z], i) => {
    const [toX, toZ] = ring[(i + 1) % ring.length];
    return x <= stationMm !== toX <= stationMm
      ? [z + ((stationMm - x) / (toX - x)) * (toZ - z)]
      : [];
  });
  const [, low, , high] = boxOf(heights.map((z): Point2 => [0, z]));
  return [low, high];
}
