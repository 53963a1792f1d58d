/** The template as a part of sheet: openings, kerf, necks, drawing. */
import { type Blank, CHORD_TOLERANCE_MM, labelOf } from '../blank/blank.js';
import { type LipSlot, slotCorners } from '../blank/slot.js';
import type { Circle } from '../geometry/arcpath.js';
import { asRegion, offset, subtract } from '../geometry/clip.js';
import { circleRing, type Ring, ringBox } from '../geometry/ring.js';
import { distance, dot, sub } from '../geometry/vec.js';
import type { Cutter } from '../pattern/run.js';
import { type Problem, problem } from '../problem.js';
import { checkCuts, cutPart, type NominalPart, nominalPart } from './cut.js';
import type { Drawn, ReadyCut } from './drawing.js';
import type { Ink } from './ink.js';
import { cutCaution } from './notes.js';
import { templateOpenings } from './openings.js';
import { plain } from './strokes.js';
import { type TemplateWork, templateDrawing, templateInk } from './template.js';

/** The sheet a run cuts its templates from. */
export type Sheet = {
  readonly material: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  readonly hangHoleMm: number;
  readonly pencilHoleMm: number;
  readonly leastWallMm: number;
  readonly marginMm: number;
};

export type Template = {
  readonly part: NominalPart;
  readonly cutter: Cutter;
  readonly cuts: readonly ReadyCut[];
  /** The nominal outline as points: with the lip slot if it is cut. */
  readonly outline: Ring;
  readonly ink: Ink;
  readonly drawn: Drawn;
};

export type TemplateResult = {
  readonly template: Template | null;
  readonly problems: readonly Problem[];
};

/** For a single pattern, which has no workshop: the outline itself, to be cut by hand. */
const NO_SHEET: Sheet = {
  material: '',
  lengthMm: Infinity,
  widthMm: Infinity,
  thicknessMm: 0,
  hangHoleMm: 5,
  pencilHoleMm: 2.5,
  leastWallMm: 2,
  marginMm: 0,
};
export const BY_HAND: Cutter = {
  guidance: 'steered',
  kerfMm: 0,
  wanderMm: 0,
  bladeWidthMm: null,
  cutsLipSlot: true,
};

const CUTTER_KEY = ['templateSheet', 'cutter'];

/** The template of a blank; without a sheet it is drawn at its own size, kerf not in it. */
export function makeTemplate(
  blank: Blank,
  tools: { readonly sheet: Sheet; readonly cutter: Cutter } | null,
): TemplateResult {
  const { sheet, cutter } = tools ?? { sheet: NO_SHEET, cutter: BY_HAND };
  const { pencils, hangUp } = templateOpenings(blank, {
    pencilDiameterMm: sheet.pencilHoleMm,
    hangDiameterMm: sheet.hangHoleMm,
    webMm: sheet.leastWallMm,
  });
  const openings = [...pencils, hangUp].filter((c): c is Circle => c !== null);
  const part = nominalPart(blank, cutter, openings);
  const { cuts, problems } = cutPart(part, cutter, CUTTER_KEY);
  const wrong = [
    ...problems,
    ...sheetProblem(blank, sheet),
    ...thinProblem(part, blank, sheet.leastWallMm),
  ];
  if (wrong.length > 0) return { template: null, problems: wrong };
  const work: TemplateWork = {
    blank,
    cuts,
    slotIsCut: part.slotMm !== null,
    label: labelOf(blank),
    kerfMm: cutter.guidance === 'follows' ? cutter.kerfMm : null,
    notes: tools
      ? [`${sheet.material}, ${plain(sheet.thicknessMm)} MM`.toUpperCase(), cutCaution(cutter)]
      : [],
  };
  const ink = templateInk(work);
  return {
    template: {
      part,
      cutter,
      cuts,
      outline: outlineOf(part, blank),
      ink,
      drawn: templateDrawing(work, ink),
    },
    problems: roomWarnings(blank, sheet, pencils, hangUp),
  };
}

export const checkTemplate = ({ part, cutter, cuts }: Template): string[] =>
  checkCuts(part, cutter, cuts);

function sheetProblem(blank: Blank, sheet: Sheet): Problem[] {
  const [minX, minY, maxX, maxY] = ringBox(blank.outlineRing);
  const [lengthMm, heightMm] = [maxX - minX, maxY - minY];
  const [clearLengthMm, clearWidthMm] = [sheet.lengthMm, sheet.widthMm].map(
    (side) => side - 2 * sheet.marginMm,
  );
  const lies = (l: number, w: number) => lengthMm <= l && heightMm <= w;
  if (lies(clearLengthMm, clearWidthMm) || lies(clearWidthMm, clearLengthMm)) return [];
  const facts = {
    name: blank.name,
    lengthMm,
    heightMm,
    clearLengthMm,
    clearWidthMm,
  };
  return [problem('template-larger-than-sheet', ['templateSheet'], facts)];
}

const outlineOf = ({ slotMm }: NominalPart, blank: Blank): Ring =>
  slotMm === null ? blank.profileRing : blank.outlineRing;

/**
 * Two ways to be thin: what is left beyond the slot's inner end, and a neck at which the part, shrunk
 * by half the least wall, falls apart.
 */
function thinProblem(part: NominalPart, blank: Blank, limitMm: number): Problem[] {
  const { name, slotMm, openings } = part;
  if (limitMm === 0) return [];
  const thinAt = (where: string) => [
    problem('part-too-thin', ['templateSheet', 'leastWallMm'], { name, limitMm, where }),
  ];
  const { slot } = blank;
  if (slotMm !== null && slot && beyondSlot(slot, blank.profileRing) < limitMm) {
    return thinAt('the inner end of the lip slot');
  }
  const holes = openings.map((c) =>
    asRegion(circleRing(c.center, c.radius, { segments: 48, circumscribed: true })),
  );
  const shrunk = offset(
    subtract([asRegion(outlineOf(part, blank))], holes),
    -(limitMm / 2 - CHORD_TOLERANCE_MM),
  );
  return shrunk.length === 1 ? [] : thinAt('a neck of its outline');
}

/** Least distance from the slot's inner corners to the edge that lies ahead of them. */
function beyondSlot(slot: LipSlot, profile: Ring): number {
  const ahead = profile.filter((p) => dot(sub(p, slot.end), slot.outward) < 0);
  return Math.min(...slotCorners(slot).flatMap((c) => ahead.map((p) => distance(p, c))));
}

function roomWarnings(
  blank: Blank,
  sheet: Sheet,
  pencils: readonly (Circle | null)[],
  hangUp: Circle | null,
): Problem[] {
  const name = blank.name;
  const wallMm = sheet.leastWallMm;
  const hang = sheet.hangHoleMm > 0 && hangUp === null;
  return [
    ...pencils.flatMap((p, i) =>
      p
        ? []
        : [
            problem('pencil-hole-left-out', ['templateSheet', 'pencilHoleMm'], {
              name,
              stationMm: blank.holes[i].stationMm,
              diameterMm: sheet.pencilHoleMm,
              wallMm,
            }),
          ],
    ),
    ...(hang
      ? [
          problem('hang-hole-left-out', ['templateSheet', 'hangHoleMm'], {
            name,
            diameterMm: sheet.hangHoleMm,
            wallMm,
          }),
        ]
      : []),
  ];
}
