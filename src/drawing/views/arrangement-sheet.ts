/** The second sheet: side view and plan with their dimensions, what goes where, and the section in its block. */
import type { Box } from '../../geometry/vec.js';
import { Fault } from '../../problem.js';
import { scaleWords } from '../picture/scale-bar.js';
import { arrangement, blockAt } from './arrangement.js';
import { ROOM, type SheetOf } from './frame.js';
import { greatests } from './greatest.js';
import type { ViewsInput } from './input.js';
import { millimeters } from './measure.js';
import { leastNotesMm, notes } from './notes.js';
import { trueSizeFirst } from './scale.js';
import { schedule } from './schedule.js';
import { drawnTable, type Table, tableHeightMm, tableWidthMm } from './table.js';
import { workSection } from './work-section.js';

/** Between the views and what stands beside or under them, mm. */
const GAP_MM = 8;
const UNDER_MM = 4;

const [LEFT, LOW, RIGHT, TOP] = ROOM;

/** The sheet, and whether the notes are on it. */
export function arrangementSheet(input: ViewsInput): SheetOf & { readonly hasNotes: boolean } {
  const most = greatests(input.shape);
  const table = schedule(input);
  const { scale, isBeside } = planned(input, table);
  const columnX = RIGHT - tableWidthMm(table);
  const roomMm = isBeside ? columnX - GAP_MM - LEFT : RIGHT - LEFT;
  const underTop = TOP - blockAt(input, scale).highMm - UNDER_MM;
  const sectionRoom: Box = isBeside
    ? [columnX, LOW, RIGHT, TOP - tableHeightMm(table) - UNDER_MM]
    : [LEFT, LOW, columnX - GAP_MM, underTop];
  const hasNotes = isBeside && leastNotesMm(input, roomMm) <= underTop - LOW;
  return {
    hasNotes,
    title: 'Arrangement',
    scale: scaleWords(scale),
    key: [
      'Thick: finished body. Thin: as sawn, no kerf in it. Dashed: in the wood',
      'or hidden. Long and short strokes: datum line, center lines.',
    ],
    description: `Side view, plan and section of ${input.name}, ${millimeters(input.shape.lengthMm)} mm long, with dimensions and a table of what goes where.`,
    shapes: [
      ...arrangement(input, most, { scale, at: [LEFT, TOP], widthMm: roomMm }),
      ...drawnTable(table, [columnX, isBeside ? TOP : underTop]),
      ...workSection(input, most, sectionRoom),
      ...(hasNotes
        ? notes(input, [LEFT, underTop], { widthMm: roomMm, heightMm: underTop - LOW })
        : []),
    ],
  };
}

/** The first scale at which everything has room, with the table beside the views or else under them. */
function planned(
  input: ViewsInput,
  table: Table,
): { readonly scale: number; readonly isBeside: boolean } {
  const [wide, high] = [RIGHT - LEFT, TOP - LOW];
  const tableHigh = tableHeightMm(table);
  for (const scale of trueSizeFirst(input.shape.lengthMm)) {
    const { wideMm, highMm } = blockAt(input, scale);
    if (wideMm <= wide - tableWidthMm(table) - GAP_MM && Math.max(highMm, tableHigh) <= high)
      return { scale, isBeside: true };
    if (wideMm <= wide && highMm + UNDER_MM + tableHigh <= high) return { scale, isBeside: false };
  }
  throw new Fault(`${input.name}: its views fit at no scale`);
}
