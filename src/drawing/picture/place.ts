/** Finds room for a label beside what it names. */
import { insideRing } from '../../geometry/ring.js';
import { type Box, type Point2, times } from '../../geometry/vec.js';
import { type Line, type Shape, type Text, textBox } from './picture.js';
import { type Style, words } from './words.js';

/** Air kept around a label, mm. */
const AIR_MM = 0.5;
/** Directions tried at each distance. */
const DIRECTIONS = 16;
const STEP_MM = 1.5;
const FARTHEST_MM = 60;
/** A label further from its point than this gets a leader, mm. */
const LEADER_MM = 5;

export type Label = {
  readonly text: string;
  readonly at: Point2;
  readonly style?: Style;
  /** Gap between the point and the label, mm. */
  readonly gapMm?: number;
  /** Direction to try first, degrees counter-clockwise from the right. */
  readonly firstDeg?: number;
};

/**
 * The shapes with each label added, in order: as near to its point as it finds room inside the
 * bounds without lying on other text or on lines to be kept clear, nearest to its first direction
 * among equals; further out it is tied to its point by a leader. Where nothing is free it goes to the
 * first place inside the bounds, and `checkPicture` will say so.
 */
export function labeled(
  shapes: readonly Shape[],
  labels: readonly Label[],
  bounds: Box,
): readonly Shape[] {
  const done = [...shapes];
  for (const label of labels) done.push(...place(done, label, bounds));
  return done;
}

function place(shapes: readonly Shape[], label: Label, bounds: Box): Shape[] {
  const taken = obstacles(shapes, bounds);
  const inside = candidates(label).filter(({ text }) => contains(bounds, textBox(text)));
  const free = inside.find(({ text }) => isFree(textBox(text), taken));
  const chosen = free ?? inside[0] ?? candidates(label)[0];
  return [...(chosen.far > LEADER_MM ? [leader(label.at, chosen.text)] : []), chosen.text];
}

/** True where a box lies inside the bounds, on no text and no line or area to be kept clear. */
export const isRoom = (shapes: readonly Shape[], box: Box, bounds: Box): boolean =>
  contains(bounds, box) && isFree(box, obstacles(shapes, bounds));

type Candidate = { readonly text: Text; readonly far: number };

function candidates({ text, at, style, gapMm = 1.2, firstDeg = 0 }: Label): Candidate[] {
  const out: Candidate[] = [];
  const flat = words(text, 0, 0, { ...style, anchor: 'middle' });
  const [minX, minY, maxX, maxY] = textBox(flat);
  const middle = (minY + maxY) / 2;
  const half: Point2 = [(maxX - minX) / 2, (maxY - minY) / 2];
  for (let far = gapMm; far < FARTHEST_MM; far += STEP_MM) {
    for (let k = 0; k < DIRECTIONS; k++) {
      const turn = (k % 2 === 0 ? -1 : 1) * Math.ceil(k / 2);
      const angle = (firstDeg * Math.PI) / 180 + (turn * 2 * Math.PI) / DIRECTIONS;
      const way: Point2 = [Math.cos(angle), Math.sin(angle)];
      // The nearest point of the box, not its middle, is `far` away.
      const reach = boxReach(way, half);
      const [dx, dy] = times(way, far + reach);
      out.push({ text: { ...flat, at: [at[0] + dx, at[1] + dy - middle] }, far });
    }
  }
  return out;
}

/** From the middle of a box to its edge along a direction. */
const boxReach = ([c, s]: Point2, [w, h]: Point2): number =>
  Math.min(
    Math.abs(c) > 1e-9 ? w / Math.abs(c) : Infinity,
    Math.abs(s) > 1e-9 ? h / Math.abs(s) : Infinity,
  );

function leader(at: Point2, text: Text): Line {
  const [minX, minY, maxX, maxY] = textBox(text);
  const clamp = (v: number, low: number, high: number) => Math.min(high, Math.max(low, v));
  const end: Point2 = [
    clamp(at[0], minX - AIR_MM, maxX + AIR_MM),
    clamp(at[1], minY - AIR_MM, maxY + AIR_MM),
  ];
  return { kind: 'line', points: [at, end], role: 'line', pen: 'hair' };
}

type Obstacles = {
  readonly boxes: readonly Box[];
  readonly lines: readonly (readonly Point2[])[];
  readonly areas: readonly (readonly Point2[])[];
};

/** Lines are cut down to pieces that may matter inside the bounds. */
function obstacles(shapes: readonly Shape[], bounds: Box): Obstacles {
  const boxes: Box[] = [];
  const lines: (readonly Point2[])[] = [];
  const areas: (readonly Point2[])[] = [];
  for (const shape of shapes) {
    if (shape.kind === 'text') boxes.push(textBox(shape));
    if (shape.kind === 'disc' && shape.clear) {
      const [[x, y], r] = [shape.center, shape.radiusMm];
      boxes.push([x - r, y - r, x + r, y + r]);
    }
    if ((shape.kind === 'line' || shape.kind === 'area') && shape.clear) {
      const closed = shape.kind === 'area' || shape.closed;
      const points = closed ? [...shape.points, shape.points[0]] : shape.points;
      if (shape.kind === 'area') areas.push(shape.points);
      for (let i = 1; i < points.length; i++)
        if (meets(bounds, points[i - 1], points[i])) lines.push([points[i - 1], points[i]]);
    }
  }
  return { boxes, lines, areas };
}

function isFree(box: Box, { boxes, lines, areas }: Obstacles): boolean {
  const [minX, minY, maxX, maxY] = box;
  const wide: Box = [minX - AIR_MM, minY - AIR_MM, maxX + AIR_MM, maxY + AIR_MM];
  const apart = (b: Box) => b[0] > wide[2] || b[2] < wide[0] || b[1] > wide[3] || b[3] < wide[1];
  // A box that meets no edge is inside an area wholly or not at all.
  return (
    boxes.every(apart) &&
    !lines.some(([a, b]) => meets(wide, a, b)) &&
    !areas.some((area) => insideRing([minX, minY], area))
  );
}

const contains = (outer: Box, inner: Box): boolean =>
  inner[0] >= outer[0] && inner[1] >= outer[1] && inner[2] <= outer[2] && inner[3] <= outer[3];

/** True when a straight piece has a point in the box (Y. Liang and B. Barsky, 1984). */
function meets(box: Box, a: Point2, b: Point2): boolean {
  let [from, to] = [0, 1];
  for (const axis of [0, 1] as const) {
    const way = b[axis] - a[axis];
    const [low, high] = [box[axis] - a[axis], box[axis + 2] - a[axis]];
    if (way === 0) {
      if (low > 0 || high < 0) return false;
      continue;
    }
    from = Math.max(from, Math.min(low / way, high / way));
    to = Math.min(to, Math.max(low / way, high / way));
  }
  return from <= to;
}
