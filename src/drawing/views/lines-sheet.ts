/**
 * The lines plan: profile with buttocks, under it the plan with waterlines, beside it the body plan,
 * all at one scale, with stations, waterlines and buttocks carried from each into the others; under
 * them the table of offsets, particulars and notes.
 */
import type { BodyShape } from '../../body/shape.js';
import { Fault } from '../../problem.js';
import { textWidthMm } from '../picture/picture.js';
import { scaleWords } from '../picture/scale-bar.js';
import { SIZES } from '../picture/words.js';
import { bodyPlan, bodyPlanWidthMm } from './body-plan.js';
import { roomOf, type SheetOf } from './frame.js';
import { type Greatests, greatests } from './greatest.js';
import type { ViewsInput } from './input.js';
import { levelsWithin, roundStep } from './levels.js';
import { type LinesPose, planView, profileView } from './lines-views.js';
import { millimeters } from './measure.js';
import { leastNotesMm, notes } from './notes.js';
import { apart, type OffsetRow } from './offsets.js';
import { LEAST_COLUMN_MM, particulars, particularsMm } from './particulars.js';
import { LARGEST_FIRST } from './scale.js';
import { drawnTable, type Table, tableHeightMm, tableWidthMm } from './table.js';

/** Room on the sheet, mm: over the profile for its heading, between profile and plan for numbers, under the plan for its heading. */
const HEAD_MM = 8;
const BETWEEN_MM = 10;
const UNDER_MM = 8;
/** Left of the profile for the names of waterlines, right of it for those of buttocks. */
const ASIDE_MM = 9;
/** Between the table and what stands beside it, and the least where paper is narrow. */
const GAP_MM = 10;
const LEAST_GAP_MM = 6;
/** Most room more between the rows, and at the left, where the sheet has it. */
const MOST_AIR_MM = 9;
/** Stations, and waterlines or buttocks, closer on paper than this are not all drawn. */
const LEAST_STATION_MM = 5;
const LEAST_LEVEL_MM = 4.8;

const MOST_LOST = 2 / 3;

type Beside = {
  readonly rows: readonly OffsetRow[];
  readonly offsets: Table;
  readonly withNotes: boolean;
};

/** The sheet, and whether the table of offsets is on it. */
export function linesSheet(
  input: ViewsInput,
  { rows, offsets: table, withNotes }: Beside,
): SheetOf & { readonly hasTable: boolean } {
  const { shape } = input;
  const [leftX, low, right, roomTop] = roomOf(input);
  const [wideMm, highMm] = [right - leftX, roomTop - low];
  const most = greatests(shape);
  const notesMm = (widthMm: number) => (withNotes ? leastNotesMm(input, widthMm) : 0);
  const wordsMm = (widthMm: number) => particularsMm(widthMm) + notesMm(widthMm);
  const aloneMm = wordsMm(wideMm);
  const asideTable = tableWidthMm(table) + gapMm(wideMm - tableWidthMm(table));
  const togetherMm = Math.max(tableHeightMm(table), wordsMm(wideMm - asideTable));
  const { scale, hasTable } = shared(input, most, {
    aloneMm,
    togetherMm: wideMm - asideTable < LEAST_COLUMN_MM ? null : togetherMm,
  });
  const beside = hasTable ? asideTable : 0;
  const [wide, high] = needs(shape, most, { scale, underMm: hasTable ? togetherMm : aloneMm });
  const air = Math.min(MOST_AIR_MM, (highMm - high) / 3);
  const pose = posed(shape, most, rows, {
    scale,
    left: leftX + ASIDE_MM + Math.min(MOST_AIR_MM, (wideMm - wide) / 2),
    top: roomTop - HEAD_MM,
    betweenMm: BETWEEN_MM + air,
  });
  const bodyFrom = pose.left + scale * shape.lengthMm + ASIDE_MM;
  const bodyMm = bodyPlanWidthMm(scale * most.breadth.mm);
  const top = pose.centerY - (scale * most.breadth.mm) / 2 - UNDER_MM - air;
  const [wordsX, widthMm] = [leftX + beside, wideMm - beside];
  const notesTop = top - particularsMm(widthMm);
  return {
    hasTable,
    title: 'Lines',
    scale: scaleWords(scale),
    key: [
      `Thick: outlines, and the greatest section ${millimeters(most.section.stationMm)} mm from the nose.`,
      'Long and short strokes: datum line and center plane.',
    ],
    description: `Lines plan of ${input.name}: profile, plan and ${rows.length - 2} sections, ${millimeters(shape.lengthMm)} mm long.`,
    shapes: [
      ...profileView(pose),
      ...planView(pose),
      ...bodyPlan(pose, (bodyFrom + right - bodyMm) / 2),
      ...(hasTable ? drawnTable(table, [leftX, top]) : []),
      ...particulars(input, most, [wordsX, top], widthMm),
      ...(withNotes ? notes(input, [wordsX, notesTop], { widthMm, heightMm: notesTop - low }) : []),
    ],
  };
}

/** Width and height the sheet needs at a scale, mm, with so much under the views. */
const needs = (
  shape: BodyShape,
  { breadth }: Greatests,
  { scale, underMm }: { readonly scale: number; readonly underMm: number },
): readonly [number, number] => {
  const [high, low] = reaches(shape);
  return [
    2 * ASIDE_MM + scale * shape.lengthMm + bodyPlanWidthMm(scale * breadth.mm),
    HEAD_MM + BETWEEN_MM + UNDER_MM + scale * (high + low + breadth.mm) + underMm,
  ];
};

/** Beside so much room that a table leaves. */
const gapMm = (leftMm: number): number =>
  Math.max(LEAST_GAP_MM, Math.min(GAP_MM, leftMm - LEAST_COLUMN_MM));

/** `togetherMm` is null where a table leaves too little room for words beside it. */
type Under = { readonly aloneMm: number; readonly togetherMm: number | null };

/** The table stands under the lines as long as they stay true size for it, or lose less than a third by it. */
function shared(
  input: ViewsInput,
  most: Greatests,
  { aloneMm, togetherMm }: Under,
): { readonly scale: number; readonly hasTable: boolean } {
  const { name, shape } = input;
  const [left, low, right, top] = roomOf(input);
  const scaleOver = (underMm: number) =>
    LARGEST_FIRST.find((scale) => {
      const [wide, high] = needs(shape, most, { scale, underMm });
      return wide <= right - left && high <= top - low;
    });
  const alone = scaleOver(aloneMm);
  if (alone === undefined) throw new Fault(`${name}: its lines fit at no scale`);
  const together = togetherMm === null ? undefined : scaleOver(togetherMm);
  return together !== undefined && together >= Math.min(1, MOST_LOST * alone)
    ? { scale: together, hasTable: true }
    : { scale: alone, hasTable: false };
}

type Corner = Pick<LinesPose, 'scale' | 'left'> & {
  readonly top: number;
  readonly betweenMm: number;
};

function posed(
  shape: BodyShape,
  { breadth, section }: Greatests,
  rows: readonly OffsetRow[],
  { scale, left, top, betweenMm }: Corner,
): LinesPose {
  const [highMm, lowMm] = reaches(shape);
  const datumY = top - scale * highMm;
  const least = LEAST_LEVEL_MM / scale;
  const heightStep = roundStep(Math.max(least, Math.max(highMm, lowMm) / 3));
  const besideStep = roundStep(Math.max(least, breadth.mm / 7));
  return {
    shape,
    scale,
    left,
    datumY,
    centerY: datumY - scale * lowMm - betweenMm - (scale * breadth.mm) / 2,
    stations: apart(rows, leastStationMm(rows) / scale),
    upper: levelsWithin(highMm, heightStep),
    lower: levelsWithin(lowMm, heightStep),
    beside: levelsWithin(breadth.mm / 2, besideStep),
    breadthMm: breadth.mm,
    highMm,
    lowMm,
    greatest: section,
  };
}

/** On paper: their numbers stand side by side. */
const leastStationMm = (rows: readonly OffsetRow[]): number =>
  Math.max(LEAST_STATION_MM, textWidthMm(String(rows.length), SIZES.note) + 1.5);

/** How far back and belly reach from the datum line, mm: between its knots a curve does not leave their range. */
const reaches = ({ backSquared, bellySquared }: BodyShape): readonly [number, number] => {
  const reach = ({ knots, value }: BodyShape['backSquared']) =>
    Math.sqrt(Math.max(0, ...knots.map(value)));
  return [reach(backSquared), reach(bellySquared)];
};
