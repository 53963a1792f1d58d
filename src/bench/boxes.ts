/**
 * Bounding boxes laid on faces by a packer of rectangles: what a maker gets without interlocking.
 * Boxes keep the grain (no turns), the margins and the gap; knots are not known here.
 */
import { MaxRectsBin, PACKING_LOGIC } from 'maxrects-packer/dist/maxrects-packer.mjs';
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

/** So that boxes as large as the face fit in spite of rounding, mm. */
const ROUNDING_MM = 1e-6;
const LOGICS = Object.values(PACKING_LOGIC).filter((logic) => typeof logic === 'number');
const ORDERS: readonly ((a: OutlineBox, b: OutlineBox) => number)[] = [
  (a, b) => b.lengthMm - a.lengthMm,
  (a, b) => b.heightMm - a.heightMm,
  (a, b) => b.lengthMm * b.heightMm - a.lengthMm * a.heightMm,
  (a, b) => b.areaMm2 / (b.lengthMm * b.heightMm) - a.areaMm2 / (a.lengthMm * a.heightMm),
];

/** Indices of the boxes on each face, and of those that fit none. */
type Filled = { readonly faces: readonly (readonly number[])[]; readonly left: readonly number[] };

/** Every way the packer knows of choosing a place, in every order of the boxes. */
function everyWay<T>(boxes: readonly OutlineBox[], result: (way: Filling) => T): T[] {
  return ORDERS.flatMap((order) => {
    const sequence = boxes.map((_, i) => i).sort((a, b) => order(boxes[a], boxes[b]) || a - b);
    return LOGICS.map((logic) => result({ boxes, sequence, logic }));
  });
}

type Filling = {
  readonly boxes: readonly OutlineBox[];
  readonly sequence: readonly number[];
  readonly logic: number;
};

/** First fit into at most so many faces. */
function filled(
  { boxes, sequence, logic }: Filling,
  face: FaceSize,
  gapMm: number,
  most: number,
): Filled {
  const clearMm = (size: number): number => size - 2 * face.marginMm + ROUNDING_MM;
  const options = { smart: false, pot: false, square: false, allowRotation: false, logic };
  const empty = (): MaxRectsBin =>
    new MaxRectsBin(clearMm(face.lengthMm), clearMm(face.widthMm), gapMm, options);
  const bins: { readonly bin: MaxRectsBin; readonly on: number[] }[] = [];
  const left: number[] = [];
  // A size that once found no room on a face finds none later.
  const shut = new Map<string, number>();
  for (const i of sequence) {
    const { lengthMm, heightMm } = boxes[i];
    const size = `${lengthMm} ${heightMm}`;
    let at = shut.get(size) ?? 0;
    for (; at < most; at++) {
      if (at === bins.length) bins.push({ bin: empty(), on: [] });
      if (bins[at].bin.add(lengthMm, heightMm, i)) break;
      // An empty face refused it.
      if (bins[at].on.length === 0) at = most - 1;
    }
    shut.set(size, at);
    if (at < most) bins[at].on.push(i);
    else left.push(i);
  }
  return { faces: bins.map((b) => b.on).filter((on) => on.length > 0), left };
}

const totalArea = (boxes: readonly OutlineBox[], on: readonly number[]): number =>
  on.reduce((sum, i) => sum + boxes[i].areaMm2, 0);

/** Boxes on one face: of all ways the one with the greatest area of outlines. */
export function boxedFace(
  boxes: readonly OutlineBox[],
  face: FaceSize,
  gapMm: number,
): { readonly count: number; readonly areaMm2: number } {
  const ways = everyWay(boxes, (way) => filled(way, face, gapMm, 1).faces[0] ?? []);
  const best = ways.reduce((a, b) => (totalArea(boxes, b) > totalArea(boxes, a) ? b : a));
  return { count: best.length, areaMm2: totalArea(boxes, best) };
}

/** Fewest faces of this size that hold all boxes; Infinity if one does not fit at all. */
export function facesForBoxes(boxes: readonly OutlineBox[], face: FaceSize, gapMm: number): number {
  const counts = everyWay(boxes, (way) => {
    const { faces, left } = filled(way, face, gapMm, boxes.length);
    return left.length > 0 ? Infinity : faces.length;
  });
  return Math.min(...counts);
}
