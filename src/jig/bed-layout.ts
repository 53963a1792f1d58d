/** A set of printed parts laid out on the printer's bed, or on as many beds as it takes. */
import {
  type BoxOrder,
  type BoxSize,
  type Filling,
  fillings,
  type LaidBox,
} from '../geometry/boxes.js';
import { type Matrix, placement } from '../solid/placement.js';

/** What a part covers of the bed as it is printed. */
export type Footprint = { readonly xMm: number; readonly yMm: number };

export type BedPlace = {
  /** Number of the part. */
  readonly part: number;
  /** Lower left corner of the footprint where it lies. */
  readonly xMm: number;
  readonly yMm: number;
  /** A quarter turn counter-clockwise, so that what was along x is along y. */
  readonly turned: boolean;
};

export type BedLayout = {
  /** What is printed at once, bed by bed, both in the order of the parts. */
  readonly beds: readonly (readonly BedPlace[])[];
  /** Parts that lie on an empty bed neither way round. */
  readonly tooLarge: readonly number[];
};

/**
 * Lays the parts on as few beds as a packer of boxes finds, at least `gapMm` apart along x or along
 * y; of layouts on equally many beds the most compact one, in the middle of the bed. The gap is not
 * kept to the edges: the bed is what can be printed on.
 */
export function layOnBeds(
  footprints: readonly Footprint[],
  bed: Footprint,
  gapMm: number,
): BedLayout {
  const boxes = footprints.map(({ xMm, yMm }) => ({ width: xMm, height: yMm }));
  const bin = {
    width: bed.xMm,
    height: bed.yMm,
    gap: gapMm,
    turns: true,
    most: Math.max(1, boxes.length),
  };
  const best = fillings(boxes, bin, ordersOf(boxes)).reduce((a, b) =>
    costOf(b, boxes) < costOf(a, boxes) ? b : a,
  );
  return {
    beds: best.bins
      .map((laid) => inTheMiddle(laid, boxes, bed))
      .sort(([a], [b]) => a.part - b.part),
    tooLarge: [...best.left].sort((a, b) => a - b),
  };
}

/** The motion of a part whose box begins at the origin to its place on the bed. */
export function motionOnBed({ xMm, yMm, turned }: BedPlace, footprint: Footprint): Matrix {
  return turned
    ? placement([0, 1, 0], [-1, 0, 0], [0, 0, 1], [xMm + footprint.yMm, yMm, 0])
    : placement([1, 0, 0], [0, 1, 0], [0, 0, 1], [xMm, yMm, 0]);
}

/** Largest first, by area, by the longer side and by the shorter. */
function ordersOf(boxes: readonly BoxSize[]): BoxOrder[] {
  const sizes: ((box: BoxSize) => number)[] = [
    ({ width, height }) => width * height,
    ({ width, height }) => Math.max(width, height),
    ({ width, height }) => Math.min(width, height),
  ];
  return sizes.map((size) => (a, b) => size(boxes[b]) - size(boxes[a]));
}

/** One bed more costs more than any spread over beds: no printer's sides add up to a kilometer. */
const BED_COST = 1e6;

function costOf({ bins }: Filling, boxes: readonly BoxSize[]): number {
  const spread = bins.map((laid) => {
    const [x, y] = extentOf(laid, boxes);
    return x + y;
  });
  return spread.reduce((sum, s) => sum + s, BED_COST * bins.length);
}

const extentOf = (laid: readonly LaidBox[], boxes: readonly BoxSize[]): readonly [number, number] =>
  laid.reduce(
    ([x, y], { box, x: left, y: bottom, turned }) => {
      const { width, height } = boxes[box];
      return [
        Math.max(x, left + (turned ? height : width)),
        Math.max(y, bottom + (turned ? width : height)),
      ];
    },
    [0, 0] as readonly [number, number],
  );

function inTheMiddle(
  laid: readonly LaidBox[],
  boxes: readonly BoxSize[],
  bed: Footprint,
): BedPlace[] {
  const [x, y] = extentOf(laid, boxes);
  const [right, up] = [Math.max(0, (bed.xMm - x) / 2), Math.max(0, (bed.yMm - y) / 2)];
  return laid
    .map((l) => ({ part: l.box, xMm: l.x + right, yMm: l.y + up, turned: l.turned }))
    .sort((a, b) => a.part - b.part);
}
