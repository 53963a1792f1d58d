/**
 * Parts on sheets without grain (plywood, clear plate): nested like outlines on a face, on single
 * sheets, either along the sheet or all turned by a quarter.
 */
import { movedRing, type Ring, ringBox } from '../geometry/ring.js';
import { checkNest } from './check.js';
import type { NestComplaint } from './complaint.js';
import { clearOf } from './fit.js';
import { isLess } from './judged.js';
import type { Block, Nest, NestFace, NestPart, NestRules, Placement } from './nest.js';
import { planNest } from './plan.js';
import type { Search } from './search.js';
import { flawsOf } from './stack.js';

export type SheetSize = {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  /** Left free along all four edges. */
  readonly marginMm: number;
};

/** One layout, cut from `copies` sheets. Frame: origin at the sheet's lower left corner, x along its length. */
export type SheetLayout = SheetSize & {
  readonly gapMm: number;
  readonly copies: number;
  /** From left to right; turned by 0, 90, 180 or 270°. */
  readonly placements: readonly Placement[];
  /** Area of the parts over the area of the sheet, 0..1. */
  readonly usedRatio: number;
};

export type SheetRules = Pick<NestRules, 'gapMm' | 'tries' | 'seed' | 'layouts'>;

export type SheetPlan = {
  readonly layouts: readonly SheetLayout[];
  /** What the judge of nests says of them. */
  readonly complaints: readonly NestComplaint[];
};

type Way = 'along' | 'across';

/** Sizes that agree to this are equal, mm. */
const SAME_MM = 1e-9;

/** True if an outline lies inside the sheet's margins in one way or the other. */
export const fitsSheet = (outline: Ring, sheet: SheetSize): boolean =>
  fits(outline, sheet, 'along') || fits(outline, sheet, 'across');

/**
 * As few sheets as the nest finds for all parts, of equals the plan that uses least of them. Every
 * part must fit the sheet (`fitsSheet`) and have its thickness.
 */
export function planSheets(
  parts: readonly NestPart[],
  sheet: SheetSize,
  rules: SheetRules,
  search: Search,
): SheetPlan {
  const plans = (['along', 'across'] as const).map((way) => {
    const [most, others] = [true, false].map((does) =>
      parts.filter(({ outline }) => fits(outline, sheet, way) === does),
    );
    return joined(
      plan(most, sheet, { rules, search, way }),
      plan(others, sheet, { rules, search, way: opposite(way) }),
    );
  });
  return plans.reduce((a, b) => (isLess(judgedBy(b), judgedBy(a)) ? b : a));
}

const opposite = (way: Way): Way => (way === 'along' ? 'across' : 'along');

function fits(outline: Ring, sheet: SheetSize, way: Way): boolean {
  const [minX, minY, maxX, maxY] = ringBox(outline);
  const { clearLengthMm, clearWidthMm } = clearOf(seenFrom(sheet, way));
  return maxX - minX <= clearLengthMm + SAME_MM && maxY - minY <= clearWidthMm + SAME_MM;
}

/** The sheet as it lies under parts that are not turned. */
const seenFrom = (sheet: SheetSize, way: Way): SheetSize =>
  way === 'along' ? sheet : { ...sheet, lengthMm: sheet.widthMm, widthMm: sheet.lengthMm };

type Costed = SheetPlan & { readonly sheets: number; readonly usedMm2: number };

const joined = (a: Costed, b: Costed): Costed => ({
  layouts: [...a.layouts, ...b.layouts],
  complaints: [...a.complaints, ...b.complaints],
  sheets: a.sheets + b.sheets,
  usedMm2: a.usedMm2 + b.usedMm2,
});

const judgedBy = ({ sheets, usedMm2 }: Costed): number[] => [sheets, usedMm2];

function plan(
  parts: readonly NestPart[],
  sheet: SheetSize,
  { rules, search, way }: { rules: SheetRules; search: Search; way: Way },
): Costed {
  if (parts.length === 0) return { layouts: [], complaints: [], sheets: 0, usedMm2: 0 };
  const seen = seenFrom(sheet, way);
  // A sheet each is enough.
  const count = parts.reduce((sum, p) => sum + p.orderedCount, 0);
  const blocks: Block[] = [{ name: 'sheet', ...seen, ...flawsOf([]), count }];
  const single: NestRules = {
    ...rules,
    clearNoseRatio: 0,
    largestTiltDeg: 0,
    layers: 1,
    tapeThicknessMm: 0,
    largestHeightMm: sheet.thicknessMm,
  };
  const nest = planNest(parts, blocks, single, search);
  const { complaints } = checkNest(nest, parts, blocks, single);
  return {
    layouts: nest.faces.map((face) => layoutOf(face, sheet, way)),
    complaints,
    sheets: nest.stacks,
    usedMm2: usedMm2(nest),
  };
}

const usedMm2 = ({ faces }: Nest): number =>
  faces.reduce((sum, f) => sum + f.copies * f.offcut.fromMm * f.widthMm, 0);

function layoutOf(
  { gapMm, copies, placements, usedRatio }: NestFace,
  sheet: SheetSize,
  way: Way,
): SheetLayout {
  const { lengthMm, widthMm, thicknessMm, marginMm } = sheet;
  const placed = way === 'along' ? placements : placements.map((p) => quarterTurned(p, lengthMm));
  const left = ({ outline }: Placement): number => ringBox(outline)[0];
  return {
    ...{ lengthMm, widthMm, thicknessMm, marginMm },
    gapMm,
    copies,
    placements: [...placed].sort((a, b) => left(a) - left(b) || a.yMm - b.yMm),
    usedRatio,
  };
}

/** From a sheet that stands on its end to the same sheet lying. */
const quarterTurned = (p: Placement, lengthMm: number): Placement => ({
  part: p.part,
  turnDeg: p.turnDeg + 90,
  xMm: lengthMm - p.yMm,
  yMm: p.xMm,
  outline: movedRing({ turnDeg: 90, move: [lengthMm, 0] }, p.outline),
});
