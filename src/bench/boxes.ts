/**
 * Bounding boxes laid on faces by a packer of rectangles: what a maker gets without interlocking.
 * Boxes keep the grain (no turns), the margins and the gap; knots are not known here.
 */
import { type Filling, fillings } from '../geometry/boxes.js';
import { ringArea, ringBox } from '../geometry/ring.js';
import type { FaceSize, NestPart } from '../nest/nest.js';

/** A box of an outline and what it holds. */
export type OutlineBox = {
  readonly lengthMm: number;
  readonly heightMm: number;
  /** Of the outline in it. */
  readonly areaMm2: number;
  readonly part: number;
};

export function boxOfPart({ outline }: NestPart, part: number): OutlineBox {
  const [left, bottom, right, top] = ringBox(outline);
  return { lengthMm: right - left, heightMm: top - bottom, areaMm2: ringArea(outline), part };
}

type Order = (a: OutlineBox, b: OutlineBox) => number;
const ORDERS: readonly Order[] = [
  (a, b) => b.lengthMm - a.lengthMm,
  (a, b) => b.heightMm - a.heightMm,
  (a, b) => b.lengthMm * b.heightMm - a.lengthMm * a.heightMm,
  (a, b) => b.areaMm2 / (b.lengthMm * b.heightMm) - a.areaMm2 / (a.lengthMm * a.heightMm),
];

/** Every way of filling at most so many faces. */
const everyWay = (
  boxes: readonly OutlineBox[],
  face: FaceSize,
  gapMm: number,
  most: number,
): Filling[] =>
  fillings(
    boxes.map((b) => ({ width: b.lengthMm, height: b.heightMm })),
    {
      width: face.lengthMm - 2 * face.marginMm,
      height: face.widthMm - 2 * face.marginMm,
      gap: gapMm,
      turns: false,
      most,
    },
    ORDERS.map((order) => (a, b) => order(boxes[a], boxes[b])),
  );

const totalArea = (boxes: readonly OutlineBox[], on: readonly number[]): number =>
  on.reduce((sum, i) => sum + boxes[i].areaMm2, 0);

/** Boxes on one face: of all ways the one with the greatest area of outlines. */
export function boxedFace(
  boxes: readonly OutlineBox[],
  face: FaceSize,
  gapMm: number,
): { readonly count: number; readonly areaMm2: number } {
  const ways = everyWay(boxes, face, gapMm, 1).map(({ bins }) => (bins[0] ?? []).map((b) => b.box));
  const best = ways.reduce((a, b) => (totalArea(boxes, b) > totalArea(boxes, a) ? b : a));
  return { count: best.length, areaMm2: totalArea(boxes, best) };
}

/** Fewest faces of this size that hold all boxes; Infinity if one does not fit at all. */
export function facesForBoxes(boxes: readonly OutlineBox[], face: FaceSize, gapMm: number): number {
  const counts = everyWay(boxes, face, gapMm, boxes.length).map(({ bins, left }) =>
    left.length > 0 ? Infinity : bins.length,
  );
  return Math.min(...counts);
}
