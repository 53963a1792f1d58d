/** The drawing of a sheet that several parts are cut from: templates together, or lips. */
import { rectRing } from '../geometry/ring.js';
import type { Motion, Point2 } from '../geometry/vec.js';
import type { Drawn } from './drawing.js';
import { type Ink, inkStrokes } from './ink.js';
import { kerfNote, lineStroke, plain, polygonStroke, underneath } from './strokes.js';
import { tidied } from './tidy.js';

/** A sheet in its own frame: x from 0 to the length, y from 0 to the width. */
export type SheetWork = {
  /** What the sheet is called on the drawing, printable ASCII. */
  readonly title: string;
  readonly material: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  /** Above 0. */
  readonly marginMm: number;
  readonly gapMm: number;
  /** Sheets that are cut so. */
  readonly copies: number;
  readonly placed: readonly {
    /** How it is counted in the notes. */
    readonly name: string;
    /** What is told of when there is no room for its label. */
    readonly called: string;
    readonly ink: Ink;
    readonly motion: Motion;
  }[];
  /** Kerf that the cuts allow for; null when they are the outlines themselves. */
  readonly kerfMm: number | null;
  /** Further lines of notes, printable ASCII. */
  readonly notes: readonly string[];
};

/**
 * Draws a sheet: its edge, its margin (dashed, from edge to edge), every part with its cuts, marks and
 * label, and under the sheet the scale bar and notes. Written out, openings come before outlines.
 */
export function sheetDrawing(sheet: SheetWork): Drawn {
  const notes = sheetNotes(sheet);
  const drawing = tidied({
    title: sheet.title,
    description: [...notes.slice(1), 'Lengths in mm, true size.'].join('. '),
    strokes: [
      ...sheet.placed.flatMap(({ ink, motion }) => inkStrokes(ink, motion)),
      polygonStroke('STOCK', rectRing(0, 0, sheet.lengthMm, sheet.widthMm)),
      ...marginLines(sheet),
      ...underneath([0, 0], notes),
    ],
  });
  const unlabeled = sheet.placed.flatMap(({ called, ink }) => (ink.label ? [] : [called]));
  return { drawing, unlabeled: [...new Set(unlabeled)] };
}

/** From edge to edge, so that no edge of a part that fits exactly is drawn twice. */
const marginLines = ({ lengthMm, widthMm, marginMm }: SheetWork) => {
  const lines: (readonly [Point2, Point2])[] = [
    ...[marginMm, widthMm - marginMm].map(
      (y) => [[0, y] as const, [lengthMm, y] as const] as const,
    ),
    ...[marginMm, lengthMm - marginMm].map(
      (x) => [[x, 0] as const, [x, widthMm] as const] as const,
    ),
  ];
  return lines.map(([from, to]) => ({
    ...lineStroke('STOCK', from, to),
    dashed: true as const,
  }));
};

/** Names told on one line of notes. */
const NAMES_PER_LINE = 5;

function sheetNotes(sheet: SheetWork): string[] {
  const size = [sheet.lengthMm, sheet.widthMm, sheet.thicknessMm].map(plain).join(' X ');
  const names = [...new Set(sheet.placed.map((p) => p.name))];
  const counts = names.map((name) => {
    const count = sheet.placed.filter((p) => p.name === name).length;
    return `${count} ${name}`.toUpperCase();
  });
  const lines = Array.from({ length: Math.ceil(counts.length / NAMES_PER_LINE) }, (_, i) =>
    counts.slice(i * NAMES_PER_LINE, (i + 1) * NAMES_PER_LINE).join(', '),
  );
  return [
    sheet.title.toUpperCase(),
    `${sheet.material.toUpperCase()}, ${size} MM, MARGIN ${plain(sheet.marginMm)} MM, ${plain(sheet.gapMm)} MM BETWEEN PARTS`,
    `CUT ${sheet.copies} SHEET${sheet.copies === 1 ? '' : 'S'} LIKE THIS, ON EACH:`,
    ...lines,
    kerfNote(sheet.kerfMm),
    ...sheet.notes,
  ];
}
