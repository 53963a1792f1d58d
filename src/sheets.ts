/** Sheets of a run: its templates laid out together, and the lips of all blanks ordered. */
import type { Blank } from './blank/blank.js';
import { gapMm } from './drawing/cut.js';
import type { Drawn } from './drawing/drawing.js';
import type { Ink } from './drawing/ink.js';
import { checkLipPlate, type LipName, makeLipPlate } from './drawing/lip-plate.js';
import { sheetCautions } from './drawing/notes.js';
import { sheetDrawing } from './drawing/sheet.js';
import type { Template } from './drawing/template-part.js';
import type { Ring } from './geometry/ring.js';
import type { LipSheet, Order, Workshop } from './job.js';
import { clearOf } from './nest/fit.js';
import type { NestPart } from './nest/nest.js';
import type { Search } from './nest/search.js';
import { fitsSheet, planSheets, type SheetLayout, type SheetSize } from './nest/sheets.js';
import type { Lip } from './pattern/pattern.js';
import type { Cutter } from './pattern/run.js';
import { assertNone, type KeyPath, type Problem, problem } from './problem.js';

export type SheetKind = 'template-sheet' | 'lip-sheet';

/** One layout of parts on a sheet, with its drawing. */
export type MadeSheet = {
  readonly kind: SheetKind;
  /** Counts from 1 among the sheets of its kind. */
  readonly id: number;
  readonly material: string;
  readonly layout: SheetLayout;
  /** Nominal outline of each part on it, by pattern, in the part's own frame. */
  readonly outlines: Readonly<Record<string, Ring>>;
  readonly drawn: Drawn;
};

export type Sheets = {
  readonly sheets: readonly MadeSheet[];
  readonly problems: readonly Problem[];
};

/** What is cut from a sheet, so many times; `pattern` is unique on it. */
type SheetPart = {
  readonly pattern: string;
  /** How the sheet's notes count it. */
  readonly told: string;
  /** What its label is about. */
  readonly called: string;
  readonly outline: Ring;
  readonly ink: Ink;
  readonly count: number;
};

/** Parts and the sheets and cutter they are cut with. */
type Batch = {
  readonly kind: SheetKind;
  readonly parts: readonly SheetPart[];
  readonly stock: SheetSize & { readonly material: string; readonly webMm: number };
  readonly cutter: Cutter;
};

/** Layouts tried per sheet beside the systematic ones. */
const EFFORT = { tries: 8, seed: 1, layouts: 40 };

/** One template for each line of the order. */
export function templateSheets(
  { sheet, templateCutter }: Workshop,
  blanks: readonly Blank[],
  templates: readonly Template[],
  search: Search,
): readonly MadeSheet[] {
  const parts = templates.map(({ outline, ink }, i): SheetPart => {
    const { name } = blanks[i];
    return { pattern: name, told: name, called: name, outline, ink, count: 1 };
  });
  return madeSheets(
    [{ kind: 'template-sheet', parts, stock: sheet, cutter: templateCutter }],
    search,
  );
}

/** One lip for each blank ordered, each from the first sheet of its thickness. */
export function lipSheets(
  workshop: Workshop,
  orders: readonly Order[],
  blanks: readonly Blank[],
  search: Search,
): Sheets {
  const sheets = workshop.lipSheets;
  if (sheets.length === 0) return { sheets: [], problems: [] };
  const lips = orders.flatMap(({ pattern: { lip }, count }, i) =>
    lip ? [lipPart({ name: blanks[i].name, orderLine: i + 1, lip, count }, sheets)] : [],
  );
  const problems = lips.flatMap((l) => l.problems);
  if (problems.length > 0) return { sheets: [], problems };
  const batches = sheets.map(({ cutter, ...stock }, i): Batch => {
    const parts = lips.flatMap(({ part, sheet }) => (part && sheet === i ? [part] : []));
    return { kind: 'lip-sheet', parts, stock, cutter };
  });
  return { sheets: madeSheets(batches, search), problems: [] };
}

/** Lip and sheet agree in thickness if they differ by no more, mm: half the usual fit of a lip in its slot. */
const LIP_TOLERANCE_MM = 0.05;

type WantedLip = LipName & { readonly lip: Lip; readonly count: number };

type LipPart = {
  readonly part: SheetPart | null;
  /** Index of the sheet it is cut from; −1 when there is none. */
  readonly sheet: number;
  readonly problems: readonly Problem[];
};

function lipPart(wanted: WantedLip, sheets: readonly LipSheet[]): LipPart {
  const { name, lip, count } = wanted;
  const index = sheets.findIndex(
    (s) => Math.abs(s.thicknessMm - lip.thicknessMm) <= LIP_TOLERANCE_MM,
  );
  const refused = (...problems: Problem[]): LipPart => ({ part: null, sheet: index, problems });
  if (index < 0) {
    const found = [...new Set(sheets.map((s) => s.thicknessMm))].join(', ');
    const facts = { name, thicknessMm: lip.thicknessMm, found, withinMm: LIP_TOLERANCE_MM };
    return refused(problem('no-lip-sheet', ['lipSheets'], facts));
  }
  const { cutter, ...sheet } = sheets[index];
  const key: KeyPath = ['lipSheets', index];
  const { plate, problems } = makeLipPlate(wanted, lip, cutter, [...key, 'cutter']);
  if (!plate) return refused(...problems);
  assertNone(checkLipPlate(plate));
  const { outline, ink } = plate;
  const marked = ink.label && ink.label.text !== name.toUpperCase() ? ink.label.text : null;
  const told = marked === null ? name : `${name} (marked ${marked})`;
  const part: SheetPart = { pattern: name, told, called: `${name}’s lip`, outline, ink, count };
  if (fitsSheet(outline, sheet)) return { part, sheet: index, problems: [] };
  const facts = {
    name,
    lengthMm: lip.lengthMm,
    widthMm: lip.widthMm,
    ...clearOf(sheet),
  };
  return refused(problem('lip-larger-than-sheet', key, facts));
}

/** Lays every batch out on its own sheets; sheets of a kind are counted through. */
const madeSheets = (batches: readonly Batch[], search: Search): MadeSheet[] =>
  batches
    .flatMap((batch) => layoutsOf(batch, search).map((layout) => ({ batch, layout })))
    .map(({ batch, layout }, i) => madeSheet(batch, layout, i + 1));

function layoutsOf({ parts, stock, cutter }: Batch, search: Search): readonly SheetLayout[] {
  const { layouts, complaints } = planSheets(
    parts.map(
      ({ pattern, outline, count }): NestPart => ({
        id: pattern,
        outline,
        thicknessMm: stock.thicknessMm,
        orderedCount: count,
      }),
    ),
    stock,
    { gapMm: gapMm(cutter, stock.webMm), ...EFFORT },
    search,
  );
  assertNone(complaints.map((c) => JSON.stringify(c)));
  return layouts;
}

const TITLES: Readonly<Record<SheetKind, string>> = {
  'template-sheet': 'Template sheet',
  'lip-sheet': 'Lip sheet',
};

function madeSheet(
  { kind, parts, stock, cutter }: Batch,
  layout: SheetLayout,
  id: number,
): MadeSheet {
  const byPattern = new Map(parts.map((part) => [part.pattern, part]));
  const placed = layout.placements.map(({ part, turnDeg, xMm, yMm }) => {
    const { told, called, ink } = byPattern.get(part) as SheetPart;
    return { name: told, called, ink, motion: { turnDeg, move: [xMm, yMm] as const } };
  });
  const used = parts.filter(({ pattern }) => layout.placements.some((p) => p.part === pattern));
  return {
    kind,
    id,
    material: stock.material,
    layout,
    outlines: Object.fromEntries(used.map(({ pattern, outline }) => [pattern, outline])),
    drawn: sheetDrawing({
      ...layout,
      title: `${TITLES[kind]} ${id}`,
      material: stock.material,
      placed,
      kerfMm: cutter.guidance === 'follows' ? cutter.kerfMm : null,
      notes: sheetCautions(cutter),
    }),
  };
}
