/** The second sheet: side view and plan with their dimensions, what goes where, and the section in its block. */
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
import { workSection } from './work-section.js';

/** Between the views and what stands beside or under them, mm. */
const GAP_MM = 8;
const UNDER_MM = 4;

const [LEFT, LOW, RIGHT, TOP] = ROOM;

type Shown = { readonly hasNotes: boolean; readonly hasTable: boolean };

/** The sheet, and whether notes and the table of what goes where are on it. */
export function arrangementSheet(input: ViewsInput, places: Table): SheetOf & Shown {
  const most = greatests(input.shape);
  const high = TOP - LOW;
  const hasTable = places.rows.length > 0 && tableHeightMm(places) <= high;
  const tableHigh = hasTable ? tableHeightMm(places) + UNDER_MM : 0;
  const { scale, isBeside } = planned(input, most, {
    wideMm: tableWidthMm(places),
    highMm: tableHigh,
  });
  const columnX = RIGHT - tableWidthMm(places);
  const widthMm = isBeside ? columnX - GAP_MM - LEFT : RIGHT - LEFT;
  const underTop = TOP - blockAt(input, most, scale).highMm - UNDER_MM;
  const sectionRoom: Box = isBeside
    ? [columnX, LOW, RIGHT, TOP - tableHigh]
    : [LEFT, LOW, columnX - GAP_MM, underTop];
  const hasNotes = isBeside && leastNotesMm(input, widthMm) <= underTop - LOW;
  const notesRoom = { widthMm, heightMm: underTop - LOW };
  return {
    hasNotes,
    hasTable: hasTable || places.rows.length === 0,
    title: 'Arrangement',
    scale: scaleWords(scale),
    key: [
      'Thick: finished body. Thin: as sawn, no kerf in it. Dashed: in the wood',
      'or hidden. Long and short strokes: datum line, center lines.',
    ],
    description: `Side view, plan and section of ${input.name}, ${millimeters(input.shape.lengthMm)} mm long, with dimensions and a table of what goes where.`,
    shapes: [
      ...arrangement(input, most, { scale, at: [LEFT, TOP], widthMm }),
      ...(hasTable ? drawnTable(places, [columnX, isBeside ? TOP : underTop]) : []),
      ...workSection(input, most, sectionRoom),
      ...(hasNotes ? notes(input, [LEFT, underTop], notesRoom) : []),
    ],
  };
}

/** The first scale at which everything has room, with the table beside the views or else under them. */
function planned(
  input: ViewsInput,
  most: Greatests,
  table: { readonly wideMm: number; readonly highMm: number },
): { readonly scale: number; readonly isBeside: boolean } {
  const [wide, high] = [RIGHT - LEFT, TOP - LOW];
  for (const scale of trueSizeFirst(input.shape.lengthMm)) {
    const { wideMm, highMm } = blockAt(input, most, scale);
    if (wideMm <= wide - table.wideMm - GAP_MM && highMm <= high) return { scale, isBeside: true };
    if (wideMm <= wide && highMm + UNDER_MM + table.highMm <= high)
      return { scale, isBeside: false };
  }
  throw new Fault(`${input.name}: its views fit at no scale`);
}
