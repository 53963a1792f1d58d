/** Gauges of one pattern to be cut from sheet: all of them in rows, kerf in the cuts as for templates. */
import { type Blank, labelOf } from '../blank/blank.js';
import type { Gauges } from '../gauge/gauges.js';
import type { Plate } from '../gauge/plate.js';
import { pathBox } from '../geometry/arcpath.js';
import { type Box, moved, type Point2 } from '../geometry/vec.js';
import type { Cutter } from '../pattern/run.js';
import { assertNone, type KeyPath, type Problem, problem } from '../problem.js';
import { checkCuts, cutReaching, gapMm, type NominalPart } from './cut.js';
import type { Drawn, ReadyCut, Stroke } from './drawing.js';
import { cutCaution } from './notes.js';
import { roomText } from './plate-text.js';
import { rowsOf } from './rows.js';
import { cutStroke, kerfNote, lineStroke, plain, polygonStroke, underneath } from './strokes.js';
import { BY_HAND, type Sheet } from './template-part.js';
import { tidied } from './tidy.js';

export type GaugeDrawing = {
  /** Null when there is a problem that is an error. */
  readonly drawn: Drawn | null;
  readonly problems: readonly Problem[];
};

export type SheetTools = { readonly sheet: Sheet; readonly cutter: Cutter };

const KEY: KeyPath = ['templateSheet'];
const WEB_MM = 3; // sheet between neighboring cuts: enough to hold, little to waste
const LEFT_MM = 0.1; // what may stand in a hollow untold: a few strokes of fine paper (common practice, no source)
const ROW_MM = 290; // without a sheet: rows as long as the long side of a sheet of A4, less a margin

/** A plate ready to be laid out. */
type Part = {
  readonly called: string;
  readonly plate: Plate;
  readonly cuts: readonly ReadyCut[];
  readonly box: Box;
  readonly leftMm: number;
};

/** All gauges of a pattern; without tools they are drawn at their own size, kerf not in them. */
export function gaugeDrawing(blank: Blank, gauges: Gauges, given: SheetTools | null): GaugeDrawing {
  const tools = given && { ...given, sheet: lengthwise(given.sheet) };
  const cutter = tools?.cutter ?? BY_HAND;
  const named = [
    ...gauges.profiles.map((g) => ({ called: `${g.side} profile gauge`, plate: g as Plate })),
    ...gauges.sections.map((g) => ({ called: `section gauge ${g.number}`, plate: g as Plate })),
  ];
  const parts = named.map(({ called, plate }) => partOf(called, plate, cutter));
  const { name } = blank;
  const problems = [
    ...(tools ? sheetProblems(name, parts, tools.sheet) : []),
    ...cornerProblems(name, parts),
  ];
  const tooLarge = problems.some((p) => p.code === 'gauge-larger-than-sheet');
  return { drawn: tooLarge ? null : drawnParts(blank, parts, cutter, tools), problems };
}

/** The sheet with its longer side along the rows. */
const lengthwise = (sheet: Sheet): Sheet => ({
  ...sheet,
  lengthMm: Math.max(sheet.lengthMm, sheet.widthMm),
  widthMm: Math.min(sheet.lengthMm, sheet.widthMm),
});

function partOf(called: string, plate: Plate, cutter: Cutter): Part {
  const part: NominalPart = { name: called, outline: plate.outline, slotMm: null, openings: [] };
  const { cuts, problems, leftMm } = cutReaching(part, cutter, [...KEY, 'cutter']);
  assertNone([...problems.map((p) => JSON.stringify(p)), ...checkCuts(part, cutter, cuts)]);
  return { called, plate, cuts, box: pathBox(plate.outline.path), leftMm };
}

const sizeOf = ([x0, y0, x1, y1]: Box): Point2 => [x1 - x0, y1 - y0];

/** The largest of those that do not fit. */
function sheetProblems(name: string, parts: readonly Part[], sheet: Sheet): Problem[] {
  const [clearLengthMm, clearWidthMm] = [sheet.lengthMm, sheet.widthMm].map(
    (side) => side - 2 * sheet.marginMm,
  );
  const large = parts
    .map(({ called, box }) => ({ called, size: sizeOf(box) }))
    .filter(({ size: [length, width] }) => length > clearLengthMm || width > clearWidthMm)
    .sort((a, b) => b.size[0] * b.size[1] - a.size[0] * a.size[1]);
  return large.slice(0, 1).map(({ called, size: [lengthMm, widthMm] }) => {
    const facts = { name, gauge: called, lengthMm, widthMm, clearLengthMm, clearWidthMm };
    return problem('gauge-larger-than-sheet', KEY, facts);
  });
}

/** The worst of the hollows that are too tight. */
function cornerProblems(name: string, parts: readonly Part[]): Problem[] {
  const worst = parts.reduce((a, b) => (b.leftMm > a.leftMm ? b : a));
  if (!(worst.leftMm > LEFT_MM)) return [];
  const facts = { name, gauge: worst.called, leftMm: worst.leftMm, limitMm: LEFT_MM };
  return [problem('gauge-corner-left', [...KEY, 'cutter'], facts)];
}

function drawnParts(
  blank: Blank,
  parts: readonly Part[],
  cutter: Cutter,
  tools: SheetTools | null,
): Drawn {
  const sizes = parts.map(({ box }) => sizeOf(box));
  const longest = Math.max(ROW_MM, ...sizes.map(([length]) => length));
  const sheet = tools?.sheet ?? { lengthMm: longest, widthMm: Infinity, marginMm: 0 };
  const { corners, sheets } = rowsOf(sizes, sheet, gapMm(cutter, WEB_MM));
  const placed = parts.map(({ box: [x, y], ...part }, i) => {
    const move: Point2 = [corners[i][0] - x, corners[i][1] - y];
    const texts = part.plate.texts.map((text) => roomText('LABEL', text, move));
    return {
      strokes: [...plateStrokes(part, move), ...texts.flatMap((t) => t ?? [])],
      unlabeled: texts.some((t) => t === null),
    };
  });
  const edges = tools ? sheets.map((edge) => polygonStroke('STOCK', edge)) : [];
  const work = [...placed.flatMap((p) => p.strokes), ...edges];
  const lowest = Math.min(0, ...sheets.flatMap((edge) => edge.map(([, y]) => y)));
  const label = labelOf(blank);
  const notes = notesOf(label, cutter, tools, sheets.length);
  const drawing = tidied({
    title: `Gauges ${label}`,
    description: [...notes.slice(1), 'Lengths in mm, true size.'].join('. '),
    strokes: [...work, ...underneath([0, lowest], notes)],
  });
  return { drawing, unlabeled: placed.some((p) => p.unlabeled) ? [blank.name] : [] };
}

function plateStrokes({ plate, cuts }: Pick<Part, 'plate' | 'cuts'>, move: Point2): Stroke[] {
  const motion = { turnDeg: 0, move };
  return [
    ...cuts.map((cut) => cutStroke(cut, motion)),
    ...plate.ticks.map(([from, to]) => lineStroke('MARK', moved(motion, from), moved(motion, to))),
  ];
}

function notesOf(
  label: string,
  cutter: Cutter,
  tools: SheetTools | null,
  sheets: number,
): string[] {
  return [
    `GAUGES ${label}`,
    kerfNote(cutter.guidance === 'follows' ? cutter.kerfMm : null),
    'FOR BARE SHAPED WOOD: NO COAT IS ALLOWED FOR',
    'LETTERED FACE ON THE STATION, PLATE TOWARD THE THINNER END; TURN OVER FOR THE OTHER SIDE',
    'SANDING: DUST MASK',
    ...(tools
      ? [
          `${tools.sheet.material}, ${plain(tools.sheet.thicknessMm)} MM`.toUpperCase(),
          ...(sheets > 1 ? [`${sheets} SHEETS, ONE UNDER THE OTHER`] : []),
          cutCaution(cutter),
        ]
      : []),
  ];
}
