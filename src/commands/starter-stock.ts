/** The timber and sheets a starting run orders a pattern from: what is usual, larger where the lure needs it. */
import type { Pattern } from '../pattern/pattern.js';

export type StarterStock = {
  readonly timber: string;
  /** Of one block, mm. */
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  /** Blocks in a stack, and how high the saw reaches, mm. */
  readonly layers: number;
  readonly largestHeightMm: number;
  /** Length of the sheet for templates and gauges, mm. */
  readonly sheetLengthMm: number;
  readonly lipThicknessMm: number;
};

/** What the pattern of `blankwright new pattern` is made from. */
export const USUAL_STOCK: StarterStock = {
  timber: 'western-redcedar',
  lengthMm: 400,
  widthMm: 90,
  thicknessMm: 20,
  layers: 2,
  largestHeightMm: 60,
  sheetLengthMm: 300,
  lipThicknessMm: 1.5,
};

export const TAPE_MM = 0.2;

/** Timber and thicknesses are the pattern's own; sizes are round ones that hold the lure with room around it. */
export function stockFor(pattern: Pattern): StarterStock {
  const usual = USUAL_STOCK;
  const { lengthMm, blockThicknessMm: thicknessMm, sandingAllowanceMm } = pattern;
  const most = (offsets: Pattern['back']) => Math.max(0, ...offsets.map((o) => o.offsetMm));
  const highMm = most(pattern.back) + most(pattern.belly) + 2 * sandingAllowanceMm;
  const layers = usual.layers * (thicknessMm + TAPE_MM) <= usual.largestHeightMm ? usual.layers : 1;
  return {
    timber: pattern.timber,
    lengthMm: atLeast(usual.lengthMm, lengthMm + ROOM_MM, 100),
    // Four blocks hold the eight lures that a starting run orders.
    widthMm: atLeast(usual.widthMm, 2 * highMm + ROOM_MM, 10),
    thicknessMm,
    layers,
    largestHeightMm: atLeast(usual.largestHeightMm, layers * (thicknessMm + TAPE_MM), 10),
    // A profile gauge is a little longer than the lure.
    sheetLengthMm: atLeast(usual.sheetLengthMm, lengthMm + 2 * ROOM_MM, 100),
    lipThicknessMm: pattern.lip?.thicknessMm ?? usual.lipThicknessMm,
  };
}

/** For margins, sanding allowance and the cut around a lure, mm. */
const ROOM_MM = 25;

/** The usual size, or the next whole step that is enough. */
const atLeast = (usualMm: number, neededMm: number, stepMm: number): number =>
  Math.max(usualMm, stepMm * Math.ceil(neededMm / stepMm));
