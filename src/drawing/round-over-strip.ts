/**
 * The round-over map as strips of paper at true size, one for each sawn edge, to be stuck on it: the
 * arris and the centerline of the edge as lines, round-over and flat as curves that far from the arris,
 * figures under the centerline, what stands along the edge over the arris, where the paper is folded
 * over the flat side.
 */
import { type Blank, labelOf } from '../blank/blank.js';
import type { EdgeMark } from '../gauge/edge-marks.js';
import {
  type EdgeMap,
  FIGURE_PITCH_MM,
  type RoundOverMap,
  spaced,
} from '../gauge/round-over-map.js';
import { movedPath, polyline } from '../geometry/arcpath.js';
import { letteringWidth } from '../geometry/lettering.js';
import { rectRing } from '../geometry/ring.js';
import type { Point2 } from '../geometry/vec.js';
import type { Drawn, Stroke } from './drawing.js';
import { lineStroke, plain, polygonStroke, textStrokes, underneath } from './strokes.js';
import { tidied } from './tidy.js';

const HEIGHT_MM = 3; // of all letters
const ROW_MM = 5; // from row to row
const PAD_MM = 3; // paper beyond nose and tail
const TICK_MM = 1.5;
const BETWEEN_MM = 8; // from strip to strip

export function roundOverDrawing(blank: Blank, map: RoundOverMap): Drawn {
  const label = labelOf(blank);
  const half = blank.thicknessMm / 2;
  const back = stripOf(map.back, half, `${label} BACK`);
  const belly = stripOf(map.belly, half, `${label} BELLY`);
  const bellyTop = back.bottomMm - BETWEEN_MM - belly.topMm;
  const strokes = [...back.strokesAt([0, 0]), ...belly.strokesAt([0, bellyTop])];
  const notes = [
    `ROUND-OVER MAP ${label}`,
    'STICK ON THE SAWN EDGE, CENTERLINE ON CENTERLINE; FOLD OVER THE SIDE. BOTH SIDES ARE ALIKE',
    'CURVES: HOW FAR FROM THE ARRIS A ROUND-OVER, AND A FLAT AT 45 DEGREES (DASHED), MAY REACH',
    'FIGURES: THE ROUND-OVER; THE FLAT; WOOD TO TAKE OFF THE SIDE AT ITS WIDEST, ALL IN MM',
    `HALF THE THICKNESS IS THE MOST. OFF THE EDGE ${plain(map.edgeMm)} MM. LEAST ROUND-OVER BACK ${radius(map.back)} MM, BELLY ${radius(map.belly)} MM`,
    'ROUTER: SMALL PARTS IN A HOLDER, NEVER FINGERS NEAR THE BIT. LOCAL RULES COME FIRST',
  ];
  const lowest = bellyTop + belly.bottomMm;
  const drawing = tidied({
    title: `Round-over map ${label}`,
    description: [...notes.slice(1), 'Lengths in mm, true size.'].join('. '),
    strokes: [...strokes, ...underneath([0, lowest], notes)],
  });
  return { drawing, unlabeled: [] };
}

/** Rounded down: a figure that is followed must not bite. */
const tenths = (mm: number): string => (Math.floor(mm * 10 + 1e-6) / 10).toFixed(1);
const radius = ({ least }: EdgeMap): string => tenths(least.radiusMm);

type Strip = {
  /** Over and under the arris, which is y = 0. */
  readonly topMm: number;
  readonly bottomMm: number;
  readonly strokesAt: (move: Point2) => readonly Stroke[];
};

function stripOf(map: EdgeMap, half: number, title: string): Strip {
  const { lengthMm, places } = map;
  const rows = rowsOfMarks(map.marks);
  const titleRow = Math.max(0, ...rows.map((r) => r.row + 1));
  const rowY = (row: number) => TICK_MM + row * ROW_MM;
  const topMm = rowY(titleRow) + ROW_MM;
  const bottomMm = -half - TICK_MM - 3 * ROW_MM - 1;
  const figures = spaced(map, FIGURE_PITCH_MM).flatMap((place) => figuresAt(place, half));
  const ends = [
    lengthMm,
    ...rows.map((r) => r.toMm),
    letteringWidth(title, { heightMm: HEIGHT_MM }),
  ];
  const paper = rectRing(
    -PAD_MM - FIGURE_MM,
    bottomMm,
    Math.max(...ends, lengthMm + FIGURE_MM) + PAD_MM,
    topMm,
  );
  const line = (from: Point2, to: Point2) => lineStroke('MARK', from, to);
  const strokes: Stroke[] = [
    polygonStroke('CUT_OUTSIDE', paper),
    line([0, 0], [lengthMm, 0]),
    line([0, -half], [lengthMm, -half]),
    line([0, -half], [0, 0]),
    line([lengthMm, -half], [lengthMm, 0]),
    ...curves(places, (p) => p.radiusMm, half),
    ...curves(places, (p) => p.flatMm, half).map((c) => ({ ...c, dashed: true as const })),
    ...rows.flatMap(({ mark, row }) => markStrokes(mark, rowY(row), half)),
    ...figures,
    ...text(title, [0, rowY(titleRow)]),
  ];
  return { topMm, bottomMm, strokesAt: (move) => strokes.map((s) => movedBy(s, move)) };
}

type Place = EdgeMap['places'][number];

/** How far from the arris something may reach; no line where it may reach the centerline, which is drawn. */
function curves(places: readonly Place[], reach: (place: Place) => number, half: number): Stroke[] {
  const isOpen = (i: number) => i >= 0 && i < places.length && reach(places[i]) < half;
  const runs: Point2[][] = [];
  places.forEach((place, i) => {
    if (!isOpen(i - 1) && !isOpen(i)) return;
    const at: Point2 = [place.alongMm, -reach(place)];
    if (isOpen(i - 1)) runs[runs.length - 1].push(at);
    else runs.push(i > 0 ? [[places[i - 1].alongMm, -half], at] : [at]);
  });
  return runs.map((run) => ({ kind: 'path', layer: 'MARK', path: polyline(run, false) }));
}

const FIGURE_MM = 5; // half the width of a figure, at most

const text = (words: string, at: Point2): Stroke[] =>
  textStrokes('LABEL', { text: words, heightMm: HEIGHT_MM, at });

/** A tick under the centerline; under it round-over, flat and what comes off the side. */
function figuresAt(
  { alongMm, radiusMm, flatMm, sideMm }: EdgeMap['places'][number],
  half: number,
): Stroke[] {
  const figure = (words: string, row: number) => {
    const width = letteringWidth(words, { heightMm: HEIGHT_MM });
    return text(words, [
      alongMm - width / 2,
      -half - TICK_MM - row * ROW_MM + (ROW_MM - HEIGHT_MM) / 2,
    ]);
  };
  return [
    lineStroke('MARK', [alongMm, -half - TICK_MM], [alongMm, -half]),
    ...figure(tenths(radiusMm), 1),
    ...figure(tenths(flatMm), 2),
    ...figure(sideMm.toFixed(1), 3),
  ];
}

const BESIDE_MM = 0.8; // from a mark's line to its name
const APART_MM = 1.2; // from a name to the next mark's line

/** A mark's line from the centerline up to its name, which stands beside the line's upper end. */
const markStrokes = ({ alongMm, text: name }: EdgeMark, y: number, half: number): Stroke[] => [
  lineStroke('MARK', [alongMm, -half], [alongMm, y + HEIGHT_MM]),
  ...text(name, [alongMm + BESIDE_MM, y]),
];

type Row = { readonly mark: EdgeMark; readonly row: number; readonly toMm: number };

/** From the tail: a name that would meet lines of marks aft of it stands in the row over theirs. */
function rowsOfMarks(marks: readonly EdgeMark[]): readonly Row[] {
  const rows: Row[] = [];
  for (const mark of [...marks].reverse()) {
    const width = letteringWidth(mark.text, { heightMm: HEIGHT_MM });
    const toMm = mark.alongMm + BESIDE_MM + width;
    const met = rows.filter((r) => r.mark.alongMm < toMm + APART_MM);
    rows.push({ mark, toMm, row: Math.max(0, ...met.map((r) => r.row + 1)) });
  }
  return rows;
}

/** All strokes of a strip are paths. */
const movedBy = (stroke: Stroke, move: Point2): Stroke =>
  stroke.kind === 'circle'
    ? stroke
    : { ...stroke, path: movedPath({ turnDeg: 0, move }, stroke.path) };
