/** Where a pattern's label fits on its blank: the largest letters that keep clear of everything else. */
import { lettering } from '../geometry/lettering.js';
import { insideRing, type Ring, ringBox } from '../geometry/ring.js';
import {
  type Box,
  boxOf,
  cosSinDeg,
  distance,
  type Motion,
  moved,
  type Point2,
} from '../geometry/vec.js';
import type { LayerName, Stroke } from './drawing.js';
import type { Wood } from './marks.js';
import type { Part } from './parts.js';
import { isFree, type Wall, walled } from './room.js';
import { textStrokes } from './strokes.js';

/** Letters as large as these read well on any template; smaller than these they burn or blot together, mm. */
const GREATEST_HEIGHT_MM = 5;
export const LEAST_HEIGHT_MM = 2;
const HEIGHT_STEP_MM = 0.25;

/** Between the letters and any other line, mm: a saw that wanders off the outline does not take them. */
const ROOM_MM = 1.2;

/** More room than that is preferred where letters of the same height have it, mm. */
const EXTRA_ROOM_MM = [4, 3, 2, 1];

/** Steps of the search, mm. */
const STEP_X_MM = 1;
const STEP_Y_MM = 0.5;

/** A line or a polygon that the label must not meet. */
export type Obstacle = { readonly points: readonly Point2[]; readonly closed: boolean };

/** What a label on a blank must not meet: the marks, and the edges of openings. */
export const obstaclesOf = (marks: readonly Part[], { openings }: Wood): Obstacle[] => [
  ...marks.map((points): Obstacle => ({ points, closed: false })),
  ...openings.map((points): Obstacle => ({ points, closed: true })),
];

/** A label in the frame of its blank: the middle of its ink, and its letters. */
export type PlacedLabel = {
  readonly text: string;
  readonly heightMm: number;
  readonly center: Point2;
};

/**
 * The largest letters from 5 down to 2 mm (by 0.25 mm) whose ink keeps 1.2 mm from the outline and
 * from every obstacle; where they have more room than that, and there as near as possible to the
 * middle of the blank, centered in the height that is free. Null when not even the smallest fit.
 * The search steps by 1 mm along and 0.5 mm across the blank.
 */
export function placeLabel(
  text: string,
  outline: Ring,
  obstacles: readonly Obstacle[],
): PlacedLabel | null {
  const walls = [
    ...walled(outline, true, ROOM_MM),
    ...obstacles.flatMap(({ points, closed }) => walled(points, closed, ROOM_MM)),
  ];
  const polygons = obstacles.flatMap((o) => (o.closed ? [o.points] : []));
  const centers = candidates(ringBox(outline)).filter(
    (c) => insideRing(c, outline) && !polygons.some((polygon) => insideRing(c, polygon)),
  );
  const fitting = (heightMm: number, extraMm = 0): PlacedLabel | null => {
    const size = inkSize(text, heightMm);
    const wider = walls.map((wall) => ({ ...wall, room: wall.room + extraMm }));
    const center = centers.find((c) => isFree(boxAt(c, size), wider));
    return center ? { text, heightMm, center: centered(center, size, walls) } : null;
  };
  const found = largest(fitting);
  if (!found) return null;
  for (const extraMm of EXTRA_ROOM_MM) {
    const roomier = fitting(found.heightMm, extraMm);
    if (roomier) return roomier;
  }
  return found;
}

/** Fitting is monotone in the height (a smaller box lies in the larger one), so halving finds the largest. */
function largest(tried: (heightMm: number) => PlacedLabel | null): PlacedLabel | null {
  let best: PlacedLabel | null = null;
  let [low, high] = [0, Math.round((GREATEST_HEIGHT_MM - LEAST_HEIGHT_MM) / HEIGHT_STEP_MM)];
  while (low <= high) {
    const middle = Math.ceil((low + high) / 2);
    const found = tried(LEAST_HEIGHT_MM + middle * HEIGHT_STEP_MM);
    if (found) {
      best = found;
      low = middle + 1;
    } else high = middle - 1;
  }
  return best;
}

/** The label's strokes on a blank that was moved: along with it, but never upside down. */
export function labelStrokes(
  layer: LayerName,
  { text, heightMm, center }: PlacedLabel,
  motion: Motion,
): Stroke[] {
  const turnDeg = readable(motion.turnDeg);
  const [cos, sin] = cosSinDeg(turnDeg);
  const [dx, dy] = inkCenter(text, heightMm);
  const [x, y] = moved(motion, center);
  const at: Point2 = [x - (cos * dx - sin * dy), y - (sin * dx + cos * dy)];
  return textStrokes(layer, { text, heightMm, at, turnDeg });
}

/** The turn, or the opposite one, that lies within −90 (excluded) to 90 degrees. */
function readable(turnDeg: number): number {
  const turn = ((turnDeg % 360) + 360) % 360;
  if (turn <= 90) return turn;
  return turn <= 270 ? turn - 180 : turn - 360;
}

type Size = { readonly width: number; readonly height: number };

const inkBox = (text: string, heightMm: number): Box => boxOf(lettering(text, { heightMm }).flat());

function inkSize(text: string, heightMm: number): Size {
  const [minX, minY, maxX, maxY] = inkBox(text, heightMm);
  return { width: maxX - minX, height: maxY - minY };
}

function inkCenter(text: string, heightMm: number): Point2 {
  const [minX, minY, maxX, maxY] = inkBox(text, heightMm);
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

const boxAt = ([x, y]: Point2, { width, height }: Size): Box => [
  x - width / 2,
  y - height / 2,
  x + width / 2,
  y + height / 2,
];

/** Places to try, nearest to the middle of the box first; above before below, aft before fore. */
function candidates([minX, minY, maxX, maxY]: Box): Point2[] {
  const middle: Point2 = [(minX + maxX) / 2, (minY + maxY) / 2];
  const columns = Math.floor((maxX - minX) / 2 / STEP_X_MM);
  const rows = Math.floor((maxY - minY) / 2 / STEP_Y_MM);
  const found: { readonly at: Point2; readonly far: number }[] = [];
  for (let row = rows; row >= -rows; row--) {
    for (let column = columns; column >= -columns; column--) {
      const at: Point2 = [middle[0] + column * STEP_X_MM, middle[1] + row * STEP_Y_MM];
      found.push({ at, far: distance(at, middle) });
    }
  }
  return found.sort((a, b) => a.far - b.far).map(({ at }) => at);
}

/** Moved up or down to the middle of the free height around it, to 0.1 mm. */
function centered([x, y]: Point2, size: Size, walls: readonly Wall[]): Point2 {
  const reach = (step: number) => {
    let free = 0;
    while (Math.abs(free) < size.height * 2 && isFree(boxAt([x, y + free + step], size), walls)) {
      free += step;
    }
    return free;
  };
  return [x, y + (reach(0.1) + reach(-0.1)) / 2];
}
