/** The drawing of one face of a stack: what is glued on the block, or what the cutter follows. */
import type { Blank } from '../blank/blank.js';
import { movedPath, pathPoints } from '../geometry/arcpath.js';
import { circleRing, rectRing } from '../geometry/ring.js';
import type { Box, Motion, Point2 } from '../geometry/vec.js';
import { begunAt, without } from './contour.js';
import { nominalCuts, nominalPart } from './cut.js';
import { type Drawn, type ReadyCut, type Stroke, strokesBox } from './drawing.js';
import { type FlawWork, flawNotes, flawStrokes } from './flaws.js';
import { type Ink, inkStrokes } from './ink.js';
import { labelStrokes, obstaclesOf, placeLabel } from './label.js';
import { datumLine, hangerMarks, holeMarks, woodOf } from './marks.js';
import { type FaceCuts, routeStrokes } from './route.js';
import {
  BAR_BELOW_MM,
  kerfNote,
  lineStroke,
  NOTE_HEIGHT_MM,
  plain,
  polygonStroke,
  SCALE_BAR_MM,
  textStrokes,
  underneath,
} from './strokes.js';
import { tidied } from './tidy.js';

/** A blank as it is sawn in this run: how it is cut and what it is called. In its own frame. */
export type BlankWork = {
  readonly blank: Blank;
  readonly cuts: readonly ReadyCut[];
  /** True when the cuts go round the lip slot; else the slot is marked, to be sawn with its guide. */
  readonly slotIsCut: boolean;
  /** What the label says, printable ASCII: name, length, version. */
  readonly label: string;
};

/** A face in its own frame: x along the grain from 0 to the length, y from 0 to the width. */
export type FaceWork = FlawWork & {
  /** What the face is called on the drawing, printable ASCII. */
  readonly title: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  /** Thickness of one block of the stack. */
  readonly thicknessMm: number;
  readonly marginMm: number;
  /** What lies between neighboring outlines. */
  readonly gapMm: number;
  readonly layers: number;
  /** Stacks that are cut so. */
  readonly copies: number;
  readonly placed: readonly { readonly work: BlankWork; readonly motion: Motion }[];
  /** Kerf that the cuts allow for; null when they are the outlines themselves. */
  readonly kerfMm: number | null;
  /** How the face is cut; a steered saw's ways are drawn, a following tool's contours come in their order. */
  readonly cuts?: FaceCuts;
  /** Further lines of notes, printable ASCII. */
  readonly notes?: readonly string[];
};

/**
 * Draws a face: edge of the block, margin (dashed), flaws, and of every blank its cuts, its marks and
 * its label, which is never upside down; under the block the scale bar, the direction of the grain
 * and notes.
 */
export function faceDrawing(face: FaceWork): Drawn {
  const drawn = new Map<BlankWork, Ink>();
  for (const { work } of face.placed) if (!drawn.has(work)) drawn.set(work, drawBlank(work));
  const blanks = inOrder(face).flatMap((i) => {
    const { work, motion } = face.placed[i];
    return followed(face, i, inkStrokes(drawn.get(work) as Ink, motion));
  });
  const notes = faceNotes(face);
  const stock = stockStrokes(face);
  const route = routeOf(face, drawn, [...blanks, ...stock]);
  // A flaw may reach over the block's lower edge.
  const below: Point2 = [0, Math.min(0, Math.floor(strokesBox(stock)[1]))];
  const drawing = tidied({
    title: face.title,
    description: [...notes.slice(1), 'Lengths in mm, true size.'].join('. '),
    strokes: [...blanks, ...route, ...stock, ...underneath(below, notes), ...grainArrow(below)],
  });
  const unlabeled = [...drawn].flatMap(([{ blank }, { label }]) => (label ? [] : [blank.name]));
  return { drawing, unlabeled };
}

/** The face for a saw that a hand leads along the lines: outlines as they shall be, no kerf in them. */
export function faceByHand(face: FaceWork): FaceWork {
  if (face.kerfMm === null) return face;
  const { cuts: _, ...rest } = face;
  const works = new Map(face.placed.map(({ work }) => [work, workByHand(work)]));
  const placed = face.placed.map((p) => ({ ...p, work: works.get(p.work) ?? p.work }));
  return { ...rest, placed, kerfMm: null };
}

const workByHand = (work: BlankWork): BlankWork => ({
  ...work,
  cuts: nominalCuts(nominalPart(work.blank, { cutsLipSlot: work.slotIsCut })),
});

function drawBlank({ blank, cuts, slotIsCut, label }: BlankWork): Ink {
  const { wood, slotLines } = woodOf(blank, slotIsCut);
  const marks = [
    ...datumLine(wood),
    ...hangerMarks(blank, wood),
    ...blank.holes.flatMap((hole) => holeMarks(hole, wood)),
    ...slotLines,
  ];
  return { cuts, marks, label: placeLabel(label, wood.outline, obstaclesOf(marks, wood)) };
}

/** The strokes of one placement; a contour that is followed begins at its lead-in and leaves out what is cut already. */
function followed({ cuts, kerfMm }: FaceWork, i: number, strokes: readonly Stroke[]): Stroke[] {
  if (!cuts || kerfMm === null) return [...strokes];
  const shared = cuts.sharedLines.filter((l) => l.placement === i).map((l) => l.path);
  const lead = cuts.entryPaths[i];
  return strokes.flatMap((stroke): Stroke[] => {
    if (stroke.kind !== 'path' || stroke.layer !== 'CUT_OUTSIDE') return [stroke];
    if (shared.length === 0) return [{ ...stroke, path: begunAt(stroke.path, lead[1]) }];
    return without(stroke.path, shared).map((path) => ({ ...stroke, path, joined: true }));
  });
}

/** Indices of the placed: for a tool that follows the lines of the file, in the order in which they are cut. */
const inOrder = ({ placed, cuts, kerfMm }: FaceWork): readonly number[] =>
  cuts && kerfMm !== null ? cuts.cutOrder : [...placed.keys()];

/** The ways of a saw led by hand; its numbers keep clear of all that is drawn on blanks and block. */
function routeOf(
  { placed, cuts, kerfMm }: FaceWork,
  drawn: ReadonlyMap<BlankWork, Ink>,
  others: readonly Stroke[],
): Stroke[] {
  if (!cuts || kerfMm !== null) return [];
  return routeStrokes(cuts, {
    outlines: placed.map(({ work, motion }) => outlineOf(work, motion)),
    lines: others.filter((s) => s.layer === 'MARK' || s.layer === 'STOCK').map(lineOf),
    boxes: placed.flatMap(({ work, motion }): Box[] => {
      const label = drawn.get(work)?.label;
      return label ? [strokesBox(labelStrokes('LABEL', label, motion))] : [];
    }),
  });
}

/** Chord error of lines that numbers keep clear of, mm. */
const CHORD_MM = 0.02;
const CIRCLE_CHORDS = 48;

/** A stroke as a line; a closed one ends where it begins. */
function lineOf(stroke: Stroke): Point2[] {
  const points =
    stroke.kind === 'path'
      ? pathPoints(stroke.path, CHORD_MM)
      : circleRing(stroke.circle.center, stroke.circle.radius, {
          segments: CIRCLE_CHORDS,
          circumscribed: true,
        });
  const closed = stroke.kind === 'circle' || stroke.path.closed;
  return closed ? [...points, points[0]] : [...points];
}

function outlineOf({ cuts }: BlankWork, motion: Motion): Point2[] {
  const paths = cuts.flatMap(({ layer, shape }) =>
    layer === 'CUT_OUTSIDE' && shape.kind === 'path' ? [shape.path] : [],
  );
  return paths.flatMap((path) => pathPoints(movedPath(motion, path), CHORD_MM));
}

const stockStrokes = ({ lengthMm, widthMm, marginMm, ...flaws }: FaceWork): Stroke[] => [
  polygonStroke('STOCK', rectRing(0, 0, lengthMm, widthMm)),
  ...(marginMm > 0
    ? [
        {
          ...polygonStroke(
            'STOCK',
            rectRing(marginMm, marginMm, lengthMm - marginMm, widthMm - marginMm),
          ),
          dashed: true as const,
        },
      ]
    : []),
  ...flawStrokes(flaws),
];

/** What is said of a face, its title first. */
export function faceNotes(face: FaceWork): string[] {
  const { placed, layers, copies, kerfMm, notes = [] } = face;
  const size = [face.lengthMm, face.widthMm, face.thicknessMm].map(plain).join(' X ');
  const count = placed.length * layers * copies;
  return [
    face.title.toUpperCase(),
    `BLOCK ${size} MM, MARGIN ${plain(face.marginMm)} MM, ${plain(face.gapMm)} MM BETWEEN OUTLINES`,
    `${counted(placed.length, 'OUTLINE')} X ${counted(layers, 'LAYER')} X ${counted(copies, 'STACK')} = ${counted(count, 'BLANK')}`,
    kerfNote(kerfMm),
    ...flawNotes(face),
    ...notes,
  ];
}

const counted = (count: number, word: string): string =>
  `${count} ${word}${count === 1 ? '' : 'S'}`;

const ARROW_MM = 40;
const HEAD_MM = 3;

/** An arrow along the grain, to the right of the scale bar. */
function grainArrow([x, bottom]: Point2): Stroke[] {
  const [left, y] = [x + SCALE_BAR_MM + 25, bottom - BAR_BELOW_MM];
  const right = left + ARROW_MM;
  const heads = [
    [left, 1],
    [right, -1],
  ].flatMap(([x, inward]) =>
    [1, -1].map((side) =>
      lineStroke('RULE', [x, y], [x + inward * HEAD_MM, y + (side * HEAD_MM) / 2]),
    ),
  );
  return [
    lineStroke('RULE', [left, y], [right, y]),
    ...heads,
    ...textStrokes('RULE', { text: 'GRAIN', heightMm: NOTE_HEIGHT_MM, at: [left + 11, y + 1.5] }),
  ];
}
