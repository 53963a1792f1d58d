/**
 * Side view and plan with their dimensions, what goes where, and the section in its block: on one sheet,
 * or on two where the views take up one of their own at true size.
 */
import type { Box } from '../../geometry/vec.js';
import { Fault } from '../../problem.js';
import { scaleWords } from '../picture/scale-bar.js';
import { arrangement, blockAt } from './arrangement.js';
import { roomOf, type SheetOf } from './frame.js';
import { type Greatests, greatests } from './greatest.js';
import type { ViewsInput } from './input.js';
import { millimeters } from './measure.js';
import { leastNotesMm, notes } from './notes.js';
import { trueSizeFirst } from './scale.js';
import { drawnTable, type Table, tableHeightMm, tableWidthMm } from './table.js';
import { tableSheets } from './table-sheets.js';
import { workSection } from './work-section.js';

/** Between the views and what stands beside or under them, mm. */
const GAP_MM = 8;
const UNDER_MM = 4;
/** Of table and notes on a sheet without views. */
const COLUMN_MM = 160;

const PARTS = 'What goes where';

type Sheets = {
  readonly sheets: readonly SheetOf[];
  /** False where there was no room for them. */
  readonly hasNotes: boolean;
};

/** Where the table stands: on the sheet of the views, beside or under them, or on the next one. */
type Plan = { readonly scale: number; readonly table: 'beside' | 'under' | 'apart' };

export function arrangementSheets(input: ViewsInput, places: Table): Sheets {
  const most = greatests(input.shape);
  const [, low, , top] = roomOf(input);
  const fits = tableHeightMm(places) <= top - low;
  const table = fits ? places : { ...places, rows: [] };
  const plan = planned(input, most, table);
  const { sheets, hasNotes } =
    plan.table === 'apart'
      ? apart(input, most, { table, scale: plan.scale })
      : together(input, most, { table, plan });
  const more = fits ? [] : tableSheets(places, PARTS, input);
  return { hasNotes, sheets: [...sheets, ...more] };
}

/** Height of the table; of none without rows. */
const highOf = (table: Table): number =>
  table.rows.length === 0 ? 0 : tableHeightMm(table) + UNDER_MM;

/** The first scale at which everything has room. At true size the views may have a sheet of their own. */
function planned(input: ViewsInput, most: Greatests, table: Table): Plan {
  const [left, low, right, top] = roomOf(input);
  const [wide, high] = [right - left, top - low];
  for (const scale of trueSizeFirst(input.shape.lengthMm)) {
    const { wideMm, highMm } = blockAt(input, most, scale);
    if (highMm > high || wideMm > wide) continue;
    if (wideMm <= wide - tableWidthMm(table) - GAP_MM) return { scale, table: 'beside' };
    if (highMm + UNDER_MM + highOf(table) <= high) return { scale, table: 'under' };
    if (scale === 1) return { scale, table: 'apart' };
  }
  throw new Fault(`${input.name}: its views fit at no scale`);
}

type Together = { readonly table: Table; readonly plan: Plan };

function together(input: ViewsInput, most: Greatests, { table, plan }: Together): Sheets {
  const [left, low, right, top] = roomOf(input);
  const isBeside = plan.table === 'beside';
  const columnX = right - tableWidthMm(table);
  const widthMm = isBeside ? columnX - GAP_MM - left : right - left;
  const underTop = top - blockAt(input, most, plan.scale).highMm - UNDER_MM;
  const sectionRoom: Box = isBeside
    ? [columnX, low, right, top - highOf(table)]
    : [left, low, columnX - GAP_MM, underTop];
  const hasNotes = isBeside && leastNotesMm(input, widthMm) <= underTop - low;
  const sheet = viewsSheet(input, plan.scale, [
    ...arrangement(input, most, { scale: plan.scale, at: [left, top], widthMm }),
    ...partsTable(table, [columnX, isBeside ? top : underTop]),
    ...workSection(input, most, sectionRoom),
    ...(hasNotes ? notes(input, [left, underTop], { widthMm, heightMm: underTop - low }) : []),
  ]);
  return { hasNotes, sheets: [sheet] };
}

type Apart = { readonly table: Table; readonly scale: number };

function apart(input: ViewsInput, most: Greatests, { table, scale }: Apart): Sheets {
  const [left, low, right, top] = roomOf(input);
  const under = top - highOf(table);
  const hasNotes = leastNotesMm(input, COLUMN_MM) <= under - low;
  const notesRoom = { widthMm: COLUMN_MM, heightMm: under - low };
  const parts: SheetOf = {
    title: PARTS,
    scale: 'as told',
    key: [],
    description: `What goes where on ${input.name}, and its greatest section.`,
    shapes: [
      ...partsTable(table, [left, top]),
      ...workSection(input, most, [left + COLUMN_MM + GAP_MM, low, right, top]),
      ...(hasNotes ? notes(input, [left, under], notesRoom) : []),
    ],
  };
  const views = arrangement(input, most, { scale, at: [left, top], widthMm: right - left });
  return { hasNotes, sheets: [viewsSheet(input, scale, views), parts] };
}

const partsTable = (table: Table, at: readonly [number, number]) =>
  table.rows.length === 0 ? [] : drawnTable(table, at);

const viewsSheet = (
  { name, shape }: ViewsInput,
  scale: number,
  shapes: SheetOf['shapes'],
): SheetOf => ({
  title: 'Arrangement',
  scale: scaleWords(scale),
  key: [
    'Thick: finished body. Thin: as sawn, no kerf in it. Dashed: in the wood',
    'or hidden. Long and short strokes: datum line, center lines.',
  ],
  description: `Side view and plan of ${name}, ${millimeters(shape.lengthMm)} mm long, with dimensions.`,
  shapes,
});
