/** The section of greatest area in the block it comes out of: what the saw leaves, what the router takes, what is left to sand. */
import { hatchLines } from '../../geometry/hatch.js';
import { type Box, boxOf, cosSinDeg, type Point2 } from '../../geometry/vec.js';
import type { Shape } from '../picture/picture.js';
import { scaleWords } from '../picture/scale-bar.js';
import { fitted } from '../picture/words.js';
import { besideLineMm, levelDimension, OVER_LINE_MM, uprightDimension } from './dimension.js';
import { heading } from './frame.js';
import type { Greatests } from './greatest.js';
import { sectionCurve } from './hull-lines.js';
import { boxLine, CHAIN, CLOSED, DASHED, ink } from './ink.js';
import type { ViewsInput } from './input.js';
import { length, millimeters, roundMm } from './measure.js';
import { LARGEST_FIRST } from './scale.js';

const HEAD_MM = 7;
/** Over the section for the block's thickness, right of it to the line of its height, under it for the bit, mm. */
const OVER_MM = 4 + OVER_LINE_MM;
const SIZE_MM = 10;
const UNDER_MM = 7;
/** Center lines reach beyond the block. */
const BEYOND_MM = 3;
const HATCH_MM = 2.2;
/** Larger than this it tells no more, smaller there is nothing to be seen, mm of paper for a mm and mm. */
const MOST_SCALE = 5;
const LEAST_MM = 12;

/** In a room on the sheet; nothing where it is too small. */
export function workSection(input: ViewsInput, most: Greatests, room: Box): Shape[] {
  const { shape, blank, roundOverMm, inches } = input;
  const { stationMm } = most.section;
  const [low, high] = heightsAt(blank.profileRing, stationMm);
  const half = blank.thicknessMm / 2;
  const size = length(high - low, inches);
  const wideAt = (s: number) =>
    BEYOND_MM + s * 2 * half + SIZE_MM + besideLineMm(size, s * (high - low));
  const scale = LARGEST_FIRST.find(
    (s) =>
      s <= MOST_SCALE &&
      wideAt(s) <= room[2] - room[0] &&
      s * (high - low) <= room[3] - room[1] - HEAD_MM - OVER_MM - UNDER_MM,
  );
  if (scale === undefined || scale * Math.max(high - low, 2 * half) < LEAST_MM) return [];
  const top = room[3] - HEAD_MM - OVER_MM;
  const x0 = (room[0] + room[2] - wideAt(scale)) / 2 + BEYOND_MM + scale * half;
  const y0 = top - scale * high;
  const at = ([y, z]: Point2): Point2 => [x0 + scale * y, y0 + scale * z];
  const right = x0 + scale * half;
  const side = sectionCurve(shape, stationMm);
  const mirrored = side.map(([y, z]): Point2 => [-y, z]);
  const body = [...side, ...mirrored.reverse().slice(1, -1)].map(at);
  const block: Box = [-half, low, half, high];
  return [
    ...heading(
      'Section',
      `${millimeters(stationMm)} from the nose, scale ${scaleWords(scale)}`,
      [room[0], room[3] - 4],
      room[2] - room[0],
    ),
    ...hatchLines(body, { slantDeg: 45, step: HATCH_MM }).map((ends) => ink(ends, 'hair')),
    axis([x0, y0 + scale * low - BEYOND_MM], [x0, top + BEYOND_MM]),
    axis([x0 - scale * half - BEYOND_MM, y0], [right + BEYOND_MM, y0]),
    boxLine([...at([-half, low]), ...at([half, high])], 'hair'),
    ...roundings(block, roundOverMm).map((arc) => ink(arc.map(at), 'fine', DASHED)),
    ink(body, 'firm', CLOSED),
    ...levelDimension(
      { from: at([-half, high]), to: at([half, high]), y: top + 4 },
      length(2 * half, inches),
    ),
    ...uprightDimension({ low: at([half, low]), high: at([half, high]), x: right + SIZE_MM }, size),
    ...fitted(
      roundOverMm > 0
        ? `dashed: round-over ${roundMm(roundOverMm)}`
        : 'no round-over bit stays clear of the body',
      room[0],
      at([0, low])[1] - 6.5,
      room[2] - room[0],
    ),
  ];
}

const axis = (from: Point2, to: Point2) => ink([from, to], 'hair', CHAIN);

/** The quarter rounds a bit leaves at the four edges; where it is larger than half a side, as far as the middle. */
function roundings([minX, minY, maxX, maxY]: Box, radius: number): readonly (readonly Point2[])[] {
  if (radius <= 0) return [];
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
