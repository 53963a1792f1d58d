/**
 * The plan of a machine whose path is the middle of the cut: a short round over the contours, each
 * begun where its lead-in has room in the waste, and lines that two contours share cut once. The
 * openings of a part are cut before its outline sets it free.
 */
import {
  type ArcPath,
  directions,
  movedPath,
  pathLength,
  pathPoints,
  segmentsOf,
} from '../geometry/arcpath.js';
import { distance, distanceToEdge, type Point2, quarterLeft, sub, times } from '../geometry/vec.js';
import type { NestFace } from '../nest/nest.js';
import { type CutPlan, lineLength, type SawnPart } from './cutplan.js';
import { shortRound, travelOf } from './order.js';
import { sharedLines } from './shared-lines.js';
import { type Walls, wallsOf } from './walls.js';
import { partOf } from './waste.js';

/** A beam or bit is up to speed after this, mm: common practice, no source. A wide bit takes its own width. */
const LEAD_MM = 2;
/** Chord error of the contours looked at, mm. */
const CHORD_MM = 0.01;
/** Outlines are chords up to 0.02 mm off their arcs. */
const OUTLINE_CHORD_MM = 0.02;
const CELL_MM = 4;
const HOME: Point2 = [0, 0];
/** Rounds of choosing order and starts in turn. */
const ROUNDS = 3;

/** Where a contour may begin: `from` in the waste, `at` on the contour. */
type Start = { readonly from: Point2; readonly at: Point2 };

export function followedCuts(
  face: NestFace,
  parts: ReadonlyMap<string, SawnPart>,
  kerfMm: number,
): CutPlan {
  const contours = face.placements.map(({ part, turnDeg, xMm, yMm }) =>
    movedPath({ turnDeg, move: [xMm, yMm] }, partOf(parts, part).path),
  );
  const walls = wallsOf(
    face.placements.map((p) => p.outline),
    CELL_MM,
  );
  const starts = contours.map((path, i) => startsOf(path, i, { face, walls, kerfMm }));
  const { order, chosen, travelMm } = roundOf(starts);
  const entryPaths = chosen.map(({ from, at }): Point2[] => [from, at]);
  const lines = sharedLines(
    contours.map((path) => pathPoints(path, CHORD_MM)),
    order,
  );
  const sum = (lengths: readonly number[]) => lengths.reduce((a, b) => a + b, 0);
  const openings = face.placements.flatMap((p) => partOf(parts, p.part).openings);
  return {
    entryPaths,
    partingCuts: [],
    pieces: [],
    cutOrder: order,
    reliefCuts: [],
    sharedLines: lines,
    sawnMm:
      sum(entryPaths.map(lineLength)) +
      sum(contours.map(pathLength)) +
      sum(openings.map((c) => 2 * Math.PI * c.radius)) -
      sum(lines.map((l) => lineLength(l.path))),
    travelMm,
  };
}

type Bench = { readonly face: NestFace; readonly walls: Walls; readonly kerfMm: number };

/** Every start with the best lead-in that any has: along the tangent before square, long before short. */
function startsOf(path: ArcPath, own: number, { face, walls, kerfMm }: Bench): Start[] {
  const all = segmentsOf(path);
  const { outline } = face.placements[own];
  // In a corner that turns inward the path keeps further off: a cut begun there would leave a step.
  const touching = all.filter(
    (s) => Math.abs(distanceToEdge(s.from, outline) - kerfMm / 2) <= OUTLINE_CHORD_MM,
  );
  const segments = touching.length > 0 ? touching : all;
  const fromOthers = Math.max(kerfMm / 4, kerfMm / 2 - 0.008);
  const fromOwn = Math.max(kerfMm / 4, kerfMm / 2 - OUTLINE_CHORD_MM - CHORD_MM);
  const inWaste = ({ from, at }: Start): boolean =>
    from[0] >= 0 &&
    from[1] >= 0 &&
    from[0] <= face.lengthMm &&
    from[1] <= face.widthMm &&
    walls.clear(from, at, fromOthers, own) &&
    walls.clear(from, at, fromOwn);
  const lead = Math.max(LEAD_MM, kerfMm);
  for (const lengthMm of [lead, lead / 2]) {
    for (const square of [false, true]) {
      const found = segments
        .map((s): Start => {
          const [along] = directions(s);
          // Contours run counter-clockwise: the waste lies to the right of travel.
          const toward = square ? quarterLeft(along) : along;
          return { from: sub(s.from, times(toward, lengthMm)), at: s.from };
        })
        .filter(inWaste);
      if (found.length > 0) return found;
    }
  }
  // No room anywhere: the lead-in runs along the contour itself, whose kerf is waste.
  return all.flatMap((s, i) =>
    segments.includes(s) ? [{ from: all[(i + all.length - 1) % all.length].from, at: s.from }] : [],
  );
}

function roundOf(starts: readonly (readonly Start[])[]): {
  readonly order: number[];
  readonly chosen: readonly Start[];
  readonly travelMm: number;
} {
  const after = starts.map(() => []);
  let chosen: readonly Start[] = starts.map((s) => s[0]);
  let best: { order: number[]; chosen: readonly Start[]; travelMm: number } | null = null;
  for (let k = 0; k < ROUNDS; k++) {
    const stopsOf = (all: readonly Start[]) =>
      all.map(({ from, at }) => ({ start: from, end: at }));
    const order = shortRound({ from: HOME, stops: stopsOf(chosen), after });
    chosen = startsAlong(starts, order);
    const travelMm = travelOf({ from: HOME, stops: stopsOf(chosen) }, order);
    if (best && travelMm >= best.travelMm - 1e-9) break;
    best = { order, chosen, travelMm };
  }
  return best ?? { order: [], chosen: [], travelMm: 0 };
}

/** The starts that make this order's travel least, found stop by stop (R. Bellman, 1957). */
function startsAlong(
  starts: readonly (readonly Start[])[],
  order: readonly number[],
): readonly Start[] {
  let far: number[] = [0];
  let ends: readonly Point2[] = [HOME];
  const came: number[][] = [];
  for (const stop of order) {
    const from = starts[stop].map((s) => {
      let best = 0;
      for (let k = 1; k < ends.length; k++)
        if (far[k] + distance(ends[k], s.from) < far[best] + distance(ends[best], s.from)) best = k;
      return best;
    });
    far = starts[stop].map((s, i) => far[from[i]] + distance(ends[from[i]], s.from));
    ends = starts[stop].map((s) => s.at);
    came.push(from);
  }
  const chosen: Start[] = [];
  let at = far.reduce((best, f, i) => (f < far[best] ? i : best), 0);
  for (let k = order.length - 1; k >= 0; k--) {
    chosen[order[k]] = starts[order[k]][at];
    at = came[k][at];
  }
  return chosen;
}
