/**
 * A face as the sawyer looks at it: outlines on the block, each with its number in the order of sawing as
 * large as it will go, ways in dashed, parting cuts lettered, bad wood hatched. To be looked at; what is
 * glued on the block is the drawing.
 */
import { asRegion, intersect } from '../../geometry/clip.js';
import { circleRing, insideRing, type Ring, rectRing, ring } from '../../geometry/ring.js';
import { thinned, thinnedLine } from '../../geometry/thin.js';
import {
  add,
  type Box,
  boxOf,
  distanceToEdge,
  distanceToPiece,
  type Point2,
  quarterLeft,
  sub,
  times,
  unit,
} from '../../geometry/vec.js';
import type { SplitWork } from '../flaws.js';
import { cutLetter } from '../notes.js';
import { stroke } from './lure-view.js';
import {
  LEAST_TEXT_MM,
  type Picture,
  type Role,
  type Shape,
  textBox,
  textWidthMm,
} from './picture.js';
import { isRoom } from './place.js';
import { SIZES, words } from './words.js';

/** Face frame, mm: x along the grain, y across. */
export type FaceInput = {
  readonly id: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly knots: readonly Round[];
  readonly splits: readonly SplitWork[];
  readonly poorZones: readonly Round[];
  readonly outlines: readonly { readonly name: string; readonly points: Ring }[];
  /** Indices of the outlines as they are sawn; numbers are left out where it is empty. */
  readonly cutOrder: readonly number[];
  /** Ways in and relief cuts. */
  readonly ways: readonly (readonly Point2[])[];
  /** From the lower edge to the upper one. */
  readonly partingCuts: readonly (readonly Point2[])[];
};

type Round = { readonly xMm: number; readonly yMm: number; readonly radiusMm: number };

/** Width of the picture, mm: what a page of A4 has between its margins; and the height of the tallest block. */
const WIDTH_MM = 186;
const MOST_HEIGHT_MM = 100;
/** Chord error of an outline on the picture: a tenth of its line. */
const CHORD_MM = 0.03;
/** White round the block, for its line. */
const AIR_MM = 1;
/** Over the block, for the letters of parting cuts. */
const LETTERS_MM = 7;

export function facePicture(face: FaceInput): Picture {
  const scale = Math.min(1, (WIDTH_MM - 2 * AIR_MM) / face.lengthMm, MOST_HEIGHT_MM / face.widthMm);
  const origin: Point2 = [(WIDTH_MM - scale * face.lengthMm) / 2, AIR_MM];
  const at = (p: Point2): Point2 => add(origin, times(p, scale));
  const chordMm = CHORD_MM / scale;
  const line = (points: readonly Point2[]) => thinnedLine(points, chordMm).map(at);
  const heightMm =
    scale * face.widthMm + 2 * AIR_MM + (face.partingCuts.length > 0 ? LETTERS_MM : 0);
  const corner = at([face.lengthMm, face.widthMm]);
  const block: Box = [origin[0], origin[1], corner[0], corner[1]];
  const outlines = face.outlines.map(({ name, points }) => ({
    name,
    points: thinned(points, chordMm).map(at),
  }));
  const drawn: readonly Shape[] = [
    { kind: 'area', points: rectRing(0, 0, WIDTH_MM, heightMm), role: 'sheet' },
    ...badWood(face, at, scale, block),
    ...outlines.flatMap(({ points }): Shape[] => [
      { kind: 'area', points, role: 'wood' },
      { ...stroke(points, 'ink', 'fine'), closed: true, clear: true },
    ]),
    ...[...face.ways, ...face.partingCuts].map(
      (points, i): Shape => ({
        ...stroke(line(points), 'ink', i < face.ways.length ? 'fine' : 'bold'),
        dashed: true,
        clear: true,
      }),
    ),
    { ...stroke(rectRing(...block), 'ink', 'fine'), closed: true, clear: true },
    ...letters(face.partingCuts.map((points) => at(points[points.length - 1]))),
  ];
  return {
    title: `Face ${face.id}`,
    description: `${face.outlines.length} outlines on a block of ${face.lengthMm} by ${face.widthMm} mm, numbered as they are sawn.`,
    widthMm: WIDTH_MM,
    heightMm,
    shapes: [
      ...drawn,
      // What stands in one outline is clear of what stands in another.
      ...face.cutOrder.flatMap((index, place) =>
        labels(outlines[index], String(place + 1), drawn, block),
      ),
    ],
  };
}

/** Knots and splits hatched; poorer wood gray. No more of them than lies on the block. */
function badWood(
  { knots, splits, poorZones }: FaceInput,
  at: (p: Point2) => Point2,
  scale: number,
  block: Box,
): readonly Shape[] {
  const round =
    (role: Role) =>
    ({ xMm, yMm, radiusMm }: Round): readonly Shape[] =>
      onBlock(circleRing(at([xMm, yMm]), scale * radiusMm, { segments: 48 }), role, block);
  return [
    ...poorZones.flatMap(round('grid')),
    ...knots.flatMap(round('warn')),
    ...splits.flatMap(({ fromMm, toMm, widthMm }) => {
      const way = sub(toMm, fromMm);
      const along = Math.hypot(...way) > 0 ? unit(way) : ([1, 0] as const);
      const [half, side] = [times(along, widthMm / 2), times(quarterLeft(along), widthMm / 2)];
      const [from, to] = [sub(fromMm, half), add(toMm, half)];
      const corners = [sub(from, side), sub(to, side), add(to, side), add(from, side)];
      return onBlock(ring(corners.map(at)), 'warn', block);
    }),
  ];
}

const onBlock = (outer: Ring, role: Role, block: Box): readonly Shape[] =>
  intersect([asRegion(outer)], [asRegion(rectRing(...block))]).flatMap(
    ({ outer: points }): Shape[] => [
      { kind: 'area', points, role },
      { ...stroke(points, 'line', 'hair'), closed: true },
    ],
  );

/** Letters over the upper ends of the cuts, from left to right; one that would lie on the last is left out. */
function letters(ends: readonly Point2[]): readonly Shape[] {
  const placed: Shape[] = [];
  let right = 0;
  ends.forEach(([x, y], i) => {
    const letter = cutLetter(i);
    const half = textWidthMm(letter, SIZES.title, true) / 2;
    const middle = Math.min(WIDTH_MM - half, Math.max(half, x));
    if (middle - half < right) return;
    right = middle + half + 0.5;
    placed.push(words(letter, middle, y + 2, { size: 'title', bold: true, anchor: 'middle' }));
  });
  return placed;
}

type Outline = { readonly name: string; readonly points: readonly Point2[] };

/** Sizes of a number, the largest that fits. */
const NUMBERS_MM = [6, 5, 4, 3.4, LEAST_TEXT_MM];
/** Between a number and the ring round it. */
const RING_ROOM_MM = 0.7;
/** Places looked at along and across an outline. */
const GRID = [32, 12] as const;

/** The number in a ring where the outline is widest, and the name beside it where there is room; in an outline with no room nothing. */
function labels(
  { name, points }: Outline,
  number: string,
  shapes: readonly Shape[],
  block: Box,
): readonly Shape[] {
  const roomiest = roomiestPoint(points, shapes);
  if (!roomiest) return [];
  const { at, room } = roomiest;
  const radiusOf = (sizeMm: number): number =>
    Math.hypot(textWidthMm(number, sizeMm, true) / 2, sizeMm / 2) + RING_ROOM_MM;
  const sizeMm = NUMBERS_MM.find((size) => radiusOf(size) < room);
  if (sizeMm === undefined) return [];
  const radiusMm = radiusOf(sizeMm);
  const ringed: readonly Shape[] = [
    { kind: 'disc', center: at, radiusMm, role: 'sheet', pen: 'fine' },
    {
      kind: 'text',
      at: [at[0], at[1] - 0.28 * sizeMm - 0.08 * sizeMm],
      text: number,
      sizeMm,
      anchor: 'middle',
      bold: true,
      role: 'ink',
    },
  ];
  const [, low, , high] = textBox(words(name, 0, 0));
  const y = at[1] - (low + high) / 2;
  const gap = radiusMm + 1.2;
  const beside = [words(name, at[0] + gap, y), words(name, at[0] - gap, y, { anchor: 'end' })].find(
    (text) => {
      const box = textBox(text);
      return insideRing([box[0], box[1]], points) && isRoom(shapes, box, block);
    },
  );
  return [...ringed, ...(beside ? [beside] : [])];
}

/** The point of the outline furthest from its edge and from every line that crosses it; null for one without. */
function roomiestPoint(
  points: readonly Point2[],
  shapes: readonly Shape[],
): { readonly at: Point2; readonly room: number } | null {
  const [minX, minY, maxX, maxY] = boxOf(points);
  const ways = shapes
    .filter((s) => s.kind === 'line' && s.dashed === true)
    .flatMap((s) => (s.kind === 'line' ? [s.points] : []))
    .filter((way) => way.some((p) => insideRing(p, points)));
  const inner = Array.from({ length: GRID[0] * GRID[1] }, (_, i): Point2 => {
    const [column, row] = [i % GRID[0], Math.floor(i / GRID[0])];
    return [
      minX + ((column + 0.5) / GRID[0]) * (maxX - minX),
      minY + ((row + 0.5) / GRID[1]) * (maxY - minY),
    ];
  }).filter((p) => insideRing(p, points));
  const found = inner.map((at) => ({
    at,
    room: Math.min(distanceToEdge(at, points), ...ways.map((way) => distanceToLine(at, way))),
  }));
  return found.reduce<(typeof found)[number] | null>(
    (best, next) => (best === null || next.room > best.room + 1e-9 ? next : best),
    null,
  );
}

/** Of an open line. */
const distanceToLine = (p: Point2, line: readonly Point2[]): number =>
  Math.min(...line.slice(1).map((to, i) => distanceToPiece(p, line[i], to)));
