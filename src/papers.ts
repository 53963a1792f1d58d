/** All true-scale paper of an order: its files with their pages, or why its paper does not do. */
import type { Blank } from './blank/blank.js';
import type { Body } from './body/body.js';
import type { Template } from './drawing/template-part.js';
import type { Gauged } from './gauged.js';
import { ringBox } from './geometry/ring.js';
import { type DrawnFace, faceLeaflet, faceSketch } from './paper/face-sheet.js';
import { gaugeLeaflet, gaugeSketches, plateSize } from './paper/gauge-sheets.js';
import { lipLeaflet, lipSketch } from './paper/lip-sheet.js';
import { paperFile } from './paper/pages.js';
import type { Leaflet, PaperFile, Papers, Sketch } from './paper/paper-file.js';
import { checkLines, printerCheck } from './paper/printer-check.js';
import { paperProblems, type Whole } from './paper/problems.js';
import { printNotes } from './paper/sentences.js';
import { stripLeaflet, stripSketch } from './paper/strip-sheet.js';
import { templateLeaflet, templateSketch } from './paper/template-sheet.js';
import { sizeOf } from './paper/tiling.js';
import { wireLeaflet, wireSketch } from './paper/wire-sheet.js';
import { type Paper, type PaperWish, paperOf } from './pattern/paper.js';
import { PAPER_NAMES } from './pattern/paper-schema.js';
import type { Pattern } from './pattern/pattern.js';
import type { Problem } from './problem.js';
import type { BentWire } from './wire/bent.js';

/** What of a product goes on paper. */
type Drawn = {
  readonly pattern: Pick<Pattern, 'lip'>;
  readonly count: number;
  readonly blank: Blank;
  readonly body: Pick<Body, 'shape'>;
  readonly template: Template;
  readonly gauged: Gauged | null;
  readonly wire: BentWire | null;
};

/** Of a drawing that may be in pieces, the least that is worth a page, mm. */
const PART_MM = [30, 30] as const;

/** White round a blank's depth on a page, mm. */
const ROUND_MM = 2;

/** What keeps an order from its paper. */
export const paperWrong = (
  paper: Paper,
  run: string,
  lures: readonly { readonly blank: Blank; readonly gauged: Gauged | null }[],
  faces: readonly DrawnFace[],
): Problem[] =>
  withEnough(paper, [
    ...faces.map(({ work }, i): Whole => {
      const leaflet = told(faceLeaflet(work, i, run), paper);
      return { leaflet, part: `Any part of face ${i + 1}`, sizeMm: PART_MM, isJoined: true };
    }),
    ...lures.flatMap(({ blank, gauged }): Whole[] => {
      const [, high] = sizeOf(ringBox(blank.profileRing));
      const station = [PART_MM[0], high + ROUND_MM] as const;
      const leaflet = told(templateLeaflet(blank), paper);
      const name = blank.name;
      return [
        { leaflet, part: `The deepest station of ${name}`, sizeMm: station, isJoined: true },
        ...(gauged?.gauges.sections ?? []).map(
          (section): Whole => ({
            leaflet: told(gaugeLeaflet(blank), paper),
            part: `Section gauge ${section.number} of ${name}`,
            sizeMm: plateSize(section),
            isJoined: false,
          }),
        ),
      ];
    }),
  ]);

/** What is wrong with paper, with the sizes that would do where it is too small. */
const withEnough = (paper: Paper, wholes: readonly Whole[]): Problem[] =>
  paperProblems(paper, wholes).map((p) =>
    p.code === 'paper-too-small'
      ? { ...p, facts: { ...p.facts, enough: enoughFor(paper, wholes) } }
      : p,
  );

/** The sizes with a name that would do, and the least of the shape asked for. */
function enoughFor(paper: Paper, wholes: readonly Whole[]): string {
  const does = (size: NonNullable<PaperWish['size']>) =>
    paperProblems(resized(paper, size), wholes).length === 0;
  const named = PAPER_NAMES.filter((name) => does(name)).join(', ');
  const ofShape = (acrossMm: number) =>
    [acrossMm, Math.ceil((acrossMm * paper.alongMm) / paper.acrossMm)] as const;
  let [less, enough] = [Math.floor(paper.acrossMm), LARGEST_ACROSS_MM];
  if (!does(ofShape(enough))) return named === '' ? 'none that has a name' : named;
  while (enough - less > 1) {
    const middle = Math.floor((less + enough) / 2);
    if (does(ofShape(middle))) enough = middle;
    else less = middle;
  }
  const least = `${ofShape(enough).join(' × ')} mm`;
  return named === '' ? least : `${least}, or of those with a name ${named}`;
}

/** Wider than any printer's sheet here is looked at, mm. */
const LARGEST_ACROSS_MM = 1000;

/** Other paper in the same printer. */
function resized(paper: Paper, size: NonNullable<PaperWish['size']>): Paper {
  const { marginMm, overlapMm, check, printed } = paper;
  const other = paperOf({ marginMm, overlapMm }, { size }).paper;
  return {
    ...other,
    printed: {
      acrossMm: (other.check.acrossMm * printed.acrossMm) / check.acrossMm,
      alongMm: (other.check.alongMm * printed.alongMm) / check.alongMm,
    },
  };
}

/** With what every page says first. */
const told = (leaflet: Leaflet, paper: Paper): Leaflet => ({
  ...leaflet,
  notes: [...printNotes(leaflet, paper), ...leaflet.notes],
});

export function papersOf(
  run: string,
  products: readonly Drawn[],
  faces: readonly DrawnFace[],
  paper: Paper,
): Papers {
  const on = (leaflet: Leaflet, sketches: (leaflet: Leaflet) => readonly Sketch[]): PaperFile => {
    const full = told(leaflet, paper);
    return paperFile(full, sketches(full), paper);
  };
  return {
    paper,
    checkLines: checkLines(paper),
    files: [
      printerCheck(paper),
      ...faces.map((face, i) => on(faceLeaflet(face.work, i, run), () => [faceSketch(face)])),
      ...products.flatMap(({ blank, template, pattern: { lip }, count, gauged, wire, body }) => [
        on(templateLeaflet(blank), () => [templateSketch(blank, template)]),
        ...(gauged
          ? [
              on(gaugeLeaflet(blank), (full) => gaugeSketches(gauged.gauges, full, paper)),
              on(stripLeaflet(blank, gauged.map), () => [stripSketch(gauged.strips.drawing)]),
            ]
          : []),
        ...(wire ? [on(wireLeaflet(blank, wire), () => [wireSketch(wire, body.shape)])] : []),
        ...(lip ? [on(lipLeaflet(blank, lip, count), () => [lipSketch(blank.name, lip)])] : []),
      ]),
    ],
  };
}
