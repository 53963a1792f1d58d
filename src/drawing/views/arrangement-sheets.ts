/**
 * Side view and plan with their dimensions, what goes where, and the section in its block: on one sheet,
 * or on two where the views take up one of their own at true size.
 */
import type { Box } from '../../geometry/vec.js';
import { Fault } from '../../problem.js';
import { scaleWords } from '../picture/scale-bar.js';
import { arrangement, blockAt } from './arrangement.js';
import { ROOM, type SheetOf } from './frame.js';
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

const [LEFT, LOW, RIGHT, TOP] = ROOM;
const [WIDE, HIGH] = [RIGHT - LEFT, TOP - LOW];

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
  const fits = tableHeightMm(places) <= HIGH;
  const table = fits ? places : { ...places, rows: [] };
  const plan = planned(input, most, table);
  const { sheets, hasNotes } =
    plan.table === 'apart'
      ? apart(input, most, { table, scale: plan.scale })
      : together(input, most, { table, plan });
  const more = fits ? [] : tableSheets(places, PARTS, input.name);
  return { hasNotes, sheets: [...sheets, ...more] };
}

/** Height of the table; of none without rows. */
const highOf = (table: Table): number =>
  table.rows.length === 0 ? 0 : tableHeightMm(table) + UNDER_MM;

/** The first scale at which everything has room. At true size the views may have a sheet of their own. */
function planned(input: ViewsInput, most: Greatests, table: Table): Plan {
  for (const scale of trueSizeFirst(input.shape.lengthMm)) {
    const { wideMm, highMm } = blockAt(input, most, scale);
    if (highMm > HIGH || wideMm > WIDE) continue;
    if (wideMm <= WIDE - tableWidthMm(table) - GAP_MM) return { scale, table: 'beside' };
    if (highMm + UNDER_MM + highOf(table) <= HIGH) return { scale, table: 'under' };
    if (scale === 1) return { scale, table: 'apart' };
  }
  throw new Fault(`${input.name}: its views fit at no scale`);
}

type Together = { readonly table: Table; readonly plan: Plan };

function together(input: ViewsInput, most: Greatests, { table, plan }: Together): Sheets {
  const isBeside = plan.table === 'beside';
  const columnX = RIGHT - tableWidthMm(table);
  const widthMm = isBeside ? columnX - GAP_MM - LEFT : WIDE;
  const underTop = TOP - blockAt(input, most, plan.scale).highMm - UNDER_MM;
  const sectionRoom: Box = isBeside
    ? [columnX, LOW, RIGHT, TOP - highOf(table)]
    : [LEFT, LOW, columnX - GAP_MM, underTop];
  const hasNotes = isBeside && leastNotesMm(input, widthMm) <= underTop - LOW;
  const sheet = viewsSheet(input, plan.scale, [
    ...arrangement(input, most, { scale: plan.scale, at: [LEFT, TOP], widthMm }),
    ...partsTable(table, [columnX, isBeside ? TOP : underTop]),
    ...workSection(input, most, sectionRoom),
    ...(hasNotes ? notes(input, [LEFT, underTop], { widthMm, heightMm: underTop - LOW }) : []),
  ]);
  return { hasNotes, sheets: [sheet] };
}

type Apart = { readonly table: Table; readonly scale: number };

function apart(input: ViewsInput, most: Greatests, { table, scale }: Apart): Sheets {
  const under = TOP - highOf(table);
  const hasNotes = leastNotesMm(input, COLUMN_MM) <= under - LOW;
  const notesRoom = { widthMm: COLUMN_MM, heightMm: under - LOW };
  const parts: SheetOf = {
    title: PARTS,
    scale: 'as told',
    key: [],
    description: `What goes where on ${input.name}, and its greatest section.`,
    shapes: [
      ...partsTable(table, [LEFT, TOP]),
      ...workSection(input, most, [LEFT + COLUMN_MM + GAP_MM, LOW, RIGHT, TOP]),
      ...(hasNotes ? notes(input, [LEFT, under], notesRoom) : []),
    ],
  };
  const views = arrangement(input, most, { scale, at: [LEFT, TOP], widthMm: WIDE });
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
