/** The template of a pattern: one part in sheet material that every blank of the pattern is drawn round. */
import type { BallastHole, Blank } from '../blank/blank.js';
import { CHORD_TOLERANCE_MM } from '../blank/blank.js';
import { fromUpright, uprightMouth } from '../blank/hole.js';
import { pathPoints } from '../geometry/arcpath.js';
import { distance, type Motion, type Point2 } from '../geometry/vec.js';
import { type Drawn, type ReadyCut, strokesBox } from './drawing.js';
import { type Ink, inkStrokes } from './ink.js';
import { obstaclesOf, placeLabel } from './label.js';
import { datumLine, hangerMarks, roundOpening, type Wood, woodOf } from './marks.js';
import { type Part, partsInside } from './parts.js';
import { kerfNote, underneath } from './strokes.js';
import { tidied } from './tidy.js';

export type TemplateWork = {
  readonly blank: Blank;
  /** Outline with the lip-slot opening on CUT_OUTSIDE, holes on CUT_INSIDE, in the frame of the blank. */
  readonly cuts: readonly ReadyCut[];
  /** True when the cuts go round the lip slot; else the slot is marked. */
  readonly slotIsCut: boolean;
  /** What the label says, printable ASCII: name, length, version. */
  readonly label: string;
  /** Kerf that the cuts allow for; null when they are the outlines themselves. */
  readonly kerfMm: number | null;
  /** Further lines of notes, printable ASCII. */
  readonly notes?: readonly string[];
};

const STAY: Motion = { turnDeg: 0, move: [0, 0] };

/** Stations are ticked at every so many mm along the datum line, so far to either side. */
const TICK_PITCH_MM = 10;
const TICK_MM = 0.8;

/**
 * A template in the frame of its blank: cuts, datum line with a tick at every 10 mm of station, hanger
 * marks, the axis of each ballast hole from the belly edge to its pencil hole, and the label where it
 * has room, or where it was placed before.
 */
export function templateInk(
  { blank, cuts, slotIsCut, label }: Pick<TemplateWork, 'blank' | 'cuts' | 'slotIsCut' | 'label'>,
  placed?: Ink['label'],
): Ink {
  const { wood, slotLines } = woodOf(blank, slotIsCut, cuts.flatMap(opening));
  const datum = datumLine(wood);
  const hangers = hangerMarks(blank, wood);
  const axes = blank.holes.flatMap((hole) => axisMark(hole, wood));
  const marks = [...datum, ...stationTicks(datum, wood), ...hangers, ...axes, ...slotLines];
  const found = placed ?? placeLabel(label, wood.outline, obstaclesOf(marks, wood));
  return { cuts, marks, label: found };
}

/** Draws a template alone, and under it the scale bar and notes. */
export function templateDrawing(work: TemplateWork, ink = templateInk(work)): Drawn {
  const { blank, label, kerfMm, notes = [] } = work;
  const part = inkStrokes(ink, STAY);
  const [left, bottom] = strokesBox(part);
  const said = [`TEMPLATE ${label}`, kerfNote(kerfMm), ...notes];
  const drawing = tidied({
    title: `Template ${label}`,
    description: [...said.slice(1), 'Lengths in mm, true size.'].join('. '),
    strokes: [...part, ...underneath([left, bottom], said)],
  });
  return { drawing, unlabeled: ink.label ? [] : [blank.name] };
}

/** A hole of the template as a polygon that marks keep out of. */
function opening({ layer, shape }: ReadyCut): (readonly Point2[])[] {
  if (layer === 'CUT_OUTSIDE') return [];
  return shape.kind === 'circle'
    ? [roundOpening(shape.circle.center, shape.circle.radius)]
    : [pathPoints(shape.path, CHORD_TOLERANCE_MM)];
}

/** Ticks across the datum line at whole multiples of 10 mm aft of the nose, where all of one lies in the wood. */
const stationTicks = (datum: readonly Part[], wood: Wood): Part[] =>
  datum.flatMap(([[from], [to]]) => {
    const firstTick = Math.ceil((from + TICK_MM) / TICK_PITCH_MM);
    const lastTick = Math.floor((to - TICK_MM) / TICK_PITCH_MM);
    return Array.from({ length: Math.max(0, lastTick - firstTick + 1) }, (_, i): Part => {
      const x = (firstTick + i) * TICK_PITCH_MM;
      return [
        [x, -TICK_MM],
        [x, TICK_MM],
      ];
    }).filter((tick) => {
      const inside = partsInside(tick, wood.outline, wood.openings);
      return inside.length === 1 && distance(...inside[0]) === 2 * TICK_MM;
    });
  });

/** The hole's axis from the belly edge to half its depth, where the pencil hole is. */
function axisMark(hole: BallastHole, wood: Wood): Part[] {
  const [place, mouth] = uprightMouth(hole);
  const ends = [mouth - 1, mouth + hole.depthMm / 2].map((s) => fromUpright(hole, [place, s]));
  return partsInside([ends[0], ends[1]], wood.outline, wood.openings);
}
