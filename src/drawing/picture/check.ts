/** Judges a finished picture by its shapes alone; it shares nothing with what placed the labels but the size a text is taken to have. */
import { insideRing } from '../../geometry/ring.js';
import { add, type Box, boxOf, distance, mix, type Point2 } from '../../geometry/vec.js';
import {
  LEAST_TEXT_MM,
  type Picture,
  type Role,
  type Shape,
  type Text,
  textBox,
} from './picture.js';

export type PictureFlaw =
  | { readonly kind: 'text-off-sheet'; readonly text: string }
  | { readonly kind: 'small-text'; readonly text: string }
  | { readonly kind: 'empty-text'; readonly at: Point2 }
  | { readonly kind: 'texts-overlap'; readonly text: string; readonly other: string }
  | { readonly kind: 'text-on-line'; readonly text: string; readonly at: Point2 }
  | { readonly kind: 'text-on-area'; readonly text: string; readonly role: Role }
  | { readonly kind: 'off-sheet'; readonly shape: Shape['kind']; readonly at: Point2 }
  | { readonly kind: 'not-finite'; readonly shape: Shape['kind'] };

/** Boxes that share less than this in height or width only touch, mm. */
const TOUCH_MM = 0.01;
/** How far apart a line is looked at, mm: letters are twelve times as high. */
const STEP_MM = 0.25;

/**
 * What is wrong with a picture; empty when nothing is. Text must be large enough, on the sheet, apart
 * from other text and off the lines that are to be kept clear; every shape must be on the sheet.
 */
export function checkPicture({ shapes, widthMm, heightMm }: Picture): readonly PictureFlaw[] {
  const broken = shapes.filter((shape) => !isNumbered(shape));
  if (broken.length > 0) return broken.map(({ kind }) => ({ kind: 'not-finite', shape: kind }));
  const texts = shapes.filter((shape) => shape.kind === 'text');
  const sheet: Box = [0, 0, widthMm, heightMm];
  return [
    ...texts.flatMap((text) => textFlaws(text, sheet)),
    ...overlaps(texts),
    ...onLines(texts, shapes),
    ...onAreas(texts, shapes),
    ...shapes.flatMap((shape): PictureFlaw[] => {
      const at = cornersOf(shape).find((p) => !within(p, sheet));
      return at ? [{ kind: 'off-sheet', shape: shape.kind, at }] : [];
    }),
  ];
}

function isNumbered(shape: Shape): boolean {
  const numbers =
    shape.kind === 'text'
      ? [...shape.at, shape.sizeMm]
      : shape.kind === 'disc'
        ? [...shape.center, shape.radiusMm]
        : shape.kind === 'lines'
          ? shape.lines.flat(2)
          : shape.kind === 'image'
            ? [...shape.at, shape.widthMm, shape.heightMm]
            : shape.points.flat();
  return numbers.every(Number.isFinite);
}

function textFlaws(text: Text, sheet: Box): PictureFlaw[] {
  const box = textBox(text);
  const inside = within([box[0], box[1]], sheet) && within([box[2], box[3]], sheet);
  return [
    ...(text.text.trim() === '' ? [{ kind: 'empty-text', at: text.at } as const] : []),
    ...(text.sizeMm < LEAST_TEXT_MM ? [{ kind: 'small-text', text: text.text } as const] : []),
    ...(inside ? [] : [{ kind: 'text-off-sheet', text: text.text } as const]),
  ];
}

function overlaps(texts: readonly Text[]): PictureFlaw[] {
  const boxes = texts.map(textBox);
  return texts.flatMap((text, i) =>
    texts.slice(i + 1).flatMap((other, k): PictureFlaw[] => {
      const [a, b] = [boxes[i], boxes[i + 1 + k]];
      const shared = Math.min(
        Math.min(a[2], b[2]) - Math.max(a[0], b[0]),
        Math.min(a[3], b[3]) - Math.max(a[1], b[1]),
      );
      return shared > TOUCH_MM
        ? [{ kind: 'texts-overlap', text: text.text, other: other.text }]
        : [];
    }),
  );
}

function onLines(texts: readonly Text[], shapes: readonly Shape[]): PictureFlaw[] {
  const lines = shapes.filter((s) => (s.kind === 'line' || s.kind === 'disc') && s.clear);
  const traces = lines.map(cornersOf).map((points) => ({ points, box: boxOf(points) }));
  return texts.flatMap((text) => {
    const box = textBox(text);
    return traces
      .filter((trace) => touch(trace.box, box))
      .flatMap(({ points }): PictureFlaw[] => {
        const at = firstWithin(points, box);
        return at ? [{ kind: 'text-on-line', text: text.text, at }] : [];
      });
  });
}

const touch = (a: Box, b: Box): boolean =>
  a[0] <= b[2] && a[2] >= b[0] && a[1] <= b[3] && a[3] >= b[1];

/** The first point on a line in a box, the line looked at in steps. */
function firstWithin(points: readonly Point2[], box: Box): Point2 | undefined {
  for (let i = 1; i < points.length; i++) {
    const [from, to] = [points[i - 1], points[i]];
    if (!touch(boxOf([from, to]), box)) continue;
    const pieces = Math.max(1, Math.ceil(distance(from, to) / STEP_MM));
    for (let k = 0; k <= pieces; k++) {
      const at = mix(from, to, k / pieces);
      if (within(at, box)) return at;
    }
  }
  return undefined;
}

/** Text too thin to have a line's points in it may lie wholly on an area, so it is looked at by a grid. */
function onAreas(texts: readonly Text[], shapes: readonly Shape[]): PictureFlaw[] {
  const areas = shapes.filter((s) => s.kind === 'area').filter((s) => s.clear);
  return texts.flatMap((text) => {
    const [minX, minY, maxX, maxY] = textBox(text);
    const shares = Array.from({ length: 11 }, (_, i) => i / 10);
    const grid = shares.flatMap((u) =>
      shares.map((w): Point2 => [minX + u * (maxX - minX), minY + w * (maxY - minY)]),
    );
    return areas
      .filter(({ points }) => grid.some((p) => insideRing(p, points)))
      .map(({ role }): PictureFlaw => ({ kind: 'text-on-area', text: text.text, role }));
  });
}

/** Corners along a shape's edge, the first of a closed one again at its end; of a disc its middle too. */
function cornersOf(shape: Shape): readonly Point2[] {
  switch (shape.kind) {
    case 'text':
      return [];
    case 'lines':
      return shape.lines.flat();
    case 'image':
      return [shape.at, add(shape.at, [shape.widthMm, shape.heightMm])];
    case 'disc': {
      const { center, radiusMm: r } = shape;
      const round = Array.from({ length: 33 }, (_, i): Point2 => {
        const a = (2 * Math.PI * i) / 32;
        return [center[0] + r * Math.cos(a), center[1] + r * Math.sin(a)];
      });
      return [center, ...round];
    }
    default:
      return shape.kind === 'area' || shape.closed
        ? [...shape.points, shape.points[0]]
        : shape.points;
  }
}

const within = ([x, y]: Point2, box: Box): boolean =>
  x >= box[0] - 1e-9 && y >= box[1] - 1e-9 && x <= box[2] + 1e-9 && y <= box[3] + 1e-9;
