/**
 * Side view and plan one over the other at one scale, with their sizes; lines of what is set out run
 * through both to running dimensions from the nose.
 */
import { offsetAt } from '../../body/shape.js';
import { type Box, boxOf, type Point2 } from '../../geometry/vec.js';
import type { Shape } from '../picture/picture.js';
import { besideLineMm, levelDimension, OVER_LINE_MM, uprightDimension } from './dimension.js';
import { heading } from './frame.js';
import type { Greatests } from './greatest.js';
import { CHAIN, ink } from './ink.js';
import type { ViewsInput } from './input.js';
import { ANGLE_MM, lipAngle } from './lip-angle.js';
import { length } from './measure.js';
import { planView } from './plan-view.js';
import { type Mark, NUMBER_STEP_MM, runningDimensions, runningMm } from './running.js';
import { BEYOND_MM, sideView } from './side-view.js';

/** Room on paper, mm: for the heading, from the side view up to its length, between the views, under the plan. */
const HEAD_MM = 7;
const LENGTH_MM = 4;
const BETWEEN_MM = 6;
const UNDER_MM = 5;
/** Right of the views: to the line of the sizes, and what the numbers under the plan keep off it. */
const SIZES_MM = { line: 10, clear: 6 } as const;

/** What both views take up, mm of the lure. */
function extentOf({ shape, blank, lip, eyes, wire }: ViewsInput): {
  readonly side: Box;
  readonly halfPlanMm: number;
} {
  const { knots, value } = shape.halfBreadthSquared;
  const halfBreadthMm = Math.sqrt(Math.max(0, ...knots.map(value)));
  const round = eyes.flatMap(({ at: [x, z], radiusMm: r }): Point2[] => [
    [x - r, z - r],
    [x + r, z + r],
  ]);
  return {
    side: boxOf([...blank.profileRing, ...(lip?.corners ?? []), ...round, ...(wire ?? [])]),
    halfPlanMm: Math.max(halfBreadthMm, blank.thicknessMm / 2, (lip?.widthMm ?? 0) / 2),
  };
}

/** Room left of the views, mm of paper: for center lines, and for the lip angle's arc and number. */
function asideMm(input: ViewsInput, scale: number): number {
  const { slot } = input.blank;
  if (!slot) return BEYOND_MM;
  const { side } = extentOf(input);
  return Math.max(BEYOND_MM, ANGLE_MM - scale * (slot.mouth[0] - side[0]));
}

/** What both views with their dimensions take up at a scale, mm of paper. */
export function blockAt(
  input: ViewsInput,
  most: Greatests,
  scale: number,
): { readonly wideMm: number; readonly highMm: number } {
  const { side, halfPlanMm } = extentOf(input);
  const marks = marksOf(input);
  const viewsMm = Math.max(
    asideMm(input, scale) + scale * (side[2] - side[0]),
    (marks.length + 1) * NUMBER_STEP_MM,
  );
  const sizesMm = [most.height, most.breadth].map(({ mm }) =>
    besideLineMm(length(mm, input.inches), scale * mm),
  );
  return {
    wideMm: viewsMm + SIZES_MM.line + Math.max(...sizesMm),
    highMm:
      HEAD_MM +
      OVER_LINE_MM +
      LENGTH_MM +
      scale * (side[3] - side[1] + 2 * halfPlanMm) +
      BETWEEN_MM +
      UNDER_MM +
      runningMm(marks.map(({ text }) => text)),
  };
}

type Room = {
  readonly scale: number;
  /** Upper left corner. */
  readonly at: Point2;
  readonly widthMm: number;
};

export function arrangement(
  input: ViewsInput,
  { height, breadth }: Greatests,
  { scale, at: [left, top], widthMm }: Room,
): readonly Shape[] {
  const { shape, blank, inches } = input;
  const { side, halfPlanMm } = extentOf(input);
  const lengthY = top - HEAD_MM - OVER_LINE_MM;
  const [x0, datumY] = [
    left + asideMm(input, scale) - scale * side[0],
    lengthY - LENGTH_MM - scale * side[3],
  ];
  const centerY = datumY + scale * (side[1] - halfPlanMm) - BETWEEN_MM;
  const lineY = centerY - scale * halfPlanMm - UNDER_MM;
  const inSide = ([x, z]: Point2): Point2 => [x0 + scale * x, datumY + scale * z];
  const inPlan = ([x, y]: Point2): Point2 => [x0 + scale * x, centerY + scale * y];
  const right = x0 + scale * side[2];
  const marks = marksOf(input);
  const sizesX = Math.max(right, left + (marks.length + 1) * NUMBER_STEP_MM) + SIZES_MM.line;
  const axis = (y: number) =>
    ink(
      [
        [x0 + scale * side[0] - BEYOND_MM, y],
        [right + BEYOND_MM, y],
      ],
      'hair',
      CHAIN,
    );
  const half = breadth.mm / 2;
  const drawn: Shape[] = [
    axis(datumY),
    axis(centerY),
    ...levelDimension(
      { from: inSide([0, 0]), to: inSide([shape.lengthMm, 0]), y: lengthY },
      length(shape.lengthMm, inches),
    ),
    ...uprightDimension(
      {
        low: inSide([height.stationMm, -offsetAt(shape.bellySquared, height.stationMm)]),
        high: inSide([height.stationMm, offsetAt(shape.backSquared, height.stationMm)]),
        x: sizesX,
      },
      length(height.mm, inches),
    ),
    ...uprightDimension(
      {
        low: inPlan([breadth.stationMm, -half]),
        high: inPlan([breadth.stationMm, half]),
        x: sizesX,
      },
      length(breadth.mm, inches),
    ),
    ...runningDimensions(
      marks.map(({ x, y, text }): Mark => ({ ...onSheet(inSide([x, y])), text })),
      { x0, y: lineY, bounds: [left, sizesX - SIZES_MM.clear] },
    ),
    ...planView(input, { scale, on: inPlan }),
    ...sideView(input, { scale, on: inSide }),
  ];
  const window: Box = [left, datumY + scale * side[1] - 2, left + widthMm, lengthY];
  return [
    ...heading('Side view and plan', 'running dimensions from the nose', [left, top - 4], widthMm),
    ...(blank.slot ? lipAngle(blank.slot, inSide, drawn, window) : drawn),
  ];
}

const onSheet = ([x, y]: Point2) => ({ x, y });

/** What is set out from the nose, in the frame of the lure: its station, the height its line begins at, its words. */
function marksOf({ shape, blank, eyes, inches }: ViewsInput): readonly Mark[] {
  const mark = ([x, y]: Point2, name: string): Mark => ({
    x,
    y,
    text: `${length(x, inches)} ${name}`,
  });
  const { slot, holes } = blank;
  return [
    mark([0, 0], 'nose'),
    ...(slot ? [mark(slot.mouth, 'lip slot')] : []),
    ...holes.map(({ stationMm, bellyMm }, i) => mark([stationMm, bellyMm], `hole ${i + 1}`)),
    ...eyes
      .filter(({ name }) => name.startsWith('hanger'))
      .map(({ name, surface }) => mark(surface, name)),
    mark([shape.lengthMm, 0], 'tail'),
  ];
}
