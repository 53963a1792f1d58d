/**
 * Boxes laid without overlap in bins of one size; the one door to maxrects-packer (J. Jylänki, "A
 * Thousand Ways to Pack the Bin", 2010: free space kept as the largest empty rectangles).
 */
import { MaxRectsBin, PACKING_LOGIC } from 'maxrects-packer/dist/maxrects-packer.mjs';

export type BoxSize = { readonly width: number; readonly height: number };

export type Bin = BoxSize & {
  /** Least distance between two boxes, along x or along y. */
  readonly gap: number;
  /** Whether a box may lie a quarter turn round. */
  readonly turns: boolean;
  /** Most bins there are. */
  readonly most: number;
};

/** Where a box lies: its lower left corner, and whether its height is along x. */
export type LaidBox = {
  readonly box: number;
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
};

/** What is in each bin that is used, and the numbers of the boxes for which there was no room. */
export type Filling = {
  readonly bins: readonly (readonly LaidBox[])[];
  readonly left: readonly number[];
};

/** So that a box as large as the bin fits in spite of rounding; a box may reach out of it by this. */
export const BOX_ROUNDING = 1e-6;

const CHOICES = Object.values(PACKING_LOGIC).filter((logic) => typeof logic === 'number');

/** The first of these to go in, by number. */
export type BoxOrder = (a: number, b: number) => number;

/** One filling for every order and every way the packer has of choosing a place, first fit. */
export function fillings(
  boxes: readonly BoxSize[],
  bin: Bin,
  orders: readonly BoxOrder[],
): Filling[] {
  return orders.flatMap((order) => {
    const sequence = boxes.map((_, i) => i).sort((a, b) => order(a, b) || a - b);
    return CHOICES.map((choice) => firstFit(boxes, sequence, bin, choice));
  });
}

function firstFit(
  boxes: readonly BoxSize[],
  sequence: readonly number[],
  bin: Bin,
  choice: number,
): Filling {
  const bins: { readonly room: MaxRectsBin; readonly laid: LaidBox[] }[] = [];
  const left: number[] = [];
  // A size that once found no room in a bin finds none later.
  const shut = new Map<string, number>();
  for (const box of sequence) {
    const { width, height } = boxes[box];
    const size = `${width} ${height}`;
    let at = shut.get(size) ?? 0;
    for (; at < bin.most; at++) {
      if (at === bins.length) bins.push({ room: emptyBin(bin, choice), laid: [] });
      const { room, laid } = bins[at];
      const found = room.add(width, height, box);
      if (found) {
        laid.push({ box, x: found.x, y: found.y, turned: found.rot });
        break;
      }
      // An empty bin refused it.
      if (laid.length === 0) at = bin.most - 1;
    }
    shut.set(size, at);
    if (at >= bin.most) left.push(box);
  }
  return { bins: bins.map((b) => b.laid).filter((laid) => laid.length > 0), left };
}

const emptyBin = ({ width, height, gap, turns }: Bin, logic: number): MaxRectsBin =>
  new MaxRectsBin(width + BOX_ROUNDING, height + BOX_ROUNDING, gap, {
    smart: false,
    pot: false,
    square: false,
    allowRotation: turns,
    logic,
  });
